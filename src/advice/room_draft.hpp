// SPDX-License-Identifier: GPL-3.0-or-later
/// A thing in the making: sizes, place and turn in floating point.
#pragma once
#include <array>
#include <cstdint>

#include "tuckwright/geometry.hpp"
#include "tuckwright/room.hpp"

namespace tuckwright::advice {

/// The upright of a place and the two directions across it, as a turn in whole numbers and as a matrix.
struct Axes {
    Quaternion turn;
    Matrix3 axes = rotation_matrix({});

    explicit Axes(const Quaternion& given = {}) : turn(given), axes(rotation_matrix(given)) {}
    Vec3 axis(std::size_t k) const { return {axes[0][k], axes[1][k], axes[2][k]}; }
};

/// How a reach along a direction follows from half sizes, and how it changes with the angle.
struct Reach {
    std::array<double, 3> factor{}; ///< of each half size
    double by_angle = 0;            ///< mm for each radian
};

struct Draft {
    Posing posing = Posing::standing;
    Vec3 center;                  ///< mm, in the bundle's frame
    /// mm: radius and half the height (standing) or length (lying), and nothing; half the length, width and height of a box.
    std::array<double, 3> half{};
    double angle = 0;             ///< rad, about the upright

    std::size_t sizes() const { return posing == Posing::box ? 3 : 2; }
    double volume() const;
    double log_volume() const;
    double smallest() const;      ///< the smallest full dimension, mm
    double largest_half() const;
};

/// The draft's own directions: length, width and upright of its frame, turned by its angle.
std::array<Vec3, 3> axes_of(const Draft& draft, const Axes& frame);

Hull hull_of(const Draft& draft, const Axes& frame);

/// How far it reaches from its centre along a unit direction: the sum of factors times half sizes.
double reach_along(const Draft& draft, const Axes& frame, Vec3 direction);

/// The same with what each size and the angle have to do with it. Where a side lies along the direction within `kink`, it
/// turns the same way as `signs` says (a bit for each of two sides: set is the negative side).
Reach reach_parts(const Draft& draft, const Axes& frame, Vec3 direction, double kink, unsigned signs);

/// A number of half-angle steps, in which turns are rounded: tangent of half the angle times 2^17.
Quaternion turn_of(double angle);

/// The angle of that turn, as exact as doubles are.
double rounded_angle(double angle);

/// The draft as a solid on the grid, each half size less by so many mm. Requires: an angle that is rounded; sizes that
/// stay positive.
Solid solid_of(const Draft& draft, const Axes& frame, const std::array<double, 3>& less = {});

} // namespace tuckwright::advice
