// SPDX-License-Identifier: GPL-3.0-or-later
#include "packing/steadying.hpp"

#include "packing/construct.hpp"
#include "packing/loosening.hpp"
#include "packing/pile.hpp"

namespace tuckwright::packing {

namespace {

/// The air that leaves room for rounding turns to the grid; less where there is not so much.
bool loosened(Layout& layout, PolishOptions& options)
{
    options.curved_gap = building_air.curved;
    options.wall_gap = building_air.wall;
    if (loosen(layout, options)) {
        return true;
    }
    options = PolishOptions{};
    return loosen(layout, options);
}

bool is_within(const Envelope& e, const EnvelopeLimits& l)
{
    return e.height <= l.height && (e.round ? e.radius <= l.radius
                                            : e.half_length <= l.half_length && e.half_width <= l.half_width);
}

} // namespace

bool steady(Layout& layout, Random& random, const EnvelopeLimits& limits)
{
    constexpr int rounds = 8, samples = 100;
    Layout trial = layout;
    PolishOptions options;
    if (!loosened(trial, options)) {
        return false;
    }
    for (int round = 0;; ++round) {
        drop_all(trial, air_of(options));
        std::vector<int> loose;
        for (int body = 0; body < static_cast<int>(trial.size()); ++body) {
            if (!is_carried(trial, body, trial.place(body))) {
                loose.push_back(body);
            }
        }
        if (loose.empty() || round == rounds) {
            break;
        }
        for (const int body : loose) {
            place_anew(trial, body, random, samples);
        }
    }
    tighten(trial);
    if (!is_within(trial.envelope(), limits) || worst_violation(trial, PolishOptions{}) > 2e-8) {
        return false;
    }
    layout = trial;
    return true;
}

} // namespace tuckwright::packing
