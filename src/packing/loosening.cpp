// SPDX-License-Identifier: GPL-3.0-or-later
// Outline. relax() is asked for a little more air than is needed, so that what it leaves of that is still enough. Where
// bodies in the bundle are jammed, all places in it are scaled up by as much as the worst pair lacks, which parts any
// two convex pieces, and the envelope grows along. What is jammed in a vessel is mended by linear programs of what is in it
// alone; what stays jammed is relieved of a body that goes into
// some gap.
// Guarantee: see loosen(). Source: own.
#include "packing/loosening.hpp"

#include <algorithm>
#include <optional>
#include <vector>

#include "packing/cell_view.hpp"
#include "packing/construct.hpp"
#include "packing/pile.hpp"
#include "packing/polish_step.hpp"
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

/// Lets small linear programs part what is jammed in a vessel: where things fill it from end to end, nothing else makes
/// them fit exactly.
void mend(Layout& layout, CellView view, const PolishOptions& options)
{
    constexpr int steps = 6;
    PolishOptions still = options;
    still.turning = false;
    const double margin = options.turning ? 0 : everywhere;
    double amiss = violation(view, options);
    for (int k = 0; k < steps && amiss > none; ++k) {
        Layout moved = layout;
        if (!PolishStep(layout, still, std::max(4 * amiss, 1e-6 * layout.scene().size), view).solve(moved)) {
            return;
        }
        CellView next = std::move(views(moved, margin)[at(view.cell + 1)]);
        const double left = violation(next, options);
        if (left >= amiss) {
            return;
        }
        layout = moved;
        view = std::move(next);
        amiss = left;
    }
}

/// Brings to the middle what fills a round vessel from wall to wall: programs only know tangents of such a wall.
void centre(Layout& layout, const CellView& view)
{
    constexpr double hardly = 4e-3; // mm of play
    const std::vector<int> held = layout.inside(view.cell);
    for (const int body : held) {
        Place place = layout.place(body);
        if (view.room.round && !view.room.tapers() &&
            view.room.radius - plan_reach(layout.stowed(body), place) < hardly) {
            place.x = place.y = 0;
            layout.put(body, place);
        }
    }
}

/// The body directly in a cell of which most is amiss there.
int worst_in(const Layout& layout, const CellView& view, const PolishOptions& options)
{
    int worst = -1;
    double most = 0;
    for (const int body : layout.inside(view.cell)) {
        double amiss = 0;
        for (const Seen& p : view.seen) {
            if (p.vessel != body) {
                continue;
            }
            amiss = std::max(amiss, excess(p.piece, kept(view, p.piece, options)));
            for (const Seen& q : view.seen) {
                if (q.vessel != body) {
                    const Contact k = contact(p.piece, q.piece);
                    amiss = std::max(amiss, (k.curved ? options.curved_gap : options.flat_gap) - k.distance);
                }
            }
        }
        if (amiss > most) {
            most = amiss;
            worst = body;
        }
    }
    return worst;
}

/// Takes out of a jammed vessel what is worst there, into some gap; returns whether it found one.
bool relieve(Layout& layout, const CellView& view, const PolishOptions& options)
{
    constexpr int samples = 600;
    Random random(static_cast<std::uint64_t>(view.cell) + layout.size());
    const int body = worst_in(layout, view, options);
    const auto place = body < 0 ? std::nullopt : carried_in_a_gap(layout, body, random, samples);
    if (place) {
        layout.put(body, *place);
    }
    return place.has_value();
}

/// Mends what is jammed in vessels. Returns what is still amiss in the bundle, or nothing if a vessel stays jammed.
std::optional<double> mend(Layout& layout, const PolishOptions& options)
{
    const double margin = options.turning ? 0 : everywhere;
    const auto seen_now = [&](int cell) { return std::move(views(layout, margin)[at(cell + 1)]); };
    for (const CellView& view : views(layout, margin)) {
        if (view.cell == outermost || violation(view, options) <= none) {
            continue;
        }
        centre(layout, view);
        mend(layout, seen_now(view.cell), options);
        for (CellView now = seen_now(view.cell); violation(now, options) > none; now = seen_now(view.cell)) {
            if (!relieve(layout, now, options)) {
                return std::nullopt;
            }
            mend(layout, seen_now(view.cell), options);
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
    layout.count_work(layout.size() * layout.size() / 4); // of looking at what is amiss, several times
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
