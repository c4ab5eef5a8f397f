// SPDX-License-Identifier: GPL-3.0-or-later
/// Proofs that an item alone is too large for the limits of a bundle, or for a cavity.
#pragma once
#include <optional>
#include <string>

#include "tuckwright/kit.hpp"

namespace tuckwright::nesting {

/// Why no turn of the item, aslant or not, brings it within the limits, in words; for an upright item, no turn about
/// the upright axis. Nothing means that nothing is proved: for a cylinder then some turn does, but for rounding (1e-9
/// of a limit, to the safe side); a box is known by its inscribed cylinders and its diagonal. Complexity: constant.
std::optional<std::string> misfit(const Item& item, const BundleRule& rule);

/// Whether an item could enter a cavity whose inner dimensions these are, however it is turned; false is proved. An open
/// cavity takes things of any length.
bool could_enter(const Item& item, const Shape& cavity, bool closed);

} // namespace tuckwright::nesting
