// SPDX-License-Identifier: GPL-3.0-or-later
#include "stacking/narrow.hpp"

#include <algorithm>
#include <cmath>
#include <functional>
#include <numbers>

#include "tuckwright/geometry.hpp"
#include "tuckwright/units.hpp"

namespace tuckwright::stacking {

namespace {

using Aside = std::array<double, 2>; ///< across the cavity's axis, along its own x and y

constexpr double spare = 1e-6; ///< mm kept to the opening's edge, more than rounding to the grid takes
constexpr double snug = -1e-9; ///< mm: in the middle, where nothing is rounded, it may fill the opening to the full
constexpr int round_about = 16;
constexpr double square_to = 1e-12; ///< an axis that is one of the world's, up to rounding

/// The opening less the clearance, and what is to pass it, in the frame of the cavity.
class Passage {
public:
    Passage(const Bundle& bundle, const PlacedCavity& cavity, const std::vector<Solid>& solids)
        : neck_(neck_of(cavity)), frame_(rotation_matrix(cavity.pose.turn))
    {
        const double less = bundle.clearance;
        if (const auto* round = std::get_if<Cylinder>(&neck_.shape)) {
            half_ = {round->diameter / 2 - less, 0};
        } else {
            const auto& box = std::get<Box>(neck_.shape);
            half_ = {box.length / 2 - less, box.width / 2 - less};
        }
        for (const Solid& solid : solids) {
            is_round() ? add_outline(solid) : add_reaches(solid);
        }
    }

    /// Whether it passes, moved aside so far, with that much kept to the edge.
    bool passes(Aside by, double kept) const
    {
        return std::all_of(outline_.begin(), outline_.end(), [&](const std::array<double, 3>& part) {
            const double x = part[0] + by[0], y = part[1] + by[1];
            return is_round() ? std::hypot(x, y) + part[2] <= half_[0] - kept
                              : std::abs(x) <= half_[0] - kept && std::abs(y) <= half_[1] - kept;
        });
    }

    /// What brings the whole to the middle of the opening.
    Aside to_middle() const
    {
        if (is_round()) {
            const auto circle = enclosing_circle(outline_);
            return {-circle[0], -circle[1]};
        }
        Aside low{1e300, 1e300}, high{-1e300, -1e300};
        for (const auto& part : outline_) {
            for (std::size_t k = 0; k < 2; ++k) {
                low[k] = std::min(low[k], part[k]);
                high[k] = std::max(high[k], part[k]);
            }
        }
        return {-(low[0] + high[0]) / 2, -(low[1] + high[1]) / 2};
    }

    double width() const { return 2 * std::max(half_[0], half_[1]); }

    /// In the world, on the grid. Where the axis is none of the world's, rounding may lead a nanometre into the floor:
    /// then it lies a little above that.
    Vec3 in_world(Aside by) const
    {
        constexpr double lift = 2e-6;
        const Vec3 axis = along(2);
        const bool square = std::max({std::abs(axis.x), std::abs(axis.y), std::abs(axis.z)}) > 1 - square_to;
        const Vec3 v = by[0] * along(0) + by[1] * along(1) + (square ? 0 : lift) * axis;
        return {snap(v.x), snap(v.y), snap(v.z)};
    }

private:
    bool is_round() const { return std::holds_alternative<Cylinder>(neck_.shape); }
    Vec3 along(std::size_t k) const { return {frame_[0][k], frame_[1][k], frame_[2][k]}; }
    Aside seen(Vec3 point) const
    {
        const Vec3 from = point - neck_.pose.center;
        return {dot(from, along(0)), dot(from, along(1))};
    }

    /// Discs that hold what is seen of the solid along the axis: one, or its corners.
    void add_outline(const Solid& solid)
    {
        const Matrix3 m = rotation_matrix(solid.pose.turn);
        const auto* cylinder = std::get_if<Cylinder>(&solid.shape);
        Vec3 half;
        if (cylinder != nullptr) {
            const Vec3 own{m[0][2], m[1][2], m[2][2]};
            if (std::abs(dot(own, along(2))) > 1 - square_to) {
                const Aside at = seen(solid.pose.center);
                outline_.push_back({at[0], at[1], cylinder->diameter / 2});
                return;
            }
            half = {cylinder->diameter / 2, cylinder->diameter / 2, cylinder->height / 2};
            add_lying(solid, half, dot(own, along(0)), dot(own, along(1)));
            return;
        }
        const auto& box = std::get<Box>(solid.shape);
        half = 0.5 * Vec3{box.length, box.width, box.height};
        for (int corner = 0; corner < 8; ++corner) {
            Vec3 p = solid.pose.center;
            const std::array<double, 3> sides{half.x, half.y, half.z};
            for (std::size_t k = 0; k < 3; ++k) {
                p = p + ((corner >> k & 1) != 0 ? sides[k] : -sides[k]) * Vec3{m[0][k], m[1][k], m[2][k]};
            }
            outline_.push_back({seen(p)[0], seen(p)[1], 0});
        }
    }

    /// A cylinder across the axis is seen as a rectangle; one at a slant lies within that.
    void add_lying(const Solid& solid, Vec3 half, double x, double y)
    {
        const double across = std::hypot(x, y), slope = std::sqrt(std::max(0.0, 1 - across * across));
        const double long_half = half.z * across + half.x * slope;
        const Aside at = seen(solid.pose.center), way{x / across, y / across};
        for (const double u : {-long_half, long_half}) {
            for (const double v : {-half.x, half.x}) {
                outline_.push_back({at[0] + u * way[0] - v * way[1], at[1] + u * way[1] + v * way[0], 0});
            }
        }
    }

    /// The corners of the rectangle, square to the opening, that what is seen of the solid just fills.
    void add_reaches(const Solid& solid)
    {
        const Hull hull = hull_of(solid);
        const Aside at = seen(solid.pose.center);
        std::array<Aside, 2> ends{};
        for (std::size_t k = 0; k < 2; ++k) {
            const double reach = support(hull, along(k)) - dot(solid.pose.center, along(k));
            ends[k] = {at[k] - reach, at[k] + reach};
        }
        outline_.push_back({ends[0][0], ends[1][0], 0});
        outline_.push_back({ends[0][1], ends[1][1], 0});
    }

    Solid neck_;
    Matrix3 frame_;
    Aside half_{};
    std::vector<std::array<double, 3>> outline_; ///< x, y, radius
};

/// How far one can go from a place that passes: the share of the way to the other, which may pass or not.
Aside farthest(const Passage& passage, Aside from, Aside to)
{
    const auto at = [&](double share) {
        return Aside{from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1])};
    };
    double low = 0, high = 1;
    for (int halving = 0; halving < 40; ++halving) {
        const double middle = (low + high) / 2;
        (passage.passes(at(middle), spare) ? low : high) = middle;
    }
    return at(low);
}

/// Places from which it may be moved aside: the middle, as near to its own place as it goes, and all round.
std::vector<Aside> places_under(const Passage& passage)
{
    const Aside middle = passage.to_middle();
    if (!passage.passes(middle, spare)) {
        return passage.passes(middle, snug) ? std::vector<Aside>{middle} : std::vector<Aside>{};
    }
    std::vector<Aside> places{middle, farthest(passage, middle, {0, 0})};
    for (int k = 0; k < round_about; ++k) {
        const double angle = 2 * std::numbers::pi * k / round_about;
        const Aside beyond{middle[0] + passage.width() * std::cos(angle),
                           middle[1] + passage.width() * std::sin(angle)};
        const Aside far = farthest(passage, middle, beyond);
        places.push_back(far);
        places.push_back({(middle[0] + far[0]) / 2, (middle[1] + far[1]) / 2});
    }
    return places;
}

} // namespace

Solid where_it_begins(const Solid& solid, const std::optional<Vec3>& via)
{
    Solid there = solid;
    there.pose.center = via ? solid.pose.center + *via : solid.pose.center;
    return there;
}

const PlacedCavity* narrow_cavity(const Bundle& bundle, std::size_t item)
{
    const auto& in = bundle.items[item].in;
    if (!in) {
        return nullptr;
    }
    const PlacedCavity& cavity = bundle.items[in->item].cavities[in->cavity];
    return cavity.neck ? &cavity : nullptr;
}

std::vector<Way> ways_of(const Replay& complete, std::size_t item)
{
    const Bundle& bundle = complete.bundle();
    std::vector<Way> ways;
    for (const Direction& direction : ways_in(bundle, item, true)) {
        ways.push_back({direction, std::nullopt});
    }
    const PlacedCavity* cavity = narrow_cavity(bundle, item);
    if (cavity == nullptr) {
        return ways;
    }
    std::vector<Solid> solids;
    for (const std::size_t member : complete.group(item)) {
        const auto& own = bundle.items[member].solids;
        solids.insert(solids.end(), own.begin(), own.end());
    }
    const Passage passage(bundle, *cavity, solids);
    const Direction inward = ways.front().direction;
    if (!passage.passes({0, 0}, snug)) {
        ways.clear();
    }
    for (const Aside place : places_under(passage)) {
        ways.push_back({inward, passage.in_world(place)});
    }
    return ways.empty() ? std::vector<Way>{{inward, std::nullopt}} : ways;
}

} // namespace tuckwright::stacking
