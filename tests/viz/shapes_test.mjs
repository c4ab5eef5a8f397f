// SPDX-License-Identifier: GPL-3.0-or-later
// The surfaces of things enclose what the kit says that there is: their volumes, by the divergence theorem, are those of
// school geometry, for a polygon of 96 corners instead of a circle. A surface that is not closed, or faces the wrong way
// anywhere, would not give them.
import assert from 'node:assert/strict';
import {createRequire} from 'node:module';
import {join} from 'node:path';
import {test} from 'node:test';
import {pathToFileURL} from 'node:url';

const upright = [[1, 0, 0], [0, 1, 0], [0, 0, 1]];
const corners = 96;
const polygon = (diameter) => (corners / 8) * diameter ** 2 * Math.sin((2 * Math.PI) / corners);
const cylinder = (diameter, height, z = 0, more = {}) => ({
  cylinder: {diameter, height, ...more},
  center: [0, 0, z],
  rotation: upright,
});
const box = (length, width, height, z = 0) => ({box: {length, width, height}, center: [0, 0, z], rotation: upright});
const frustum = (foot, top, height) =>
  (height / 3) * (polygon(foot) + polygon(top) + Math.sqrt(polygon(foot) * polygon(top)));

export function volumeOf(geometry) {
  const {array} = geometry.attributes.position;
  let six = 0;
  for (let k = 0; k < array.length; k += 9) {
    const [ax, ay, az, bx, by, bz, cx, cy, cz] = array.slice(k, k + 9);
    six += ax * (by * cz - bz * cy) - ay * (bx * cz - bz * cx) + az * (bx * cy - by * cx);
  }
  return six / 6;
}

// The modules of the page find three.js where the build has put it.
export async function bundledShapes(modules) {
  const {build} = createRequire(join(modules, 'package.json'))('esbuild');
  const source = join(process.env.TUCKWRIGHT_SOURCE_DIR, 'viz/src/shapes.js');
  const outfile = join(modules, 'shapes_for_tests.mjs');
  await build({entryPoints: [source], nodePaths: [join(modules, 'node_modules')], bundle: true, format: 'esm', outfile});
  return import(pathToFileURL(outfile));
}

export function shapeTests({bodyGeometry, goesRound, ringGeometry}) {
  const near = (geometry, expected) => {
    const volume = volumeOf(geometry);
    assert.ok(Math.abs(volume / expected - 1) < 1e-5, `${volume} mm3, not ${expected}`); // corners are single floats
  };

  test('the surfaces of bodies enclose their volumes', () => {
    near(bodyGeometry(cylinder(80, 40)), polygon(80) * 40);
    near(bodyGeometry(box(30, 20, 10)), 6000);
    near(bodyGeometry(cylinder(84, 80, 0, {foot: 62})), frustum(62, 84, 80));
  });
  test('what a cavity holds is taken out of them', () => {
    const cup = cylinder(80, 40);
    near(bodyGeometry(cup, {...cylinder(78, 39, 0.5), opens: 'top'}), polygon(80) * 40 - polygon(78) * 39);
    near(bodyGeometry(cup, {...cylinder(78, 40), opens: 'both'}), (polygon(80) - polygon(78)) * 40);
    near(bodyGeometry(cup, {...cylinder(78, 38), opens: 'closed'}), polygon(80) * 40 - polygon(78) * 38);
    near(bodyGeometry(cup, {...box(40, 30, 39, 0.5), opens: 'top'}), polygon(80) * 40 - 40 * 30 * 39);
    near(bodyGeometry(box(90, 90, 40), {...cylinder(78, 39, 0.5), opens: 'top'}), 90 * 90 * 40 - polygon(78) * 39);
    const beaker = cylinder(84, 80, 0, {foot: 62});
    const inside = {...cylinder(82, 78, 1, {foot: 60}), opens: 'top'};
    near(bodyGeometry(beaker, inside), frustum(62, 84, 80) - frustum(60, 82, 78));
  });
  test('a shut vessel is drawn open where a lid of its own is told apart', () => {
    const shut = {...cylinder(78, 34, -2), opens: 'closed'}; // from 1 mm above the bottom to 5 mm below the rim
    near(bodyGeometry(cylinder(80, 40), shut), polygon(80) * 40 - polygon(78) * 34);
    near(bodyGeometry(cylinder(80, 40), shut, true), polygon(80) * 40 - polygon(78) * 39);
  });
  test('a narrow opening is narrower than the inside', () => {
    const crock = {...cylinder(104, 60, 0), opens: 'top', neck: {cylinder: {diameter: 60, height: 5}}};
    near(bodyGeometry(cylinder(110, 70), crock), polygon(110) * 70 - polygon(104) * 60 - polygon(60) * 5);
  });
  test('what goes round a body is a ring', () => {
    const pot = cylinder(128, 96, 48);
    const skirt = cylinder(132, 17, 87.5);
    assert.ok(goesRound(skirt, pot));
    near(ringGeometry(skirt, pot), (polygon(132) - polygon(128)) * 17);
    const tin = box(100, 80, 40, 20);
    assert.ok(goesRound(box(102, 82, 10, 35), tin));
    near(ringGeometry(box(102, 82, 10, 35), tin), (102 * 82 - 100 * 80) * 10);
    assert.ok(!goesRound(box(102, 80, 10, 35), tin), 'it is not wider all round');
    assert.ok(!goesRound(cylinder(132, 5, 98.5), pot), 'it lies above');
    assert.ok(!goesRound({...cylinder(20, 30), center: [70, 0, 48]}, pot), 'a handle at the side');
  });
  test('a surface with a triangle missing, or turned over, is found out', () => {
    const geometry = bodyGeometry(box(30, 20, 10));
    const {array} = geometry.attributes.position;
    const without = {attributes: {position: {array: array.slice(9)}}};
    assert.ok(Math.abs(volumeOf(without) - 6000) > 100);
    const over = array.slice();
    over.set(array.slice(0, 3), 3);
    over.set(array.slice(3, 6), 0);
    assert.ok(Math.abs(volumeOf({attributes: {position: {array: over}}}) - 6000) > 100);
  });
}
