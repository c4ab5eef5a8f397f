// SPDX-License-Identifier: GPL-3.0-or-later
/// What a kit file says of the trip, and of the vessels that may come along for it.
#pragma once
#include <vector>

#include "kit/links.hpp"
#include "tuckwright/trip.hpp"

namespace tuckwright::reading {

/// A trip whose offered vessels are still drafts, which are checked together with the items of the kit.
struct TripDraft {
    Trip trip;                     ///< each Offer without its item
    std::vector<ItemDraft> offers; ///< in the order of the trip: those for the fuel, then for each portion
};

TripDraft read_trip(Reading& reading, const Node& node);

/// Reports lids of the kit that close an offered vessel, which may stay at home. Requires: the offers are the last of the
/// drafts, from `first` on; check_lids has filled in Item::closes.
void check_offers(Reading& reading, const std::vector<ItemDraft>& drafts, std::size_t first);

/// Puts the trip into the kit: its offers, and the rules that name them, are no longer the kit's own. Requires: the last
/// items of the kit are the offers, unless a problem has been found.
void take_trip(Kit& kit, Trip trip);

} // namespace tuckwright::reading
