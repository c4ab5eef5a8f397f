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

/// The kit with what follows from the kinds of its items, as of those in a file: the usual rules for each two that they are
/// about, but not those already there nor those for a lid and its vessel; nothing on top of what is fragile, unless it
/// says what it bears. Items without a name get their id as name. Without this, kinds only bring cautions.
/// Requires: problems_of() finds no fault but names that are missing. Ensures: doing it twice changes nothing. Complexity: pairs of items times rules.
Kit with_usual_rules(Kit kit);

/// All that keeps a kit from being packed at all: numbers that are none, negative or nought; ids that are missing or given
/// twice; cavities, necks or parts that do not fit their item; lids, rings, rules and bands about items that are not there.
/// Each says which item and field. Nothing: solve() takes the kit. Ensures: nothing for what the reader returns, none of
/// whose rules is looked into again, such as lids that cannot shut. Complexity: near-linear in items and rules.
std::vector<Problem> problems_of(const Kit& kit);

} // namespace tuckwright
