// SPDX-License-Identifier: GPL-3.0-or-later
// The drawn bodies: for each thing a group with its surfaces and edges, where the bundle says that they lie.
import {EdgesGeometry, Group, LineBasicMaterial, LineSegments, Matrix4, Mesh} from 'three';
import {LineMaterial} from 'three/examples/jsm/lines/LineMaterial.js';
import {LineSegments2} from 'three/examples/jsm/lines/LineSegments2.js';
import {LineSegmentsGeometry} from 'three/examples/jsm/lines/LineSegmentsGeometry.js';
import {colourPaper, paper} from './paper.js';
import {colourOfThing} from './palette.js';
import {bodyGeometry, goesRound, ringGeometry} from './shapes.js';
import {axisOf, heightOf} from './solids.js';
import {sum, times} from './vectors.js';

const sharp = 25; // degrees between two faces from which on their edge is drawn

function placeOf({rotation, center}) {
  const [a, b, c] = rotation;
  const [x, y, z] = center;
  return new Matrix4().set(...a, x, ...b, y, ...c, z, 0, 0, 0, 1);
}

// What hangs from a shut lid into its vessel: from the top of the shortened cavity up to the rim.
function plugOf(vessel) {
  const [body] = vessel.item.solids;
  const [cavity] = vessel.item.cavities;
  const up = axisOf(cavity, 2);
  const top = sum(cavity.center, times(heightOf(cavity) / 2, up));
  const rim = sum(body.center, times(heightOf(body) / 2, axisOf(body, 2)));
  const deep = Math.hypot(...top.map((v, i) => rim[i] - v));
  if (cavity.neck || deep < 0.2) {
    return null;
  }
  const air = 0.2;
  const shape = cavity.cylinder
    ? {cylinder: {diameter: cavity.cylinder.diameter - air, height: deep}}
    : {box: {length: cavity.box.length - air, width: cavity.box.width - air, height: deep}};
  return {...shape, center: sum(top, times(deep / 2, up)), rotation: cavity.rotation};
}

// Whether two solids have the same outline.
const isAsWide = (a, b) =>
  a.cylinder && b.cylinder
    ? a.cylinder.diameter === b.cylinder.diameter
    : Boolean(a.box && b.box) && a.box.length === b.box.length && a.box.width === b.box.width;

// The surfaces of a thing: {geometry, place, solid, owner}. `solid` is its number in the bundle, null for what a lid hangs
// into its vessel; `owner` is the thing with which it moves, for a lid's skirt is saved with the vessel.
function surfacesOf(picture, thing) {
  const [body, ...parts] = thing.item.solids;
  const [cavity] = thing.item.contents_fill ? [] : thing.item.cavities;
  const surfaces = [
    {geometry: bodyGeometry(body, cavity, thing.lid !== null), place: placeOf(body), solid: 0, owner: thing.index},
  ];
  const plate = thing.lid === null ? null : picture.things[thing.lid].item.solids[0];
  parts.forEach((part, k) => {
    const isRing = goesRound(part, body);
    const isSkirt = isRing && plate !== null && isAsWide(part, plate);
    surfaces.push({
      geometry: isRing ? ringGeometry(part, body) : bodyGeometry(part),
      place: placeOf(part),
      solid: k + 1,
      owner: isSkirt ? thing.lid : thing.index,
    });
  });
  if (plate && cavity) {
    const plug = plugOf(thing);
    if (plug) {
      surfaces.push({geometry: bodyGeometry(plug), place: placeOf(plug), solid: null, owner: thing.lid});
    }
  }
  return surfaces;
}

function addSurface(drawn, thing, {geometry, place, solid}, resolution) {
  const mesh = new Mesh(geometry, drawn.paper);
  mesh.userData = {thing: drawn.thing.index, of: thing.index, solid};
  const edges = new EdgesGeometry(geometry, sharp);
  const lines = new LineSegments(edges, drawn.pen);
  const bold = new LineSegments2(new LineSegmentsGeometry().fromEdgesGeometry(edges), drawn.marker);
  bold.visible = false;
  drawn.marker.resolution.copy(resolution);
  for (const object of [mesh, lines, bold]) {
    object.matrixAutoUpdate = false;
    object.matrix.copy(place);
    drawn.group.add(object);
  }
  drawn.meshes.push(mesh);
  drawn.bold.push(bold);
}

// One a thing, in order: {thing, group, meshes, bold, paper, pen, marker}.
export function makeBodies(picture, resolution, pixelRatio) {
  const bodies = picture.things.map((thing) => ({
    thing,
    group: new Group(),
    meshes: [],
    bold: [],
    paper: paper(thing.index, pixelRatio),
    pen: new LineBasicMaterial(),
    marker: new LineMaterial({linewidth: 3.5, depthTest: false, transparent: true}),
  }));
  for (const thing of picture.things) {
    for (const surface of surfacesOf(picture, thing)) {
      addSurface(bodies[surface.owner], thing, surface, resolution);
    }
  }
  return bodies;
}

export function colourBodies(bodies, colours) {
  for (const {thing, paper: sheet, pen, marker} of bodies) {
    colourPaper(sheet, colourOfThing(colours, thing));
    pen.color.set(colours.ink);
    marker.color.set(colours.mark);
  }
}

export function cutBodies(bodies, planes) {
  for (const {paper: sheet, pen, marker} of bodies) {
    for (const material of [sheet, pen, marker]) {
      material.clippingPlanes = planes;
    }
  }
}
