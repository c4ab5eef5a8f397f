// SPDX-License-Identifier: GPL-3.0-or-later
/// The way back: from a bundle to a layout of the search.
#pragma once
#include <optional>
#include <vector>

#include "nesting/search.hpp"
#include "tuckwright/bundle.hpp"

namespace tuckwright::nesting {

/// A layout in which the things of the kit lie as they do in the bundle: in the same vessels, forms and turns, told from
/// the floors of what they lie in; the same lids are shut. Sizes are the kit's, and may differ from the bundle's: then
/// things may overlap, and compact() has to mend it. Nothing where a thing of the kit is not in the bundle, is stowed
/// there in a way that the kit does not know, or may not lie where it does.
/// Requires: a kit with all its stowages, on the even grid. Ensures: from bundle_of_layout() it leads back, but for the
/// rounding to the grid, and a quarter turn of a box.
std::optional<Proposal> layout_of_bundle(const Kit& kit, const Bundle& bundle);

/// The same where things may be missing in the bundle: those are put on top of it one above the other, a vessel with its
/// lid, and their bodies told in `missing`.
std::optional<Proposal> layout_of_part(const Kit& kit, const Bundle& bundle, std::vector<int>& missing);

} // namespace tuckwright::nesting
