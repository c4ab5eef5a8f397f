// SPDX-License-Identifier: GPL-3.0-or-later
#include "packing/steadying.hpp"

#include "packing/construct.hpp"
#include "packing/loosening.hpp"
#include "packing/pile.hpp"
#include "packing/separation.hpp"

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
    return e.height <= l.height &&
           (e.round ? e.radius <= l.radius : e.half_length <= l.half_length && e.half_width <= l.half_width);
}

std::vector<int> not_carried(const Layout& layout)
{
    std::vector<int> found;
    for (int body = 0; body < static_cast<int>(layout.size()); ++body) {
        if (!is_carried(layout, body, layout.place(body))) {
            found.push_back(body);
        }
    }
    return found;
}

/// Puts bodies where they overlap least, somewhere else, makes the envelope a little larger, and pushes all apart.
/// Returns whether that went well; else the layout is as it was.
bool push_in(Layout& layout, const std::vector<int>& bodies, const EnvelopeLimits& limits, PolishOptions options,
             Random& random, const std::function<bool()>& stop)
{
    constexpr int samples = 60;
    constexpr double wider = 1.007;
    Layout trial = layout;
    for (const int body : bodies) {
        std::vector<Door> open = doors(trial, body);
        if (random.chance(0.7)) { // beside the same things it would mostly lie as badly
            std::erase_if(open,
                          [&](const Door& d) { return d.cell != outermost && d.cell == layout.place(body).cell; });
        }
        if (const auto place = least_overlapping(trial, body, open, samples, random)) {
            trial.put(body, *place);
        }
    }
    Envelope envelope = trial.envelope();
    envelope.radius = std::min(wider * envelope.radius, limits.radius);
    envelope.half_length = std::min(wider * envelope.half_length, limits.half_length);
    envelope.half_width = std::min(wider * envelope.half_width, limits.half_width);
    envelope.height = std::min(wider * envelope.height, limits.height);
    trial.set_envelope(envelope);
    SeparationEffort effort;
    effort.passes = 6;
    effort.strikes = 1;
    effort.stop = stop;
    if (!separate(trial, random, effort) || !loosened(trial, options)) {
        return false;
    }
    layout = trial;
    return true;
}

} // namespace

bool steady(Layout& layout, Random& random, const EnvelopeLimits& limits, const std::function<bool()>& stop)
{
    constexpr int rounds = 10, late = 6, samples = 60;
    Layout trial = layout;
    PolishOptions options;
    if (!loosened(trial, options)) {
        return false;
    }
    drop_all(trial, air_of(options));
    for (int round = 0; round < rounds; ++round) {
        std::vector<int> loose = not_carried(trial);
        if (loose.empty()) {
            break;
        }
        std::erase_if(loose, [&](int body) { return place_anew(trial, body, random, samples, Going::into_gaps_only); });
        if (!loose.empty() && !(round < late && push_in(trial, loose, limits, options, random, stop))) {
            for (const int body : loose) {
                place_anew(trial, body, random, samples, Going::on_top);
            }
        }
        drop_all(trial, air_of(options));
    }
    tighten(trial);
    if (!is_within(trial.envelope(), limits) || worst_violation(trial, PolishOptions{}) > 2e-8) {
        return false;
    }
    layout = trial;
    return true;
}

} // namespace tuckwright::packing
