// SPDX-License-Identifier: GPL-3.0-or-later
// Worst-case stack-up: the room at worst is the room as measured less all tolerances that it depends on. Common practice,
// no source.
#include "tuckwright/fits.hpp"

#include <algorithm>
#include <cmath>

#include "play/group.hpp"
#include "play/rows.hpp"
#include "tuckwright/units.hpp"

namespace tuckwright {

namespace {

/// What goes into a tapering cavity has air all round until it is seated: there is no fit to tell of.
bool is_tapering(const PlacedCavity& cavity)
{
    const auto* cylinder = std::get_if<Cylinder>(&cavity.shape);
    return cylinder != nullptr && cylinder->foot != 0;
}

using namespace play;

constexpr double same_height = 0.5; ///< mm of common height from which two items are side by side

/// The round cavity's diameter and the solids that lie in it, as measured or at worst.
class Sizes {
public:
    Sizes(const Bundle& bundle, bool worst) : bundle_(bundle), worst_(worst) {}

    Shape cavity(const PlacedCavity& c) const
    {
        if (worst_ == bundle_.worst_case) {
            return c.shape;
        }
        return worst_ ? smallest(c.shape, c.off) : largest(c.shape, c.off);
    }
    std::vector<Solid> solids(std::size_t item) const
    {
        const PlacedItem& placed = bundle_.items[item];
        std::vector<Solid> all = placed.solids;
        for (std::size_t k = 0; k < std::min(all.size(), placed.solids_off.size()) && worst_ != bundle_.worst_case; ++k) {
            all[k].shape = worst_ ? largest(all[k].shape, placed.solids_off[k])
                                  : smallest(all[k].shape, placed.solids_off[k]);
        }
        return all;
    }

private:
    const Bundle& bundle_;
    bool worst_;
};

class FitFinder {
public:
    explicit FitFinder(const Bundle& bundle)
        : bundle_(bundle), sizes_{Sizes(bundle, false), Sizes(bundle, true)}, lids_(bundle.items.size())
    {
        for (std::size_t i = 0; i < bundle.items.size(); ++i) {
            if (bundle.items[i].closes) {
                lids_[*bundle.items[i].closes] = i;
            }
        }
    }

    std::vector<Fit> all()
    {
        for (std::size_t vessel = 0; vessel < bundle_.items.size(); ++vessel) {
            for (std::size_t cavity = 0; cavity < bundle_.items[vessel].cavities.size(); ++cavity) {
                look_into({vessel, cavity});
            }
        }
        return std::move(found_);
    }

private:
    void look_into(Lodging in)
    {
        std::vector<std::size_t> inside;
        for (std::size_t i = 0; i < bundle_.items.size(); ++i) {
            if (bundle_.items[i].in == in && !bundle_.items[i].closes) {
                inside.push_back(i);
            }
        }
        const PlacedCavity& cavity = bundle_.items[in.item].cavities[in.cavity];
        if (is_tapering(cavity)) {
            return;
        }
        for (const std::size_t item : inside) {
            if (bundle_.items[item].pressed) {
                add_pressed(in, item);
                continue;
            }
            const Shape inner[] = {sizes_[0].cavity(cavity), sizes_[1].cavity(cavity)};
            add({in, {item}, FitWay::all_round}, across({item}, in, 0, {}, inner[0]) / 2,
                across({item}, in, 1, {}, inner[1]) / 2);
            if (cavity.neck && !slants(item, cavity.pose)) { // the opening has no tolerance of its own
                add({in, {item}, FitWay::opening}, across({item}, in, 0, {}, *cavity.neck) / 2,
                    across({item}, in, 1, {}, *cavity.neck) / 2);
            }
        }
        const bool round = std::holds_alternative<Cylinder>(cavity.shape);
        for (std::size_t i = 0; round && i < inside.size(); ++i) {
            for (std::size_t j = i + 1; j < inside.size(); ++j) {
                if (bundle_.items[inside[i]].pressed || bundle_.items[inside[j]].pressed) {
                    continue; // that leaves nothing beside it
                }
                if (const auto way = way_between(inside[i], inside[j], cavity.pose)) {
                    add({in, {inside[i], inside[j]}, FitWay::across},
                        across({inside[i], inside[j]}, in, 0, *way, sizes_[0].cavity(cavity)),
                        across({inside[i], inside[j]}, in, 1, *way, sizes_[1].cavity(cavity)));
                }
            }
        }
        for (std::size_t axis = round ? 2 : 0; axis < 3; ++axis) {
            const bool upright = axis == 2;
            if (upright && cavity.opens != Opening::closed) {
                continue;
            }
            const auto row = tightest_row(bundle_, in, axis);
            if (row && (upright || row->items.size() > 1)) {
                add({in, row->items, upright ? FitWay::along : FitWay::across}, row->room, row->worst);
            }
        }
    }

    /// By how much it would be wider than the cavity, as measured, and at least, where it is as narrow as it may be and the
    /// cavity as wide. Sizes that are the worst for room are those at which it is held best.
    void add_pressed(Lodging in, std::size_t item)
    {
        const PlacedItem& placed = bundle_.items[item];
        const PlacedCavity& cavity = bundle_.items[in.item].cavities[in.cavity];
        const double own_off = placed.solids_off.empty() ? 0 : placed.solids_off.front().mm.front();
        const double off = own_off + cavity.off.mm.front();
        const double most = *placed.pressed - std::get<Cylinder>(cavity.shape).diameter;
        const double measured = bundle_.worst_case ? most - off : most;
        found_.push_back({in, {item}, FitWay::pressed, snap(measured), snap(measured - off)});
    }

    void add(Fit fit, double room, double worst)
    {
        (bundle_.worst_case ? worst : room) = std::max(0.0, bundle_.worst_case ? worst : room); // so much is proved
        fit.room = snap_down(room);
        fit.worst = std::min(fit.room, snap_down(worst));
        found_.push_back(std::move(fit));
    }

    std::vector<Solid> solids(std::size_t item, std::size_t size) const
    {
        std::vector<Solid> own = sizes_[size].solids(item);
        if (lids_[item]) {
            const auto more = sizes_[size].solids(*lids_[item]);
            own.insert(own.end(), more.begin(), more.end());
        }
        return own;
    }

    /// Whether an item lies neither along nor square to the cavity's axis.
    bool slants(std::size_t item, const Pose& frame) const
    {
        constexpr double hardly_tilted = 1e-9;
        const Vec3 up = axis_of(rotation_matrix(frame.turn), 2);
        const Vec3 own = axis_of(rotation_matrix(bundle_.items[item].solids.front().pose.turn), 2);
        const double c = std::abs(dot(own, up));
        return c > hardly_tilted && c < 1 - hardly_tilted;
    }

    /// What is left in a cavity of that shape beside one item, or beside two that touch side by side, `way` from the
    /// first on.
    double across(const std::vector<std::size_t>& items, Lodging in, std::size_t size, Vec3 way, const Shape& shape) const
    {
        const PlacedCavity& cavity = bundle_.items[in.item].cavities[in.cavity];
        std::vector<Solid> all = solids(items.front(), size);
        if (items.size() > 1) {
            std::vector<Solid> more = solids(items.back(), size);
            const double air = shadow_distance(all, more, cavity.pose).distance;
            for (Solid& solid : more) {
                solid.pose.center = solid.pose.center - air * way;
            }
            all.insert(all.end(), more.begin(), more.end());
        }
        if (const auto* cylinder = std::get_if<Cylinder>(&shape)) {
            std::vector<PlanCircle> circles;
            for (const Solid& solid : all) {
                add_outline(solid, cavity.pose, circles);
            }
            return cylinder->diameter - 2 * enclosing_radius(circles);
        }
        const auto& box = std::get<Box>(shape);
        const Matrix3 m = rotation_matrix(cavity.pose.turn);
        return std::min(box.length - width_along(all, axis_of(m, 0)), box.width - width_along(all, axis_of(m, 1)));
    }

    /// How two shadows along the cavity's axis lie to each other: the nearest two of their solids' that share a height.
    static Separation shadow_distance(const std::vector<Solid>& first, const std::vector<Solid>& second,
                                      const Pose& frame)
    {
        const Vec3 up = axis_of(rotation_matrix(frame.turn), 2);
        Separation nearest{1e9, {}, {}};
        for (const Solid& a : first) {
            for (const Solid& b : second) {
                const Hull one = hull_of(a), two = hull_of(b);
                const double low = std::max(-support(one, -1.0 * up), -support(two, -1.0 * up));
                const double high = std::min(support(one, up), support(two, up));
                if (high - low < same_height) {
                    continue;
                }
                const double far = 2 * width_along({a, b}, up); // so that only the shadows count
                Solid lowered = a;
                lowered.pose.center = lowered.pose.center - far / 2 * up;
                const Separation apart = separation(hull_of(lowered, far * up), two);
                nearest = apart.distance < nearest.distance ? apart : nearest;
            }
        }
        return nearest;
    }

    /// The level direction in which the second lies beside the first; nothing where they do not lie side by side.
    std::optional<Vec3> way_between(std::size_t first, std::size_t second, const Pose& frame) const
    {
        const Separation apart = shadow_distance(solids(first, 0), solids(second, 0), frame);
        const bool beside = apart.distance < 1e8 && apart.distance > -1e-3;
        return beside ? std::optional(apart.normal) : std::nullopt;
    }

    const Bundle& bundle_;
    std::array<Sizes, 2> sizes_;
    std::vector<std::optional<std::size_t>> lids_;
    std::vector<Fit> found_;
};

/// Whether two fits say the same of copies that are alike.
bool alike(const Bundle& bundle, const Fit& a, const Fit& b)
{
    const auto same = [&](std::size_t i, std::size_t j) { return bundle.items[i].id == bundle.items[j].id; };
    return a.way == b.way && a.room == b.room && a.worst == b.worst && same(a.in.item, b.in.item) &&
           std::equal(a.items.begin(), a.items.end(), b.items.begin(), b.items.end(), same);
}

} // namespace

std::vector<Fit> fits(const Bundle& bundle) { return FitFinder(bundle).all(); }

double whole_room(const Fit& fit, double room) { return fit.way == FitWay::all_round ? 2 * room : room; }

std::vector<Fit> tightest(const Bundle& bundle, std::size_t most)
{
    std::vector<Fit> sorted = bundle.fits, found;
    std::stable_sort(sorted.begin(), sorted.end(), [](const Fit& a, const Fit& b) {
        return whole_room(a, a.worst) < whole_room(b, b.worst);
    });
    for (const Fit& fit : sorted) {
        const bool is_new =
            std::none_of(found.begin(), found.end(), [&](const Fit& other) { return alike(bundle, fit, other); });
        if (is_new && fit.way != FitWay::pressed && found.size() < most) {
            found.push_back(fit);
        }
    }
    return found;
}

bool has_tolerances(const Bundle& bundle)
{
    return std::any_of(bundle.items.begin(), bundle.items.end(), [](const PlacedItem& item) {
        return std::any_of(item.solids_off.begin(), item.solids_off.end(), any) ||
               std::any_of(item.cavities.begin(), item.cavities.end(),
                           [](const PlacedCavity& cavity) { return any(cavity.off); });
    });
}

} // namespace tuckwright
