// SPDX-License-Identifier: GPL-3.0-or-later
/// How much room things have in a cavity, as measured and at worst.
#pragma once
#include <vector>

#include "tuckwright/bundle.hpp"

namespace tuckwright {

/// The fits of everything that lies in a vessel, from the bundle's sizes and tolerances:
/// - each item by itself between the side walls, all round (half of the smallest room across);
/// - each item that stands or lies straight, not slanting, on its way through a cavity's narrow opening, turned as it lies;
/// - two items side by side in a round cavity, at the same height: the air left across when they touch each other, turned
///   as they are and side by side in the direction in which they lie now;
/// - rows of items from wall to wall in a rectangular cavity, and from floor to lid in a shut one, each with what stands out
///   of it: the row with the least room at worst, for each direction.
/// - what is pressed into a vessel: by how much it would be wider than the cavity, were it left to itself; at worst, at
///   least by so much.
/// At worst each outside is as large and each cavity as small as it may be: a row counts with the sum of its tolerances.
/// Figures are rounded down, and never above what these places give; another arrangement may have more room.
/// Requires: a bundle to which check() has no objection. Ensures: the same bundle, the same fits, by vessel, cavity and
/// item. Complexity: quadratic in the items of a cavity, times their solids.
std::vector<Fit> fits(const Bundle& bundle);

/// mm between the walls in all: twice what there is all round.
double whole_room(const Fit& fit, double room);

/// The fits with the least room at worst, the tightest first, at most `most`; of copies that fit alike one, and none of
/// what is pressed into a vessel, which has no room.
std::vector<Fit> tightest(const Bundle& bundle, std::size_t most);

/// Whether anything in the bundle has a tolerance.
bool has_tolerances(const Bundle& bundle);

} // namespace tuckwright
