// SPDX-License-Identifier: GPL-3.0-or-later
/// What moves together, and what things lie in.
#pragma once
#include <optional>
#include <vector>

#include "tuckwright/bundle.hpp"
#include "tuckwright/geometry.hpp"

namespace tuckwright::play {

/// For each item: the vessel that it hangs on, by lying in it or closing it.
std::vector<std::optional<std::size_t>> holders(const Bundle& bundle);

/// Whether the item is the other, lies in it however deep, or belongs to it as its lid.
bool hangs_on(const std::vector<std::optional<std::size_t>>& holders, std::size_t item, std::size_t other);

Vec3 axis_of(const Matrix3& m, std::size_t k);

/// A circle in the plan of a frame.
struct PlanCircle {
    double x = 0, y = 0, r = 0;
};

/// What a solid covers, seen along the frame's z, as circles of which it is the convex hull: one for a cylinder that
/// stands, corners for all else (of a box around a cylinder that leans: then it is larger than the solid).
void add_outline(const Solid& solid, const Pose& frame, std::vector<PlanCircle>& circles);

/// Half of the smallest round hole through which all of it goes.
double enclosing_radius(const std::vector<PlanCircle>& circles);

} // namespace tuckwright::play
