// SPDX-License-Identifier: GPL-3.0-or-later
#include "stacking/surroundings.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "stacking/direction.hpp"

namespace tuckwright::stacking
{

namespace
{

constexpr double lowered = 0.05;          ///< mm by which an item is lowered to see what carries it
constexpr double carried = -0.02;         ///< mm of overlap from which the lowered item counts as carried
constexpr double middle = 1.0;            ///< mm from the axis that still count as the middle
constexpr double same_height = 0.5;       ///< mm of common height from which two items are side by side
constexpr double neighbourly = 15.0;      ///< mm of air up to which one speaks of a neighbour
constexpr double flat_share = 0.4;        ///< height over width below which a thing is called flat
constexpr double upright_cosine = 0.9995; ///< within two degrees
constexpr double level_cosine = 0.03;
constexpr int rim_points = 1440;

Vec3 column(const Matrix3& m, std::size_t k) { return {m[0][k], m[1][k], m[2][k]}; }

/// The item's own solids and its shut lid's.
std::vector<Solid> solids_with_lid(const Replay& replay, std::size_t item)
{
    std::vector<Solid> solids = replay.bundle().items[item].solids;
    if (const auto lid = replay.lid(item)) {
        const auto& more = replay.bundle().items[*lid].solids;
        solids.insert(solids.end(), more.begin(), more.end());
    }
    return solids;
}

struct Range {
    double low = 1e9, high = -1e9;
};

Range range_along(const std::vector<Solid>& solids, Vec3 unit)
{
    Range range;
    for (const Solid& solid : solids) {
        const Hull hull = hull_of(solid);
        range.low = std::min(range.low, -support(hull, -1.0 * unit));
        range.high = std::max(range.high, support(hull, unit));
    }
    return range;
}

double distance(const std::vector<Solid>& first, const std::vector<Solid>& second, Vec3 shift)
{
    double least = 1e9;
    for (Solid moved : first) {
        moved.pose.center = moved.pose.center + shift;
        for (const Solid& other : second) {
            least = std::min(least, separation(hull_of(moved), hull_of(other)).distance);
        }
    }
    return least;
}

/// How far a solid reaches from the line through `origin` along the unit vector.
double reach_from_line(const Solid& solid, Vec3 origin, Vec3 unit)
{
    const Hull hull = hull_of(solid);
    const auto from_line = [&](Vec3 point) {
        const Vec3 away = point - origin;
        return norm(away - dot(away, unit) * unit);
    };
    const Vec3 x = column(hull.rotation, 0), y = column(hull.rotation, 1), z = column(hull.rotation, 2);
    double reach = 0;
    if (const auto* box = std::get_if<Box>(&solid.shape)) {
        for (int corner = 0; corner < 8; ++corner) {
            const auto half = [&](int bit, double size) { return (corner & bit ? 0.5 : -0.5) * size; };
            reach = std::max(reach, from_line(hull.center + half(1, box->length) * x + half(2, box->width) * y +
                                              half(4, box->height) * z));
        }
        return reach;
    }
    const auto& cylinder = std::get<Cylinder>(solid.shape);
    if (norm(cross(z, unit)) < 1e-9) {
        return from_line(hull.center) + cylinder.diameter / 2;
    }
    for (int k = 0; k < rim_points; ++k) {
        const double angle = 2 * std::numbers::pi * k / rim_points;
        const Vec3 rim = cylinder.diameter / 2 * (std::cos(angle) * x + std::sin(angle) * y);
        for (const double end : {-0.5, 0.5}) {
            reach = std::max(reach, from_line(hull.center + rim + end * cylinder.height * z));
        }
    }
    return reach;
}

/// Air between solids and the side walls of a cavity, at the nearest place.
double air_to_wall(const PlacedCavity& cavity, const std::vector<Solid>& solids)
{
    const Matrix3 m = rotation_matrix(cavity.pose.turn);
    double air = 1e9;
    if (const auto* cylinder = std::get_if<Cylinder>(&cavity.shape)) {
        for (const Solid& solid : solids) {
            air = std::min(air, cylinder->diameter / 2 - reach_from_line(solid, cavity.pose.center, column(m, 2)));
        }
        return air;
    }
    const auto& box = std::get<Box>(cavity.shape);
    const double half[2] = {box.length / 2, box.width / 2};
    for (std::size_t k = 0; k < 2; ++k) {
        const Vec3 axis = column(m, k);
        const Range range = range_along(solids, axis);
        const double center = dot(axis, cavity.pose.center);
        air = std::min({air, center + half[k] - range.high, range.low - (center - half[k])});
    }
    return air;
}

Posture posture_of(const PlacedItem& item, Vec3 up, bool has_lid)
{
    const double along = dot(column(rotation_matrix(item.solids.front().pose.turn), 2), up);
    const bool same_both_ways = item.cavities.empty() && !item.upright && !has_lid;
    if (std::abs(along) >= upright_cosine) {
        return along > 0 || same_both_ways ? Posture::standing : Posture::upside_down;
    }
    return std::abs(along) <= level_cosine ? Posture::lying : Posture::leaning;
}

bool is_flat(const Shape& shape)
{
    if (const auto* cylinder = std::get_if<Cylinder>(&shape)) {
        return cylinder->height < flat_share * cylinder->diameter;
    }
    const auto& box = std::get<Box>(shape);
    return box.height < flat_share * std::min(box.length, box.width);
}

/// What the container gives: its upright, where its floor is, and its axis.
struct Frame {
    Vec3 up{0, 0, 1};
    Vec3 on_axis;
    std::optional<double> floor;
    const PlacedCavity* cavity = nullptr;
};

Frame frame_of(const Bundle& bundle, std::size_t item)
{
    Frame frame;
    frame.up = upright_of_container(bundle, item);
    if (const auto& in = bundle.items[item].in) {
        frame.cavity = &bundle.items[in->item].cavities[in->cavity];
        frame.on_axis = frame.cavity->pose.center;
        if (frame.cavity->opens != Opening::both) {
            frame.floor = dot(frame.up, frame.on_axis) - height_of(frame.cavity->shape) / 2;
        }
        return frame;
    }
    frame.floor = 0;
    if (const auto* box = std::get_if<Box>(&bundle.envelope)) {
        frame.on_axis = {box->length / 2, box->width / 2, 0};
    }
    return frame;
}

void look_at_neighbours(const Replay& before, std::size_t item, const Frame& frame, const std::vector<Solid>& own,
                        Surroundings& seen)
{
    const auto& in = before.bundle().items[item].in;
    const Range height = range_along(own, frame.up);
    double nearest = neighbourly;
    seen.alone = true;
    for (const std::size_t other : before.contents(in ? std::optional(in->item) : std::nullopt)) {
        if (other == item || before.bundle().items[other].in != in) {
            continue;
        }
        const auto solids = solids_with_lid(before, other);
        const Range theirs = range_along(solids, frame.up);
        if (std::min(height.high, theirs.high) - std::max(height.low, theirs.low) < same_height) {
            continue;
        }
        seen.alone = false;
        const bool carries = std::find(seen.on.begin(), seen.on.end(), other) != seen.on.end();
        if (!before.placed(other) || carries) {
            continue;
        }
        const double air = distance(own, solids, {});
        if (air < nearest) {
            nearest = air;
            seen.beside = other;
            seen.beside_air = air;
        }
    }
}

} // namespace

namespace {

/// Whether a box that does not stand has its longest side upright.
bool longest_side_up(const Solid& solid, Vec3 up)
{
    const auto* box = std::get_if<Box>(&solid.shape);
    if (box == nullptr || box->height >= std::max(box->length, box->width)) {
        return false;
    }
    const Matrix3 m = rotation_matrix(solid.pose.turn);
    const std::size_t k = box->length >= box->width ? 0 : 1;
    return std::abs(m[0][k] * up.x + m[1][k] * up.y + m[2][k] * up.z) > 0.9;
}

} // namespace

Surroundings surroundings_of(const Replay& before, std::size_t item)
{
    const Bundle& bundle = before.bundle();
    const PlacedItem& it = bundle.items[item];
    const Frame frame = frame_of(bundle, item);
    const std::vector<Solid> own = solids_with_lid(before, item);
    Surroundings seen;
    seen.posture = posture_of(it, frame.up, before.lid(item).has_value());
    seen.flat = is_flat(it.solids.front().shape);
    seen.on_end = seen.posture == Posture::lying && longest_side_up(it.solids.front(), frame.up);
    seen.on_floor = frame.floor && range_along(own, frame.up).low < *frame.floor + lowered;
    for (const std::size_t other : before.obstacles(item)) {
        if (!seen.on_floor && distance(own, bundle.items[other].solids, -lowered * frame.up) < carried) {
            seen.on.push_back(other);
        }
    }
    const Vec3 away = it.solids.front().pose.center - frame.on_axis;
    seen.in_middle = norm(away - dot(away, frame.up) * frame.up) < middle;
    if (frame.cavity != nullptr) {
        seen.wall_air = air_to_wall(*frame.cavity, own);
        seen.wall_is_round = std::holds_alternative<Cylinder>(frame.cavity->shape);
    }
    look_at_neighbours(before, item, frame, own, seen);
    return seen;
}

} // namespace tuckwright::stacking
