// SPDX-License-Identifier: GPL-3.0-or-later
// The part of the panel that goes through the packing, step by step.
import {button, element, slider} from './elements.js';
import {animate, wantsNoMotion} from './motion.js';

const oneStep = 900; // ms for a step that goes by itself
const pause = 700; // ms between two of them
const fine = 0.05; // of a step: what one press of an arrow key moves the slider

export class StepPanel {
  constructor(picture, state) {
    this.picture = picture;
    this.state = state;
    this.count = picture.steps.length;
    this.stop = () => {};
    this.slider = slider('Packing step', {min: 0, max: this.count, step: fine, value: this.count}, (value) => {
      this.halt();
      state.change({moment: value});
    });
    this.slider.addEventListener('keydown', (event) => this.key(event));
    this.back = button('Back', () => this.goBack());
    this.play = button('Play', () => (this.isPlaying ? this.halt() : this.playAll()));
    this.next = button('Next', () => this.goOn());
    this.number = element('p', {class: 'number'});
    this.text = element('p', {class: 'step', 'aria-live': 'polite'});
    this.node = element(
      'section',
      {'aria-label': 'Step by step'},
      element('h3', {}, 'Step by step'),
      this.number,
      this.text,
      this.slider,
      element('div', {class: 'row'}, this.back, this.play, this.next),
    );
    state.listen(() => this.show());
    this.show();
  }

  key(event) {
    const ways = {PageUp: () => this.goOn(), PageDown: () => this.goBack()};
    if (ways[event.key]) {
      event.preventDefault();
      ways[event.key]();
    }
  }

  get moment() {
    return this.state.now.moment;
  }

  halt() {
    this.stop();
    this.stop = () => {};
    this.isPlaying = false;
    this.show();
  }

  // The next step, which goes in before one's eyes; from the end, back to the empty table.
  goOn() {
    this.halt();
    if (this.moment >= this.count) {
      this.state.change({moment: 0});
    } else {
      this.run(Math.floor(this.moment + 1e-9), () => {});
    }
  }

  goBack() {
    this.halt();
    this.state.change({moment: Math.max(0, Math.ceil(this.moment - 1e-9) - 1)});
  }

  run(step, after) {
    const begun = this.moment > step ? this.moment - step : 0.001;
    this.state.change({moment: step + begun});
    this.stop = animate(oneStep, (t) => this.state.change({moment: step + begun + (1 - begun) * t}), after);
  }

  playAll() {
    this.halt();
    this.isPlaying = true;
    this.show();
    const from = (step) => {
      if (step >= this.count) {
        this.halt();
        return;
      }
      this.run(step, () => {
        const timer = setTimeout(() => from(step + 1), wantsNoMotion() ? 2500 : pause);
        this.stop = () => clearTimeout(timer);
      });
    };
    from(this.moment >= this.count ? 0 : Math.floor(this.moment));
  }

  words() {
    if (this.moment <= 0) {
      return ['Nothing is packed yet', this.picture.words.start];
    }
    const step = Math.ceil(this.moment) - 1;
    return [`Step ${step + 1} of ${this.count}`, this.picture.steps[step].text];
  }

  show() {
    const [number, text] = this.words();
    const isAll = this.moment >= this.count;
    const whole = isAll ? `${number}: all is packed` : number;
    for (const [node, words] of [[this.number, whole], [this.text, text]]) {
      if (node.textContent !== words) {
        node.textContent = words;
      }
    }
    this.slider.value = this.moment;
    this.slider.setAttribute('aria-valuetext', `${whole}. ${text}`);
    this.play.textContent = this.isPlaying ? 'Pause' : 'Play';
    this.next.textContent = isAll ? 'From the start' : 'Next';
    this.back.disabled = this.moment <= 0;
  }
}
