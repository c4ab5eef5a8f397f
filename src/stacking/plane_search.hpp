// SPDX-License-Identifier: GPL-3.0-or-later
/// Whether a plane of whole numbers parts two solids, as the exact check will look for one.
#pragma once
#include <optional>

#include "stacking/direction.hpp"

namespace tuckwright::stacking
{

/// Two solids that a plane parts or does not.
struct Parted {
    bool proved = false;
    std::optional<Direction> normal; ///< from the first to the second; nothing where a known axis will do
};

/// Whether a plane keeps them apart; they may touch.
Parted parted(const Solid& first, const Solid& second);

/// Whether one, drawn in from outside along the direction, passes what stands.
Parted drawn_past(const Solid& moved, const Direction& direction, const Solid& standing, double bundle_size);

} // namespace tuckwright::stacking
