// SPDX-License-Identifier: GPL-3.0-or-later
// The parts of the panel about the room that is left, and about what sets the size.
import {element, toggle} from './elements.js';

function part(title, hint, ...children) {
  return element('details', {}, element('summary', {}, title), element('p', {}, hint), ...children);
}

const same = (a, b) => a !== null && b !== null && a[0] === b[0] && a[1] === b[1];

// All is packed and together when a question is asked, for the answers are about the whole.
const whole = (picture) => ({moment: picture.steps.length, apart: 0});

export class RoomPanel {
  constructor(picture, state) {
    const buttons = [];
    const places = picture.words.rooms.map(({place, shapes}, k) => {
      const made = shapes.map(({key, text}) => {
        const name = [k, key];
        const press = () =>
          state.change(same(state.now.room, name) ? {room: null} : {...whole(picture), room: name, chain: null});
        const button = toggle(text, press);
        buttons.push([name, button]);
        return element('li', {}, button);
      });
      return element('div', {}, element('h4', {}, place), element('ul', {}, ...made));
    });
    this.node = part('Room left', picture.words.room_hint, ...places);
    state.listen(({room}) => buttons.forEach(([name, button]) => button.press(same(room, name))));
  }
}

export class ChainPanel {
  constructor(picture, state) {
    const buttons = picture.words.chains.map(({text}, k) =>
      toggle(text, () =>
        state.change(state.now.chain === k ? {chain: null} : {...whole(picture), chain: k, room: null}),
      ),
    );
    const list = element('ul', {}, ...buttons.map((button) => element('li', {}, button)));
    this.node = part('What sets the size', picture.words.chain_hint, list);
    state.listen(({chain}) => buttons.forEach((button, k) => button.press(k === chain)));
  }
}
