// SPDX-License-Identifier: GPL-3.0-or-later
#include "nesting/squeeze.hpp"

#include <algorithm>
#include <cmath>

#include "nesting/moves.hpp"
#include "packing/separation.hpp"

namespace tuckwright::nesting {

using namespace packing;

bool within(const Envelope& e, const EnvelopeLimits& l)
{
    constexpr double hair = 1e-7;
    return e.height <= l.height + hair &&
           (e.round ? e.radius <= l.radius + hair
                    : e.half_length <= l.half_length + hair && e.half_width <= l.half_width + hair);
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

/// The next smaller envelope: the volume falls by the share, spread over one dimension or all.
Envelope smaller(const Envelope& e, double share, Random& random)
{
    Envelope next = e;
    const double keep = 1 - share;
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
    return next;
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

PolishOptions polish_options(const EnvelopeLimits& limits, int iterations)
{
    PolishOptions options;
    options.limits = limits;
    options.iterations = iterations;
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
        resize(trial, fits ? smaller(good.envelope(), share, random) : towards(good.envelope(), limits, share));
        SeparationEffort effort;
        effort.passes = fits ? 12 : 30;
        const bool apart = separate(trial, random, effort);
        if (apart && compact(trial, polish_options(limits, 6)) &&
            burden(trial.envelope(), limits) < burden(good.envelope(), limits)) {
            good = trial;
        } else {
            share *= 0.6;
        }
        spent += trial.measured() - before;
        if (!within(good.envelope(), limits) && share <= last_share) {
            share = first_share; // there is nothing to gain before it fits
        }
    }
    layout = good;
    return compact(layout, polish_options(limits, 8)) && within(layout.envelope(), limits);
}

void refine(Layout& layout, Random& random, const SqueezeOptions& options)
{
    Layout best = layout;
    const bool sleeves = has_sleeves(layout.scene());
    for (std::uint64_t spent = 0; spent < options.work && !(options.stop && options.stop());) {
        Layout trial = best;
        const std::uint64_t before = trial.measured();
        const double draw = random.unit(), share = random.chance(0.5) ? 0.002 : 0.01;
        Envelope next = draw < 0.25 ? reshaped(best.envelope(), share, random) : smaller(best.envelope(), share, random);
        clamp_to(next, options.limits);
        resize(trial, next);
        if (sleeves && random.chance(0.15)) {
            wrap(trial, random);
        } else if (draw > 0.45 && draw < 0.7) {
            evict(trial, static_cast<int>(random.below(trial.size())), random);
        } else if (draw >= 0.7 && draw < 0.9) {
            swap(trial, random);
        } else if (draw >= 0.9) {
            stir(trial, random);
        }
        SeparationEffort effort;
        effort.passes = random.chance(0.5) ? 12 : 40;
        const bool better = separate(trial, random, effort) && compact(trial, polish_options(options.limits, 8)) &&
                            within(trial.envelope(), options.limits) &&
                            volume(trial.envelope()) < volume(best.envelope()) * (1 - 1e-9);
        spent += trial.measured() - before;
        if (better) {
            best = trial;
        }
    }
    layout = best;
}

} // namespace tuckwright::nesting
