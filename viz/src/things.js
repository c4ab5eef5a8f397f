// SPDX-License-Identifier: GPL-3.0-or-later
// What the page was given, made ready to ask: things by number, who holds what, by which step each goes in.
import {boxOfAll, envelopeSolid} from './solids.js';

const key = (name) => `${name.id}/${name.copy}`;

// The kit's things, steps and questions from the page's data ("tuckwright-picture").
export function readPicture(data) {
  const {bundle, words} = data;
  const numbers = new Map(bundle.items.map((item, index) => [key(item), index]));
  const numberOf = (name) => (name ? numbers.get(key(name)) : null);
  const things = bundle.items.map((item, index) => ({
    index,
    item,
    words: words.items[index],
    in: numberOf(item.in),
    closes: numberOf(item.closes),
    lid: null,
    holds: [],
    step: null,
    box: boxOfAll(item.solids),
  }));
  for (const thing of things) {
    if (thing.closes !== null) {
      things[thing.closes].lid = thing.index;
    } else if (thing.in !== null) {
      things[thing.in].holds.push(thing.index);
    }
  }
  const steps = bundle.steps.map((step, k) => {
    const thing = numbers.get(`${step.item}/${step.copy}`);
    things[thing].step = k;
    return {thing, direction: step.direction, via: step.via, text: step.text};
  });
  const wall = bundle.bag ? bundle.bag.thickness_mm : 0;
  return {
    things,
    steps: [...steps, ...words.covers.map((text) => ({thing: null, direction: null, via: null, text}))],
    envelope: envelopeSolid(bundle.bundle, wall),
    wall,
    bag: bundle.bag,
    bands: data.bands ?? [],
    colours: data.colours,
    rooms: data.room ? data.room.rooms : [],
    chains: data.size ? data.size.chains : [],
    numberOf,
    words,
  };
}

// The thing and all that moves with it: what it holds, its shut lid, what those hold.
export function groupOf(picture, index) {
  const thing = picture.things[index];
  const more = thing.lid === null ? thing.holds : [...thing.holds, thing.lid];
  return [index, ...more.flatMap((other) => groupOf(picture, other))];
}

// What a thing goes into or belongs to: the vessel that a lid closes, else what holds it; null for the bundle itself.
export const hostOf = (thing) => (thing.closes !== null ? thing.closes : thing.in);
