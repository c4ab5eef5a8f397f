// SPDX-License-Identifier: GPL-3.0-or-later
// Begins the picture in the section of the page that this script stands in. All of it lives in a shadow tree, so that
// neither its styles nor those of the page around it reach each other.
import {element} from './elements.js';
import {handleFor} from './handle.js';
import {LookPanel} from './look_panel.js';
import {ChainPanel, RoomPanel} from './question_panel.js';
import {Sheet} from './sheet.js';
import {State} from './state.js';
import {StepPanel} from './step_panel.js';
import styles from './style.css';
import {ThingPanel} from './thing_panel.js';
import {readPicture} from './things.js';

function begin(section) {
  const data = JSON.parse(section.querySelector('script[type="application/json"]').textContent);
  const picture = readPicture(data);
  const state = new State(picture);
  const host = element('div', {class: 'tuckwright-picture-host'});
  section.append(host);
  const tree = host.attachShadow({mode: 'open'});
  const sheet = new Sheet(picture, state, host);
  const panel = element(
    'div',
    {class: 'panel'},
    new StepPanel(picture, state).node,
    sheet.scene && new LookPanel(state, sheet.scene).node,
    new ThingPanel(picture, state).node,
    picture.words.rooms.length > 0 ? new RoomPanel(picture, state).node : null,
    picture.words.chains.length > 0 ? new ChainPanel(picture, state).node : null,
  );
  const whole = element('div', {class: 'picture'}, sheet.node, panel);
  whole.addEventListener('keydown', ({key}) => {
    if (key === 'Escape') {
      state.change({chosen: null, room: null, chain: null});
    }
  });
  tree.append(element('style', {}, styles), whole);
  sheet.begin();
  window.tuckwrightPicture = handleFor(picture, state, sheet.scene);
}

begin(document.currentScript.closest('section'));
