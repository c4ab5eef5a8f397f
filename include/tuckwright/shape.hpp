// SPDX-License-Identifier: GPL-3.0-or-later
/// Plain shapes and where they lie: what the search, the exact check and the reports have in common.
#pragma once
#include <array>
#include <cstdint>
#include <variant>

namespace tuckwright {

struct Vec3 {
    double x = 0, y = 0, z = 0;
    friend bool operator==(const Vec3&, const Vec3&) = default;
};

/// A solid cylinder, millimetres; its own axis is z, its own centre the origin. It may taper down to a narrower foot.
struct Cylinder {
    double diameter = 0, height = 0;
    double foot = 0; ///< diameter at the lower end, less than `diameter`; 0: straight
    friend bool operator==(const Cylinder&, const Cylinder&) = default;
};

/// Diameter at the lower end.
inline double foot_of(const Cylinder& c) { return c.foot == 0 ? c.diameter : c.foot; }

/// A solid box, millimetres; length along its own x, width along y, height along z, its own centre the origin.
struct Box {
    double length = 0, width = 0, height = 0;
    friend bool operator==(const Box&, const Box&) = default;
};

using Shape = std::variant<Cylinder, Box>;

/// A rotation as a quaternion of whole numbers, not all zero; scaling changes nothing. Its matrix is rational and
/// exactly orthogonal, so that proofs need no rounding.
struct Quaternion {
    std::int64_t w = 1, x = 0, y = 0, z = 0;
    friend bool operator==(const Quaternion&, const Quaternion&) = default;
};

/// Where a shape lies: its centre (mm) and how it is turned from its own axes to the frame it lies in.
struct Pose {
    Vec3 center;
    Quaternion turn;
    friend bool operator==(const Pose&, const Pose&) = default;
};

struct Solid {
    Shape shape;
    Pose pose;
    friend bool operator==(const Solid&, const Solid&) = default;
};

/// Rows of the rotation matrix; column k is the image of the shape's own axis k.
using Matrix3 = std::array<std::array<double, 3>, 3>;

/// The rotation matrix of a quaternion, each entry within 1e-15 of the exact rational. Requires: not all zero.
Matrix3 rotation_matrix(const Quaternion& q);

/// First b, then a, in lowest terms. Requires: the product's numbers stay below 2^62 (contract).
Quaternion compose(const Quaternion& a, const Quaternion& b);

/// Volume in millilitres (1 ml = 1000 mm^3).
double volume_ml(const Shape& shape);

/// Height along the shape's own z, mm.
double height_of(const Shape& shape);

/// The lower part of a cavity, of that height in mm; where it tapers, its new top is rounded down to the grid. Requires:
/// not higher than before.
Shape lower_part(Shape shape, double height);

} // namespace tuckwright
