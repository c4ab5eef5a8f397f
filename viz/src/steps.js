// SPDX-License-Identifier: GPL-3.0-or-later
// What is seen at each moment of the packing. A moment is a number from 0 (nothing packed) to the count of the steps:
// 2.5 is the third step half done. A vessel that is packed later is filled apart, so a step shows what is in one's hands
// then: that vessel with what it holds so far, or the bundle.
import {groupOf, hostOf} from './things.js';
import {around, difference, dot, length, moved, reach, sum, times, unit} from './vectors.js';

const stepOf = (thing) => (thing.step === null ? -1 : thing.step);

// The step that is going on at that moment: its number from 0, and how much of it is done.
export function currentStep(picture, moment) {
  const last = picture.steps.length - 1;
  const step = Math.min(last, Math.max(0, Math.ceil(moment) - 1));
  return {step, done: moment <= 0 ? 0 : moment - step};
}

// The vessel that is filled apart in that step, by number; null where the step is done in the bundle itself.
export function rootOf(picture, step) {
  const {thing} = picture.steps[step];
  let host = thing === null ? null : hostOf(picture.things[thing]);
  while (host !== null && stepOf(picture.things[host]) < step) {
    host = hostOf(picture.things[host]);
  }
  return host;
}

// Things that are where they belong before that step, in what is being filled.
function placedBefore(picture, step, root) {
  const placed = new Set(picture.things.filter((thing) => stepOf(thing) < step).map((thing) => thing.index));
  if (root !== null) {
    const inRoot = groupOf(picture, root).filter((index) => placed.has(index));
    return [root, ...inRoot];
  }
  // What lies in a vessel that is still apart is not in the bundle yet.
  const isThere = (index) => {
    const host = hostOf(picture.things[index]);
    return placed.has(index) && (host === null || isThere(host));
  };
  return picture.things.map((thing) => thing.index).filter(isThere);
}

// Things that go in with that step: its own, and those which that has got already.
function movingIn(picture, step) {
  const {thing} = picture.steps[step];
  if (thing === null) {
    return [];
  }
  return groupOf(picture, thing).filter((index) => index === thing || stepOf(picture.things[index]) < step);
}

// Where a step begins: far enough back along its way that all that moves is clear of all that stays.
function startOf(picture, step, staying, moving) {
  const {direction, via} = picture.steps[step];
  const along = unit(direction);
  const back = times(-1, along);
  const box = around(moving.map((index) => picture.things[index].box));
  const beside = via ?? [0, 0, 0];
  if (staying.length === 0) {
    return sum(beside, times(0.6 * (reach(box, along) + reach(box, back)) + 20, back));
  }
  const rest = around(staying.map((index) => picture.things[index].box));
  const gap = 12 + 0.08 * length(difference(rest.max, rest.min));
  return sum(beside, times(Math.max(0, reach(rest, back) + reach(box, along)) + gap, back));
}

// Where what moves is when so much of the step is done, from its place; below a narrow opening the way has two legs.
function wayBack(start, via, done) {
  if (!via) {
    return times(1 - done, start);
  }
  const bend = 0.75;
  if (done < bend) {
    const share = done / bend;
    return sum(times(1 - share, start), times(share, via));
  }
  return times((1 - done) / (1 - bend), via);
}

// {visible, moving, root, start, offset}: numbers of things; what moves is `offset` away from its place at that moment.
export function stageAt(picture, moment) {
  const {step, done} = currentStep(picture, moment);
  const root = rootOf(picture, step);
  const staying = placedBefore(picture, step, root);
  const moving = movingIn(picture, step);
  const start = moving.length === 0 ? [0, 0, 0] : startOf(picture, step, staying, moving);
  const offset = wayBack(start, picture.steps[step].via, done);
  const visible = moment <= 0 ? [] : [...new Set([...staying, ...moving])];
  return {step, done, root, visible, moving: moment <= 0 ? [] : moving, start, offset};
}

// The box round all that a step shows, from its beginning to its end; when all is packed, round the bundle alone.
export function boxOfStage(picture, stage) {
  const boxes = stage.visible.map((index) => picture.things[index].box);
  if (stage.step === picture.steps.length - 1 && stage.done === 1) {
    return around(boxes);
  }
  const begun = stage.moving.map((index) => moved(picture.things[index].box, stage.start));
  return around([...boxes, ...begun]);
}

// How a step's scene is turned, as a quarter or half turn, so that the way in leads down: whoever fills a vessel holds it
// so. {axis, angle}; none in the bundle itself, and where the way leads down already.
export function turnOf(picture, stage) {
  const {direction} = picture.steps[stage.step];
  if (stage.root === null || direction === null) {
    return null;
  }
  const along = unit(direction);
  const cosine = dot(along, [0, 0, -1]);
  if (cosine > 0.999) {
    return null;
  }
  const level = Math.hypot(along[0], along[1]);
  // The axis along x if the way leads straight up, else level and square to the way.
  const axis = level < 1e-9 ? [1, 0, 0] : [-along[1] / level, along[0] / level, 0];
  return {axis, angle: Math.acos(Math.max(-1, cosine))};
}
