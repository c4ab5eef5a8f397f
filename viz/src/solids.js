// SPDX-License-Identifier: GPL-3.0-or-later
// Solids as the saved bundle gives them, {cylinder | box, center, rotation}: how far they reach.
import {around} from './vectors.js';

// Diameter at the lower end; a cylinder may taper down.
export const footOf = (cylinder) => cylinder.foot ?? cylinder.diameter;

export const heightOf = (solid) => (solid.cylinder ?? solid.box).height;

// Column k of the rotation: where the solid's own axis k points.
export const axisOf = (solid, k) => solid.rotation.map((row) => row[k]);

function halfReach(solid, i) {
  const row = solid.rotation[i];
  if (solid.box) {
    const {length, width, height} = solid.box;
    return (Math.abs(row[0]) * length + Math.abs(row[1]) * width + Math.abs(row[2]) * height) / 2;
  }
  const {diameter, height} = solid.cylinder;
  return (Math.abs(row[2]) * height + Math.hypot(row[0], row[1]) * diameter) / 2;
}

// The box round a solid, square to the world's axes; a tapering one counts as if it were straight.
export function boxOf(solid) {
  const half = [0, 1, 2].map((i) => halfReach(solid, i));
  return {
    min: solid.center.map((c, i) => c - half[i]),
    max: solid.center.map((c, i) => c + half[i]),
  };
}

export const boxOfAll = (solids) => around(solids.map(boxOf));

// The envelope of a bundle, {shape, ..._mm}, as a solid in the bundle's frame. The bag's wall reaches below the floor.
export function envelopeSolid(envelope, wall = 0) {
  const rotation = [[1, 0, 0], [0, 1, 0], [0, 0, 1]];
  const height = envelope.height_mm;
  if (envelope.shape === 'cylinder') {
    return {cylinder: {diameter: envelope.diameter_mm, height}, center: [0, 0, height / 2 - wall], rotation};
  }
  const {length_mm: long, width_mm: wide} = envelope;
  return {
    box: {length: long, width: wide, height},
    center: [long / 2 - wall, wide / 2 - wall, height / 2 - wall],
    rotation,
  };
}
