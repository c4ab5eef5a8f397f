// SPDX-License-Identifier: GPL-3.0-or-later
/// Directions of whole numbers along which items go in.
#pragma once
#include <array>
#include <cstdint>
#include <optional>
#include <vector>

#include "stacking/replay.hpp"
#include "tuckwright/geometry.hpp"

namespace tuckwright::stacking
{

using Direction = std::array<std::int64_t, 3>;

/// The image of the shape's own axis (0, 1, 2) under the turn, in lowest whole numbers: exactly parallel to it.
/// Nothing when they would not stay below 2^62.
std::optional<Direction> exact_axis(const Quaternion& turn, std::size_t axis);

Direction opposite(const Direction& direction);
Vec3 to_vector(const Direction& direction);
/// The sign of the exact dot product. Requires: all numbers below 2^62.
int sign_of_dot(const Direction& a, const Direction& b);

/// What is left of a direction without its part along an axis, in lowest whole numbers: exactly at right angles to the
/// axis. Nothing when they would not stay below 2^62, or nothing is left.
std::optional<Direction> part_across(const Direction& direction, const Direction& axis);

/// The directions along which an item may go into its container, the plainest first: in a cavity inward along its axis
/// (a sleeve's downward), a lid along its vessel's, in the bundle straight down. With `ways_round`, level directions
/// into the bundle as well.
std::vector<Direction> ways_in(const Bundle& bundle, std::size_t item, bool ways_round);

/// The upright of what the item goes into: the axis of its cavity, of its vessel for a lid, or the world's z.
Vec3 upright_of_container(const Bundle& bundle, std::size_t item);

/// The corner-to-corner size of all solids of the bundle, mm; a way several times as long leads out of it.
double size_of(const Bundle& bundle);

/// The solid dragged from outside along the direction to its place.
Hull drawn_in(const Solid& solid, const Direction& direction, double bundle_size);

} // namespace tuckwright::stacking
