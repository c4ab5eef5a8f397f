// SPDX-License-Identifier: GPL-3.0-or-later
// What labels stand in the picture for a state: texts, and the points that they name.
import {chainLine} from './extras.js';
import {sum, times} from './vectors.js';

// The stretches of the chain that is shown, each at its middle; in a narrow picture by their millimetres alone.
function marksOfChain(scene, state, isNarrow) {
  const {picture} = scene;
  const chain = picture.chains[state.chain];
  const start = chainLine(chain, picture);
  let at = 0;
  return chain.stretches.flatMap((stretch, k) => {
    const here = sum(start, times(at + stretch.mm / 2, chain.along));
    at += stretch.mm;
    const text = picture.words.chains[state.chain].parts[k];
    const [x, y] = scene.project(here);
    const short = isNarrow ? text.replace(/^.* (?=[\d.]+ (mm|in)$)/, '') : text;
    return text ? [{key: `chain ${k}`, text: short, x, y, isMarked: true}] : [];
  });
}

// Marks, the most important first. In a narrow picture only what is marked is named in full, the rest by numbers.
export function marksFor(scene, state, isNarrow) {
  if (state.chain !== null) {
    return marksOfChain(scene, state, isNarrow);
  }
  const marked = scene.markedThings(state);
  const marks = scene.now.visible
    .filter((index) => state.names || marked.has(index))
    .flatMap((index) => {
      const {words} = scene.picture.things[index];
      const isMarked = marked.has(index);
      const place = scene.projectThing(index);
      if (!place) {
        return [];
      }
      const [x, y] = place;
      const text = isNarrow && !isMarked ? String(index + 1) : `${index + 1} ${words.name}`;
      return [{key: index, text, x, y, isMarked}];
    });
  return [...marks.filter((mark) => mark.isMarked), ...marks.filter((mark) => !mark.isMarked)];
}
