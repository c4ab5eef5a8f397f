// SPDX-License-Identifier: GPL-3.0-or-later
/// Kits that a program builds itself, instead of reading them from a file: what the reader would have done to them.
#pragma once
#include <vector>

#include "tuckwright/kit.hpp"
#include "tuckwright/result.hpp"

namespace tuckwright {

/// The cavity that a wall and a base leave within an outside, all in mm; a tapering outside leaves a tapering cavity whose
/// foot is the outside's diameter at the height of the base less two walls, measured level. A sleeve (open at both ends)
/// has no base, a closed vessel a cover as thick as its base.
/// Requires: wall and base positive and such that room is left, at the foot too (contract). Ensures: rounded down to the grid; open, its top is the
/// item's top.
Cavity cavity_of(const Shape& outside, double wall, double base, Opening opens = Opening::top);

/// The kit as the reader would have made it of a file that says the same: the usual rules for each two items whose kinds
/// they are about, but not those already there nor those for a lid and its vessel; what holds a liquid, or has contents,
/// upright; nothing on top of what is fragile, unless it says what it bears; items without a name called by their id; the
/// outside of a cloth, sheet or pouch where it was left out; sides on the grid, outsides rounded up and cavities down.
/// Without this, kinds only bring cautions. Any kit may be given, an unsound one stays so.
/// Ensures: doing it twice changes nothing. Complexity: pairs of items times rules.
Kit with_usual_rules(Kit kit);

/// All that is wrong with a kit, each with item and field. First what keeps it from being packed at all: numbers that are
/// none, negative or nought; ids that are missing or given twice; cavities or necks that do not fit their item; lids,
/// rings, rules and bands about items that are not there. Where there is nothing of that, what would make it unsafe: liquids
/// that are open or need not stand, and rules that kinds ask for but are not there, unless the kit waives some.
/// Ensures: nothing for what the reader returns. It is less strict than the reader: lids that cannot shut, parts far from
/// their item and rules that contradict each other are found by the search only, as what does not fit.
/// Complexity: pairs of items times rules.
std::vector<Problem> problems_of(const Kit& kit);

} // namespace tuckwright
