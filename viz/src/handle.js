// SPDX-License-Identifier: GPL-3.0-or-later
// window.tuckwrightPicture: what is drawn, to read only, for tests and for the curious. Lengths are mm in the bundle's
// frame, as in the saved bundle; places on the canvas are px from its upper left corner.
//
//   state()             what is chosen to be seen: moment, apart, cut, seeThrough, names, chosen, room, chain
//   steps()             how many steps there are
//   surfaces()          every drawn surface: {id, copy, solid, visible, min, max}, from its corners where they are drawn
//   turned()            how the scene is turned: the quaternion [x, y, z, w]
//   isCut(x, y, z)      whether the plane has taken that point away
//   onCanvas(id, copy)  where the middle of a thing is drawn
//   thingAt(x, y)       the thing that is seen there, {id, copy}, or null
//   room()              the box {min, max} round the one more thing that is shown, or null
//   rule()              the points of the line of a chain: its two ends, then each tick's two; or null
//   covers()            the bands and the bag that are on: {cover: 'band', points} or {cover: 'bag', points: []}
//   settled()           whether nothing waits to be drawn
import {Matrix4, Vector3} from 'three';

function boxOfCorners(mesh, toBundle) {
  const matrix = new Matrix4().multiplyMatrices(toBundle, mesh.matrixWorld);
  const {position} = mesh.geometry.attributes;
  const min = [Infinity, Infinity, Infinity];
  const max = [-Infinity, -Infinity, -Infinity];
  const corner = new Vector3();
  for (let k = 0; k < position.count; k += 1) {
    corner.fromBufferAttribute(position, k).applyMatrix4(matrix);
    corner.toArray().forEach((v, i) => {
      min[i] = Math.min(min[i], v);
      max[i] = Math.max(max[i], v);
    });
  }
  return {min, max};
}

function find(group, isWanted) {
  let found = null;
  group.traverse((object) => (found ??= isWanted(object) ? object : null));
  return found;
}

export function handleFor(picture, state, scene) {
  const nameOf = (index) => ({id: picture.things[index].item.id, copy: picture.things[index].item.copy});
  const toBundle = () => {
    scene.scene.updateMatrixWorld(true);
    return scene.stage.matrixWorld.clone().invert();
  };
  const surfaces = () => {
    const back = toBundle();
    return scene.bodies.flatMap(({group, meshes}) =>
      meshes.map((mesh) => ({
        ...nameOf(mesh.userData.of),
        solid: mesh.userData.solid,
        visible: group.visible,
        ...boxOfCorners(mesh, back),
      })),
    );
  };
  return Object.freeze({
    state: () => ({...state.now}),
    steps: () => picture.steps.length,
    surfaces: () => (scene ? surfaces() : []),
    turned: () => (scene ? scene.stage.quaternion.toArray() : [0, 0, 0, 1]),
    isCut: (x, y, z) => Boolean(scene && state.now.cut) && scene.plane.distanceToPoint(new Vector3(x, y, z)) < 0,
    onCanvas: (id, copy = 1) => (scene ? scene.projectThing(picture.numberOf({id, copy})) : null),
    thingAt: (x, y) => {
      const index = scene ? scene.thingAt(x, y) : null;
      return index === null ? null : nameOf(index);
    },
    room: () => {
      const ghost = scene && find(scene.extras, (object) => object.userData.room);
      return ghost ? boxOfCorners(ghost, toBundle()) : null;
    },
    rule: () => {
      const line = scene && find(scene.extras, (object) => object.userData.rule);
      return line ? [...line.geometry.attributes.position.array] : null;
    },
    covers: () =>
      scene
        ? scene.extras.children
            .filter((object) => object.userData.cover)
            .map(({userData, position}) => ({
              cover: userData.cover,
              points: (userData.points ?? []).map((point) => point.map((v, i) => v + position.toArray()[i])),
            }))
        : [],
    settled: () => !scene || !scene.isWaiting,
  });
}
