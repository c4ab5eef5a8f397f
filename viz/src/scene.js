// SPDX-License-Identifier: GPL-3.0-or-later
// The drawing on the canvas: puts everything where the state says and draws it, only when something has changed.
import {AmbientLight, DirectionalLight, Group, Plane, Raycaster, Scene, Vector2, Vector3, WebGLRenderer} from 'three';
import {apartOffsets, boxApart} from './apart.js';
import {colourBodies, cutBodies, makeBodies} from './bodies.js';
import {coversOn} from './covers.js';
import {bagRound, bandRound, chainLine, chainRule, envelopeOutline, roomGhost, wayArrow} from './extras.js';
import {seeThrough} from './paper.js';
import {coloursFor} from './palette.js';
import {boxOf} from './solids.js';
import {boxOfStage, stageAt, turnOf} from './steps.js';
import {around, corners, isNothing, middle, moved, sum, times} from './vectors.js';
import {View} from './view.js';

const signOfCut = [-1, 1, -1]; // which side of the plane stays: left, back, below

export class PictureScene {
  // Requires: WebGL.
  constructor(picture, canvas, afterRender) {
    this.picture = picture;
    this.canvas = canvas;
    this.afterRender = afterRender;
    this.renderer = new WebGLRenderer({canvas, antialias: true, preserveDrawingBuffer: false});
    this.renderer.setPixelRatio(Math.min(2, window.devicePixelRatio));
    this.renderer.localClippingEnabled = true;
    this.scene = new Scene();
    this.stage = new Group();
    this.extras = new Group();
    this.scene.add(this.stage);
    this.resolution = new Vector2(1, 1);
    this.bodies = makeBodies(picture, this.resolution, this.renderer.getPixelRatio());
    this.stage.add(...this.bodies.map((body) => body.group), this.extras);
    this.offsets = apartOffsets(picture);
    this.plane = new Plane();
    this.view = new View(canvas, () => this.draw());
    this.addLights();
    this.isWaiting = false;
  }

  addLights() {
    const key = new DirectionalLight(0xffffff, 1.7);
    key.position.set(-0.5, 0.9, 1.2);
    const fill = new DirectionalLight(0xffffff, 0.5);
    fill.position.set(1, 0.3, -0.4);
    this.lamps = new Group(); // goes along with the eye
    this.lamps.add(key, key.target, fill, fill.target);
    this.scene.add(new AmbientLight(0xffffff, 1.35), this.lamps);
  }

  colour(isDark) {
    this.colours = coloursFor(this.picture, isDark);
    this.scene.background = null;
    this.renderer.setClearColor(this.colours.paper);
    colourBodies(this.bodies, this.colours);
  }

  // Puts everything where the state says. Sudden: without moving the eye there gently.
  show(state, isSudden = false) {
    this.state = state;
    this.now = stageAt(this.picture, state.moment);
    this.turnStage();
    this.placeThings(state);
    this.placeCut(state);
    this.placeExtras(state);
    this.frame(isSudden);
    this.draw();
  }

  turnStage() {
    const turn = turnOf(this.picture, this.now);
    const pivot = this.now.root === null ? [0, 0, 0] : middle(this.picture.things[this.now.root].box);
    this.stage.quaternion.identity();
    if (turn) {
      this.stage.quaternion.setFromAxisAngle(new Vector3(...turn.axis), turn.angle);
    }
    const turned = new Vector3(...pivot).applyQuaternion(this.stage.quaternion);
    this.stage.position.set(...pivot).sub(turned);
  }

  // How far a thing is from its place.
  offsetOf(index, state) {
    const drawn = times(state.apart, this.offsets[index]);
    const root = this.now.root === null ? [0, 0, 0] : times(-state.apart, this.offsets[this.now.root]);
    const way = this.now.moving.includes(index) ? this.now.offset : [0, 0, 0];
    return sum(sum(drawn, root), way);
  }

  placeThings(state) {
    const marked = this.markedThings(state);
    for (const {thing, group, paper, bold} of this.bodies) {
      group.visible = this.now.visible.includes(thing.index);
      group.position.set(...this.offsetOf(thing.index, state));
      const isClear = state.seeThrough && !state.cut && (thing.holds.length > 0 || this.covers(thing));
      seeThrough(paper, isClear);
      group.renderOrder = isClear ? 1 : 0;
      bold.forEach((line) => (line.visible = marked.has(thing.index)));
    }
  }

  // A lid is seen through where its vessel is.
  covers(thing) {
    return thing.closes !== null && this.picture.things[thing.closes].holds.length > 0;
  }

  // What stands out: what is chosen or pointed at, what moves in, what is in a chain.
  markedThings(state) {
    const marked = new Set([state.chosen, state.pointed]);
    if (this.isInAStep(state)) {
      marked.add(this.picture.steps[this.now.step].thing);
    }
    if (state.chain !== null) {
      for (const {item} of this.picture.chains[state.chain].stretches) {
        marked.add(this.picture.numberOf(item));
      }
    }
    marked.delete(null);
    return marked;
  }

  isInAStep(state) {
    return state.moment > 0 && state.moment < this.picture.steps.length;
  }

  placeCut({cut}) {
    if (!cut) {
      cutBodies(this.bodies, []);
      return;
    }
    const box = this.shownBox;
    const at = box.min[cut.axis] + cut.share * (box.max[cut.axis] - box.min[cut.axis]);
    const normal = [0, 0, 0];
    normal[cut.axis] = signOfCut[cut.axis];
    this.plane.set(new Vector3(...normal), -signOfCut[cut.axis] * at);
    cutBodies(this.bodies, [this.plane]);
  }

  // The box round what is shown, as the stage is turned.
  get shownBox() {
    const {picture, state, now} = this;
    const apart = state.apart > 0 ? boxApart(picture, this.relativeOffsets(), state.apart, now.visible) : null;
    const box = apart ?? (state.moment <= 0 ? boxOf(picture.envelope) : boxOfStage(picture, now));
    return isNothing(box) ? boxOf(picture.envelope) : this.turned(box);
  }

  relativeOffsets() {
    const root = this.now.root === null ? [0, 0, 0] : this.offsets[this.now.root];
    return this.offsets.map((offset) => sum(offset, times(-1, root)));
  }

  turned(box) {
    this.stage.updateMatrixWorld();
    const points = corners(box).map((corner) => this.stage.localToWorld(new Vector3(...corner)).toArray());
    return around(points.map((point) => ({min: point, max: point})));
  }

  placeExtras(state) {
    this.extras.traverse((object) => {
      object.geometry?.dispose();
      object.material?.dispose();
    });
    this.extras.clear();
    const {picture, now, colours} = this;
    if (now.root === null && state.apart === 0) {
      this.extras.add(envelopeOutline(picture.envelope, colours));
    }
    if (this.isInAStep(state) && now.moving.length > 0 && state.apart === 0) {
      const thing = picture.things[picture.steps[now.step].thing];
      const from = middle(thing.box);
      const {via} = picture.steps[now.step];
      const points = [sum(from, now.start), ...(via ? [sum(from, via)] : []), from];
      this.extras.add(wayArrow(points, colours, 9));
    }
    if (state.apart === 0) {
      const {bands, bag} = coversOn(picture, now);
      for (const {loop, along} of bands) {
        const line = bandRound(loop, colours, this.resolution);
        line.position.set(...(now.moving.includes(along) ? now.offset : [0, 0, 0]));
        line.material.clippingPlanes = state.cut ? [this.plane] : [];
        this.extras.add(line);
      }
      if (bag && !state.cut) {
        this.extras.add(bagRound(picture.envelope, colours));
      }
    }
    if (state.room) {
      const [place, key] = state.room;
      this.extras.add(roomGhost(picture.rooms[place][key], colours));
    }
    if (state.chain !== null) {
      const chain = picture.chains[state.chain];
      this.extras.add(chainRule(chain, chainLine(chain, picture), colours));
    }
  }

  // Looks at what is shown, unless that is what it looks at already.
  frame(isSudden) {
    let box = this.shownBox;
    if (this.state.chain !== null) {
      box = around([box, {min: box.min.map((v) => v - 16), max: box.max.map((v) => v + 16)}]);
    }
    const name = JSON.stringify(box.min.concat(box.max).map((v) => Math.round(v)));
    if (name !== this.framed) {
      this.framed = name;
      this.view.frame(box, isSudden);
    }
  }

  resize(width, height, labelled) {
    this.width = width;
    this.height = height;
    this.renderer.setSize(width, height, false);
    this.resolution.set(width, height);
    this.bodies.forEach((body) => body.marker.resolution.copy(this.resolution));
    this.view.usable = Math.max(0.45, 1 - (2 * labelled) / width);
    this.view.resize(width, height);
    this.draw();
  }

  draw() {
    if (!this.isWaiting && this.state && this.width) {
      this.isWaiting = true;
      requestAnimationFrame(() => {
        this.isWaiting = false;
        this.lamps.quaternion.copy(this.view.camera.quaternion);
        this.renderer.render(this.scene, this.view.camera);
        this.afterRender();
      });
    }
  }

  // Where a point of the bundle's frame is on the canvas, px.
  project(point) {
    return this.projectWorld(this.stage.localToWorld(new Vector3(...point)).toArray());
  }

  projectWorld(point) {
    const at = new Vector3(...point).project(this.view.camera);
    return [((at.x + 1) / 2) * this.width, ((1 - at.y) / 2) * this.height];
  }

  // Where the middle of a thing is on the canvas now, or of what a cut has left of it; null where nothing is left.
  projectThing(index) {
    const box = moved(this.picture.things[index].box, this.offsetOf(index, this.state));
    if (!this.state.cut) {
      return this.project(middle(box));
    }
    const left = this.turned(box);
    const {axis} = this.state.cut;
    const at = -this.plane.constant * signOfCut[axis];
    const low = signOfCut[axis] > 0 ? Math.max(left.min[axis], at) : left.min[axis];
    const high = signOfCut[axis] > 0 ? left.max[axis] : Math.min(left.max[axis], at);
    if (low >= high) {
      return null;
    }
    const point = middle(left);
    point[axis] = (low + high) / 2;
    return this.projectWorld(point);
  }

  // From where to where on the canvas all that is shown reaches sideways, px.
  get sides() {
    const points = corners(this.shownBox).map((corner) => this.projectWorld(corner)[0]);
    return {left: Math.min(...points), right: Math.max(...points)};
  }

  // The number of the thing that is seen there, through see-through ones; null where there is none.
  thingAt(x, y) {
    const ray = new Raycaster();
    ray.setFromCamera(new Vector2((x / this.width) * 2 - 1, 1 - (y / this.height) * 2), this.view.camera);
    const meshes = this.bodies.filter((body) => body.group.visible).flatMap((body) => body.meshes);
    const hits = ray
      .intersectObjects(meshes, false)
      .filter(({point}) => !this.state.cut || this.plane.distanceToPoint(point) >= 0);
    const solid = hits.find(({object}) => !object.material.transparent) ?? hits[0];
    return solid ? solid.object.userData.thing : null;
  }
}
