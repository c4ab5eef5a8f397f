// SPDX-License-Identifier: GPL-3.0-or-later
// Changes over time, for people who do not mind motion; for others they are done at once.

export const wantsNoMotion = () => window.matchMedia('(prefers-reduced-motion: reduce)').matches;

const eased = (t) => t * t * (3 - 2 * t);

// Calls `show` with 0 to 1 over so many milliseconds, and `after` at the end. Returns what stops it.
export function animate(milliseconds, show, after = () => {}) {
  if (wantsNoMotion()) {
    show(1);
    after();
    return () => {};
  }
  let frame = 0;
  const begun = performance.now();
  const go = (now) => {
    const t = Math.min(1, Math.max(0, (now - begun) / milliseconds));
    show(eased(t));
    if (t < 1) {
      frame = requestAnimationFrame(go);
    } else {
      after();
    }
  };
  frame = requestAnimationFrame(go);
  return () => cancelAnimationFrame(frame);
}
