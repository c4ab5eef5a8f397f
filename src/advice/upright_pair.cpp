// SPDX-License-Identifier: GPL-3.0-or-later
#include "advice/upright_pair.hpp"

#include <algorithm>
#include <cmath>

namespace tuckwright::advice {

namespace {

constexpr double along_it = 1 - 1e-12; ///< cosine of axes that are one
constexpr double square_to = 1e-12;    ///< and of axes at right angles

Vec3 column(const Hull& hull, std::size_t k) { return {hull.rotation[0][k], hull.rotation[1][k], hull.rotation[2][k]}; }

/// A solid seen along an axis: a disc, or a rectangle with its own directions. A barrel is a cylinder that lies across the
/// axis: a rectangle that is as wide as that only half-way up.
struct Prism {
    bool round = true, barrel = false;
    double radius = 0, height = 0;
    Vec3 u, v;
    double a = 0, b = 0;
    Vec3 center;
};

std::optional<Prism> prism_of(const Hull& hull, Vec3 axis)
{
    Prism prism;
    prism.center = hull.center + 0.5 * hull.sweep;
    const double swept = std::abs(dot(hull.sweep, axis));
    if (norm(hull.sweep) > swept + 1e-12) {
        return std::nullopt; // dragged aside
    }
    if (const auto* cylinder = std::get_if<Cylinder>(&hull.shape)) {
        const double along = std::abs(dot(column(hull, 2), axis));
        if (cylinder->foot == 0 && along < square_to && swept == 0) {
            prism = {false, true, 0, cylinder->diameter, column(hull, 2), cross(axis, column(hull, 2)), 0, 0, hull.center};
            prism.a = cylinder->height / 2;
            prism.b = cylinder->diameter / 2;
            return prism;
        }
        if (cylinder->foot != 0 || along < along_it) {
            return std::nullopt;
        }
        prism.radius = cylinder->diameter / 2;
        prism.height = cylinder->height + swept;
        return prism;
    }
    const auto& box = std::get<Box>(hull.shape);
    const double sides[3] = {box.length, box.width, box.height};
    for (std::size_t k = 0; k < 3; ++k) {
        if (std::abs(dot(column(hull, k), axis)) >= along_it) {
            const std::size_t i = (k + 1) % 3, j = (k + 2) % 3;
            prism.round = false;
            prism.height = sides[k] + swept;
            prism.u = column(hull, i);
            prism.v = column(hull, j);
            prism.a = sides[i] / 2;
            prism.b = sides[j] / 2;
            return prism;
        }
    }
    return std::nullopt;
}

struct Way {
    Vec3 normal;
    double distance = 0;
};

/// From a disc to a disc or rectangle, across the axis.
Way across(const Prism& disc, const Prism& other, Vec3 axis, Vec3 spare)
{
    const Vec3 between = other.center - disc.center, flat = between - dot(between, axis) * axis;
    if (other.round) {
        const double off = norm(flat);
        return {off > 1e-12 ? (1 / off) * flat : spare, off - disc.radius - other.radius};
    }
    const double u = -dot(flat, other.u), v = -dot(flat, other.v); // the disc, seen from the rectangle
    const double past_u = std::abs(u) - other.a, past_v = std::abs(v) - other.b;
    if (past_u > 0 && past_v > 0) {
        const double off = std::hypot(past_u, past_v);
        return {(-std::copysign(past_u, u) / off) * other.u + (-std::copysign(past_v, v) / off) * other.v,
                off - disc.radius};
    }
    return past_u > past_v ? Way{-std::copysign(1.0, u) * other.u, past_u - disc.radius}
                           : Way{-std::copysign(1.0, v) * other.v, past_v - disc.radius};
}

/// Whether a disc and a barrel are nearest to each other half-way up the barrel, or under or over its middle line.
bool is_plain(const Prism& disc, const Prism& barrel, Vec3 axis, Vec3 spare, double level, double upright)
{
    if (level > 0) {
        return std::abs(dot(barrel.center - disc.center, axis)) <= disc.height / 2;
    }
    Prism line = barrel;
    line.b = 0;
    return upright > 0 && across(disc, line, axis, spare).distance <= 0;
}

/// From a disc to what else is seen along its axis.
std::optional<Vec3> from_disc(const Prism& disc, const Prism& other, Vec3 axis, Vec3 spare)
{
    const Way level = across(disc, other, axis, spare);
    const double rise = dot(other.center - disc.center, axis);
    const Way upright{std::copysign(1.0, rise) * axis, std::abs(rise) - (disc.height + other.height) / 2};
    if (other.barrel && !is_plain(disc, other, axis, spare, level.distance, upright.distance)) {
        return std::nullopt;
    }
    if (level.distance > 0 && upright.distance > 0) {
        const double both = std::hypot(level.distance, upright.distance);
        return (level.distance / both) * level.normal + (upright.distance / both) * upright.normal;
    }
    return level.distance > upright.distance ? level.normal : upright.normal;
}

} // namespace

std::optional<Vec3> upright_normal(const Hull& first, const Hull& second)
{
    for (const bool swapped : {false, true}) {
        const Hull &disc = swapped ? second : first, &other = swapped ? first : second;
        if (!std::holds_alternative<Cylinder>(disc.shape)) {
            continue;
        }
        const Vec3 axis = column(disc, 2);
        const auto a = prism_of(disc, axis), b = prism_of(other, axis);
        if (a && b) {
            if (const auto normal = from_disc(*a, *b, axis, column(disc, 0))) {
                return swapped ? -1.0 * *normal : *normal;
            }
        }
    }
    return std::nullopt;
}

} // namespace tuckwright::advice
