// SPDX-License-Identifier: GPL-3.0-or-later
/// The ways in which items of a kit can be carried.
#pragma once
#include <optional>
#include <string>

#include "tuckwright/kit.hpp"

namespace tuckwright {

/// How many layers a sheet of that length (mm) has, rolled to a tube of that inner diameter (mm): one more than whole
/// turns where it overlaps, so that the tube is nowhere thicker. Requires: both positive.
int roll_layers(double length, double diameter);

/// The kit with all forms of its sheets and cloths written out after those that the file gives: sheets folded (each side
/// in halves, thirds or quarters, four times four at most), rolled as tight as they may be, wrapped round each round
/// thing of the kit and lining each round cavity; cloths as boxes of several thicknesses and proportions, and such as
/// just fit the kit's cavities; pouches that something must go into, round and rectangular in two heights, and other
/// pouches folded, empty. Tubes may be used as sleeves. Ensures: the same kit, the same forms; the flat sheet and the
/// first shape of the cloth stay the items' own; a pouch is by itself as in its first form, which tells its words too.
Kit with_stowages(Kit kit);

/// The kit with each thing that is pressed into a vessel as it is there: as wide as the bore, its own cavity narrower by as
/// much as its outside. The tolerances of both count for that cavity. Ensures: `relaxed` tells its diameter left to
/// itself; what is so already stays as it is. Requires: a kit as the reader lets it through, at its worst or not.
Kit pressed_in(Kit kit);

/// A pouch filled out to a cavity of that shape, mm on the grid, its sides even numbers of nanometres; nothing where the
/// girth does not go round it (pi counts as 355/113) or it is higher than the pouch is long.
std::optional<Stowage> filled_out(const Pouch& pouch, const Shape& cavity);

/// Whether some rule puts an item into that one.
bool must_hold_something(const Kit& kit, const std::string& id);

/// Puts forms before those that the pouch has. Ensures: the first is the pouch's own.
void add_pouch_forms(Item& pouch, std::vector<Stowage> forms);

/// An item as it is in one of its forms: 0 for its own, k for forms[k - 1]. Requires: there is one.
Item in_form(const Item& item, std::size_t form);

} // namespace tuckwright
