// SPDX-License-Identifier: GPL-3.0-or-later
/// Bands that go over a shut lid and under its vessel.
#pragma once
#include <optional>
#include <string>

#include "tuckwright/kit.hpp"

namespace tuckwright {

/// The way over a shut lid and under its vessel, mm: round the rectangle round both, seen along the vessel's x or y,
/// whichever is less. Requires: a lid.
double way_over(const Item& lid, const Item& vessel);

/// A proof in words that some band is too short for the lid that it holds, in whatever form the vessel is. Nothing means
/// that all are long enough, but for the rounding to the grid.
std::optional<std::string> lid_band_misfit(const Kit& kit);

} // namespace tuckwright
