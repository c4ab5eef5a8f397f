// SPDX-License-Identifier: GPL-3.0-or-later
/// Rows of items that lie one behind the other between two walls.
#pragma once
#include <optional>
#include <vector>

#include "tuckwright/bundle.hpp"
#include "tuckwright/geometry.hpp"

namespace tuckwright::play {

struct Row {
    std::vector<std::size_t> items; ///< from the lower wall on
    double room = 0, worst = 0;     ///< mm that are left between the walls
};

/// What solids take up along a unit vector.
double width_along(const std::vector<Solid>& solids, Vec3 along);

/// The row in a cavity, along its own axis of that number, that leaves the least room at worst; nothing in an empty one.
/// A vessel in the row counts as high as what it holds stands out of it.
std::optional<Row> tightest_row(const Bundle& bundle, Lodging in, std::size_t axis);

} // namespace tuckwright::play
