// SPDX-License-Identifier: GPL-3.0-or-later
/// Whether a slanted disc, seen along the axis of a round room, keeps within its wall.
#pragma once
#include <array>

#include "proof/room.hpp"

namespace tuckwright::proof {

using Flat = std::array<Rational, 2>;

/// The points center + radius (a u + b v) with a^2 + b^2 <= 1, in the plane across the room's axis. u and v are what
/// is seen of two unit vectors at right angles, so that the disc looks like an ellipse with half axes `radius` and
/// radius |slope|, where `slope` is the part of the disc's own axis along the room's.
struct SlantedDisc {
    Flat center, u, v;
    Rational radius, slope;
};

/// Whether circle^2 - |p|^2 >= multiplier (1 - a^2 - b^2) for all a and b, where p = center + radius (a u + b v): then
/// the whole disc keeps within the circle. Nothing is known where it fails. Requires: circle and multiplier not
/// negative.
bool multiplier_proves(const SlantedDisc& disc, const Rational& circle, const Rational& multiplier);

/// The disc against the circle of the given radius about the origin. Both answers are proved with rationals: inside by
/// a multiplier found in floating point, outside by a point of the disc.
Fit within_circle(const SlantedDisc& disc, const Rational& circle);

} // namespace tuckwright::proof
