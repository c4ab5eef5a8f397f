// SPDX-License-Identifier: GPL-3.0-or-later
/// Why things stay outside of a vessel, in words.
#pragma once
#include <vector>

#include "advice/best_set.hpp"
#include "tuckwright/fill.hpp"

namespace tuckwright::advice {

/// What is known when the best set has been chosen.
struct Facts {
    const Kit& kit;
    std::size_t vessel;
    const SetModel& model;
    const std::vector<Counts>& proved;       ///< those of the model's impossible sets that are proved
    const std::vector<bool>& goes_in_alone;  ///< by item
};

/// Every copy that is a candidate and not in the set, those of an item together, in the kit's order.
std::vector<Left> left_out(const Facts& facts, const Counts& set);

/// By how much a plain thing is too large for a shut cavity, for each way to lay it down: "standing it is 12 mm too high,
/// lying 4.3 mm too long". Empty for what has further forms or no shape of its own, and where it is in some way not.
std::string excess_in_words(const Item& item, const Shape& cavity, double clearance);

} // namespace tuckwright::advice
