// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <array>
#include <cmath>

#include "stacking/direction.hpp"
#include "stacking/narrow.hpp"
#include "stacking/plane_search.hpp"
#include "stacking/replay.hpp"
#include "tuckwright/stacking.hpp"
#include "tuckwright/units.hpp"

namespace tuckwright
{

namespace
{

using stacking::Direction;
using stacking::Replay;

constexpr double sure_gap = 1e-7;   ///< mm: air that rounding in doubles cannot have made up
constexpr double rounding = 1e-9;   ///< mm: what rounding in doubles may take from faces that lie on each other
constexpr double square_to = 1e-14; ///< how far a dot product of unit vectors may be from 0 or 1 by rounding
constexpr double normal_size = 1099511627776.0; ///< 2^40: normals are rounded to about as many parts
constexpr double touching = 1e-6;               ///< mm: with less air than this, a rounded normal may fail
constexpr double hopeless = -1e-7;              ///< mm: with more overlap than this no plane is worth giving

/// Whether the hull's extent along the unit direction is a plain sum of its sizes: all its axes are along or across.
bool is_square_to(const Hull& hull, Vec3 unit)
{
    const bool round = std::holds_alternative<Cylinder>(hull.shape);
    for (std::size_t k = round ? 2 : 0; k < 3; ++k) {
        const double along =
            std::abs(unit.x * hull.rotation[0][k] + unit.y * hull.rotation[1][k] + unit.z * hull.rotation[2][k]);
        if (along > square_to && along < 1 - square_to) {
            return false;
        }
    }
    return true;
}

/// Whether the direction separates the hulls beyond doubt: by clear air, or as flat faces that lie on each other.
bool separates(const Hull& first, const Hull& second, const Direction& normal)
{
    const Vec3 vector = stacking::to_vector(normal);
    const Vec3 unit = (1 / norm(vector)) * vector;
    const double air = -support(second, -1.0 * unit) - support(first, unit);
    return air >= sure_gap || (air >= -rounding && is_square_to(first, unit) && is_square_to(second, unit));
}

constexpr std::array<Direction, 3> world_axes{{{0, 0, 1}, {1, 0, 0}, {0, 1, 0}}};

/// The axes of both solids, which the exact check tries by itself besides the world's, either way.
std::vector<Direction> own_axes(const Solid& first, const Solid& second)
{
    std::vector<Direction> axes;
    for (const Solid* solid : {&first, &second}) {
        const bool round = std::holds_alternative<Cylinder>(solid->shape);
        for (std::size_t k = round ? 2 : 0; k < 3; ++k) {
            if (const auto axis = stacking::exact_axis(solid->pose.turn, k)) {
                axes.push_back(*axis);
            }
        }
    }
    return axes;
}

/// Whether one of the known axes separates the solids without opposing the direction (no direction: any will do).
bool known_axis_separates(const Solid& first, const Solid& second, const std::optional<Direction>& direction)
{
    const Hull a = hull_of(first), b = hull_of(second);
    const auto any_of = [&](const auto& axes) {
        return std::any_of(axes.begin(), axes.end(), [&](const Direction& axis) {
            for (const Direction& normal : {axis, stacking::opposite(axis)}) {
                if ((!direction || stacking::sign_of_dot(normal, *direction) >= 0) && separates(a, b, normal)) {
                    return true;
                }
            }
            return false;
        });
    };
    return any_of(world_axes) || any_of(own_axes(first, second)); // most things are separated by the world's
}

Direction rounded(Vec3 normal)
{
    return {std::llround(normal.x * normal_size), std::llround(normal.y * normal_size),
            std::llround(normal.z * normal_size)};
}

/// For parallel cylinders that touch along a line, no rounded normal will do: the exact one leads from axis to axis.
std::optional<Direction> from_axis_to_axis(const Solid& first, const Solid& second)
{
    const auto axis = stacking::exact_axis(first.pose.turn, 2), other = stacking::exact_axis(second.pose.turn, 2);
    const bool round = std::holds_alternative<Cylinder>(first.shape) && std::holds_alternative<Cylinder>(second.shape);
    if (!round || !axis || !other || (*axis != *other && *axis != stacking::opposite(*other))) {
        return std::nullopt;
    }
    const Vec3 &a = first.pose.center, &b = second.pose.center;
    return stacking::part_across({to_nanometres(b.x) - to_nanometres(a.x), to_nanometres(b.y) - to_nanometres(a.y),
                                  to_nanometres(b.z) - to_nanometres(a.z)},
                                 *axis);
}

/// Whole numbers for the normal that was found, exact where the solids touch as parallel cylinders do.
Direction whole_normal(const Solid& first, const Solid& second, const Separation& found)
{
    if (found.distance < touching) {
        const auto exact = from_axis_to_axis(first, second);
        if (exact && dot(stacking::to_vector(*exact), found.normal) > 0.999 * norm(stacking::to_vector(*exact))) {
            return *exact;
        }
    }
    return rounded(found.normal);
}

/// Turns the normal by the least whole step that makes it not oppose the direction.
Direction not_opposing(Direction normal, const Direction& direction)
{
    std::size_t longest = 0;
    for (std::size_t k = 1; k < 3; ++k) {
        if (std::abs(direction[k]) > std::abs(direction[longest])) {
            longest = k;
        }
    }
    const std::int64_t sign = direction[longest] > 0 ? 1 : -1;
    for (std::int64_t step = 1; stacking::sign_of_dot(normal, direction) < 0; step *= 2) {
        normal[longest] += sign * step;
    }
    return normal;
}

} // namespace

stacking::Parted stacking::parted(const Solid& first, const Solid& second)
{
    if (known_axis_separates(first, second, std::nullopt)) {
        return {true, std::nullopt};
    }
    const Separation found = separation(hull_of(first), hull_of(second));
    return found.distance >= hopeless ? Parted{true, whole_normal(first, second, found)} : Parted{};
}

stacking::Parted stacking::drawn_past(const Solid& moved, const Direction& direction, const Solid& standing,
                                      double bundle_size)
{
    if (known_axis_separates(moved, standing, direction)) {
        return {true, std::nullopt};
    }
    const Separation found = separation(drawn_in(moved, direction, bundle_size), hull_of(standing));
    return found.distance >= hopeless ? Parted{true, not_opposing(whole_normal(moved, standing, found), direction)}
                                      : Parted{};
}

namespace {

/// A plane that keeps a solid on the first of two straight moves, drawn away from where that ends, off another.
void add_plane_of_way(const Solid& moved, const Solid& standing, const Step& step, double size, SeparatingPlane names,
                      std::vector<SeparatingPlane>& planes)
{
    const Solid there = stacking::where_it_begins(moved, step.via);
    if (known_axis_separates(there, standing, step.direction)) {
        return;
    }
    const Separation found = separation(stacking::drawn_in(there, step.direction, size), hull_of(standing));
    if (found.distance >= hopeless) {
        names.normal = not_opposing(whole_normal(there, standing, found), step.direction);
        planes.push_back(names);
    }
}

/// And on the second, from there to its place.
void add_plane_of_move_aside(const Solid& moved, const Solid& standing, const Vec3& via, SeparatingPlane names,
                             std::vector<SeparatingPlane>& planes)
{
    const Hull way = hull_of(moved, via), other = hull_of(standing);
    const auto any_parts = [&](const auto& axes) {
        return std::any_of(axes.begin(), axes.end(), [&](const Direction& axis) {
            return separates(way, other, axis) || separates(way, other, stacking::opposite(axis));
        });
    };
    if (any_parts(world_axes) || any_parts(own_axes(moved, standing))) {
        return;
    }
    const Separation found = separation(way, other);
    if (found.distance >= hopeless) {
        names.normal = whole_normal(moved, standing, found);
        planes.push_back(names);
    }
}

void add_step_planes(const Replay& replay, const Step& step, double size, std::vector<SeparatingPlane>& planes)
{
    const auto& items = replay.bundle().items;
    const auto obstacles = replay.obstacles(step.item);
    for (const std::size_t mover : replay.group(step.item)) {
        for (std::size_t m = 0; m < items[mover].solids.size(); ++m) {
            const Solid& moved = items[mover].solids[m];
            for (const std::size_t obstacle : obstacles) {
                for (std::size_t o = 0; o < items[obstacle].solids.size(); ++o) {
                    const Solid& standing = items[obstacle].solids[o];
                    const SeparatingPlane names{mover, m, obstacle, o, {}};
                    add_plane_of_way(moved, standing, step, size, names, planes);
                    if (step.via) {
                        add_plane_of_move_aside(moved, standing, *step.via, names, planes);
                    }
                }
            }
        }
    }
}

void add_pair_planes(const Bundle& bundle, std::size_t first, std::size_t second, std::vector<SeparatingPlane>& planes)
{
    const auto &a = bundle.items[first].solids, &b = bundle.items[second].solids;
    for (std::size_t i = 0; i < a.size(); ++i) {
        for (std::size_t j = 0; j < b.size(); ++j) {
            if (const auto pair = stacking::parted(a[i], b[j]); pair.normal) {
                planes.push_back({first, i, second, j, *pair.normal});
            }
        }
    }
}

} // namespace

std::vector<SeparatingPlane> step_planes(const Bundle& bundle, const std::vector<Step>& steps)
{
    std::vector<SeparatingPlane> planes;
    const double size = stacking::size_of(bundle);
    Replay replay(bundle);
    for (const Step& step : steps) {
        add_step_planes(replay, step, size, planes);
        replay.place(step.item);
    }
    return planes;
}

std::vector<SeparatingPlane> pair_planes(const Bundle& bundle)
{
    std::vector<SeparatingPlane> planes;
    for (std::size_t first = 0; first < bundle.items.size(); ++first) {
        for (std::size_t second = first + 1; second < bundle.items.size(); ++second) {
            if (!stacking::is_within(bundle, first, second) && !stacking::is_within(bundle, second, first)) {
                add_pair_planes(bundle, first, second, planes);
            }
        }
    }
    return planes;
}

} // namespace tuckwright
