// SPDX-License-Identifier: GPL-3.0-or-later
// What the user has chosen to see. Whoever changes it gives the changes; all who listen are told.

export function firstState(picture) {
  return {
    moment: picture.steps.length, // all packed
    apart: 0, // 0 to 1
    cut: null, // or {axis: 0, 1 or 2, share: 0 to 1}
    seeThrough: true,
    names: true,
    chosen: null, // number of a thing
    pointed: null, // the thing under the pointer
    room: null, // or [number of the place, key of the shape]
    chain: null, // number of a chain
  };
}

export class State {
  constructor(picture) {
    this.now = firstState(picture);
    this.listeners = [];
  }

  change(changes) {
    const before = this.now;
    this.now = {...before, ...changes};
    if (Object.keys(changes).some((name) => before[name] !== this.now[name])) {
      this.listeners.forEach((listener) => listener(this.now, before));
    }
  }

  listen(listener) {
    this.listeners.push(listener);
  }
}
