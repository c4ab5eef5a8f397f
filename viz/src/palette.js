// SPDX-License-Identifier: GPL-3.0-or-later
// All colours of the picture, for light and for dark surroundings. Things that hold others are neutral; the rest take the
// hues in turn. Their order keeps neighbours in the list apart for people who do not tell red from green; a thing is
// always named by its label too. Source of the hues: Okabe and Ito 2008, Color universal design; from memory, and made
// paler or darker here.

const light = {
  paper: '#f7f4ec',
  ink: '#2b2a27',
  faint: '#8d887c',
  vessel: '#cfc9ba',
  room: '#0b7a5c',
  mark: '#a13d00',
  hues: ['#7fb8de', '#e6b455', '#67b59b', '#d99676', '#c79cb9', '#e3dc83', '#6f93bd', '#b7ab8f'],
};

const dark = {
  paper: '#211f1c',
  ink: '#ece7db',
  faint: '#8f897c',
  vessel: '#6f6a5f',
  room: '#58c9a5',
  mark: '#ff9c5b',
  hues: ['#4b8fbb', '#b98926', '#3c8a70', '#b06a48', '#96688a', '#a9a24a', '#4c6f9c', '#857a5e'],
};

export const coloursFor = (isDark) => (isDark ? dark : light);

export const colourOfThing = (colours, thing) =>
  thing.holds.length > 0 ? colours.vessel : colours.hues[thing.index % colours.hues.length];
