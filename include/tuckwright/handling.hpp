// SPDX-License-Identifier: GPL-3.0-or-later
/// What people do with a packed bundle: what lies on what, and how many things come out before one that is wanted.
#pragma once
#include <vector>

#include "tuckwright/bundle.hpp"

namespace tuckwright {

/// The items that press on one, themselves or through others, each with all that it holds: what lowered by
/// tolerance::rest_drop would overlap the item, its shut lid or what it holds, and what lies on that in turn. What it is
/// in, what it holds and lids shut on these press on nothing here. Ascending.
/// Requires: items that are apart and in their containers. Complexity: quadratic in the items, times their solids.
std::vector<std::size_t> load_on(const Bundle& bundle, std::size_t item);

/// Grams of these items, with their contents.
double weight_of(const Bundle& bundle, const std::vector<std::size_t>& items);

/// Whether nothing lies on the item that may bear nothing, and no more than it may bear.
bool bears_its_load(const Bundle& bundle, std::size_t item, const std::vector<std::size_t>& load);

/// For the certificate: planes for pairs that are not on each other and that no known axis shows to be so.
std::vector<SeparatingPlane> load_planes(const Bundle& bundle);

/// What has to come out before an item can, each thing with all that it holds, along the ways by which they went in.
struct Unpacking {
    bool alone = false;              ///< whether it can come out before the other steps are all undone
    std::vector<std::size_t> before; ///< things to take out or open first
    std::size_t count = 0;           ///< of them, with what lies in sleeves, which would fall out
                                     ///< (not alone: the steps after its own)
};

/// The fewest things that come out before the item, whether it is drawn out where it lies or from a vessel that has been
/// taken out with it. Uses the bundle's steps, or the plainest ways where it has none yet.
Unpacking unpacking(const Bundle& bundle, std::size_t item);

/// For the certificate: planes that show the ways out of all items with a reach. Requires: steps.
std::vector<SeparatingPlane> unpacking_planes(const Bundle& bundle);

} // namespace tuckwright
