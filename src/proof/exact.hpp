// SPDX-License-Identifier: GPL-3.0-or-later
/// The exact numbers of the proof: rationals, vectors of them, and roots between two proved bounds.
#pragma once
#include <CGAL/Gmpq.h>

#include <array>

#include "tuckwright/shape.hpp"

namespace tuckwright::proof {

/// Lengths are in nanometres throughout the proof.
using Rational = CGAL::Gmpq;
using Vector = std::array<Rational, 3>;

inline Rational magnitude(const Rational& value) { return value < 0 ? -value : value; }
Rational dot(const Vector& a, const Vector& b);
Vector plus(const Vector& a, const Vector& b);
Vector minus(const Vector& a, const Vector& b);
Vector times(const Rational& s, const Vector& a);
bool parallel(const Vector& a, const Vector& b);

/// A number known to lie between two rationals; both are the number itself where it is rational.
struct Bounds {
    Rational below, above;
};

/// The square root of a number that is not negative. Ensures: below^2 <= s <= above^2, both within 2^-64 of the root,
/// and equal where s is the square of a rational.
Bounds root(const Rational& s);

/// A length or coordinate of the bundle in whole nanometres. Requires: on the grid and in range.
Rational nanometres(double mm);
Vector nanometres(const Vec3& mm);

/// The images of a shape's own axes x, y, z: exact unit vectors, exactly at right angles.
std::array<Vector, 3> axes_of(const Quaternion& turn);

inline double approximate(const Rational& value) { return CGAL::to_double(value); }

} // namespace tuckwright::proof
