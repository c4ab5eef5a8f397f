// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>

#include "tuckwright/geometry.hpp"

namespace tuckwright
{

namespace
{

Vec3 column(const Matrix3& m, std::size_t k) { return {m[0][k], m[1][k], m[2][k]}; }

/// The farthest point of a shape in its own frame, its centre the origin.
Vec3 own_support_point(const Shape& shape, Vec3 d)
{
    if (const auto* box = std::get_if<Box>(&shape)) {
        return {std::copysign(box->length / 2, d.x), std::copysign(box->width / 2, d.y),
                std::copysign(box->height / 2, d.z)};
    }
    const auto& cylinder = std::get<Cylinder>(shape);
    const double radial = std::hypot(d.x, d.y);
    const double z = std::copysign(cylinder.height / 2, d.z);
    if (radial == 0) {
        return {0, 0, z};
    }
    const double low = foot_of(cylinder), wide = cylinder.diameter;
    const bool at_foot = low != wide && radial * low - d.z * cylinder.height > radial * wide + d.z * cylinder.height;
    const double scale = (at_foot ? low : wide) / 2 / radial;
    return {scale * d.x, scale * d.y, low == wide ? z : at_foot ? -cylinder.height / 2 : cylinder.height / 2};
}

} // namespace

Hull hull_of(const Solid& solid, Vec3 sweep)
{
    return {solid.shape, solid.pose.center, rotation_matrix(solid.pose.turn), sweep};
}

Vec3 support_point(const Hull& hull, Vec3 direction)
{
    const Vec3 x = column(hull.rotation, 0), y = column(hull.rotation, 1), z = column(hull.rotation, 2);
    const Vec3 own = own_support_point(hull.shape, {dot(direction, x), dot(direction, y), dot(direction, z)});
    const Vec3 point = hull.center + own.x * x + own.y * y + own.z * z;
    return dot(direction, hull.sweep) > 0 ? point + hull.sweep : point;
}

double support(const Hull& hull, Vec3 direction)
{
    // Along the columns, not as |d|^2 - (d.a)^2: that would lose half of the digits where d is along the axis.
    const double u = dot(direction, column(hull.rotation, 0)), v = dot(direction, column(hull.rotation, 1)),
                 along = dot(direction, column(hull.rotation, 2)), w = std::abs(along);
    double reach = 0;
    if (const auto* box = std::get_if<Box>(&hull.shape)) {
        reach = std::abs(u) * box->length / 2 + std::abs(v) * box->width / 2 + w * box->height / 2;
    } else {
        const auto& cylinder = std::get<Cylinder>(hull.shape);
        const double across = std::sqrt(u * u + v * v) / 2;
        reach = across * cylinder.diameter + w * cylinder.height / 2;
        if (cylinder.foot != 0) {
            reach = std::max(across * cylinder.diameter + along * cylinder.height / 2,
                             across * cylinder.foot - along * cylinder.height / 2);
        }
    }
    return dot(direction, hull.center) + reach + std::max(0.0, dot(direction, hull.sweep));
}

Extent extent(const Hull& hull)
{
    const Vec3 axes[3] = {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}};
    double low[3] = {}, high[3] = {};
    for (int k = 0; k < 3; ++k) {
        high[k] = support(hull, axes[k]);
        low[k] = -support(hull, -1.0 * axes[k]);
    }
    return {{low[0], low[1], low[2]}, {high[0], high[1], high[2]}};
}

} // namespace tuckwright
