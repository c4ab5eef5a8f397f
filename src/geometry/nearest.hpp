// SPDX-License-Identifier: GPL-3.0-or-later
/// The point of a Minkowski difference nearest to the origin.
#pragma once
#include <array>

#include "tuckwright/geometry.hpp"

namespace tuckwright::geometry
{

/// A hull about its middle: every hull is its own mirror image there, so one value serves both ends of a direction.
struct Middle {
    Vec3 center;
    std::array<Vec3, 3> axes; ///< unit vectors
    Vec3 half;                ///< half sizes along the axes; for a round hull x is the radius, y unused
    Vec3 half_sweep;
    bool round = false;
};
Middle middle_of(const Hull& hull);

/// How far the hull reaches from its middle along a direction of any length, times that length.
double reach(const Middle& hull, Vec3 direction);
/// The point, counted from the middle, that reaches farthest.
Vec3 reach_point(const Middle& hull, Vec3 direction);

/// The points (second - first) of two hulls whose middles stand `offset` apart, and the one nearest to the origin.
struct Nearest {
    bool overlap = false; ///< the origin is within; the rest is then without meaning
    double above = 0;     ///< length of the nearest point found: not below the true distance
    double below = 0;     ///< proved by the supports along `normal`: not above the true distance
    Vec3 normal;          ///< unit vector from first to second
    Vec3 on_first;        ///< nearest point of the first hull, counted from its middle
};
/// Gilbert, Johnson, Keerthi with the sub-simplex chosen by trying all that hold the newest point. Ends when above and
/// below agree to 1e-11 relative, or when rounding stops the descent.
Nearest nearest(const Middle& first, const Middle& second, Vec3 offset, Vec3 start);

} // namespace tuckwright::geometry
