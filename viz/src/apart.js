// SPDX-License-Identifier: GPL-3.0-or-later
// Pulled apart: where each thing goes when all are drawn out the way they went in.
import {hostOf} from './things.js';
import {around, isNothing, moved, reach, sum, times, unit} from './vectors.js';

const gap = 14; // mm between what is pulled apart

// Whether two boxes overlap when looked at along a direction, which is taken as the nearest of the three axes.
function inTheWay(a, b, along) {
  const main = along.map(Math.abs).indexOf(Math.max(...along.map(Math.abs)));
  return [0, 1, 2].every((i) => i === main || (a.min[i] < b.max[i] - 1e-6 && b.min[i] < a.max[i] - 1e-6));
}

// How far back along its way a box has to go to be clear of those that are in the way.
function clearance(box, others, back) {
  let way = 0;
  for (const other of others) {
    if (inTheWay(box, other, back)) {
      way = Math.max(way, reach(other, back) + reach(box, times(-1, back)) + gap);
    }
  }
  return way;
}

// The vector by which each thing is away from its place when all is pulled apart, by number. What a vessel holds is drawn
// out of it, what went in last the farthest, and goes along with it.
export function apartOffsets(picture) {
  const {things, steps} = picture;
  const own = things.map(() => [0, 0, 0]);
  const children = (host) =>
    things
      .filter((thing) => hostOf(thing) === host && thing.index !== host)
      .sort((a, b) => (a.step ?? -1) - (b.step ?? -1))
      .map((thing) => thing.index);

  // The box round a thing and all that has been drawn out of it; sets how far that is.
  const spread = (host) => {
    const settled = host === null ? [] : [things[host].box];
    for (const index of children(host)) {
      const box = spread(index);
      const {step} = things[index];
      if (step !== null && settled.length > 0) {
        const back = times(-1, unit(steps[step].direction));
        own[index] = times(clearance(box, settled, back), back);
      }
      settled.push(moved(box, own[index]));
    }
    return around(settled);
  };
  spread(null);

  const whole = (index) => {
    const host = hostOf(things[index]);
    return host === null ? own[index] : sum(own[index], whole(host));
  };
  return things.map((thing) => whole(thing.index));
}

// The box round all of it, so much of the way apart.
export function boxApart(picture, offsets, share, visible) {
  const box = around(visible.map((index) => moved(picture.things[index].box, times(share, offsets[index]))));
  return isNothing(box) ? null : box;
}
