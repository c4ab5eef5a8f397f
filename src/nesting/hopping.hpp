// SPDX-License-Identifier: GPL-3.0-or-later
/// Hops from one jam of a layout to the next lesser one, within its envelope.
#pragma once
#include <cstdint>
#include <functional>

#include "packing/layout.hpp"
#include "packing/random.hpp"

namespace tuckwright::nesting {

/// How hard to try.
struct HopEffort {
    int patience = 40;          ///< hops in a row that gain nothing before it gives up
    int relaxing = 30;          ///< steps in which all are pushed apart together, after each hop
    std::function<bool()> stop; ///< asked before each hop; then it gives up
};

/// Puts one body elsewhere or swaps two, pushes all apart, and keeps what overlaps less; again and again. Ensures: true
/// and a layout whose overlap is negligible, or false and the layout with the least overlap met.
/// Source: monotonic basin hopping for discs in a circle, A. Grosso, A. Jamali, M. Locatelli and F. Schoen, J. Global
/// Optimization 47 (2010).
bool hop(packing::Layout& layout, packing::Random& random, const HopEffort& effort);

} // namespace tuckwright::nesting
