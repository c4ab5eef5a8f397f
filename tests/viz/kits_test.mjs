// SPDX-License-Identifier: GPL-3.0-or-later
// Every sample kit's page: put together, cut open and pulled apart, and what is seen held against the saved bundle.
import assert from 'node:assert/strict';
import {readdirSync} from 'node:fs';
import {join} from 'node:path';
import {test} from 'node:test';
import {misplaced, noises, notApart, wrongHalfWay, wrongLabels} from './checks.mjs';

const kits = readdirSync(join(process.env.TUCKWRIGHT_SOURCE_DIR, 'kits')).filter((name) => name.endsWith('.yaml'));

async function stepThrough(visit, bundle) {
  const count = await visit.handle('steps');
  assert.ok(count >= bundle.steps.length);
  const {empty, seen} = await visit.walk(bundle.steps.length);
  assert.deepEqual(empty.filter((s) => s.visible), []);
  seen.forEach(({halfWay, text}, k) => {
    assert.deepEqual(wrongHalfWay(bundle, halfWay, k), []);
    assert.equal(text, bundle.steps[k].text);
  });
  await visit.slide('Packing step', count);
  assert.match(await visit.page.locator('.number').textContent(), /all is packed/);
}

// Bands and bag of the packed bundle: all are there, and no band leaves the bundle.
async function covered(visit, bundle) {
  const covers = await visit.handle('covers');
  const count = (kind) => covers.filter(({cover}) => cover === kind).length;
  assert.equal(count('band'), bundle.bands.length);
  assert.equal(count('bag'), bundle.bag ? 1 : 0);
  const {height_mm: high, diameter_mm: wide, length_mm: long, width_mm: deep} = bundle.bundle;
  const [low, far] = wide ? [[-wide / 2, -wide / 2], [wide / 2, wide / 2]] : [[0, 0], [long, deep]];
  const air = 1 + (bundle.bag ? bundle.bag.thickness_mm : 0);
  for (const [x, y, z] of covers.flatMap(({points}) => points)) {
    assert.ok(x >= low[0] - air && x <= far[0] + air && y >= low[1] - air && y <= far[1] + air, `${x}, ${y}`);
    assert.ok(z >= -air && z <= high + air, `${z}`);
  }
}

async function cutOpen(visit, bundle) {
  const whole = await visit.shareDrawn();
  assert.ok(whole > 0.02, `something is drawn: ${whole}`);
  for (const [name, axis] of [['front', 1], ['right', 0], ['level', 2]]) {
    await visit.press(name, 'Cut open');
    const {cut} = await visit.handle('state');
    assert.equal(cut.axis, axis);
    assert.deepEqual(misplaced(bundle, await visit.handle('surfaces')), []); // only cut, not moved
    const {min, max} = await visit.page.evaluate(() => {
      const all = window.tuckwrightPicture.surfaces();
      const over = (pick, side) => [0, 1, 2].map((i) => pick(...all.map((s) => s[side][i])));
      return {min: over(Math.min, 'min'), max: over(Math.max, 'max')};
    });
    const middle = min.map((v, i) => (v + max[i]) / 2);
    const [near, far] = [middle.slice(), middle.slice()];
    near[axis] = axis === 1 ? min[1] : max[axis]; // what is taken away: front, right, top
    far[axis] = axis === 1 ? max[1] : min[axis];
    assert.equal(await visit.handle('isCut', ...near), true);
    assert.equal(await visit.handle('isCut', ...far), false);
  }
  await visit.slide('Where the cut is', 0);
  assert.ok((await visit.shareDrawn()) < whole * 0.5, 'cut right at the bottom, hardly anything is left');
  await visit.press('no', 'Cut open');
}

async function pullApart(visit, bundle) {
  await visit.slide('Pull apart', 1);
  assert.deepEqual(notApart(bundle, await visit.handle('surfaces')), []);
  await visit.slide('Pull apart', 0);
  assert.deepEqual(misplaced(bundle, await visit.handle('surfaces')), []);
}

export function kitTests(bench) {
  for (const kit of kits) {
    test(`${kit}: what is on the screen is what was saved`, async () => {
      const made = bench().made(kit, '--without-room');
      const visit = await bench().visit(made.html);
      const {bundle} = made;
      assert.deepEqual(misplaced(bundle, await visit.handle('surfaces')), []);
      const {labels, field} = await visit.labels();
      const names = await visit.page.locator('ol.things button').allTextContents();
      assert.equal(names.length, bundle.items.length);
      assert.deepEqual(wrongLabels(names.map((name) => name.replace(/^\d+ /, '')), labels, field), []);
      await stepThrough(visit, bundle);
      await covered(visit, bundle);
      await cutOpen(visit, bundle);
      await pullApart(visit, bundle);
      assert.deepEqual(noises(visit.heard), []);
      await visit.leave();
    });
  }
}
