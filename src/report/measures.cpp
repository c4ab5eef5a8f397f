// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/measures.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <vector>

#include "report/words.hpp"
#include "tuckwright/fits.hpp"
#include "tuckwright/play.hpp"

namespace tuckwright::report {

namespace {

constexpr std::size_t tightest_named = 3;
constexpr std::size_t rattlers_named = 6;

std::string listed(const Bundle& bundle, const std::vector<std::size_t>& items)
{
    std::string text;
    for (std::size_t i = 0; i < items.size(); ++i) {
        text += (i == 0 ? "" : i + 1 < items.size() ? ", " : " and ") + spoken_name(bundle, items[i]);
    }
    return text;
}

std::string subject(const Bundle& bundle, const Fit& fit)
{
    const std::string vessel = spoken_name(bundle, fit.in.item), items = listed(bundle, fit.items);
    switch (fit.way) {
    case FitWay::all_round:
    case FitWay::pressed: return items + " in " + vessel;
    case FitWay::across: return items + " side by side in " + vessel;
    case FitWay::opening: return items + " through the opening of " + vessel;
    case FitWay::along: return items + " from the floor to the lid of " + vessel;
    }
    return {};
}

std::string at_worst(const Fit& fit)
{
    return fit.worst < 0 ? "at worst " + length_in_words(-fit.worst) + " too tight"
                         : room_in_words(fit.worst) + " at worst";
}

std::string fit_in_words(const Bundle& bundle, const Fit& fit)
{
    if (fit.way == FitWay::pressed) {
        return fmt::format("{}: held by its spring, {} wider than the bore; {} at worst", subject(bundle, fit),
                           room_in_words(fit.room), room_in_words(fit.worst));
    }
    const std::string how = fit.way == FitWay::opening     ? "passes with {} all round"
                            : fit.way == FitWay::all_round ? "slides in with {} all round"
                                                           : "{} in all";
    return subject(bundle, fit) + ": " + fmt::format(fmt::runtime(how), room_in_words(fit.room)) +
           (fit.worst == fit.room ? "" : "; " + at_worst(fit)); // with no tolerance there is but one figure
}

/// Along which of its ways a thing can move farthest, in the finished bundle.
std::string way_in_words(const Bundle& bundle, std::size_t item)
{
    const auto& free = bundle.plays[item].free;
    std::size_t farthest = 0;
    for (std::size_t k = 1; k < 3; ++k) {
        farthest = free[k][0] + free[k][1] > free[farthest][0] + free[farthest][1] ? k : farthest;
    }
    constexpr double upright = 0.9;
    const auto& in = bundle.items[item].in;
    const bool has_frame = in && in->item < bundle.items.size() && in->cavity < bundle.items[in->item].cavities.size();
    const Pose frame = has_frame ? bundle.items[in->item].cavities[in->cavity].pose : Pose{};
    const bool up = std::abs(rotation_matrix(frame.turn)[2][farthest]) > upright;
    return up ? "up and down" : "sideways";
}

} // namespace

std::string fits_text(const Bundle& bundle)
{
    if (!has_tolerances(bundle) || bundle.fits.empty()) {
        return {};
    }
    std::string text = "\nHow things fit as measured, and at worst by their tolerances:\n";
    for (const Fit& fit : bundle.fits) {
        text += wrapped("  - ", fit_in_words(bundle, fit));
    }
    return text + wrapped("", tightest_note(bundle));
}

std::string tightest_note(const Bundle& bundle)
{
    std::string tight;
    for (const Fit& fit : tightest(bundle, tightest_named)) {
        const bool is_exact = fit.worst == fit.room, fits = is_exact || fit.worst >= 0;
        const std::string whole = fit.way == FitWay::along || fit.way == FitWay::across ? " in all" : " all round";
        const std::string room = !fits ? at_worst(fit)
                                       : room_in_words(is_exact ? fit.room : fit.worst) +
                                             (fit.way == FitWay::pressed ? "" : whole) + (is_exact ? "" : " at worst");
        tight += (tight.empty() ? "" : "; ") + subject(bundle, fit) + " (" + room + ")";
    }
    return tight.empty() ? tight : "Tightest: " + tight + ".";
}

std::string rattling_note(const Bundle& bundle)
{
    const std::vector<std::size_t> loose = rattlers(bundle);
    if (loose.empty()) {
        return {};
    }
    std::string text;
    for (std::size_t i = 0; i < std::min(loose.size(), rattlers_named); ++i) {
        text += (i == 0 ? "" : ", ") + spoken_name(bundle, loose[i]) + " " + way_in_words(bundle, loose[i]) + " by " +
                room_in_words(longest_way(bundle.plays[loose[i]]));
    }
    if (loose.size() > rattlers_named) {
        text += fmt::format(" and {} more", loose.size() - rattlers_named);
    }
    std::vector<std::size_t> soft;
    for (std::size_t i = 0; i < bundle.items.size(); ++i) {
        if (bundle.items[i].soft) {
            soft.push_back(i);
        }
    }
    return "What rattles: " + text + "." +
           (soft.empty()
                ? ""
                : std::string(" To pad it, there ") + (soft.size() > 1 ? "are " : "is ") + listed(bundle, soft) + ".");
}

} // namespace tuckwright::report
