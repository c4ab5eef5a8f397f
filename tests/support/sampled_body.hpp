// SPDX-License-Identifier: GPL-3.0-or-later
/// Cylinders and boxes in long double for judges by sampling. Shares nothing with the check but the plain shapes.
#pragma once
#include <algorithm>
#include <array>
#include <cmath>

#include "tuckwright/shape.hpp"

namespace tuckwright::sampled {

using Real = long double;
using Point = std::array<Real, 3>;

inline Real dot(const Point& a, const Point& b) { return a[0] * b[0] + a[1] * b[1] + a[2] * b[2]; }
inline Point minus(const Point& a, const Point& b) { return {a[0] - b[0], a[1] - b[1], a[2] - b[2]}; }

/// A solid with its matrix; own coordinates of a point and back.
struct Body {
    bool round = false;
    Point half{}, center{};
    std::array<Point, 3> axis{}; ///< images of the own axes

    Point local(const Point& world) const;
    Point world(const Point& local) const;
    /// How deep a point lies within (negative: outside, by at most that much).
    Real depth(const Point& world) const;
    /// Of the ball round its centre that holds it.
    Real radius() const { return round ? std::hypot(half[0], half[2]) : std::hypot(half[0], half[1], half[2]); }
};

inline Point Body::local(const Point& world) const
{
    const Point from = minus(world, center);
    return {dot(from, axis[0]), dot(from, axis[1]), dot(from, axis[2])};
}

inline Point Body::world(const Point& local) const
{
    Point result = center;
    for (std::size_t k = 0; k < 3; ++k) {
        for (std::size_t j = 0; j < 3; ++j) {
            result[j] += local[k] * axis[k][j];
        }
    }
    return result;
}

inline Real Body::depth(const Point& world) const
{
    const Point p = local(world);
    const Real up = half[2] - std::abs(p[2]);
    return round ? std::min(up, half[0] - std::hypot(p[0], p[1]))
                 : std::min({up, half[0] - std::abs(p[0]), half[1] - std::abs(p[1])});
}

inline Body body_of(const Shape& shape, const Pose& pose)
{
    Body body;
    body.round = std::holds_alternative<Cylinder>(shape);
    if (const auto* c = std::get_if<Cylinder>(&shape)) {
        body.half = {c->diameter / 2, c->diameter / 2, c->height / 2};
    } else {
        const auto& b = std::get<Box>(shape);
        body.half = {b.length / 2, b.width / 2, b.height / 2};
    }
    body.center = {pose.center.x, pose.center.y, pose.center.z};
    // Each axis turned by q e q*, written out as v + 2 w (u x v) + 2 u x (u x v) for the unit quaternion.
    const Real w = static_cast<Real>(pose.turn.w);
    const Point u{static_cast<Real>(pose.turn.x), static_cast<Real>(pose.turn.y), static_cast<Real>(pose.turn.z)};
    const Real n = w * w + dot(u, u);
    const auto cross = [](const Point& a, const Point& b) {
        return Point{a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]};
    };
    for (std::size_t k = 0; k < 3; ++k) {
        Point v{0, 0, 0};
        v[k] = 1;
        const Point once = cross(u, v), twice = cross(u, once);
        for (std::size_t j = 0; j < 3; ++j) {
            body.axis[k][j] = v[j] + 2 * (w * once[j] + twice[j]) / n;
        }
    }
    return body;
}

} // namespace tuckwright::sampled
