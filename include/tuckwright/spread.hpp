// SPDX-License-Identifier: GPL-3.0-or-later
/// Measuring tolerances: how far the dimensions of a shape may be off.
#pragma once
#include <array>
#include <cstddef>

#include "tuckwright/shape.hpp"

namespace tuckwright {

/// How far each dimension of a shape may be off, either way, in mm and not negative: a cylinder's diameter and height
/// (the third is 0), or a box's length, width and height.
struct Spread {
    std::array<double, 3> mm{};
    friend bool operator==(const Spread&, const Spread&) = default;
};

/// Whether any dimension may be off at all.
bool any(const Spread& spread);

/// Which of the three is the height of such a shape: 1 for a cylinder, 2 for a box.
std::size_t height_index(const Shape& shape);

/// The shape with each dimension as large, or as small, as it may be; on the grid, rounded away from the given one.
/// Ensures: no dimension of a smaller shape below 1 nm.
Shape largest(const Shape& shape, const Spread& spread);
Shape smallest(const Shape& shape, const Spread& spread);

} // namespace tuckwright
