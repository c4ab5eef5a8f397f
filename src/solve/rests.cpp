// SPDX-License-Identifier: GPL-3.0-or-later
#include "solve/rests.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

#include "solve/plan.hpp"
#include "tuckwright/geometry.hpp"
#include "tuckwright/tolerance.hpp"
#include "tuckwright/units.hpp"

namespace tuckwright {

namespace {

/// mm: how far inside both solids, and out of every cavity, the shared point must lie to survive rounding.
constexpr double sure = 2e-5;

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

/// What an item is made of, as far as things rest on it: solids less the cavities, which reach out of their mouths.
struct Material {
    std::vector<Hull> solids, air;
};

/// The air in a narrow opening: from the middle of the cavity up to the rim, and on past it where it is open.
Hull air_of_neck(const PlacedCavity& cavity, const Hull& below, Vec3 up, double past)
{
    const double high =
        height_of(cavity.shape) / 2 + height_of(*cavity.neck) + (cavity.opens == Opening::closed ? 0 : past);
    Hull air = below;
    air.shape = *cavity.neck;
    std::visit([&](auto& shape) { shape.height = high; }, air.shape);
    air.center = below.center + (high / 2) * up;
    return air;
}

Material material_of(const PlacedItem& item, double lowered)
{
    Material made;
    for (const Solid& solid : item.solids) {
        made.solids.push_back(hull_of(solid));
        made.solids.back().center.z -= lowered;
    }
    constexpr double past = 1; // mm past each mouth, where nothing of the item is
    for (const PlacedCavity& cavity : item.cavities) {
        Hull air = hull_of({cavity.shape, cavity.pose});
        air.center.z -= lowered;
        const Vec3 up{air.rotation[0][2], air.rotation[1][2], air.rotation[2][2]};
        if (cavity.neck) {
            made.air.push_back(air);
            made.air.push_back(air_of_neck(cavity, air, up, past));
            continue;
        }
        const double more = cavity.opens == Opening::closed ? 0 : cavity.opens == Opening::top ? past : 2 * past;
        air.center = air.center + (cavity.opens == Opening::top ? past / 2 : 0) * up;
        std::visit([&](auto& shape) { shape.height += more; }, air.shape);
        made.air.push_back(air);
    }
    return made;
}

/// One solid of an item that is lowered, and one of an item that it may rest on.
struct Contact {
    const Hull& lowered;
    const Hull& below;
    std::vector<Hull> air; ///< of both items
};

/// A point that both have in common at a height, well inside their outlines and well outside of the cavities.
std::optional<Vec3> point_at(const Contact& contact, double z)
{
    const auto upper = level_cut(contact.lowered, z, true), lower = level_cut(contact.below, z, true);
    if (!upper || !lower) {
        return std::nullopt;
    }
    std::vector<Outline> without;
    for (const Hull& air : contact.air) {
        if (const auto cut = level_cut(air, z, false)) {
            without.push_back(*cut);
        }
    }
    const auto p = point_between({*upper, *lower}, without, 2 * sure);
    return p ? std::optional(Vec3{snap((*p)[0]), snap((*p)[1]), z}) : std::nullopt;
}

/// The same for two level solids, at the top of the one below, at the bottom of the lowered one, and half-way.
std::optional<Vec3> level_point(const Contact& contact)
{
    const Extent upper = extent(contact.lowered), lower = extent(contact.below);
    const double low = std::max(upper.low.z, lower.low.z), high = std::min(upper.high.z, lower.high.z);
    if (high - low < sure || !std::all_of(contact.air.begin(), contact.air.end(), is_level)) {
        return std::nullopt;
    }
    for (const double z : {snap_down(high), snap_up(low), snap((low + high) / 2)}) {
        if (const auto point = point_at(contact, z)) {
            return point;
        }
    }
    return std::nullopt;
}

/// A point as deep as can be found in both, climbing from where they are nearest; nothing if none is surely inside.
std::optional<Vec3> deep_point(const Contact& contact)
{
    const Hull &a = contact.lowered, &b = contact.below;
    const auto depth = [&](Vec3 p) {
        double least = std::min(inner_depth(a, p), inner_depth(b, p));
        for (const Hull& air : contact.air) {
            least = std::min(least, -inner_depth(air, p));
        }
        return least;
    };
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

/// A point that both have in common, on the material of both.
std::optional<Vec3> shared_point(const Contact& contact)
{
    if (separation(contact.lowered, contact.below).distance > -sure) {
        return std::nullopt;
    }
    if (is_level(contact.lowered) && is_level(contact.below)) {
        if (const auto point = level_point(contact)) {
            return point;
        }
    }
    const bool flat = has_level_faces(contact.lowered) && has_level_faces(contact.below);
    return flat ? std::nullopt : deep_point(contact); // level faces meet in level cuts alone
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

/// Whether a lowered solid that stands in a room that tapers down goes through its wall.
bool past_tapering_wall(const Hull& lowered, const Cylinder& room, const Pose& pose)
{
    const auto* round = std::get_if<Cylinder>(&lowered.shape);
    if (round == nullptr || lowered.rotation[2][2] < 0.5) {
        return false;
    }
    const double off = std::hypot(lowered.center.x - pose.center.x, lowered.center.y - pose.center.y);
    const auto past = [&](double z, double diameter) {
        const double up = std::clamp((z - pose.center.z) / room.height + 0.5, 0.0, 1.0);
        return off + diameter / 2 > (room.foot + (room.diameter - room.foot) * up) / 2 + sure;
    };
    const double low = lowered.center.z - round->height / 2, rim = pose.center.z + room.height / 2;
    const double share = std::clamp((rim - low) / round->height, 0.0, 1.0); // beyond the rim it may be wider
    return past(low, foot_of(*round)) ||
           past(low + share * round->height, foot_of(*round) + share * (round->diameter - foot_of(*round)));
}

/// Whether a lowered solid leaves the room that it lies in, through the floor or a wall that the drop leads to.
bool leaves(const Hull& lowered, const Shape& room, const Pose& pose, Opening opens, double clearance)
{
    const Hull walls = hull_of({room, pose});
    const auto axis = [&](std::size_t k) {
        return Vec3{walls.rotation[0][k], walls.rotation[1][k], walls.rotation[2][k]};
    };
    const auto beyond = [&](Vec3 n, double half) { return support(lowered, n) - dot(n, pose.center) > half + sure; };
    const double half_height = height_of(room) / 2;
    const Vec3 up = axis(2);
    if ((opens != Opening::both && beyond(-1.0 * up, half_height)) ||
        (opens == Opening::closed && beyond(up, half_height))) {
        return true;
    }
    if (const auto* b = std::get_if<Box>(&room)) {
        const double x = b->length / 2 - clearance, y = b->width / 2 - clearance;
        return beyond(axis(0), x) || beyond(-1.0 * axis(0), x) || beyond(axis(1), y) || beyond(-1.0 * axis(1), y);
    }
    const auto* round = std::get_if<Cylinder>(&room);
    const bool seated = round != nullptr && round->foot != 0 && up.z > 0.5;
    if (seated && past_tapering_wall(lowered, *round, pose)) {
        return true;
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

/// Whether the drop would bring a further solid, which lies beyond a rim that is too narrow for it, down to that rim.
bool lands_on_rim(const Hull& lowered, const PlacedCavity& cavity)
{
    const double rim = cavity.pose.center.z + height_of(cavity.shape) / 2;
    const double low = extent(lowered).low.z;
    if (cavity.opens == Opening::closed || rotation_matrix(cavity.pose.turn)[2][2] < 0.5 || low >= rim - sure ||
        low < rim - 2 * tolerance::rest_drop) {
        return false;
    }
    const Extent plan = extent(lowered);
    const auto* round = std::get_if<Cylinder>(&cavity.shape);
    const double half_x = round != nullptr ? round->diameter / 2 : std::get<Box>(cavity.shape).length / 2;
    const Vec3 far{std::max(std::abs(plan.low.x - cavity.pose.center.x), std::abs(plan.high.x - cavity.pose.center.x)),
                   std::max(std::abs(plan.low.y - cavity.pose.center.y), std::abs(plan.high.y - cavity.pose.center.y)), 0};
    return std::max(far.x, far.y) > half_x + sure;
}

/// Whether the drop would take a solid out of any of its containers: the direct one may be a sleeve without a floor.
bool rests_on_container(const Bundle& bundle, const PlacedItem& item, const Hull& lowered, bool further)
{
    if (item.pressed) {
        return true; // its spring holds it
    }
    for (auto in = item.in; in; in = bundle.items[in->item].in) {
        const PlacedCavity& cavity = bundle.items[in->item].cavities[in->cavity];
        const double rim = cavity.pose.center.z + height_of(cavity.shape) / 2;
        const Opening opens = cavity.neck ? Opening::closed : cavity.opens; // nothing leaves through a narrow opening
        if (further && opens != Opening::closed && extent(lowered).low.z > rim - 2 * tolerance::rest_drop) {
            if (lands_on_rim(lowered, cavity)) {
                return true;
            }
            continue;
        }
        if (leaves(lowered, cavity.shape, cavity.pose, opens, bundle.clearance)) {
            return true;
        }
    }
    return extent(lowered).low.z < -sure;
}

/// Whether boxes round the two have something in common: all others need no closer look.
bool near(const Hull& a, const Hull& b)
{
    const Extent p = extent(a), q = extent(b);
    return p.low.x < q.high.x && q.low.x < p.high.x && p.low.y < q.high.y && q.low.y < p.high.y && p.low.z < q.high.z &&
           q.low.z < p.high.z;
}

std::optional<Vec3> shared_point(const Material& lowered, const Material& below)
{
    std::vector<Hull> air = lowered.air;
    air.insert(air.end(), below.air.begin(), below.air.end());
    for (const Hull& under : below.solids) {
        for (const Hull& part : lowered.solids) {
            if (near(part, under)) {
                if (const auto point = shared_point(Contact{part, under, air})) {
                    return point;
                }
            }
        }
    }
    return std::nullopt;
}

/// Looks for what an item rests on, itself or with the lid that is shut on it.
class RestSearch {
public:
    explicit RestSearch(const Bundle& bundle) : bundle_(bundle)
    {
        for (const PlacedItem& item : bundle.items) {
            placed_.push_back(material_of(item, 0));
        }
    }

    std::optional<Rest> rest_of(std::size_t index) const
    {
        std::vector<Material> lowered;
        for (std::optional<std::size_t> part = index; part; part = lid_of(*part)) {
            lowered.push_back(material_of(bundle_.items[*part], tolerance::rest_drop));
            const auto& solids = lowered.back().solids;
            for (std::size_t k = 0; k < solids.size(); ++k) {
                const bool further = k > 0 || *part != index;
                if (rests_on_container(bundle_, bundle_.items[index], solids[k], further)) {
                    return Rest{index, std::nullopt, {}};
                }
            }
        }
        for (std::size_t other = 0; other < bundle_.items.size(); ++other) {
            if (hangs_on(other, index) || holds(bundle_, other, index)) {
                continue;
            }
            for (const Material& part : lowered) {
                if (const auto point = shared_point(part, placed_[other])) {
                    return Rest{index, other, *point};
                }
            }
        }
        return std::nullopt;
    }

private:
    std::optional<std::size_t> lid_of(std::size_t vessel) const
    {
        for (std::size_t item = 0; item < bundle_.items.size(); ++item) {
            if (bundle_.items[item].closes == vessel) {
                return item;
            }
        }
        return std::nullopt;
    }

    /// Whether one item is the other, or belongs to it through lids and containers.
    bool hangs_on(std::size_t item, std::size_t other) const
    {
        for (std::optional<std::size_t> at = item; at;) {
            if (*at == other) {
                return true;
            }
            const PlacedItem& placed = bundle_.items[*at];
            at = placed.closes ? placed.closes : placed.in ? std::optional(placed.in->item) : std::nullopt;
        }
        return false;
    }

    const Bundle& bundle_;
    std::vector<Material> placed_;
};

} // namespace

std::vector<Rest> rests(const Bundle& bundle)
{
    const RestSearch search(bundle);
    std::vector<Rest> found;
    for (std::size_t item = 0; item < bundle.items.size(); ++item) {
        if (!bundle.items[item].closes) {
            if (auto rest = search.rest_of(item)) {
                found.push_back(*rest);
            }
        }
    }
    return found;
}

std::optional<Rest> rest_of(const Bundle& bundle, std::size_t item) { return RestSearch(bundle).rest_of(item); }

} // namespace tuckwright
