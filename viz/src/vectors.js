// SPDX-License-Identifier: GPL-3.0-or-later
// Plain vectors [x, y, z] in mm, and boxes {min, max} square to the axes.

export const sum = (a, b) => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
export const difference = (a, b) => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
export const times = (s, a) => [s * a[0], s * a[1], s * a[2]];
export const dot = (a, b) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const length = (a) => Math.hypot(...a);
export const unit = (a) => times(1 / length(a), a);

export const nothing = () => ({min: [Infinity, Infinity, Infinity], max: [-Infinity, -Infinity, -Infinity]});
export const isNothing = (box) => box.min[0] > box.max[0];

export const around = (boxes) =>
  boxes.reduce(
    (all, box) => ({
      min: all.min.map((v, i) => Math.min(v, box.min[i])),
      max: all.max.map((v, i) => Math.max(v, box.max[i])),
    }),
    nothing(),
  );

export const moved = (box, by) => ({min: sum(box.min, by), max: sum(box.max, by)});
export const middle = (box) => times(0.5, sum(box.min, box.max));

export const corners = (box) =>
  [0, 1, 2, 3, 4, 5, 6, 7].map((k) => [0, 1, 2].map((i) => ((k >> i) & 1 ? box.max[i] : box.min[i])));

// How far a box reaches along a direction.
export const reach = (box, along) =>
  along.reduce((far, a, i) => far + a * (a > 0 ? box.max[i] : box.min[i]), 0);
