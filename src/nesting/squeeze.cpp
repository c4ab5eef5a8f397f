// SPDX-License-Identifier: GPL-3.0-or-later
#include "nesting/squeeze.hpp"

#include <algorithm>
#include <cmath>

#include "nesting/hopping.hpp"
#include "nesting/moves.hpp"
#include "nesting/rework.hpp"
#include "packing/separation.hpp"

namespace tuckwright::nesting {

using namespace packing;

bool within(const Envelope& e, const EnvelopeLimits& l)
{
    constexpr double spare = 1e-7;
    return e.height <= l.height + spare &&
           (e.round ? e.radius <= l.radius + spare
                    : e.half_length <= l.half_length + spare && e.half_width <= l.half_width + spare);
}

namespace {

void clamp_to(Envelope& e, const EnvelopeLimits& l)
{
    e.height = std::min(e.height, l.height);
    e.radius = std::min(e.radius, l.radius);
    e.half_length = std::min(e.half_length, l.half_length);
    e.half_width = std::min(e.half_width, l.half_width);
}

/// Scales the places in the bundle with the envelope.
void resize(Layout& layout, const Envelope& next)
{
    const Envelope now = layout.envelope();
    const double fx = now.round ? next.radius / now.radius : next.half_length / now.half_length;
    const double fy = now.round ? fx : next.half_width / now.half_width;
    const double fz = next.height / now.height;
    layout.set_envelope(next);
    const std::vector<int> direct = layout.inside(outermost);
    for (const int body : direct) {
        Place place = layout.place(body);
        place.x *= fx;
        place.y *= fy;
        place.z *= fz;
        layout.put(body, place);
    }
}

/// The least envelope that takes each body which lies directly in the bundle, as it lies now, alone.
Envelope needed(const Layout& layout)
{
    Envelope need = layout.envelope();
    need.radius = need.half_length = need.half_width = need.height = 0;
    for (const int body : layout.inside(outermost)) {
        double left = 1e300, right = -1e300, front = 1e300, back = -1e300, low = 1e300, high = -1e300;
        const Place& place = layout.place(body);
        double reach = 0;
        for (const Piece& p : layout.own_pieces(body, place)) {
            left = std::min(left, -piece_support(p, -1, 0, 0)), right = std::max(right, piece_support(p, 1, 0, 0));
            front = std::min(front, -piece_support(p, 0, -1, 0)), back = std::max(back, piece_support(p, 0, 1, 0));
            low = std::min(low, p.z - p.half_height), high = std::max(high, p.z + p.half_height);
            reach = std::max(reach, p.reach);
        }
        need.radius = std::max(need.radius, reach);
        need.half_length = std::max(need.half_length, (right - left) / 2);
        need.half_width = std::max(need.half_width, (back - front) / 2);
        need.height = std::max(need.height, high - low);
    }
    return need;
}

/// The next smaller envelope: the volume falls by the share, spread over one dimension or all; mostly one that no body
/// fills by itself.
Envelope smaller(const Layout& layout, double share, Random& random)
{
    const Envelope& e = layout.envelope();
    const Envelope need = needed(layout);
    const double keep = 1 - share;
    for (int trial = 0;; ++trial) {
        Envelope next = e;
        switch (random.below(e.round ? 3 : 4)) {
        case 0: next.height *= keep; break;
        case 1:
            if (e.round) {
                next.radius *= std::sqrt(keep);
            } else {
                next.half_length *= keep;
            }
            break;
        case 2:
            if (e.round) {
                next.radius *= std::cbrt(keep);
                next.height *= std::cbrt(keep);
            } else {
                next.half_width *= keep;
            }
            break;
        default:
            next.half_length *= std::cbrt(keep);
            next.half_width *= std::cbrt(keep);
            next.height *= std::cbrt(keep);
        }
        const bool holds = next.height >= need.height &&
                           (next.round ? next.radius >= need.radius
                                       : next.half_length >= need.half_length && next.half_width >= need.half_width);
        if (holds || trial == 3) {
            return next;
        }
    }
}

/// Other proportions at about the same volume.
Envelope reshaped(const Envelope& e, double share, Random& random)
{
    Envelope next = e;
    const double factor = std::exp(random.between(-0.15, 0.15));
    if (e.round) {
        next.radius *= std::sqrt(factor);
    } else if (random.chance(0.5)) {
        next.half_length *= factor;
    } else {
        next.half_width *= factor;
    }
    next.height *= (1 - share) / factor;
    if (!e.round && random.chance(0.3)) {
        const double other = std::exp(random.between(-0.15, 0.15));
        next.half_length *= other;
        next.half_width /= other;
    }
    return next;
}

enum class Stage { on_the_way, over_the_limits, last };

/// On the way rounding errors do not matter yet; what is over its limits may fit there in one way only.
PolishOptions polish_options(const SqueezeOptions& squeeze, Stage stage)
{
    PolishOptions options;
    options.limits = squeeze.limits;
    options.stop = squeeze.stop;
    options.iterations = stage == Stage::last ? 8 : stage == Stage::over_the_limits ? 6 : 3;
    options.coarse = stage != Stage::last;
    return options;
}

/// For a layout over its limits: what is over shrinks towards the limit, the rest may fill its limit.
Envelope towards(const Envelope& e, const EnvelopeLimits& l, double share)
{
    const auto next = [&](double now, double limit) {
        return now > limit ? std::max(limit, now * (1 - share)) : limit < 1e8 ? limit : now;
    };
    return {e.round, next(e.radius, l.radius), next(e.half_length, l.half_length), next(e.half_width, l.half_width),
            next(e.height, l.height)};
}

} // namespace

bool squeeze(Layout& layout, Random& random, const SqueezeOptions& options)
{
    const EnvelopeLimits& limits = options.limits;
    constexpr double first_share = 0.06, last_share = 0.004;
    double share = first_share;
    Layout good = layout;
    for (std::uint64_t spent = 0; share > last_share && spent < options.work && !(options.stop && options.stop());) {
        Layout trial = good;
        const std::uint64_t before = trial.measured();
        const bool fits = within(good.envelope(), limits);
        resize(trial, fits ? smaller(good, share, random) : towards(good.envelope(), limits, share));
        SeparationEffort effort;
        effort.passes = fits ? 12 : 30;
        effort.stop = options.stop;
        const bool apart = separate(trial, random, effort);
        if (apart && compact(trial, polish_options(options, fits ? Stage::on_the_way : Stage::over_the_limits)) &&
            (!options.finish || options.finish(trial)) &&
            burden(trial.envelope(), limits) < burden(good.envelope(), limits)) {
            good = trial;
            if (options.found && fits) {
                options.found(volume(good.envelope()));
            }
        } else {
            share *= 0.6;
        }
        spent += trial.measured() - before;
        if (!within(good.envelope(), limits) && share <= last_share) {
            share = first_share; // there is nothing to gain before it fits
        }
    }
    layout = good;
    return compact(layout, polish_options(options, Stage::last)) && within(layout.envelope(), limits);
}

namespace {

/// Lowers a dimension to another if that is less, but not much, and leaves what is needed; returns whether it did.
bool lower(double& dimension, double to, double need)
{
    constexpr double least = 0.8, most = 0.9995;
    if (to < dimension * most && to > dimension * least && to > need - 1e-9) {
        dimension = to;
        return true;
    }
    return false;
}

/// Makes the envelope as high or wide as some body is in some form, or as high as two on one another, where that is a
/// little less: bundles are often just so, and small steps seldom lead there.
Envelope snapped(const Layout& layout, Random& random)
{
    const Envelope need = needed(layout);
    const auto some_stance = [&](const Body*& body, Form& form) {
        const int chosen = static_cast<int>(random.below(layout.size()));
        const int ways = layout.scene().ways(chosen);
        body = &layout.scene().stowed(chosen, ways == 1 ? 0 : static_cast<int>(random.below(at(ways))));
        form = body->forms[random.below(body->forms.size())];
        const Reach reach = vertical_reach(*body, form);
        return reach.below + reach.above;
    };
    constexpr int trials = 60;
    for (int trial = 0; trial < trials; ++trial) {
        Envelope next = layout.envelope();
        const Body *body = nullptr, *upper = nullptr;
        Form form{}, upper_form{};
        double high = some_stance(body, form);
        high += random.chance(0.3) ? some_stance(upper, upper_form) : 0;
        bool is_less = false;
        if (random.chance(0.5)) {
            is_less = lower(next.height, high, need.height);
        } else if (next.round) {
            is_less = lower(next.radius, plan_reach(*body, form), need.radius);
        } else {
            const Piece piece = piece_at(*body, 0, {outermost, form, 0, 0, 0, 1, 0}, 0);
            const double wide = random.chance(0.5) ? piece_support(piece, 1, 0, 0) : piece_support(piece, 0, 1, 0);
            is_less = random.chance(0.5) ? lower(next.half_length, wide, need.half_length)
                                         : lower(next.half_width, wide, need.half_width);
        }
        if (is_less) {
            return next;
        }
    }
    return smaller(layout, 0.01, random);
}

/// A smaller or other envelope, mostly by `step` as a share of the volume, and in three of four cases something put
/// elsewhere.
void disturb(Layout& layout, const EnvelopeLimits& limits, bool sleeves, double step, Random& random)
{
    const double draw = random.unit(), share = random.chance(0.3) ? 0.002 : step;
    Envelope next = random.chance(0.15) ? snapped(layout, random)
                    : draw < 0.25       ? reshaped(layout.envelope(), share, random)
                                        : smaller(layout, share, random);
    clamp_to(next, limits);
    resize(layout, next);
    if (sleeves && random.chance(0.15)) {
        wrap(layout, random);
    } else if (draw > 0.25 && draw < 0.5) {
        rehouse(layout, static_cast<int>(random.below(layout.size())), random);
    } else if (draw >= 0.5 && draw < 0.6) {
        evict(layout, static_cast<int>(random.below(layout.size())), random);
    } else if (draw >= 0.6 && draw < 0.92) {
        swap(layout, random);
    } else if (draw >= 0.92) {
        stir(layout, random);
    }
}

/// What of a scene decides about the changes that are worth trying.
struct Features {
    bool vessels, sleeves;
    explicit Features(const Scene& scene)
        : vessels(std::any_of(scene.bodies.begin(), scene.bodies.end(),
                              [](const Body& body) { return body.hollow.has_value(); })),
          sleeves(has_sleeves(scene))
    {
    }
};

/// An envelope part of the way from a smaller one to a larger one: 0 is the smaller, 1 the larger.
Envelope between(const Envelope& smaller, const Envelope& larger, double way)
{
    const auto part = [&](double from, double to) { return from > 0 ? from * std::pow(to / from, way) : from; };
    return {smaller.round, part(smaller.radius, larger.radius), part(smaller.half_length, larger.half_length),
            part(smaller.half_width, larger.half_width), part(smaller.height, larger.height)};
}

/// A smaller or other envelope, by `step` as a share of the volume, and hops until all is apart in it; what still
/// overlaps is let out step by step, almost to where it was. Whether all is apart then.
bool hop_smaller(Layout& layout, double step, Random& random, const SqueezeOptions& options)
{
    const Envelope before = layout.envelope();
    Envelope next = random.chance(0.25) ? reshaped(before, step, random) : smaller(layout, step, random);
    clamp_to(next, options.limits);
    resize(layout, next);
    HopEffort effort;
    effort.stop = options.stop;
    if (hop(layout, random, effort)) {
        return true;
    }
    effort.patience = 1;
    effort.relaxing = 60;
    for (const double way : {0.3, 0.6, 0.95}) {
        resize(layout, between(next, before, way));
        if (hop(layout, random, effort)) {
            return true;
        }
    }
    return false;
}

/// Takes a few bodies out and puts them in again, then shrinks the envelope as long as that goes lightly; whether that
/// could be done.
bool rebuild_smaller(Layout& layout, Random& random, const SqueezeOptions& options)
{
    constexpr int most_steps = 12;
    constexpr double first_share = 0.04, last_share = 0.01;
    if (!rebuild_some(layout, random)) {
        return false;
    }
    double share = first_share;
    for (int step = 0; step < most_steps && share > last_share && !(options.stop && options.stop()); ++step) {
        Layout next = layout;
        resize(next, smaller(layout, share, random));
        SeparationEffort effort;
        effort.passes = 2;
        effort.strikes = 1;
        effort.stop = options.stop;
        if (separate(next, random, effort)) {
            layout = next;
        } else {
            share *= 0.7;
        }
    }
    return true;
}

/// One trial of refine(), with so much of the work `left` as a share: a change, and whether all is apart after it. Without
/// vessels there is little to rebuild; in the end, nothing.
bool change(Layout& layout, const Features& features, double step, double left, Random& random,
            const SqueezeOptions& options)
{
    if (random.chance(left * (features.vessels ? 0.35 : 0.1))) {
        return rebuild_smaller(layout, random, options);
    }
    if (random.chance(0.4)) {
        return hop_smaller(layout, 0.5 * step, random, options);
    }
    disturb(layout, options.limits, features.sleeves, step, random);
    SeparationEffort effort;
    effort.passes = random.chance(0.7) ? 1 : random.chance(0.5) ? 6 : 20; // short ones are many for the same work
    effort.strikes = 1;
    effort.samples = 48;
    effort.stop = options.stop;
    return separate(layout, random, effort);
}

} // namespace

void refine(Layout& layout, Random& random, const SqueezeOptions& options)
{
    constexpr double first_patience = 0.01; // how much larger than the best one may be to be followed; none at the end
    Layout best = layout, present = layout;
    const Features features(layout.scene());
    double step = 0.03; // longer after a success, shorter after a failure
    for (std::uint64_t spent = 0; spent < options.work && !(options.stop && options.stop());) {
        Layout trial = present;
        const std::uint64_t before = trial.measured();
        const double left = 1 - static_cast<double>(spent) / static_cast<double>(options.work);
        const bool is_sound = change(trial, features, step, left, random, options) &&
                              compact(trial, polish_options(options, Stage::on_the_way)) &&
                              within(trial.envelope(), options.limits);
        const double patience = first_patience * left;
        if (is_sound &&
            volume(trial.envelope()) < volume(present.envelope()) * (1 - 1e-9) + patience * volume(best.envelope())) {
            present = trial;
            if (volume(present.envelope()) < volume(best.envelope())) {
                best = present;
                if (options.found) {
                    options.found(volume(best.envelope()));
                }
            }
        }
        step = is_sound ? std::min(step * 1.6, 0.08) : std::max(step * 0.85, 0.004);
        spent += trial.measured() - before;
    }
    if (compact(best, polish_options(options, Stage::last)) && within(best.envelope(), options.limits)) {
        layout = best;
    }
}

} // namespace tuckwright::nesting
