// SPDX-License-Identifier: GPL-3.0-or-later
#include "stacking/surroundings.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <numbers>

#include "stacking/direction.hpp"

namespace tuckwright::stacking {

namespace {

constexpr double lowered = 0.05;         ///< mm by which an item is lowered to see what carries it
constexpr double carried = -0.02;        ///< mm of overlap from which the lowered item counts as carried
constexpr double carried_on_a_slope = -0.001; ///< the same, for what lies against something steep and on nothing else
constexpr double middle = 1.0;           ///< mm from the axis that still count as the middle
constexpr double beside_height = 0.5;      ///< mm of common height from which two items are side by side
constexpr double neighbourly = 15.0;     ///< mm of air up to which one speaks of a neighbour
constexpr double very_near = 3.0;        ///< mm of air up to which a second neighbour in a vessel is worth its name
constexpr double middle_share = 0.05;    ///< of the bundle's radius, that still counts as its middle
constexpr double off_centre = 10.0;      ///< mm from the axis from which a thing lies on one side of the bundle
constexpr double opposite_cosine = -0.8; ///< seen from the axis, what lies opposite
constexpr double clearly_longer = 1.2;   ///< length over width from which a thing has a long side
constexpr double square_cosine = 1 - 1e-9;
constexpr double level_cosine = 0.03;
constexpr double upright_cosine = 0.9995;
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

/// The solids that have a wall beside them: not what lies beyond an open top, like a wide rim or a handle.
std::vector<Solid> below_the_rim(const PlacedCavity& cavity, const std::vector<Solid>& solids)
{
    const Vec3 up = column(rotation_matrix(cavity.pose.turn), 2);
    const double rim = dot(up, cavity.pose.center) + height_of(cavity.shape) / 2;
    std::vector<Solid> kept{solids.front()};
    for (std::size_t k = 1; k < solids.size(); ++k) {
        if (cavity.opens == Opening::closed || range_along({solids[k]}, up).low < rim - lowered) {
            kept.push_back(solids[k]);
        }
    }
    return kept;
}

/// What the container gives: its upright, where its floor is, and its axis.
struct Frame {
    Vec3 up{0, 0, 1};
    Vec3 on_axis;
    std::optional<double> floor;
    const PlacedCavity* cavity = nullptr;
};

/// Where the floor is on which things in a cavity stand: its own, or of what a sleeve stands in already.
std::optional<double> floor_of(const Replay& before, const Lodging& in, Vec3 up)
{
    const Bundle& bundle = before.bundle();
    const PlacedCavity& cavity = bundle.items[in.item].cavities[in.cavity];
    if (cavity.opens != Opening::both) {
        return dot(up, cavity.pose.center) - height_of(cavity.shape) / 2;
    }
    if (!before.placed(in.item)) {
        return std::nullopt;
    }
    const auto& around = bundle.items[in.item].in;
    return around ? floor_of(before, *around, up) : std::optional(0.0);
}

Frame frame_of(const Replay& before, std::size_t item)
{
    const Bundle& bundle = before.bundle();
    Frame frame;
    frame.up = upright_of_container(bundle, item);
    if (const auto& in = bundle.items[item].in) {
        frame.cavity = &bundle.items[in->item].cavities[in->cavity];
        frame.on_axis = frame.cavity->pose.center;
        frame.floor = floor_of(before, *in, frame.up);
        return frame;
    }
    frame.floor = 0;
    if (const auto* box = std::get_if<Box>(&bundle.envelope)) {
        frame.on_axis = {box->length / 2, box->width / 2, 0};
    }
    return frame;
}

/// The rectangle in which an item lies in a box bundle: the bundle's, or that of a cavity that stands square in it.
std::optional<Sides> sides_of(const Bundle& bundle, const Frame& frame, const std::vector<Solid>& own)
{
    const auto* whole = std::get_if<Box>(&bundle.envelope);
    Vec3 low, high;
    if (whole == nullptr) {
        return std::nullopt;
    }
    if (frame.cavity == nullptr) {
        high = {whole->length, whole->width, 0};
    } else {
        const Hull room = hull_of({frame.cavity->shape, frame.cavity->pose});
        const bool square =
            std::abs(room.rotation[0][0]) > square_cosine || std::abs(room.rotation[0][1]) > square_cosine;
        if (!std::holds_alternative<Box>(room.shape) || room.rotation[2][2] < square_cosine || !square) {
            return std::nullopt;
        }
        low = extent(room).low;
        high = extent(room).high;
    }
    const Range x = range_along(own, {1, 0, 0}), y = range_along(own, {0, 1, 0});
    return Sides{x.low - low.x, high.x - x.high, y.low - low.y, high.y - y.high};
}

/// Of the long side of what lies level, as seen from above.
std::optional<double> direction_of_long_side(const Solid& body)
{
    const Matrix3 m = rotation_matrix(body.pose.turn);
    std::array<double, 3> sizes{};
    if (const auto* box = std::get_if<Box>(&body.shape)) {
        sizes = {box->length, box->width, box->height};
    } else {
        const auto& cylinder = std::get<Cylinder>(body.shape);
        sizes = {cylinder.diameter, cylinder.diameter, cylinder.height};
    }
    Vec3 longest;
    double length = 0, width = 1e9;
    for (std::size_t k = 0; k < 3; ++k) {
        if (std::abs(m[2][k]) > level_cosine) {
            continue; // points up
        }
        width = std::min(width, sizes[k]);
        if (sizes[k] > length) {
            length = sizes[k];
            longest = column(m, k);
        }
    }
    const bool lying = std::holds_alternative<Cylinder>(body.shape) && std::abs(m[2][2]) <= level_cosine;
    if (lying) { // only its axis says where a cylinder points
        const auto& cylinder = std::get<Cylinder>(body.shape);
        const Vec3 axis = column(m, 2);
        length = std::max(cylinder.height, cylinder.diameter);
        width = std::min(cylinder.height, cylinder.diameter);
        longest = axis;
    }
    if (length < clearly_longer * width) {
        return std::nullopt;
    }
    const double degrees = std::atan2(longest.y, longest.x) * 180 / std::numbers::pi;
    return degrees < 0 ? degrees + 180 : degrees;
}

/// Where the ends are of what lies level and is far longer than wide and high, in a round cavity that stands.
std::optional<Span> span_of(const PlacedCavity& cavity, const Solid& body, double degrees)
{
    constexpr double far_longer = 2; // length over width
    const Hull hull = hull_of(body);
    const double angle = degrees * std::numbers::pi / 180;
    const Vec3 along{std::cos(angle), std::sin(angle), 0}, aside{-along.y, along.x, 0};
    const auto half = [&](Vec3 way) { return (support(hull, way) + support(hull, -1.0 * way)) / 2; };
    const double length = half(along), width = half(aside), radius = std::get<Cylinder>(cavity.shape).diameter / 2;
    if (length < far_longer * width || length < half({0, 0, 1})) {
        return std::nullopt;
    }
    const Vec3 from_axis{hull.center.x - cavity.pose.center.x, hull.center.y - cavity.pose.center.y, 0};
    const double off = std::abs(dot(from_axis, aside)) + width;
    const auto end = [&](double way) {
        const Vec3 at = from_axis + way * along;
        return Span::End{std::atan2(at.y, at.x) * 180 / std::numbers::pi, radius - std::hypot(dot(at, along), off)};
    };
    Span span{end(length), end(-length), 0};
    if (span.second.air < span.first.air) {
        std::swap(span.first, span.second);
    }
    span.middle_air = radius - std::hypot(std::max(0.0, std::abs(dot(from_axis, along)) - length), off);
    return span;
}

/// Where the open end of a vessel that lies points, as seen from above.
std::optional<double> direction_of_mouth(const PlacedItem& item)
{
    for (const PlacedCavity& cavity : item.cavities) {
        const Vec3 up = column(rotation_matrix(cavity.pose.turn), 2);
        if (cavity.opens == Opening::top && std::abs(up.z) <= level_cosine) {
            const double degrees = std::atan2(up.y, up.x) * 180 / std::numbers::pi;
            return degrees < 0 ? degrees + 360 : degrees;
        }
    }
    return std::nullopt;
}

/// How a thing leans in a container that stands; nothing for what does not lean.
std::optional<Lean> lean_of(const Frame& frame, const Solid& body)
{
    const Hull hull = hull_of(body);
    std::array<double, 3> sizes{};
    if (const auto* box = std::get_if<Box>(&body.shape)) {
        sizes = {box->length, box->width, box->height};
    } else {
        sizes[2] = std::get<Cylinder>(body.shape).height;
    }
    const auto longest = static_cast<std::size_t>(std::max_element(sizes.begin(), sizes.end()) - sizes.begin());
    Vec3 along = column(hull.rotation, longest);
    if (frame.up.z < upright_cosine || std::abs(along.z) < level_cosine || std::abs(along.z) > upright_cosine) {
        return std::nullopt;
    }
    along = (along.z < 0 ? -0.5 : 0.5) * sizes[longest] * along;
    const Vec3 base{frame.on_axis.x, frame.on_axis.y, frame.floor.value_or(0)};
    Lean lean{hull.center - along - base, hull.center + along - base, 0, 0};
    lean.top = support(hull, {0, 0, 1}) - base.z;
    lean.degrees = std::acos(2 * along.z / sizes[longest]) * 180 / std::numbers::pi;
    return lean;
}

/// Whether an item that carries another one, whose lowest point has that height, does so on the rim of its open mouth.
bool carries_on_rim(const Replay& before, std::size_t carrier, Vec3 up, double low)
{
    const PlacedItem& it = before.bundle().items[carrier];
    return std::any_of(it.cavities.begin(), it.cavities.end(), [&](const PlacedCavity& cavity) {
        const Vec3 axis = column(rotation_matrix(cavity.pose.turn), 2);
        const double rim = dot(up, cavity.pose.center) + height_of(cavity.shape) / 2;
        return cavity.opens != Opening::closed && dot(axis, up) > upright_cosine && std::abs(rim - low) < lowered;
    });
}

/// Where the one thing fixed to a standing cylinder's side is, seen from above.
std::optional<double> direction_of_part(const std::vector<Solid>& solids)
{
    constexpr double beside = 3; // mm from the axis
    const Solid& body = solids.front();
    if (!std::holds_alternative<Cylinder>(body.shape) ||
        std::abs(column(rotation_matrix(body.pose.turn), 2).z) < upright_cosine) {
        return std::nullopt;
    }
    std::optional<double> found;
    for (std::size_t k = 1; k < solids.size(); ++k) {
        const Vec3 away = solids[k].pose.center - body.pose.center;
        if (std::hypot(away.x, away.y) > beside) {
            if (found) {
                return std::nullopt;
            }
            found = std::atan2(away.y, away.x) * 180 / std::numbers::pi;
        }
    }
    return found;
}

/// Who is placed at the item's height in the same container, and does not carry it.
struct Level {
    std::vector<Neighbour> near;
    std::optional<std::size_t> opposite;
    bool alone = true;
};

Level look_around(const Replay& before, std::size_t item, const Frame& frame, const std::vector<Solid>& own,
                  const std::vector<std::size_t>& carriers)
{
    const auto& items = before.bundle().items;
    const auto& in = items[item].in;
    const Range height = range_along(own, frame.up);
    Level level;
    double largest = 0;
    for (const std::size_t other : before.contents(in ? std::optional(in->item) : std::nullopt)) {
        if (other == item || items[other].in != in) {
            continue;
        }
        const auto solids = solids_with_lid(before, other);
        const Range theirs = range_along(solids, frame.up);
        if (std::min(height.high, theirs.high) - std::max(height.low, theirs.low) < beside_height) {
            continue;
        }
        level.alone = false;
        if (!before.placed(other) || std::find(carriers.begin(), carriers.end(), other) != carriers.end()) {
            continue;
        }
        if (const double air = distance(own, solids, {}); air < neighbourly || !in) {
            level.near.push_back({other, air});
        }
        const auto aside = [&](const Solid& solid) { return Vec3{solid.pose.center.x, solid.pose.center.y, 0}; };
        const Vec3 here = aside(own.front()), there = aside(solids.front());
        const bool across = norm(here) > off_centre && norm(there) > off_centre &&
                            dot(here, there) < opposite_cosine * norm(here) * norm(there);
        if (across && volume_ml(solids.front().shape) > largest) {
            largest = volume_ml(solids.front().shape);
            level.opposite = other;
        }
    }
    std::stable_sort(level.near.begin(), level.near.end(),
                     [](const Neighbour& a, const Neighbour& b) { return a.air < b.air; });
    const double second = in ? very_near : neighbourly;
    const std::size_t named = level.near.size() > 1 && level.near[1].air < second ? 2 : 1;
    level.near.resize(std::min(named, level.near.size()));
    return level;
}

} // namespace

Surroundings surroundings_of(const Replay& before, std::size_t item)
{
    const Bundle& bundle = before.bundle();
    const PlacedItem& it = bundle.items[item];
    const Frame frame = frame_of(before, item);
    const std::vector<Solid> own = solids_with_lid(before, item);
    Surroundings seen;
    seen.on_floor = frame.floor && range_along(own, frame.up).low < *frame.floor + lowered;
    for (const double depth : {carried, carried_on_a_slope}) {
        for (const std::size_t other : before.obstacles(item)) {
            if (!seen.on_floor && distance(own, bundle.items[other].solids, -lowered * frame.up) < depth) {
                seen.on.push_back(other);
            }
        }
        if (!seen.on.empty()) {
            break;
        }
    }
    const Vec3 away = it.solids.front().pose.center - frame.on_axis;
    const auto* round = std::get_if<Cylinder>(&bundle.envelope);
    const double latitude = frame.cavity == nullptr && round != nullptr ? middle_share * round->diameter / 2 : 0;
    seen.off_axis = norm(away - dot(away, frame.up) * frame.up);
    seen.in_middle = seen.off_axis < std::max(middle, latitude);
    if (frame.cavity != nullptr) {
        seen.wall_air = air_to_wall(*frame.cavity, below_the_rim(*frame.cavity, own));
        const auto* body = std::get_if<Cylinder>(&it.solids.front().shape);
        const Vec3 axis = column(rotation_matrix(it.solids.front().pose.turn), 2);
        seen.all_round = body != nullptr && std::abs(dot(axis, frame.up)) > upright_cosine &&
                         std::holds_alternative<Cylinder>(frame.cavity->shape);
    } else if (round != nullptr) {
        seen.edge_air = air_to_wall({*round, {}, Opening::both}, own);
    }
    seen.sides = sides_of(bundle, frame, own);
    seen.clock = !seen.sides && frame.up.z > upright_cosine;
    seen.bearing = std::atan2(away.y, away.x) * 180 / std::numbers::pi;
    seen.long_side = seen.sides || seen.clock ? direction_of_long_side(it.solids.front()) : std::nullopt;
    seen.mouth = seen.sides || seen.clock ? direction_of_mouth(it) : std::nullopt;
    const auto* own_round = std::get_if<Cylinder>(&it.solids.front().shape);
    seen.is_axis = own_round != nullptr && own_round->height < own_round->diameter;
    if (seen.clock && seen.long_side && !seen.mouth && frame.cavity != nullptr &&
        std::holds_alternative<Cylinder>(frame.cavity->shape)) {
        seen.span = span_of(*frame.cavity, it.solids.front(), *seen.long_side);
    }
    seen.part = seen.sides || seen.clock ? direction_of_part(it.solids) : std::nullopt;
    seen.lean = lean_of(frame, it.solids.front());
    const double low = range_along(own, frame.up).low;
    std::copy_if(seen.on.begin(), seen.on.end(), std::back_inserter(seen.rims),
                 [&](std::size_t carrier) { return carries_on_rim(before, carrier, frame.up, low); });
    const Level level = look_around(before, item, frame, own, seen.on);
    seen.alone = level.alone;
    seen.beside = level.near;
    seen.opposite = frame.cavity == nullptr && round != nullptr ? level.opposite : std::nullopt;
    return seen;
}

} // namespace tuckwright::stacking
