// SPDX-License-Identifier: GPL-3.0-or-later
/// From a layout in floating point to a bundle on the grid.
#pragma once
#include "nesting/search.hpp"
#include "tuckwright/bundle.hpp"

namespace tuckwright::nesting {

/// Rounds the free turns of a layout to those of small whole-number quaternions.
void round_turns(packing::Layout& layout);

/// The bundle's items and envelope in the world frame, on the grid; no steps and no certificate yet.
/// Requires: turns rounded by round_turns().
Bundle bundle_of_layout(const Kit& kit, const KitScene& scene, const packing::Layout& layout);

/// For every body of the scene, the index of its item in the bundle.
std::vector<std::size_t> items_of_bodies(const Kit& kit, const KitScene& scene);

} // namespace tuckwright::nesting
