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
    /// "load", "step", "reach" or "limit".
    std::string rule;
    std::string what; ///< in words, with the items' labels and figures
};

/// Proves a bundle with exact rational numbers, or says what is wrong, at most `most` objections, the first in the
/// order: numbers, forest, carrying, cavities, inside, apart, lids, upright, rests, loads, steps, reach,
/// limits.
/// Ensures: an empty list means that for the very numbers of the bundle every item lies inside its container less the
/// clearance, all others are apart or touch, lids are shut, upright items stand, everything rests on something, the
/// bundle's rules of carrying hold for all copies, nothing bears more than it may, the steps can be carried out one
/// after the other in straight lines, and what is wanted soon comes out after as many things as are told. A bundle without items has an objection.
/// Complexity: quadratic in the solids, times the steps' obstacles.
std::vector<Objection> check(const Bundle& bundle, std::size_t most = 1);

} // namespace tuckwright
