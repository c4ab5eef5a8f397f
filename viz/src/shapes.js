// SPDX-License-Identifier: GPL-3.0-or-later
// Closed surfaces of things: a body with its cavities cut out, in the body's own frame. What is cut by a plane shows the
// back of such a surface, so each has to be closed.
import {BufferGeometry, Float32BufferAttribute, ShapeUtils, Vector2} from 'three';
import {axisOf, footOf, heightOf} from './solids.js';
import {difference, dot} from './vectors.js';

const corners = 96; // of a circle: within 0.06 % of its radius
const thinnest = 0.3; // mm: how thick an inward rim is drawn that has no thickness in the kit

function circle(diameter, [x, y]) {
  const points = [];
  for (let k = 0; k < corners; k += 1) {
    const angle = (2 * Math.PI * k) / corners;
    points.push([x + (Math.cos(angle) * diameter) / 2, y + (Math.sin(angle) * diameter) / 2]);
  }
  return points;
}

function rectangle(long, wide, [x, y], [c, s]) {
  return [[-1, -1], [1, -1], [1, 1], [-1, 1]].map(([a, b]) => [
    x + ((c * a * long) - (s * b * wide)) / 2,
    y + ((s * a * long) + (c * b * wide)) / 2,
  ]);
}

// The outline at the lower and at the upper end of a shape about an upright through `at`, turned by [cosine, sine].
function outlines(shape, at = [0, 0], turn = [1, 0]) {
  if (shape.cylinder) {
    return {
      round: true,
      low: circle(footOf(shape.cylinder), at),
      high: circle(shape.cylinder.diameter, at),
    };
  }
  const ring = rectangle(shape.box.length, shape.box.width, at, turn);
  return {round: false, low: ring, high: ring};
}

const between = (a, b, share) => a.map((point, k) => point.map((v, i) => v + (b[k][i] - v) * share));

// Gathers triangles with their normals.
class Surface {
  positions = [];
  normals = [];

  triangle(a, b, c, na, nb, nc) {
    this.positions.push(...a, ...b, ...c);
    this.normals.push(...na, ...nb, ...nc);
  }

  // A wall between two outlines; `side` is 1 where it faces outwards and -1 where it faces its own inside.
  wall({round, low, high}, from, to, side) {
    const count = low.length;
    const normalAt = (k, l) => {
      // Along the outline at k (of a round one), or from k to l.
      const [px, py] = round ? low[(k + count - 1) % count] : low[k];
      const [qx, qy] = round ? low[(k + 1) % count] : low[l];
      const t = [qx - px, qy - py, 0];
      const s = [high[k][0] - low[k][0], high[k][1] - low[k][1], to - from];
      const n = [t[1] * s[2] - t[2] * s[1], t[2] * s[0] - t[0] * s[2], t[0] * s[1] - t[1] * s[0]];
      const size = Math.hypot(...n) * side;
      return n.map((v) => v / size);
    };
    for (let k = 0; k < count; k += 1) {
      const l = (k + 1) % count;
      const a = [...low[k], from];
      const b = [...low[l], from];
      const c = [...high[l], to];
      const d = [...high[k], to];
      const nk = normalAt(k, l);
      const nl = round ? normalAt(l, (l + 1) % count) : nk;
      if (side > 0) {
        this.triangle(a, b, c, nk, nl, nl);
        this.triangle(a, c, d, nk, nl, nk);
      } else {
        this.triangle(a, c, b, nk, nl, nl);
        this.triangle(a, d, c, nk, nk, nl);
      }
    }
  }

  // A level face within an outline, around a hole where there is one; `up` is 1 or -1.
  face(ring, hole, z, up) {
    const vectors = (points) => points.map(([x, y]) => new Vector2(x, y));
    const points = hole ? [...ring, ...hole] : ring;
    const normal = [0, 0, up];
    for (const [i, j, k] of ShapeUtils.triangulateShape(vectors(ring), hole ? [vectors(hole)] : [])) {
      const [a, b, c] = [points[i], points[j], points[k]];
      const turn = (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
      const [second, third] = turn * up > 0 ? [b, c] : [c, b];
      this.triangle([...a, z], [...second, z], [...third, z], normal, normal, normal);
    }
  }

  geometry() {
    const geometry = new BufferGeometry();
    geometry.setAttribute('position', new Float32BufferAttribute(this.positions, 3));
    geometry.setAttribute('normal', new Float32BufferAttribute(this.normals, 3));
    return geometry;
  }
}

// A hole along the body's own axis: its outlines, and from where to where it goes. Null where it has another axis.
function holeIn(body, cavity) {
  const axes = [0, 1, 2].map((k) => axisOf(body, k));
  const own = (v) => axes.map((axis) => dot(axis, v));
  const along = own(axisOf(cavity, 2));
  if (Math.abs(along[2]) < 1 - 1e-9) {
    return null;
  }
  const [x, y, z] = own(difference(cavity.center, body.center));
  const first = own(axisOf(cavity, 0));
  const rings = outlines(cavity, [x, y], [first[0], first[1]]);
  const isUp = along[2] > 0;
  const half = heightOf(cavity) / 2;
  return {
    round: rings.round,
    low: isUp ? rings.low : rings.high,
    high: isUp ? rings.high : rings.low,
    from: z - half,
    to: z + half,
  };
}

// The holes of a cavity from below upwards: itself, its narrow opening where it has one, and what leads on to the rim.
function holesOf(body, cavity, isOpened) {
  const main = holeIn(body, cavity);
  if (!main) {
    return [];
  }
  const top = heightOf(body) / 2;
  const holes = [main];
  if (cavity.neck) {
    const rings = outlines(cavity.neck, [middleOf(main.high, 0), middleOf(main.high, 1)], turnOf(main));
    const to = Math.min(top, main.to + heightOf(cavity.neck));
    main.to = Math.min(main.to, to - thinnest);
    holes.push({...rings, from: main.to, to});
  }
  const last = holes[holes.length - 1];
  if ((isOpened || cavity.opens !== 'closed') && last.to < top - 1e-6) {
    holes.push({round: last.round, low: last.high, high: last.high, from: last.to, to: top});
  }
  return holes.filter((hole) => hole.to - hole.from > 1e-6);
}

const middleOf = (ring, i) => ring.reduce((all, point) => all + point[i], 0) / ring.length;

function turnOf({round, high}) {
  if (round) {
    return [1, 0];
  }
  const [x, y] = [high[1][0] - high[0][0], high[1][1] - high[0][1]];
  return [x / Math.hypot(x, y), y / Math.hypot(x, y)];
}

function facesOfHoles(surface, body, holes) {
  const bottom = -heightOf(body) / 2;
  const top = heightOf(body) / 2;
  let below = null;
  for (const hole of holes) {
    if (hole.to > hole.from) {
      surface.wall(hole, hole.from, hole.to, -1);
    }
    if (below) {
      step(surface, below.high, hole.low, hole.from);
    } else if (hole.from > bottom + 1e-6) {
      surface.face(hole.low, null, hole.from, 1);
    }
    below = hole;
  }
  const last = holes[holes.length - 1];
  if (last.to < top - 1e-6) {
    surface.face(last.high, null, last.to, -1);
  }
}

// The ledge between one hole and the next, where they are not alike: it faces down over the wider, up over the narrower.
function step(surface, lower, upper, z) {
  const size = (ring) => Math.abs(ShapeUtils.area(ring.map(([x, y]) => new Vector2(x, y))));
  const [a, b] = [size(lower), size(upper)];
  if (Math.abs(a - b) < 1e-6) {
    return;
  }
  if (a > b) {
    surface.face(lower, upper, z, -1);
  } else {
    surface.face(upper, lower, z, 1);
  }
}

// The closed surface of a body with one cavity or none cut out of it. `isOpened` leads the cavity on to the rim, whatever
// shuts it.
export function bodyGeometry(body, cavity, isOpened = false) {
  const surface = new Surface();
  const rings = outlines(body);
  const half = heightOf(body) / 2;
  const holes = cavity ? holesOf(body, cavity, isOpened) : [];
  const first = holes[0];
  const last = holes[holes.length - 1];
  surface.wall(rings, -half, half, 1);
  surface.face(rings.low, first && first.from <= -half + 1e-6 ? first.low : null, -half, -1);
  surface.face(rings.high, last && last.to >= half - 1e-6 ? last.high : null, half, 1);
  if (first) {
    facesOfHoles(surface, body, holes);
  }
  return surface.geometry();
}

// The closed surface of a ring: a solid that goes round the body, whose outline is cut out of it all the way.
export function ringGeometry(solid, body) {
  const hole = {...body, opens: 'both'};
  const surface = new Surface();
  const rings = outlines(solid);
  const half = heightOf(solid) / 2;
  const whole = holeIn(solid, hole);
  const share = (z) => Math.min(1, Math.max(0, (z - whole.from) / (whole.to - whole.from)));
  const cut = {
    round: whole.round,
    low: between(whole.low, whole.high, share(-half)),
    high: between(whole.low, whole.high, share(half)),
  };
  surface.wall(rings, -half, half, 1);
  surface.wall(cut, -half, half, -1);
  surface.face(rings.low, cut.low, -half, -1);
  surface.face(rings.high, cut.high, half, 1);
  return surface.geometry();
}

// Whether a further solid goes round the body: on the same axis, with the body's outline well within its own, and the body
// beside it all the way.
export function goesRound(solid, body) {
  const hole = holeIn(solid, body);
  if (!hole) {
    return false;
  }
  const inner = 1e-6; // mm
  const isWithin = ([x, y]) =>
    solid.cylinder
      ? Math.hypot(x, y) < Math.min(solid.cylinder.diameter, footOf(solid.cylinder)) / 2 - inner
      : Math.abs(x) < solid.box.length / 2 - inner && Math.abs(y) < solid.box.width / 2 - inner;
  const half = heightOf(solid) / 2 - inner;
  return hole.from <= -half && hole.to >= half && [...hole.low, ...hole.high].every(isWithin);
}
