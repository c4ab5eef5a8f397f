// SPDX-License-Identifier: GPL-3.0-or-later
// The part of the panel that lists the things, and tells about the one that is chosen or pointed at.
import {element, toggle} from './elements.js';

export class ThingPanel {
  constructor(picture, state) {
    this.picture = picture;
    this.state = state;
    this.buttons = picture.things.map((thing) =>
      toggle(`${thing.index + 1} ${thing.words.name}`, () => this.choose(thing.index), {
        onfocus: () => state.change({pointed: thing.index}),
        onblur: () => state.change({pointed: null}),
        onpointerenter: () => state.change({pointed: thing.index}),
        onpointerleave: () => state.change({pointed: null}),
      }),
    );
    this.told = element('dl', {'aria-live': 'polite', class: 'told'});
    this.node = element(
      'section',
      {'aria-label': 'Things'},
      element('h3', {}, 'Things'),
      this.told,
      element('ol', {class: 'things'}, ...this.buttons.map((made) => element('li', {}, made))),
    );
    state.listen((now, before) => {
      this.show();
      if (now.chosen !== null && now.chosen !== before.chosen) {
        this.told.scrollIntoView({block: 'nearest'});
      }
    });
    this.show();
  }

  choose(index) {
    this.state.change({chosen: this.state.now.chosen === index ? null : index});
  }

  show() {
    const {chosen, pointed} = this.state.now;
    this.buttons.forEach((made, k) => made.press(k === chosen));
    const index = pointed ?? chosen;
    if (index === this.shown) {
      return;
    }
    this.shown = index;
    this.told.replaceChildren(...(index === null ? [this.hint()] : this.about(index)));
  }

  hint() {
    const words = 'Point at a thing, or choose it here, and its size, weight and play are told.';
    return element('div', {class: 'hint'}, element('dd', {}, words));
  }

  about(index) {
    const {words} = this.picture.things[index];
    const rows = [
      ['', words.full],
      ['Lies', words.where],
      ['Size', words.size],
      ['Weight', words.weight],
      ['Play', words.play],
    ];
    return rows
      .filter(([, text]) => text)
      .map(([name, text]) => element('div', {}, element('dt', {}, name), element('dd', {}, text)));
  }
}
