// SPDX-License-Identifier: GPL-3.0-or-later
/// Level cuts through solids: discs and rectangles, and the places where two of them meet outside of others.
#pragma once
#include <array>
#include <optional>
#include <vector>

#include "tuckwright/geometry.hpp"

namespace tuckwright {

using PlanPoint = std::array<double, 2>;

/// A disc (its radius in a) or a rectangle with half sides a and b, the first along (c, s).
struct Outline {
    bool round = true;
    double x = 0, y = 0, a = 0, b = 0, c = 1, s = 0;
};

/// Whether one of the solid's own axes is upright, so that level cuts are discs or rectangles.
bool is_level(const Hull& hull);
/// Whether its top and bottom are level faces.
bool has_level_faces(const Hull& hull);

/// The cut at a height; nothing where the solid does not reach there. Its level faces belong to it if `closed`.
/// Requires: is_level(hull).
std::optional<Outline> level_cut(const Hull& hull, double z, bool closed);

/// How deep a point lies inside an outline; outside, less than nought: by no more than the distance.
double depth_in(const Outline& outline, PlanPoint p);

/// A point inside all of `within` and outside all of `without`, as far from every edge as was found, and how far; none
/// where that is not more than `least`. Finds regions that are at least a micrometre wide. Ensures: the same for the
/// same outlines. Complexity: about the square of some tens of candidates for each outline.
std::optional<PlanPoint> point_between(const std::vector<Outline>& within, const std::vector<Outline>& without,
                                       double least);

} // namespace tuckwright
