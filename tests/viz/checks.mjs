// SPDX-License-Identifier: GPL-3.0-or-later
// What is wrong with a page, told by what the program saved apart from it. Each check returns its findings, as texts.

// Circles are drawn with 96 corners: r (1 - cos(pi / 96)) is 0.06 mm for a pot 220 mm across.
export const drawn = 0.12; // mm

const nameOf = ({id, copy}) => `${id} ${copy}`;

// How far a solid reaches along the axis i of the world, from its centre: the support of a cylinder or box, with the two
// ends of a tapering one each with its own radius (Ericson 2005, Real-Time Collision Detection, 9.5.4; from memory).
function reaches({cylinder, box, rotation}, i) {
  const [a, b, c] = rotation[i];
  if (box) {
    const far = (Math.abs(a) * box.length + Math.abs(b) * box.width + Math.abs(c) * box.height) / 2;
    return [-far, far];
  }
  const aside = Math.hypot(a, b) / 2;
  const up = (c * cylinder.height) / 2;
  const ends = [
    [-up, aside * (cylinder.foot ?? cylinder.diameter)],
    [up, aside * cylinder.diameter],
  ];
  return [Math.min(...ends.map(([z, r]) => z - r)), Math.max(...ends.map(([z, r]) => z + r))];
}

export function boxOf(solid) {
  const sides = [0, 1, 2].map((i) => reaches(solid, i).map((far) => solid.center[i] + far));
  return {min: sides.map((side) => side[0]), max: sides.map((side) => side[1])};
}

function awayFrom(surface, box) {
  return Math.max(
    ...[0, 1, 2].map((i) => Math.max(Math.abs(surface.min[i] - box.min[i]), Math.abs(surface.max[i] - box.max[i]))),
  );
}

// Every solid of the saved bundle is drawn once, where it lies.
export function misplaced(bundle, surfaces) {
  const wrong = [];
  for (const item of bundle.items) {
    item.solids.forEach((solid, k) => {
      const found = surfaces.filter((s) => s.id === item.id && s.copy === item.copy && s.solid === k);
      if (found.length !== 1) {
        wrong.push(`${nameOf(item)}: solid ${k} is drawn ${found.length} times`);
      } else if (!found[0].visible) {
        wrong.push(`${nameOf(item)}: solid ${k} is not seen`);
      } else if (awayFrom(found[0], boxOf(solid)) > drawn) {
        wrong.push(`${nameOf(item)}: solid ${k} is ${awayFrom(found[0], boxOf(solid)).toFixed(2)} mm off its place`);
      }
    });
  }
  return wrong;
}

const bodyOf = (surfaces, {item, copy}) => surfaces.find((s) => s.id === item && s.copy === copy && s.solid === 0);

const stepNumber = (bundle, {id, copy}) => bundle.steps.findIndex((s) => s.item === id && s.copy === copy);

// Half way through a step its thing comes from where its direction says, and what has been packed before is in its place.
export function wrongHalfWay(bundle, surfaces, k) {
  const step = bundle.steps[k];
  const item = bundle.items.find(({id, copy}) => id === step.item && copy === step.copy);
  const body = bodyOf(surfaces, step);
  const wrong = [];
  if (!body.visible) {
    return [`step ${k + 1}: ${step.item} is not seen`];
  }
  const home = boxOf(item.solids[0]);
  const off = body.min.map((v, i) => v - home.min[i]);
  const size = Math.hypot(...step.direction);
  const along = off.reduce((all, v, i) => all + v * (step.direction[i] / size), 0);
  const aside = Math.hypot(...off.map((v, i) => v - (along * step.direction[i]) / size));
  if (along > -3) {
    wrong.push(`step ${k + 1}: ${step.item} is ${along.toFixed(1)} mm along its way, not before its place`);
  }
  if (!step.via && aside > drawn * 2) {
    wrong.push(`step ${k + 1}: ${step.item} is ${aside.toFixed(2)} mm beside its way`);
  }
  for (const surface of surfaces.filter((s) => s.visible && s.solid === 0)) {
    const number = stepNumber(bundle, surface);
    const other = bundle.items.find(({id, copy}) => id === surface.id && copy === surface.copy);
    const isStill = awayFrom(surface, boxOf(other.solids[0])) <= drawn;
    if (number > k && !bundle.steps.some((s, n) => n <= k && s.into.startsWith(surface.id)) && isStill) {
      wrong.push(`step ${k + 1}: ${nameOf(surface)} is there before its step, and nothing has gone into it`);
    }
  }
  return wrong;
}

// Pulled apart, nothing is left within what it was packed in, and things have gone straight back along steps' ways.
export function notApart(bundle, surfaces) {
  const wrong = [];
  for (const item of bundle.items) {
    if (!item.in || item.closes) {
      continue;
    }
    const body = bodyOf(surfaces, {item: item.id, copy: item.copy});
    const vessel = bodyOf(surfaces, {item: item.in.id, copy: item.in.copy});
    const isWithin = [0, 1, 2].every((i) => body.min[i] < vessel.max[i] - 0.5 && vessel.min[i] < body.max[i] - 0.5);
    if (isWithin) {
      wrong.push(`${nameOf(item)} is still in ${item.in.id}`);
    }
  }
  return wrong;
}

// Labels: one for each name asked for, within the picture, none over another.
export function wrongLabels(names, labels, field) {
  const wrong = [];
  for (const name of names) {
    if (!labels.some((label) => label.text.replace(/^\d+ /, '') === name)) {
      wrong.push(`no label says ${name}`);
    }
  }
  labels.forEach((a, k) => {
    if (a.left < field.left - 1 || a.right > field.right + 1 || a.top < field.top - 1 || a.bottom > field.bottom + 1) {
      wrong.push(`${a.text} is not within the picture`);
    }
    for (const b of labels.slice(k + 1)) {
      if (a.left < b.right && b.left < a.right && a.top < b.bottom - 0.5 && b.top < a.bottom - 0.5) {
        wrong.push(`${a.text} lies over ${b.text}`);
      }
    }
  });
  return wrong;
}

// What has been noted while the page was open: no errors, and nothing asked for but the page itself.
export const noises = ({errors, requests}) => [...errors, ...requests.map((url) => `asked for ${url}`)];
