// SPDX-License-Identifier: GPL-3.0-or-later
/// Bodies that slide down a tapering wall until they stand, sit all round, or something else holds them.
#pragma once
#include "packing/air.hpp"
#include "packing/layout.hpp"

namespace tuckwright::packing {

/// Lets bodies in standing vessels that taper slide down along the wall, towards the middle or aside. Nobody would leave a
/// thing hanging by one side of a wall, and a shake would bring it down. Returns whether any body has moved; what lay on
/// it may then hang over nothing, so let all things drop afterwards.
/// Requires: the layout keeps the air. Ensures: it still does; no body is higher than before.
/// Complexity: a few dozen free_way() for each body in such a vessel.
bool slide_down_walls(Layout& layout, const Air& air);

} // namespace tuckwright::packing
