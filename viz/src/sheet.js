// SPDX-License-Identifier: GPL-3.0-or-later
// The sheet on which the picture is drawn: canvas, labels, what pointer and keys do there, light and dark.
import {button, element} from './elements.js';
import {Labels} from './labels.js';
import {marksFor} from './marks.js';
import {coloursFor} from './palette.js';
import {PictureScene} from './scene.js';

const narrow = 560; // px: below that, labels are numbers
const help = 'Arrow keys turn the picture, plus and minus bring it nearer or farther, Home shows all of it.';

// Tried on a canvas of its own: the drawing would complain, where a sentence does.
const hasWebGL = () => Boolean(document.createElement('canvas').getContext('webgl2'));

export class Sheet {
  // Without WebGL, `scene` stays null and a sentence stands in its place.
  constructor(picture, state, host) {
    this.picture = picture;
    this.state = state;
    this.host = host;
    this.scene = null;
    this.dark = window.matchMedia('(prefers-color-scheme: dark)');
    const told = `${picture.words.title}, as a picture to turn. ${help}`;
    this.canvas = element('canvas', {tabindex: 0, role: 'img', 'aria-label': told});
    const layer = element('div', {class: 'labels', 'aria-hidden': 'true'});
    const lines = document.createElementNS('http://www.w3.org/2000/svg', 'svg');
    lines.setAttribute('aria-hidden', 'true');
    this.labels = new Labels(layer, lines);
    this.field = element('div', {class: 'field'}, this.canvas, lines, layer);
    this.node = element('div', {class: 'sheet'}, this.field);
    if (hasWebGL()) {
      this.scene = new PictureScene(picture, this.canvas, () => this.label());
    } else {
      this.node.replaceChildren(
        element('p', {class: 'missing', role: 'alert'},
          'This browser shows no picture to turn: WebGL is missing or switched off in it. ' +
            'All steps and sizes are told beside it.'),
      );
    }
    this.colour();
    this.dark.addEventListener('change', () => this.colour());
    if (this.scene) {
      this.listen();
    }
  }

  listen() {
    const {canvas, state, scene} = this;
    this.node.append(this.buttons());
    canvas.addEventListener('keydown', (event) => this.key(event));
    canvas.addEventListener('pointerdown', (event) => (this.pressed = [event.offsetX, event.offsetY]));
    canvas.addEventListener('pointermove', (event) => {
      if (event.buttons === 0 && event.pointerType === 'mouse') {
        state.change({pointed: scene.thingAt(event.offsetX, event.offsetY)});
      }
    });
    canvas.addEventListener('pointerleave', () => state.change({pointed: null}));
    canvas.addEventListener('click', (event) => {
      const [x, y] = this.pressed ?? [event.offsetX, event.offsetY];
      if (Math.hypot(event.offsetX - x, event.offsetY - y) < 5) {
        state.change({chosen: scene.thingAt(event.offsetX, event.offsetY)});
      }
    });
    state.listen((now) => scene.show(now));
    new ResizeObserver(() => this.resize()).observe(this.field);
  }

  // Draws for the first time, once the sheet has its place in the page.
  begin() {
    if (this.scene) {
      this.resize();
      this.scene.show(this.state.now, true);
    }
  }

  buttons() {
    const {view} = this.scene;
    const press = (text, name, ...how) => button(text, () => view.nudge(...how), {'aria-label': name, title: name});
    return element(
      'div',
      {class: 'eye', role: 'group', 'aria-label': 'Turn the picture'},
      press('◀', 'Turn left', -1, 0),
      press('▶', 'Turn right', 1, 0),
      press('▲', 'Look from higher', 0, 1),
      press('▼', 'Look from lower', 0, -1),
      press('+', 'Nearer', 0, 0, 1 / 1.2),
      press('−', 'Farther', 0, 0, 1.2),
    );
  }

  key(event) {
    const {view} = this.scene;
    const ways = {
      ArrowLeft: () => view.nudge(-1, 0),
      ArrowRight: () => view.nudge(1, 0),
      ArrowUp: () => view.nudge(0, 1),
      ArrowDown: () => view.nudge(0, -1),
      '+': () => view.nudge(0, 0, 1 / 1.2),
      '=': () => view.nudge(0, 0, 1 / 1.2),
      '-': () => view.nudge(0, 0, 1.2),
      Home: () => view.look('aslant'),
    };
    if (ways[event.key] && !event.ctrlKey && !event.metaKey && !event.altKey) {
      event.preventDefault();
      ways[event.key]();
    }
  }

  colour() {
    const colours = coloursFor(this.picture, this.dark.matches);
    for (const name of ['paper', 'ink', 'faint', 'mark', 'room']) {
      this.host.style.setProperty(`--${name}`, colours[name]);
    }
    if (this.scene) {
      this.scene.colour(this.dark.matches);
      if (this.state && this.scene.state) {
        this.scene.show(this.state.now);
      }
    }
  }

  get isNarrow() {
    return this.field.clientWidth < narrow;
  }

  resize() {
    const {clientWidth: width, clientHeight: height} = this.field;
    if (width > 0 && height > 0) {
      this.scene.resize(width, height, this.isNarrow ? 34 : 150);
    }
  }

  label() {
    const {clientWidth: width, clientHeight: height} = this.field;
    const marks = marksFor(this.scene, this.state.now, this.isNarrow);
    this.labels.show(marks, {width, height, ...this.scene.sides});
  }
}
