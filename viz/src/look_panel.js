// SPDX-License-Identifier: GPL-3.0-or-later
// The part of the panel about how to look: pulled apart, cut open, seen through, from where.
import {button, element, slider, tick, toggle} from './elements.js';
import {looks} from './view.js';

const cuts = [['no', null], ['front', 1], ['right', 0], ['level', 2]];
const viewWords = {aslant: 'aslant', front: 'front', side: 'right', above: 'above'};

export class LookPanel {
  constructor(state, scene) {
    this.state = state;
    this.apart = slider('Pull apart', {min: 0, max: 1, step: 0.02, value: 0}, (apart) => state.change({apart}));
    this.where = slider('Where the cut is', {min: 0, max: 1, step: 0.01, value: 0.5}, (share) => {
      const {cut} = state.now;
      state.change({cut: cut && {...cut, share}});
    });
    this.cuts = cuts.map(([text, axis]) => [axis, toggle(text, () => this.cut(axis))]);
    this.through = tick('See through what holds things', state.now.seeThrough, (seeThrough) => state.change({seeThrough}));
    this.names = tick('Names', state.now.names, (names) => state.change({names}));
    const views = Object.keys(looks).map((name) => button(viewWords[name], () => scene.view.look(name)));
    this.node = element(
      'section',
      {'aria-label': 'How to look'},
      element('h3', {}, 'Look'),
      scene && row('View', ...views),
      row('Pull apart', this.apart),
      row('Cut open', ...this.cuts.map(([, node]) => node)),
      (this.whereRow = row('Where', this.where)),
      element('div', {class: 'row'}, this.through.row, this.names.row),
    );
    state.listen(() => this.show());
    this.show();
  }

  cut(axis) {
    const share = this.state.now.cut?.share ?? 0.5;
    this.state.change({cut: axis === null ? null : {axis, share}});
  }

  show() {
    const {apart, cut} = this.state.now;
    this.apart.value = apart;
    this.apart.setAttribute('aria-valuetext', `${Math.round(apart * 100)} %`);
    this.cuts.forEach(([axis, node]) => node.press(axis === (cut ? cut.axis : null)));
    this.whereRow.hidden = !cut;
    if (cut) {
      this.where.value = cut.share;
      this.where.setAttribute('aria-valuetext', `${Math.round(cut.share * 100)} %`);
    }
    this.through.input.disabled = Boolean(cut); // a cut shows walls as they are
  }
}

const row = (name, ...parts) =>
  element('div', {class: 'row', role: 'group', 'aria-label': name}, element('span', {class: 'name'}, name), ...parts);
