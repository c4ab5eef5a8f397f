// SPDX-License-Identifier: GPL-3.0-or-later
// The eye: where it stands, how it is turned by pointer, touch and keys, and how it keeps what is shown in sight.
import {PerspectiveCamera, Spherical, Vector3} from 'three';
import {OrbitControls} from 'three/examples/jsm/controls/OrbitControls.js';
import {animate} from './motion.js';
import {corners, difference, dot, middle} from './vectors.js';

const angle = 26; // degrees from the lower to the upper edge: flat, like a drawing
const turn = Math.PI / 24; // by one press of a key
const margin = 1.12;

// Looking directions of the named views: from where, as [x, y, z].
export const looks = {
  aslant: [0.62, -1, 0.62],
  front: [0, -1, 0.0001],
  side: [1, 0, 0.0001],
  above: [0, -0.001, 1],
};

export class View {
  constructor(canvas, render) {
    this.camera = new PerspectiveCamera(angle, 1, 1, 10000);
    this.camera.up.set(0, 0, 1);
    this.controls = new OrbitControls(this.camera, canvas);
    this.controls.enableDamping = false;
    this.controls.enableZoom = false; // the wheel scrolls the page until the picture is chosen
    this.controls.addEventListener('change', render);
    canvas.addEventListener('focus', () => (this.controls.enableZoom = true));
    canvas.addEventListener('blur', () => (this.controls.enableZoom = false));
    canvas.addEventListener('pointerdown', (event) => {
      canvas.focus({preventScroll: true});
      this.controls.enableZoom ||= event.pointerType === 'touch';
    });
    this.fitted = 1; // mm from the target at which all is in sight
    this.usable = 1; // share of the width that labels leave free
    this.stop = () => {};
    this.camera.position.set(...looks.aslant);
  }

  get away() {
    return this.camera.position.clone().sub(this.controls.target);
  }

  // The distance from which all corners of a box, of which the middle is looked at, are in sight.
  distanceFor(box, from) {
    const back = from.clone().normalize();
    const right = new Vector3(0, 0, 1).cross(back).normalize();
    const up = back.clone().cross(right);
    const high = Math.tan(((angle / 2) * Math.PI) / 180);
    const wide = high * this.camera.aspect * this.usable;
    const centre = middle(box);
    const needed = corners(box).map((corner) => {
      const at = difference(corner, centre);
      const aside = Math.max(Math.abs(dot(at, right.toArray())) / wide, Math.abs(dot(at, up.toArray())) / high);
      return dot(at, back.toArray()) + aside * margin;
    });
    return Math.max(1, ...needed);
  }

  // Goes to where all of the box is in sight, as it is turned and as near by as the user has it.
  frame(box, isSudden = false) {
    this.box = box;
    const nearness = this.away.length() / this.fitted;
    this.go(this.away, isSudden || !Number.isFinite(nearness) ? 1 : nearness, isSudden);
  }

  // The named look at the same box, all of it in sight.
  look(name) {
    this.go(new Vector3(...looks[name]), 1, false);
  }

  go(direction, nearness, isSudden) {
    this.stop();
    const target = new Vector3(...middle(this.box));
    const distance = this.distanceFor(this.box, direction);
    const from = new Spherical().setFromVector3(swapped(this.away));
    const to = new Spherical().setFromVector3(swapped(direction));
    to.radius = distance * nearness;
    to.theta = from.theta + Math.atan2(Math.sin(to.theta - from.theta), Math.cos(to.theta - from.theta));
    const begun = this.controls.target.clone();
    this.fitted = distance;
    this.camera.near = Math.max(1, distance / 50);
    this.camera.far = distance * 12;
    this.camera.updateProjectionMatrix();
    const show = (t) => {
      this.controls.target.lerpVectors(begun, target, t);
      const now = new Spherical(mix(from.radius, to.radius, t), mix(from.phi, to.phi, t), mix(from.theta, to.theta, t));
      this.place(now);
    };
    this.stop = isSudden ? (show(1), () => {}) : animate(450, show);
  }

  place(spherical) {
    spherical.makeSafe();
    this.camera.position.copy(this.controls.target).add(unswapped(new Vector3().setFromSpherical(spherical)));
    this.controls.update();
    this.controls.dispatchEvent({type: 'change'});
  }

  // Turns by so many key presses, and comes nearer by a factor.
  nudge(sideways, upwards, factor = 1) {
    this.stop();
    const now = new Spherical().setFromVector3(swapped(this.away));
    now.theta += sideways * turn;
    now.phi = Math.min(Math.PI - 0.01, Math.max(0.01, now.phi - upwards * turn));
    now.radius = Math.min(this.fitted * 6, Math.max(this.fitted / 8, now.radius * factor));
    this.place(now);
  }

  resize(width, height) {
    this.camera.aspect = width / height;
    this.camera.updateProjectionMatrix();
    if (this.box) {
      this.frame(this.box, true);
    }
  }
}

const mix = (a, b, t) => a + (b - a) * t;
// Spherical angles are about y, ours about z.
const swapped = (v) => new Vector3(v.y, v.z, v.x);
const unswapped = (v) => new Vector3(v.z, v.x, v.y);
