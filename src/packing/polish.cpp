// SPDX-License-Identifier: GPL-3.0-or-later
// Outline. Around the present layout each pair of pieces that are near one another gets one linear row: along the
// normal of their present contact they stay apart by the gap. With the normal fixed the row is exact for any move
// without turning. Round walls are cut by tangents, turning is linear to first order; both are checked after the step,
// and the trust region shrinks when they err. The linear program minimises the change of the envelope's volume
// (compact) or of the heights (settle), with one elastic variable that pays for what does not hold yet.
#include "packing/polish.hpp"

#include <algorithm>
#include <cmath>

#include "packing/cell_view.hpp"
#include "packing/construct.hpp"
#include "packing/loosening.hpp"
#include "packing/pile.hpp"
#include "packing/polish_step.hpp"
#include "packing/sliding.hpp"

namespace tuckwright::packing {

namespace {

double heights(const Layout& layout)
{
    double sum = 0;
    for (int body = 0; body < static_cast<int>(layout.size()); ++body) {
        const Place& p = layout.place(body);
        const Vec3 up = up_in_cell(layout, p.cell);
        sum += group_size(layout, body) * (up.x * p.x + up.y * p.y + up.z * p.z);
    }
    return sum;
}

/// Where a descent by linear programs stands.
struct Standing {
    Layout layout;
    double violation, value;
};

/// mm: small against the grid, so that rounding to it finds the meant numbers.
constexpr double small_violation = 1e-10;

/// A share of the scene's size: what compaction in the midst of a search may leave.
constexpr double coarse_violation = 1e-5;

/// Steps while the aim falls, weighing what is violated against it at a price for each `size` of it.
template <class Aim, class Prepare>
void follow(Standing& now, const PolishOptions& options, int iterations, double trust, double price, bool wrap, Aim aim,
            Prepare prepare)
{
    const double size = now.layout.scene().size;
    for (int k = 0; k < iterations && trust > 1e-7 * size && !(options.stop && options.stop()); ++k) {
        PolishStep step(now.layout, options, trust);
        prepare(step);
        Standing next = now;
        if (!step.solve(next.layout)) {
            return;
        }
        if (wrap) {
            tighten(next.layout); // makes up for the curvature that the cuts of the outermost wall do not see
        }
        next.violation = worst_violation(next.layout, options);
        next.value = aim(next.layout);
        const double gain =
            now.value - next.value +
            price / size * (std::max(now.violation, small_violation) - std::max(next.violation, small_violation));
        if (gain <= 1e-12) {
            trust *= 0.25;
            continue;
        }
        now = next;
        if (gain < 1e-8 && now.violation <= small_violation) {
            return;
        }
        trust = std::min(trust * 1.5, 0.3 * size);
    }
}

/// First with long steps, then without turning and no longer than what is violated asks for: curvature is next to
/// nothing then, and every row as good as exact.
template <class Aim, class Prepare>
bool descend_by_programs(Layout& layout, const PolishOptions& options, double trust, bool wrap, Aim aim,
                         Prepare prepare)
{
    Standing now{layout, worst_violation(layout, options), aim(layout)};
    follow(now, options, options.iterations, trust, options.turning ? 3 : 30, wrap, aim, prepare);
    if (options.coarse && now.violation <= coarse_violation * layout.scene().size) {
        layout = now.layout;
        return true;
    }
    PolishOptions still = options;
    still.turning = false;
    still.stop = nullptr;
    const double enough = options.coarse ? coarse_violation * layout.scene().size : small_violation;
    for (int k = 0; k < (options.coarse ? 4 : 16) && now.violation > enough; ++k) {
        follow(now, still, 2, std::max(4 * now.violation, 1e-6 * layout.scene().size), 1e5, wrap, aim, prepare);
    }
    if (now.violation > std::max(enough, 200 * small_violation)) {
        return false;
    }
    layout = now.layout;
    return true;
}

} // namespace

Vec3 up_in_cell(const Layout& layout, int cell)
{
    if (cell == outermost) {
        return {0, 0, 1};
    }
    const Place& p = layout.place(cell);
    const Vec3 outer = up_in_cell(layout, p.cell);
    const double x = outer.x * p.c + outer.y * p.s, y = outer.y * p.c - outer.x * p.s, z = outer.z;
    switch (p.form) {
    case Form::standing: return {x, y, z};
    case Form::on_end: return {-z, y, x};  // own x points down, own z along x
    case Form::on_side: return {x, z, -y}; // own y points up, own z along -y
    case Form::upside_down: return {x, -y, -z};
    case Form::on_other_end: return {z, y, -x};
    case Form::on_other_side: return {x, -z, y};
    case Form::leaning: break; // holds nothing
    }
    return {x, y, z};
}

double violation(const CellView& view, const PolishOptions& options)
{
    double worst = 0;
    for (std::size_t i = 0; i < view.seen.size(); ++i) {
        const Seen& p = view.seen[i];
        worst = std::max(worst, excess(p.piece, kept(view, p.piece, options)));
        worst = std::max(worst, p.main ? shallow(p.piece, view.room) : 0);
        for (std::size_t j = i + 1; j < view.seen.size(); ++j) {
            const Seen& q = view.seen[j];
            if (p.vessel == q.vessel ||
                std::abs(p.piece.z - q.piece.z) > p.piece.half_height + q.piece.half_height + options.curved_gap) {
                continue;
            }
            const double reach = p.piece.reach + q.piece.reach + options.curved_gap;
            const double dx = p.piece.x - q.piece.x, dy = p.piece.y - q.piece.y;
            if (dx * dx + dy * dy < reach * reach) {
                const Contact k = contact(p.piece, q.piece);
                worst = std::max(worst, (k.curved ? options.curved_gap : options.flat_gap) - k.distance);
            }
        }
    }
    return worst;
}

double worst_violation(const Layout& layout, const PolishOptions& options)
{
    double worst = 0;
    for (const CellView& view : views(layout, options.turning ? 0 : everywhere)) {
        worst = std::max(worst, violation(view, options));
    }
    return worst;
}

double burden(const Envelope& e, const EnvelopeLimits& l)
{
    const auto over = [](double now, double limit) { return price_over_limit * std::max(0.0, std::log(now / limit)); };
    const double across =
        e.round ? 2 * over(e.radius, l.radius) : over(e.half_length, l.half_length) + over(e.half_width, l.half_width);
    return std::log(volume(e)) + across + over(e.height, l.height);
}

bool compact(Layout& layout, const PolishOptions& options)
{
    const auto aim = [&](const Layout& l) { return burden(l.envelope(), options.limits); };
    const auto prepare = [](PolishStep& step) { step.minimise_volume(); };
    const double trust = 0.05 * layout.scene().size;
    if (is_large(layout.scene())) {
        return loosen(layout, options);
    }
    if (descend_by_programs(layout, options, trust, true, aim, prepare)) {
        return true;
    }
    PolishOptions still = options; // turning may have led it into a jam
    still.turning = false;
    return options.turning && descend_by_programs(layout, still, trust, true, aim, prepare);
}

bool settle(Layout& layout, const PolishOptions& options)
{
    // Level gaps can't be mended by going down, so a hair less is asked of them; of those to walls, of which half passes as
    // kept, half. A row that is missed would loosen all others.
    PolishOptions still = options;
    still.turning = false;
    still.stop = nullptr; // what rests on nothing can't be put together
    still.wall_gap *= 0.5;
    still.curved_gap *= 1 - 1e-5;
    const auto lower = [&] {
        if (!is_large(layout.scene())) {
            return descend_by_programs(
                layout, still, 0.3 * layout.scene().size, false,
                [](const Layout& l) { return heights(l) / l.scene().size; },
                [](PolishStep& step) { step.minimise_heights(); });
        }
        if (worst_violation(layout, still) > 200 * small_violation) {
            return false;
        }
        drop_all(layout, air_of(still));
        return true;
    };
    constexpr int slides = 4; // what slides lets others down, which may slide in turn
    bool is_low = lower();
    for (int k = 0; k < slides && is_low && slide_down_walls(layout, air_of(still)); ++k) {
        is_low = lower();
    }
    return is_low;
}

} // namespace tuckwright::packing
