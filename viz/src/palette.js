// SPDX-License-Identifier: GPL-3.0-or-later
// The colours come with the page's data, for light and for dark surroundings. Things that hold others are neutral; the rest
// take the hues in turn.

export const coloursFor = (picture, isDark) => (isDark ? picture.colours.dark : picture.colours.light);

export const colourOfThing = (colours, thing) =>
  thing.holds.length > 0 ? colours.vessel : colours.hues[thing.index % colours.hues.length];
