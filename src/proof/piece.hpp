// SPDX-License-Identifier: GPL-3.0-or-later
/// A convex piece where it lies, in exact numbers: how far it reaches, and which points are in it.
#pragma once
#include <array>

#include "proof/exact.hpp"

namespace tuckwright::proof {

/// A cylinder or box. Both are symmetric about their centre, so that they reach equally far along n and -n: what tapers
/// reaches as far as the straight cylinder round it, which only errs towards overlap.
struct Piece {
    bool round = false; ///< a cylinder about its own third axis
    Vector half;        ///< half of the length, width and height; a cylinder's radius stands in the first two
    Rational foot;      ///< a cylinder's radius at the lower end, where it tapers; else that of `half`
    Vector center;
    std::array<Vector, 3> axis; ///< its own axes: unit vectors at right angles
    Vector extent;              ///< reach along the world's axes, rounded outward

    /// The same in floating point, only to see quickly what is not worth an exact look.
    struct Rough {
        std::array<double, 3> half{};
        std::array<std::array<double, 3>, 3> axis{};
    } rough;
};

Piece piece_of(const Shape& shape, const Pose& pose);

/// A piece from its parts; works out the rest.
Piece piece_from(bool round, const Vector& half, const Vector& center, const std::array<Vector, 3>& axis);

/// The piece moved by a vector.
Piece moved(const Piece& piece, const Vector& by);

/// The largest dot product of n with a vector from the centre to a point of the piece; n of any length but zero.
Bounds reach(const Piece& piece, const Vector& n);

/// Where a point is: outside, on the surface, or an inner point.
enum class Where { outside, surface, inner };
Where where_is(const Vector& point, const Piece& piece);

} // namespace tuckwright::proof
