// SPDX-License-Identifier: GPL-3.0-or-later
#include "solve/rests.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

#include "tuckwright/geometry.hpp"
#include "tuckwright/tolerance.hpp"
#include "tuckwright/units.hpp"

namespace tuckwright {

namespace {

constexpr double sure = 2e-5; // mm: how far inside both solids the shared point must lie to survive rounding

Vec3 into_own_frame(const Hull& hull, Vec3 p)
{
    const Vec3 d = p - hull.center;
    const Matrix3& m = hull.rotation;
    return {m[0][0] * d.x + m[1][0] * d.y + m[2][0] * d.z, m[0][1] * d.x + m[1][1] * d.y + m[2][1] * d.z,
            m[0][2] * d.x + m[1][2] * d.y + m[2][2] * d.z};
}

/// Distance of a point to the nearest face of a solid; negative outside.
double inner_depth(const Hull& hull, Vec3 p)
{
    const Vec3 q = into_own_frame(hull, p);
    if (const auto* c = std::get_if<Cylinder>(&hull.shape)) {
        return std::min(c->height / 2 - std::abs(q.z), c->diameter / 2 - std::hypot(q.x, q.y));
    }
    const auto& b = std::get<Box>(hull.shape);
    return std::min({b.length / 2 - std::abs(q.x), b.width / 2 - std::abs(q.y), b.height / 2 - std::abs(q.z)});
}

/// A point as deep as can be found in both hulls, climbing from where they are nearest; nothing if none is surely inside.
std::optional<Vec3> shared_point(const Hull& a, const Hull& b)
{
    const auto depth = [&](Vec3 p) { return std::min(inner_depth(a, p), inner_depth(b, p)); };
    Vec3 best = separation(a, b).point;
    double deepest = depth(best);
    const Vec3 middle = 0.5 * (a.center + b.center);
    for (const Vec3 start : {a.center, b.center, middle}) {
        if (depth(start) > deepest) {
            best = start;
            deepest = depth(start);
        }
    }
    // The drop is vertical, so most shared regions are thin slices: level steps are longer than upright ones.
    for (double step = 20; step > 1e-5; step *= 0.7) {
        for (int k = 0; k < 12; ++k) {
            const double angle = k * 0.5235987755982988;
            for (const double rise : {0.0, 1.0, -1.0}) {
                const Vec3 p{best.x + (rise == 0 || k > 0 ? step * std::cos(angle) : 0),
                             best.y + (rise == 0 || k > 0 ? step * std::sin(angle) : 0), best.z + rise * step};
                if (depth(p) > deepest) {
                    best = p;
                    deepest = depth(p);
                }
            }
        }
    }
    best = {snap(best.x), snap(best.y), snap(best.z)};
    return depth(best) > sure ? std::optional(best) : std::nullopt;
}

bool holds(const Bundle& bundle, std::size_t vessel, std::size_t item)
{
    for (auto in = bundle.items[item].in; in; in = bundle.items[in->item].in) {
        if (in->item == vessel) {
            return true;
        }
    }
    return false;
}

/// Whether a lowered solid leaves the room that it lies in, through the floor or a wall that the drop leads to.
bool leaves(const Hull& lowered, const Shape& room, const Pose& pose, Opening opens, double clearance)
{
    const Hull walls = hull_of({room, pose});
    const auto axis = [&](std::size_t k) {
        return Vec3{walls.rotation[0][k], walls.rotation[1][k], walls.rotation[2][k]};
    };
    const auto beyond = [&](Vec3 n, double half) {
        return support(lowered, n) - dot(n, pose.center) > half + sure;
    };
    const double half_height = height_of(room) / 2;
    const Vec3 up = axis(2);
    if ((opens != Opening::both && beyond(-1.0 * up, half_height)) || (opens == Opening::closed && beyond(up, half_height))) {
        return true;
    }
    if (const auto* b = std::get_if<Box>(&room)) {
        const double x = b->length / 2 - clearance, y = b->width / 2 - clearance;
        return beyond(axis(0), x) || beyond(-1.0 * axis(0), x) || beyond(axis(1), y) || beyond(-1.0 * axis(1), y);
    }
    const Vec3 down = Vec3{0, 0, -1} - dot(Vec3{0, 0, -1}, up) * up;
    if (norm(down) < 0.5) {
        return false; // the room stands: its side walls do not stop a drop
    }
    // Points of the lowered solid that are farthest from the room's axis, looked for over directions below.
    const double radius = std::get<Cylinder>(room).diameter / 2 - clearance;
    const Vec3 side = cross(up, down);
    for (int k = -20; k <= 20; ++k) {
        const double angle = k * 0.075;
        const Vec3 n = std::cos(angle) * down + std::sin(angle) * side;
        if (beyond(n, radius)) {
            return true;
        }
    }
    // Corners between two directions, such as a box's edges, show up as support points.
    for (int k = -20; k <= 20; ++k) {
        const double angle = k * 0.075;
        const Vec3 n = std::cos(angle) * down + std::sin(angle) * side;
        const Vec3 d = support_point(lowered, n) - pose.center;
        if (norm(d - dot(d, up) * up) > radius + sure) {
            return true;
        }
    }
    return false;
}

/// Whether the drop would take a solid out of any of its containers: the direct one may be a sleeve without a floor.
bool rests_on_container(const Bundle& bundle, const PlacedItem& item, const Hull& lowered)
{
    for (auto in = item.in; in; in = bundle.items[in->item].in) {
        const PlacedCavity& cavity = bundle.items[in->item].cavities[in->cavity];
        if (leaves(lowered, cavity.shape, cavity.pose, cavity.opens, bundle.clearance)) {
            return true;
        }
    }
    return extent(lowered).low.z < -sure;
}

std::optional<Rest> rest_of(const Bundle& bundle, std::size_t index)
{
    const PlacedItem& item = bundle.items[index];
    std::vector<Hull> lowered;
    for (const Solid& part : item.solids) {
        lowered.push_back(hull_of(part));
        lowered.back().center.z -= tolerance::rest_drop;
    }
    for (const Hull& part : lowered) {
        if (rests_on_container(bundle, item, part)) {
            return Rest{index, std::nullopt, {}};
        }
    }
    for (std::size_t other = 0; other < bundle.items.size(); ++other) {
        const bool own_lid = bundle.items[other].closes == index;
        if (other == index || own_lid || holds(bundle, index, other) || holds(bundle, other, index)) {
            continue;
        }
        for (const Solid& under : bundle.items[other].solids) {
            const Hull below = hull_of(under);
            for (const Hull& part : lowered) {
                if (separation(part, below).distance > -sure) {
                    continue;
                }
                if (const auto point = shared_point(part, below)) {
                    return Rest{index, other, *point};
                }
            }
        }
    }
    return std::nullopt;
}

} // namespace

std::vector<Rest> rests(const Bundle& bundle)
{
    std::vector<Rest> found;
    for (std::size_t item = 0; item < bundle.items.size(); ++item) {
        if (!bundle.items[item].closes) {
            if (auto rest = rest_of(bundle, item)) {
                found.push_back(*rest);
            }
        }
    }
    return found;
}

} // namespace tuckwright
