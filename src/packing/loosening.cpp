// SPDX-License-Identifier: GPL-3.0-or-later
// Outline. relax() is asked for a little more air than is needed, so that what it leaves of that is still enough. Where
// bodies in the bundle are jammed, all places in it are scaled up by as much as the worst pair lacks, which parts any two
// convex pieces, and the envelope grows along. What is jammed in a vessel is lined up along its axes; what stays jammed
// there makes the layout be given up.
// Guarantee: see loosen(). Source: own.
#include "packing/loosening.hpp"

#include <algorithm>
#include <optional>
#include <vector>

#include "packing/cell_view.hpp"
#include "packing/construct.hpp"
#include "packing/drop.hpp"
#include "packing/relaxation.hpp"

namespace tuckwright::packing {

namespace {

constexpr double none = 2e-8; ///< mm: what compaction promises

/// Scales the places in the bundle about the middle of its floor.
void spread(Layout& layout, double factor)
{
    const std::vector<int> direct = layout.inside(outermost);
    for (const int body : direct) {
        Place place = layout.place(body);
        place.x *= factor, place.y *= factor, place.z *= factor;
        layout.put(body, place);
    }
}

/// What lies in a vessel, from one end of an axis on, each moved on and back again until it is stopped: so much as it
/// overlaps what comes before it, it lies farther afterwards. Where things fill a vessel from end to end, nothing else
/// makes them fit exactly.
void line_up(Layout& layout, int cell, const Vec3& axis, const Air& air)
{
    constexpr double nudge = 0.02; // mm
    std::vector<std::pair<double, int>> order;
    for (const int body : layout.inside(cell)) {
        const Place& p = layout.place(body);
        order.emplace_back(axis.x * p.x + axis.y * p.y + axis.z * p.z, body);
    }
    std::sort(order.begin(), order.end());
    for (const auto& [from, body] : order) {
        layout.hide(body);
    }
    for (const auto& [from, body] : order) {
        Place place = layout.place(body);
        place.x += nudge * axis.x, place.y += nudge * axis.y, place.z += nudge * axis.z;
        const Vec3 back{-axis.x, -axis.y, -axis.z};
        const double way = free_way(layout, body, place, back, 2 * nudge, air, Seeing::own_cell);
        place.x += way * back.x, place.y += way * back.y, place.z += way * back.z;
        layout.put(body, place);
    }
}

/// Lines up what is jammed in vessels. Returns what is still amiss in the bundle, or nothing if a vessel stays jammed.
std::optional<double> mend(Layout& layout, const PolishOptions& options)
{
    const Air air = air_of(options);
    const double margin = options.turning ? 0 : everywhere;
    for (const Vec3& axis : {Vec3{0, 0, 1}, Vec3{1, 0, 0}, Vec3{0, 1, 0}}) {
        bool all_well = true;
        for (const CellView& view : views(layout, margin)) {
            if (view.cell != outermost && violation(view, options) > none) {
                line_up(layout, view.cell, axis, air);
                all_well = false;
            }
        }
        if (all_well) {
            break;
        }
    }
    double outside = 0;
    for (const CellView& view : views(layout, margin)) {
        const double amiss = violation(view, options);
        if (view.cell == outermost) {
            outside = amiss;
        } else if (amiss > none) {
            return std::nullopt;
        }
    }
    return outside;
}

/// Scales up the places in the bundle until nothing there overlaps.
bool spread_apart(Layout& layout, double amiss, const PolishOptions& options)
{
    constexpr double first_spread = 2, most = 1e-2;
    for (double share = first_spread * amiss / layout.scene().size; amiss > none; share *= 2) {
        if (share > most) {
            return false;
        }
        Layout wider = layout;
        spread(wider, 1 + share);
        tighten(wider);
        amiss = worst_violation(wider, options);
        if (amiss <= none) {
            layout = wider;
        }
    }
    return true;
}

} // namespace

bool loosen(Layout& layout, const PolishOptions& options)
{
    constexpr double more = 2e-5; // air beyond what is needed, as a share of the size
    constexpr int rounds = 3;
    const double margin = more * layout.scene().size;
    Layout trial = layout;
    tighten(trial);
    RelaxOptions relaxing;
    relaxing.iterations = 60;
    relaxing.patience = 8;
    relaxing.turning = options.turning;
    relaxing.enough = more * more / 4;
    relaxing.air = {options.curved_gap + margin, options.flat_gap + margin, options.wall_gap / 2 + margin / 4};
    const Weights even(layout.size());
    for (int round = 0; round < rounds; ++round) {
        if (worst_violation(trial, options) > none) {
            relax(trial, even, relaxing);
            tighten(trial);
        }
        const auto amiss = mend(trial, options);
        if (amiss && spread_apart(trial, *amiss, options)) {
            layout = trial;
            return true;
        }
    }
    return false;
}

} // namespace tuckwright::packing
