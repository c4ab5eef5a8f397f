// SPDX-License-Identifier: GPL-3.0-or-later
/// Some things of a kit as a kit of their own.
#pragma once
#include <string>
#include <vector>

#include "tuckwright/kit.hpp"

namespace tuckwright::advice {

/// How many copies of each item of a kit.
using Counts = std::vector<int>;

/// The kit with so many copies of each item and no others. A lid whose vessel is not there is carried loose, a ring that
/// would be pressed into it left to itself; rules hold among what is there. Bag, bands and limits stay, but for bands
/// over lids that are not there. Requires: an entry an item, none above its count.
Kit part_of(const Kit& kit, const Counts& counts);

/// The index of the item with that id. Requires: there is one.
std::size_t index_of(const Kit& kit, const std::string& id);

} // namespace tuckwright::advice
