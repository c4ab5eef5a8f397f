// SPDX-License-Identifier: GPL-3.0-or-later
/// Ways through openings that are narrower than the cavity below them: straight in, then aside.
#pragma once
#include <optional>
#include <vector>

#include "stacking/direction.hpp"
#include "stacking/replay.hpp"

namespace tuckwright::stacking {

/// Along the direction to where the item lies `via` (mm, on the grid) beside its place, then straight to its place.
struct Way {
    Direction direction{};
    std::optional<Vec3> via;
};

/// The solid as it lies before it is moved aside.
Solid where_it_begins(const Solid& solid, const std::optional<Vec3>& via);

/// The cavity that the item lies in, if that has a narrow opening; null otherwise.
const PlacedCavity* narrow_cavity(const Bundle& bundle, std::size_t item);

/// The ways in for an item with all that moves with it, the plainest first: those of ways_in(), and through a narrow
/// opening straight where it can, else down the middle of the opening or beside that, and aside. An item that passes in
/// no way has its plain one all the same. Requires: all items are placed in the replay.
std::vector<Way> ways_of(const Replay& complete, std::size_t item);

} // namespace tuckwright::stacking
