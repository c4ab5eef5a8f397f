// SPDX-License-Identifier: GPL-3.0-or-later
/// The exact check: decides with exact numbers whether a bundle is what it claims to be.
#pragma once
#include <string>
#include <vector>

#include "tuckwright/bundle.hpp"

namespace tuckwright {

/// One thing that the exact check could not prove.
struct Objection {
    /// A short word: "number", "forest", "carrying", "cavity", "inside", "apart", "lid", "upright", "rest",
    /// "load", "step", "reach", "girth" or "limit"; "kit" where it is held against its kit.
    std::string rule;
    std::string what; ///< in words, with the items' labels and figures
};

/// Proves a bundle with exact rational numbers, or says what is wrong, at most `most` objections, the first in the
/// order: numbers, forest, carrying, cavities, inside, apart, lids, upright, rests, loads, steps, reach, girth, limits.
/// Ensures: an empty list means that for the very numbers of the bundle every item lies inside its container less the
/// clearance, all others are apart or touch, lids are shut, upright items stand, everything rests on something, the
/// bundle's rules of carrying hold for all copies, nothing bears more than it may, the steps can be carried out one
/// after the other in straight lines, what is wanted soon comes out after as many things as are told, and all of it
/// passes through its bag and bands. A bundle without items has an objection.
/// Complexity: quadratic in the solids, times the steps' obstacles.
std::vector<Objection> check(const Bundle& bundle, std::size_t most = 1);

/// Whether the bundle holds what the kit asks for, or what differs, at most `most` objections, all of the rule "kit".
/// Ensures: an empty list means that the bundle has every copy of every item of the kit and nothing else, each with its
/// weight, and in a shape that the kit allows: as described or in one of its forms; a sheet flat, folded or rolled in
/// enough layers; a pouch folded, or round or rectangular within its girth and length; a cloth as a box of its volume,
/// nowhere thinner than it can be; and that names, limits, clearance, rules of carrying, bag and bands are the kit's.
/// Sizes may differ by the rounding to the grid. The kit is as its file gives it.
/// Requires: a bundle to which check() has no objection.
std::vector<Objection> check_against(const Bundle& bundle, const Kit& kit, std::size_t most = 1);

} // namespace tuckwright
