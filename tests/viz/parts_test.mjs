// SPDX-License-Identifier: GPL-3.0-or-later
// Parts of the picture that need no browser: labels, steps, covers and pulling apart.
import assert from 'node:assert/strict';
import {test} from 'node:test';
import {apartOffsets} from '../../viz/src/apart.js';
import {sidesFor, spreadOut} from '../../viz/src/labels.js';
import {coversOn} from '../../viz/src/covers.js';
import {currentStep, rootOf, stageAt, turnOf} from '../../viz/src/steps.js';
import {readPicture} from '../../viz/src/things.js';

export function partTests() {
  test('what is in the middle is named on the side that has fewer labels', () => {
    const marks = [0, 100, 52, 48, 50, 50].map((x) => ({x}));
    assert.deepEqual(sidesFor(marks, 0, 100), [true, false, true, false, true, false]);
    assert.deepEqual(sidesFor([10, 11, 50].map((x) => ({x})), 0, 100), [true, true, false]);
  });

  test('labels stand one below another, within what there is', () => {
    assert.deepEqual(spreadOut([50], [20], 100), [40]);
    assert.deepEqual(spreadOut([50, 50], [20, 20], 100), [40, 63]);
    assert.deepEqual(spreadOut([95, 98], [20, 20], 100), [57, 80]);
    assert.deepEqual(spreadOut([0, 0, 0], [20, 20, 20], 66), [0, 23, 46]);
  });

  // A cup with a tin and a spoon in it, which then goes into a pot; a lid shuts the pot.
  const upright = [[1, 0, 0], [0, 1, 0], [0, 0, 1]];
  const thing = (id, within, diameter, height, z, more = {}) => ({
    id,
    copy: 1,
    in: within ? {id: within, copy: 1, cavity: 0} : null,
    closes: null,
    solids: [{cylinder: {diameter, height}, center: [0, 0, z + height / 2], rotation: upright}],
    cavities: [],
    ...more,
  });
  const down = [0, 0, -1];
  const words = (count) => ({
    items: Array.from({length: count}, () => ({})),
    covers: ['Pull the bag over it all.'],
    rooms: [],
    chains: [],
  });
  const nest = () =>
    readPicture({
      bundle: {
        bundle: {shape: 'cylinder', diameter_mm: 100, height_mm: 102},
        bag: null,
        items: [
          thing('pot', null, 100, 100, 0),
          thing('cup', 'pot', 80, 60, 1),
          thing('tin', 'cup', 30, 20, 2),
          thing('spoon', 'cup', 10, 90, 2),
          thing('lid', null, 100, 2, 100, {closes: {id: 'pot', copy: 1}}),
        ],
        steps: [
          {item: 'tin', copy: 1, direction: down, via: null, text: ''},
          {item: 'cup', copy: 1, direction: down, via: null, text: ''},
          {item: 'spoon', copy: 1, direction: down, via: null, text: ''},
          {item: 'lid', copy: 1, direction: down, via: null, text: ''},
          {item: 'pot', copy: 1, direction: down, via: null, text: ''},
        ],
      },
      room: null,
      size: null,
      words: words(5),
    });

  test('a step shows what is in the hands then', () => {
    const picture = nest();
    assert.deepEqual([0, 1, 2, 3, 4, 5].map((step) => rootOf(picture, step)), [1, 0, 0, 0, null, null]);
    assert.deepEqual(stageAt(picture, 0).visible, []);
    assert.deepEqual(stageAt(picture, 1).visible.sort(), [1, 2]); // the cup stands apart, with the tin
    assert.deepEqual(stageAt(picture, 1.5).moving.sort(), [1, 2]); // and goes into the pot with what it has got
    assert.deepEqual(stageAt(picture, 1.5).visible.sort(), [0, 1, 2]);
    assert.deepEqual(stageAt(picture, 3).visible.sort(), [0, 1, 2, 3]);
    assert.deepEqual(stageAt(picture, 5).visible.sort(), [0, 1, 2, 3, 4]);
    assert.deepEqual(stageAt(picture, 6).moving, []); // the bag
  });

  test('a band goes along with the lid that it holds, those round everything have steps of their own, the bag comes last', () => {
    const picture = nest();
    const loop = [[0, 0, 0], [1, 0, 0], [0, 1, 0]];
    picture.bands = [{lid: 4, loop}, {lid: null, loop}];
    picture.bag = {};
    picture.steps.splice(5, 0, {thing: null, direction: null, via: null, text: 'Put the strap level round it all.'});
    const on = (moment) => {
      const {bands, bag} = coversOn(picture, stageAt(picture, moment));
      return [bands.map(({along}) => along), bag];
    };
    assert.deepEqual(on(0), [[], false]);
    assert.deepEqual(on(3.5), [[], false]); // the lid is on its way
    assert.deepEqual(on(4), [[4], false]);
    assert.deepEqual(on(4.5), [[4], false]);
    assert.deepEqual(on(5), [[4], false]);
    assert.deepEqual(on(6), [[4, null], false]);
    assert.deepEqual(on(7), [[4, null], true]);
  });

  test('what moves in starts clear of all that is there, and ends in its place', () => {
    const picture = nest();
    const begun = stageAt(picture, 2.0001);
    assert.ok(2 + begun.offset[2] > 100, 'the spoon begins above the rim of the pot');
    assert.deepEqual(begun.offset.slice(0, 2).map((v) => v + 0), [0, 0]);
    assert.deepEqual(stageAt(picture, 3).offset.map((v) => v + 0), [0, 0, 0]);
    const {step, done} = currentStep(picture, 2.25);
    assert.deepEqual([step, done], [2, 0.25]);
  });

  test('below a narrow opening the way has two legs', () => {
    const picture = nest();
    picture.steps[2].via = [12, 0, 0];
    assert.deepEqual(stageAt(picture, 2.75).offset.map((v) => v + 0), [12, 0, 0]);
    const [x, y, z] = stageAt(picture, 2.875).offset;
    assert.ok(x > 0 && x < 12 && y === 0 && z === 0);
  });

  // A vector turned about a unit axis by an angle: Rodrigues' formula.
  function turned([x, y, z], {axis: [a, b, c], angle}) {
    const along = (a * x + b * y + c * z) * (1 - Math.cos(angle));
    const across = [b * z - c * y, c * x - a * z, a * y - b * x];
    return [x, y, z].map((v, i) => v * Math.cos(angle) + across[i] * Math.sin(angle) + [a, b, c][i] * along);
  }

  test('a vessel that will lie or stand upside down is held with its mouth up while it is filled', () => {
    const picture = nest();
    for (const direction of [[0, 0, 1], [0, 1, 0], [-1, 0, 0], [3, 4, 0], [1, -2, 2]]) {
      picture.steps[0].direction = direction;
      const down = turned(direction.map((v) => v / Math.hypot(...direction)), turnOf(picture, stageAt(picture, 1)));
      [0, 0, -1].forEach((v, i) => assert.ok(Math.abs(down[i] - v) < 1e-9, `${direction} leads to ${down}`));
    }
    assert.equal(turnOf(picture, stageAt(picture, 2)), null);
    assert.equal(turnOf(picture, stageAt(picture, 5)), null);
  });

  test('pulled apart, each thing is clear of what it was in', () => {
    const picture = nest();
    const offsets = apartOffsets(picture);
    const from = (index) => picture.things[index].box.min[2] + offsets[index][2];
    const to = (index) => picture.things[index].box.max[2] + offsets[index][2];
    assert.deepEqual(offsets[0], [0, 0, 0]);
    assert.ok(from(1) > to(0), 'the cup is above the pot');
    assert.ok(from(2) > to(1), 'the tin above the cup');
    assert.ok(from(3) > to(2), 'the spoon, which went in later, above the tin');
    assert.ok(from(4) > to(3), 'the lid above all');
  });
}
