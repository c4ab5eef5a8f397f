// SPDX-License-Identifier: GPL-3.0-or-later
// Which bands are on, and whether the bag is, at a moment of the packing: {bands: [{loop, along}], bag}. A band over a lid
// goes along with that from the end of its step on; those round everything, and then the bag, have steps of their own.
export function coversOn(picture, stage) {
  const {step, done, visible} = stage;
  const packed = picture.steps.filter(({thing}) => thing !== null).length;
  let put = done > 0 ? step + 1 - packed : 0; // how many of the covers round it all are on
  const bands = [];
  for (const {lid, loop} of picture.bands) {
    if (lid === null && loop.length > 0 && put > 0) {
      bands.push({loop, along: null});
    }
    put -= lid === null ? 1 : 0;
    const isShut = lid !== null && visible.includes(lid);
    if (isShut && (picture.things[lid].step < step || done === 1)) {
      bands.push({loop, along: lid});
    }
  }
  return {bands, bag: Boolean(picture.bag) && put > 0};
}
