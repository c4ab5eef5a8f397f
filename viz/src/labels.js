// SPDX-License-Identifier: GPL-3.0-or-later
// Names on both sides of what is drawn, each with a line to what it names. They never overlap: what finds no place is left
// out, the least important first.

const gap = 3; // px between two labels
const away = 26; // px from what is drawn

// A number stays on one line with its unit.
const unbroken = (text) => text.replace(/(\d) (mm|in|ml|fl oz|g|kg|l|oz|lb)\b/g, '$1\u00a0$2');

// Heights at which labels that want to stand at `wanted` stand one below another between 0 and `most`, in that order.
export function spreadOut(wanted, heights, most) {
  const tops = [];
  let free = 0;
  wanted.forEach((y, k) => {
    tops[k] = Math.max(free, y - heights[k] / 2);
    free = tops[k] + heights[k] + gap;
  });
  let floor = most;
  for (let k = tops.length - 1; k >= 0; k -= 1) {
    tops[k] = Math.min(tops[k], floor - heights[k]);
    floor = tops[k] - gap;
  }
  return tops;
}

// For each mark, whether its label stands on the left: as it lies itself, or where there are fewer if it is in the middle.
export function sidesFor(marks, left, right) {
  const share = marks.map(({x}) => (x - left) / (right - left || 1));
  const sides = share.map((s) => (s < 0.4 ? true : s > 0.6 ? false : null));
  let more = sides.reduce((all, side) => all + (side === null ? 0 : side ? 1 : -1), 0); // on the left than on the right
  return sides.map((side) => {
    if (side !== null) {
      return side;
    }
    const isLeft = more <= 0;
    more += isLeft ? 1 : -1;
    return isLeft;
  });
}

export class Labels {
  constructor(layer, lines) {
    this.layer = layer;
    this.lines = lines;
    this.pool = new Map();
  }

  labelOf(mark) {
    let label = this.pool.get(mark.key);
    if (!label) {
      label = document.createElement('div');
      label.className = 'label';
      this.layer.append(label);
      this.pool.set(mark.key, label);
    }
    const text = unbroken(mark.text);
    if (label.textContent !== text) {
      label.textContent = text;
    }
    label.classList.toggle('marked', Boolean(mark.isMarked));
    return label;
  }

  // Shows these marks, {key, text, x, y, isMarked}, the most important first; places are px in the picture. What is drawn
  // reaches from `left` to `right`.
  show(marks, {width, height, left, right}) {
    for (const [key, label] of this.pool) {
      if (!marks.some((mark) => mark.key === key)) {
        label.remove();
        this.pool.delete(key);
      }
    }
    const sides = sidesFor(marks, left, right);
    const placed = marks.map((mark, k) => {
      const label = this.labelOf(mark);
      return {mark, label, tall: label.offsetHeight, wide: label.offsetWidth, isLeft: sides[k]};
    });
    const side = (isLeft) => placed.filter((p) => p.isLeft === isLeft);
    const drawn = [
      ...this.column(side(true), height, (wide) => Math.max(0, left - away - wide)),
      ...this.column(side(false), height, (wide) => Math.min(width - wide, right + away)),
    ];
    this.lines.setAttribute('viewBox', `0 0 ${width} ${height}`);
    this.lines.replaceChildren(...drawn);
  }

  // One below another; `leftFor` says where a label so wide begins.
  column(all, height, leftFor) {
    let room = height;
    const kept = all.filter(({label, tall}) => {
      room -= tall + gap;
      label.style.visibility = room < 0 ? 'hidden' : 'visible';
      return room >= 0;
    });
    kept.sort((a, b) => a.mark.y - b.mark.y);
    const tops = spreadOut(kept.map((p) => p.mark.y), kept.map((p) => p.tall), height - 1);
    return kept.map(({mark, label, tall, wide}, k) => {
      const left = leftFor(wide);
      label.style.transform = `translate(${left}px, ${tops[k]}px)`;
      return leader(mark.x > left + wide / 2 ? left + wide + 1 : left - 1, tops[k] + tall / 2, mark);
    });
  }
}

function leader(x, y, mark) {
  const line = document.createElementNS('http://www.w3.org/2000/svg', 'polyline');
  const bend = x + (mark.x - x) * 0.25;
  line.setAttribute('points', `${x},${y} ${bend},${y} ${mark.x},${mark.y}`);
  if (mark.isMarked) {
    line.setAttribute('class', 'marked');
  }
  return line;
}
