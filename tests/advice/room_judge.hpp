// SPDX-License-Identifier: GPL-3.0-or-later
/// A judge of its own for one more thing in a bundle: whether a larger one could be near the same place.
#pragma once
#include <optional>
#include <vector>

#include "tuckwright/bundle.hpp"
#include "tuckwright/geometry.hpp"
#include "tuckwright/room.hpp"

namespace room_test {

/// The thing with all its dimensions larger by a factor; off the grid.
tuckwright::Solid scaled(const tuckwright::Solid& solid, double factor);

/// The least depth, mm, by which the solid is in anything's way or beyond a wall, over many small moves and turns about
/// the upright from where it is: downhill from one to the next. Not positive where it fits.
double least_conflict(const tuckwright::Bundle& bundle, const std::optional<tuckwright::Lodging>& in,
                      tuckwright::Posing posing, const tuckwright::Solid& solid, double farthest);

/// Checks, with the test framework, that every thing of the answer is proved by the exact check, and that none 2 % larger
/// in each dimension fits near its place. Returns how many things that were.
int judge(const tuckwright::Bundle& bundle, const tuckwright::RoomAnswer& answer);

} // namespace room_test
