// SPDX-License-Identifier: GPL-3.0-or-later
// What is drawn besides the things: the bundle's outline, the arrow of a step, room that is left, the line of a chain.
import {
  BufferGeometry,
  EdgesGeometry,
  Float32BufferAttribute,
  Group,
  LineBasicMaterial,
  LineDashedMaterial,
  LineSegments,
  Matrix4,
  Mesh,
  MeshBasicMaterial,
  Quaternion,
  Vector3,
} from 'three';
import {LineMaterial} from 'three/examples/jsm/lines/LineMaterial.js';
import {LineSegments2} from 'three/examples/jsm/lines/LineSegments2.js';
import {LineSegmentsGeometry} from 'three/examples/jsm/lines/LineSegmentsGeometry.js';
import {bodyGeometry} from './shapes.js';
import {difference, length, sum, times, unit} from './vectors.js';

function place(object, solid) {
  object.position.set(...solid.center);
  if (solid.rotation) {
    const [a, b, c] = solid.rotation;
    object.quaternion.setFromRotationMatrix(new Matrix4().set(...a, 0, ...b, 0, ...c, 0, 0, 0, 0, 1));
  } else {
    const [w, x, y, z] = solid.quaternion; // as in the answer about room
    object.quaternion.set(x, y, z, w).normalize();
  }
  return object;
}

function dashedEdges(geometry, colour, size) {
  const material = new LineDashedMaterial({color: colour, dashSize: size, gapSize: size * 0.7});
  return new LineSegments(new EdgesGeometry(geometry, 25), material).computeLineDistances();
}

// The outline of the bundle, dashed.
export const envelopeOutline = (solid, colours) => place(dashedEdges(bodyGeometry(solid), colours.faint, 5), solid);

// The bag round the bundle: its edges, and its wall as a haze.
export function bagRound(solid, colours) {
  const geometry = bodyGeometry(solid);
  const group = place(new Group(), solid);
  const haze = new MeshBasicMaterial({color: colours.band, transparent: true, opacity: 0.12, depthWrite: false});
  const mesh = new Mesh(geometry, haze);
  mesh.renderOrder = 2;
  group.add(mesh, new LineSegments(new EdgesGeometry(geometry, 25), new LineBasicMaterial({color: colours.band})));
  group.userData = {cover: 'bag'};
  return group;
}

// A band along its loop, a hair outside, so that what it lies on does not hide it.
export function bandRound(loop, colours, resolution) {
  const middle = times(1 / loop.length, loop.reduce(sum, [0, 0, 0]));
  const outside = 0.6;
  const points = loop.map((corner) => sum(corner, times(outside, unit(difference(corner, middle)))));
  const geometry = new LineSegmentsGeometry();
  geometry.setPositions(points.flatMap((point, k) => [...point, ...points[(k + 1) % points.length]]));
  const material = new LineMaterial({color: colours.band, linewidth: 6});
  material.resolution.copy(resolution);
  const line = new LineSegments2(geometry, material);
  line.userData = {cover: 'band', points};
  return line;
}

// One more thing that would go in: its outline dashed, its faces pale.
export function roomGhost(solid, colours) {
  const geometry = bodyGeometry(solid);
  const group = place(new Group(), solid);
  const pale = new MeshBasicMaterial({color: colours.room, transparent: true, opacity: 0.3, depthTest: false});
  const lines = dashedEdges(geometry, colours.room, 4);
  lines.material.depthTest = false;
  const mesh = new Mesh(geometry, pale);
  mesh.userData = {room: true};
  mesh.renderOrder = 3;
  lines.renderOrder = 4;
  group.add(mesh, lines);
  return group;
}

function segments(points, colour) {
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new Float32BufferAttribute(points.flat(), 3));
  const lines = new LineSegments(geometry, new LineBasicMaterial({color: colour, depthTest: false, transparent: true}));
  lines.renderOrder = 5;
  return lines;
}

// A flat arrow head at `tip` along a direction, as two crossed triangles.
function head(tip, along, size, colour) {
  const turn = new Quaternion().setFromUnitVectors(new Vector3(0, 0, 1), new Vector3(...along));
  const at = (x, y, z) => new Vector3(x, y, z).multiplyScalar(size).applyQuaternion(turn).add(new Vector3(...tip)).toArray();
  const points = [
    at(0, 0, 0), at(0.35, 0, -1), at(-0.35, 0, -1),
    at(0, 0, 0), at(0, 0.35, -1), at(0, -0.35, -1),
  ];
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new Float32BufferAttribute(points.flat(), 3));
  const mesh = new Mesh(geometry, new MeshBasicMaterial({color: colour, side: 2, depthTest: false, transparent: true}));
  mesh.renderOrder = 5;
  return mesh;
}

// The way that a step's thing goes, from point to point, with a head at its end.
export function wayArrow(points, colours, size) {
  const group = new Group();
  const lines = points.slice(1).flatMap((point, k) => [points[k], point]);
  group.add(segments(lines, colours.mark));
  const [last, end] = points.slice(-2);
  if (length(difference(end, last)) > 1e-6) {
    group.add(head(end, unit(difference(end, last)), size, colours.mark));
  }
  return group;
}

// Where the line of a chain runs: its first end and its direction. Straight ones run outside along the bundle, the
// others through its middle, above it.
export function chainLine(chain, picture) {
  const {envelope, wall} = picture;
  const along = chain.along;
  const aside = 10;
  const middle = envelope.center;
  if (envelope.cylinder) {
    const half = envelope.cylinder.diameter / 2;
    return chain.dimension === 'height'
      ? [half + aside, 0, -wall]
      : sum([0, 0, envelope.cylinder.height - wall + aside], times(-chain.mm / 2, along));
  }
  const {length: long, width: wide, height} = envelope.box;
  switch (chain.dimension) {
    case 'height':
      return [middle[0] + long / 2 + aside, middle[1] - wide / 2, -wall];
    case 'length':
      return [middle[0] - (along[0] * long) / 2, middle[1] - wide / 2, height - wall + aside];
    default:
      return [middle[0] + long / 2, middle[1] - (along[1] * wide) / 2, height - wall + aside];
  }
}

// The line of a chain with a tick at each contact.
export function chainRule(chain, start, colours) {
  const along = chain.along;
  const tick = Math.abs(along[2]) > 0.5 ? [4, 0, 0] : [0, 0, 4];
  const points = [start, sum(start, times(chain.mm, along))];
  let at = 0;
  const mark = () => {
    const here = sum(start, times(at, along));
    points.push(difference(here, tick), sum(here, tick));
  };
  mark();
  for (const stretch of chain.stretches) {
    at += stretch.mm;
    mark();
  }
  const line = segments(points, colours.mark);
  line.userData = {rule: true};
  return line;
}
