// SPDX-License-Identifier: GPL-3.0-or-later
/// All bodies of a layout pushed apart at once.
#pragma once
#include "packing/air.hpp"
#include "packing/layout.hpp"

namespace tuckwright::packing {

/// Moves and turns all bodies together, each staying in its cell, to a local least of the weighted squares of all
/// overlaps and excesses. Ensures: that sum is no larger than before. Complexity: `iterations` times the pairs that are
/// near one another, and a quick test of all pairs.
/// Source: overlap as an elastic energy, as W. Huang and T. Ye do for discs, European J. Operational Research 210 (2011).
void relax(Layout& layout, const Weights& weights, int iterations);

struct RelaxOptions {
    int iterations = 20;
    Air air;                 ///< counts as overlap where it is missing
    bool turning = true;     ///< whether bodies may turn about their cell's axis
    double enough = 1e-8;    ///< ends when all squares of overlaps add up to less, as a share of the scene's size squared
    int patience = 3;        ///< steps that gain next to nothing before it ends
};
void relax(Layout& layout, const Weights& weights, const RelaxOptions& options);

} // namespace tuckwright::packing
