// SPDX-License-Identifier: GPL-3.0-or-later
// Small parts of a page.

// An element with attributes, those that start with "on" as listeners, and children (elements or texts).
export function element(name, attributes = {}, ...children) {
  const made = document.createElement(name);
  for (const [key, value] of Object.entries(attributes)) {
    if (key.startsWith('on')) {
      made.addEventListener(key.slice(2), value);
    } else if (value === true) {
      made.setAttribute(key, '');
    } else if (value !== false && value !== null && value !== undefined) {
      made.setAttribute(key, value);
    }
  }
  made.append(...children.filter((child) => child !== null && child !== ''));
  return made;
}

export const button = (text, onclick, attributes = {}) => element('button', {type: 'button', onclick, ...attributes}, text);

// A slider with its name before it.
export function slider(name, attributes, oninput) {
  const input = element('input', {type: 'range', 'aria-label': name, ...attributes});
  input.addEventListener('input', () => oninput(Number(input.value)));
  return input;
}

// A box to tick, with its words.
export function tick(text, isTicked, onchange) {
  const input = element('input', {type: 'checkbox', checked: isTicked});
  input.addEventListener('change', () => onchange(input.checked));
  return {input, row: element('label', {class: 'tick'}, input, text)};
}

// A button that is pressed or not.
export function toggle(text, onclick, attributes = {}) {
  const made = button(text, onclick, {'aria-pressed': 'false', ...attributes});
  made.press = (isPressed) => made.setAttribute('aria-pressed', String(isPressed));
  return made;
}
