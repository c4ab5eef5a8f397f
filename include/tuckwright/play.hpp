// SPDX-License-Identifier: GPL-3.0-or-later
/// How far packed things can still move.
#pragma once
#include <vector>

#include "tuckwright/bundle.hpp"

namespace tuckwright {

/// The play of every item: how far it can go straight along the axes of what it lies in, both ways, with all that it holds
/// and its shut lid, while everything else stays. The walls of its containers and the bundle's envelope hold it, and other
/// items; an open mouth of another item counts as shut. A shut lid has none of its own, nor has what is pressed into a vessel. Figures are rounded down: what
/// is within two micrometres touches, and stops unless it slides along a face (aslant by 5e-5 rad at most).
/// Requires: a bundle to which check() has no objection. Ensures: one entry an item, in its order; not negative, and not
/// longer than the envelope is from corner to corner.
/// Complexity: quadratic in the items, times their solids; a few hundred thousand pairs a second.
std::vector<Play> plays(const Bundle& bundle);

/// The longest way an item has from one end to the other, mm.
double longest_way(const Play& play);

/// mm from one end to the other that are heard and felt on the way. Common practice, no source.
inline constexpr double rattling = 5.0;

/// Items that are not soft and whose longest way is at least so long, the longest first. Requires: the bundle's plays are there.
std::vector<std::size_t> rattlers(const Bundle& bundle);

/// Added up over all items and directions, mm.
double total_play(const std::vector<Play>& plays);

} // namespace tuckwright
