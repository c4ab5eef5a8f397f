// SPDX-License-Identifier: GPL-3.0-or-later
/// Layouts without waste: boxes that fill a box-shaped bundle to the last corner.
#pragma once
#include <cstdint>
#include <functional>
#include <optional>
#include <vector>

#include "packing/grid_fill.hpp"
#include "packing/layout.hpp"
#include "packing/polish.hpp"

namespace tuckwright::packing {

/// How much exact_fill() does.
struct FillEffort {
    std::uint64_t work = 0; ///< cells and sums looked at, over all envelopes
    std::function<bool()> stop = nullptr;
};

/// A layout in a box envelope within the limits, with just the volume of all bodies together, along a common measure of
/// all their sides. Ensures: each body lies directly in the bundle in a form that it may take there, without overlap;
/// or nothing, so that no such layout was found with that work. Bodies that are not plain boxes, could be stowed in
/// several ways or keep company by rules have none.
std::optional<Layout> exact_fill(const Scene& scene, const EnvelopeLimits& limits, const FillEffort& effort);

/// The envelopes that blocks of these volumes and sides could fill, in cells, not above `most`: those that need least
/// area of walls first. Of two that differ by a quarter turn about the upright axis and are both within, one.
std::vector<Cells> envelopes_without_waste(const std::vector<Block>& blocks, const Cells& most);

} // namespace tuckwright::packing
