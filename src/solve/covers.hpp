// SPDX-License-Identifier: GPL-3.0-or-later
/// The search for bundles that pass through their bag and bands.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "nesting/search.hpp"
#include "tuckwright/bundle.hpp"
#include "tuckwright/kit.hpp"

namespace tuckwright {

/// The kit with the limits that its bag leaves for what is in it: less the bag's wall on every side, and no higher than
/// it closes over. What holds of bundles of that kit holds of those in the bag. Requires: no cover_misfit().
Kit within_bag(Kit kit);

/// A proof in words that nothing passes through the bag or a band: the limits hold hardly more than the bag's own wall,
/// or some item is too large whichever way it is turned. Nothing means that nothing is proved.
std::optional<std::string> cover_misfit(const Kit& kit);

/// The least way round the outline of an item, mm, seen along any direction; for one that stands upright, from above.
double least_girth(const Item& item);

/// Whether a bundle passes through the bag and the bands, or nearly: the last compaction may yet win a thousandth.
bool passes_covers(const Kit& kit, const Bundle& bundle);

/// What the search proposes, as far as it passes through the bag and the bands. Where the smallest does not, narrower
/// limits are searched too, which only such bundles meet: so it takes up to three times as long. Ensures: in rising
/// volume; without a bag and bands, what the search proposes.
std::vector<nesting::Proposal> covered_proposals(const Kit& kit, const nesting::SearchOptions& options);

/// "that passes through soft-bag (400 mm round)", or nothing without bag and bands.
std::string passing_in_words(const Kit& kit);

} // namespace tuckwright
