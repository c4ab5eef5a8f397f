// SPDX-License-Identifier: GPL-3.0-or-later
/// A comparison as a picture: volume against weight.
#pragma once
#include "tuckwright/canvas.hpp"
#include "tuckwright/compare.hpp"

namespace tuckwright {

/// One page with a dot for each kit that was packed, its weight without contents from left to right and its volume upwards:
/// full and joined by a line for those that no other beats in both, empty for the others; with the number that it has in
/// the table, and a thin line down to the least volume that it can have. Below, the numbers with what they stand for, and
/// the kits without a bundle with the reason.
/// Requires: at least one kit. Ensures: nothing outside the page, no number on another or on a dot; a kit without a bundle
/// has no dot. Complexity: quadratic in the kits.
Canvas compare_picture(const Comparison& comparison);

} // namespace tuckwright
