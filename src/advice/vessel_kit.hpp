// SPDX-License-Identifier: GPL-3.0-or-later
/// A vessel with its lid shut and things in it, as a kit.
#pragma once
#include <optional>

#include "advice/part_of_kit.hpp"
#include "tuckwright/kit.hpp"

namespace tuckwright::advice {

/// The index of the lid that closes an item; nothing where it has none.
std::optional<std::size_t> lid_of(const Kit& kit, std::size_t vessel);

/// One vessel, upright, its lid shut on it, and so many copies of the other items, all of them in it. A vessel without a
/// lid counts as shut at its rim, so that nothing stands out. Limits, bag and bands are left out. Requires: the numbers
/// of the vessel and of its lid do not count.
Kit vessel_kit(const Kit& kit, std::size_t vessel, Counts counts);

/// What the vessel holds when shut, without clearances.
Shape shut_cavity(const Kit& kit, std::size_t vessel);

/// mm^3 that a copy of the item takes up at least, in any form, whatever goes into its own cavity. Not negative.
double least_stuff(const Item& item);

/// Whether it is proved that these things do not all go into the shut vessel: `work` limits the effort, 0 for what takes
/// no search. Holds however things are turned without a search, else with everything standing, lying or on its side.
bool cannot_go_in(const Kit& kit, std::size_t vessel, Counts counts, std::uint64_t work);

} // namespace tuckwright::advice
