// SPDX-License-Identifier: GPL-3.0-or-later
/// From where a bundle is looked at, from infinitely far away.
#pragma once
#include <cmath>
#include <numbers>

#include "tuckwright/canvas.hpp"
#include "tuckwright/geometry.hpp"

namespace tuckwright::drawing {

/// Three unit vectors at right angles: to the right and up on paper, and towards the eye.
struct Camera {
    Vec3 right{1, 0, 0}, up{0, 1, 0}, toward{0, 0, 1};

    /// mm of the things, x to the right and y down.
    Spot project(Vec3 p) const { return {dot(right, p), -dot(up, p)}; }
    double depth(Vec3 p) const { return dot(toward, p); } ///< the larger, the nearer
};

inline double radians(double degrees) { return degrees * std::numbers::pi / 180; }

/// From above, with x to the right.
inline Camera from_above() { return {}; }

/// From the side: turned by so many degrees to the right from the front, and raised by so many.
inline Camera from_the_side(double turned, double raised)
{
    const double a = radians(turned), e = radians(raised);
    const Vec3 right{std::cos(a), std::sin(a), 0},
        toward{std::cos(e) * std::sin(a), -std::cos(e) * std::cos(a), std::sin(e)};
    return {right, cross(toward, right), toward};
}

/// The image of one of a pose's own axes.
inline Vec3 own_axis(const Pose& pose, std::size_t k)
{
    const Matrix3 m = rotation_matrix(pose.turn);
    return {m[0][k], m[1][k], m[2][k]};
}

inline Vec3 unit(Vec3 v) { return (1 / norm(v)) * v; }

} // namespace tuckwright::drawing
