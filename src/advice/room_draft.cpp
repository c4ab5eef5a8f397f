// SPDX-License-Identifier: GPL-3.0-or-later
#include "advice/room_draft.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "tuckwright/contract.hpp"
#include "tuckwright/units.hpp"

namespace tuckwright::advice {

namespace {

constexpr double turn_steps = 131072; // 2^17: a corner 100 mm away is off by less than a micrometre
constexpr Quaternion z_along_x{1, 1, 1, 1}; ///< carries z to x, x to y and y to z

/// 2 nm times a whole number: the centre between two faces on the grid is on the grid then.
double even(double half) { return from_nanometres(2 * to_nanometres(half)); }

double across(double u, double v) { return std::sqrt(u * u + v * v); }

} // namespace

double Draft::volume() const
{
    return posing == Posing::box ? 8 * half[0] * half[1] * half[2] : 2 * std::numbers::pi * half[0] * half[0] * half[1];
}

double Draft::log_volume() const { return std::log(volume()); }

double Draft::smallest() const
{
    return 2 * *std::min_element(half.begin(), half.begin() + static_cast<std::ptrdiff_t>(sizes()));
}

double Draft::largest_half() const { return *std::max_element(half.begin(), half.end()); }

std::array<Vec3, 3> axes_of(const Draft& draft, const Axes& frame)
{
    const double c = std::cos(draft.angle), s = std::sin(draft.angle);
    const Vec3 x = frame.axis(0), y = frame.axis(1);
    return {c * x + s * y, c * y - s * x, frame.axis(2)};
}

Hull hull_of(const Draft& draft, const Axes& frame)
{
    const auto [x, y, z] = axes_of(draft, frame);
    const auto columns = [](Vec3 a, Vec3 b, Vec3 c) {
        return Matrix3{{{a.x, b.x, c.x}, {a.y, b.y, c.y}, {a.z, b.z, c.z}}};
    };
    if (draft.posing == Posing::box) {
        return {Box{2 * draft.half[0], 2 * draft.half[1], 2 * draft.half[2]}, draft.center, columns(x, y, z), {}};
    }
    const Cylinder cylinder{2 * draft.half[0], 2 * draft.half[1]};
    return {cylinder, draft.center, draft.posing == Posing::standing ? columns(x, y, z) : columns(y, z, x), {}};
}

double reach_along(const Draft& draft, const Axes& frame, Vec3 direction)
{
    const auto axes = axes_of(draft, frame);
    const double u = dot(direction, axes[0]), v = dot(direction, axes[1]), w = dot(direction, axes[2]);
    switch (draft.posing) {
    case Posing::standing: return draft.half[0] * across(u, v) + draft.half[1] * std::abs(w);
    case Posing::lying: return draft.half[0] * across(v, w) + draft.half[1] * std::abs(u);
    case Posing::box: break;
    }
    return draft.half[0] * std::abs(u) + draft.half[1] * std::abs(v) + draft.half[2] * std::abs(w);
}

Reach reach_parts(const Draft& draft, const Axes& frame, Vec3 direction, double kink, unsigned signs)
{
    const auto axes = axes_of(draft, frame);
    const double u = dot(direction, axes[0]), v = dot(direction, axes[1]), w = dot(direction, axes[2]);
    const auto side = [&](double part, unsigned bit) {
        return std::abs(part) > kink ? std::copysign(1.0, part) : (signs & bit) != 0 ? -1.0 : 1.0;
    };
    Reach reach;
    if (draft.posing == Posing::standing) {
        reach.factor = {across(u, v), std::abs(w), 0};
        return reach;
    }
    const double along = side(u, 1U); // turning by a small angle adds v times it to u, and takes u times it from v
    if (draft.posing == Posing::lying) {
        const double round = across(v, w);
        reach.factor = {round, along * u, 0};
        reach.by_angle = draft.half[1] * along * v - (round > 0 ? draft.half[0] * v * u / round : 0);
        return reach;
    }
    const double beside = side(v, 2U);
    reach.factor = {along * u, beside * v, std::abs(w)};
    reach.by_angle = draft.half[0] * along * v - draft.half[1] * beside * u;
    return reach;
}

Quaternion turn_of(double angle)
{
    const double half = std::remainder(angle, 2 * std::numbers::pi) / 2;
    const double c = std::cos(half), s = std::sin(half);
    if (std::abs(c) >= std::abs(s)) {
        const auto part = std::llround(s / c * turn_steps);
        return part == 0 ? Quaternion{} : Quaternion{static_cast<std::int64_t>(turn_steps), 0, 0, part};
    }
    return {std::llround(c / s * turn_steps), 0, 0, static_cast<std::int64_t>(turn_steps)};
}

double rounded_angle(double angle)
{
    const Quaternion q = turn_of(angle);
    return 2 * std::atan2(static_cast<double>(q.z), static_cast<double>(q.w));
}

Solid solid_of(const Draft& draft, const Axes& frame, const std::array<double, 3>& less)
{
    const auto size = [&](std::size_t k) { return even(draft.half[k] - less[k]); };
    const Vec3 at{snap(draft.center.x), snap(draft.center.y), snap(draft.center.z)};
    Solid solid{Cylinder{size(0), size(1)}, {at, frame.turn}};
    if (draft.posing == Posing::standing) {
        return solid;
    }
    solid.pose.turn = compose(frame.turn, turn_of(draft.angle));
    if (draft.posing == Posing::lying) {
        solid.pose.turn = compose(solid.pose.turn, z_along_x);
    } else {
        solid.shape = Box{size(0), size(1), size(2)};
    }
    return solid;
}

} // namespace tuckwright::advice
