// SPDX-License-Identifier: GPL-3.0-or-later
/// A few bodies of a layout taken out and put in again.
#pragma once
#include <functional>

#include "packing/layout.hpp"
#include "packing/polish.hpp"
#include "packing/random.hpp"

namespace tuckwright::nesting {

/// Takes some bodies out, each with what it holds, puts them in again and fits the envelope to them. The envelope's
/// width is kept as room for them. Requires: no overlap. Ensures: no overlap; or false and a layout that means nothing.
bool rebuild_some(packing::Layout& layout, packing::Random& random);

struct ReworkOptions {
    packing::EnvelopeLimits aim; ///< what lies within it is better than what does not, see burden()
    std::function<bool()> stop;
    int trials = 60;
};

/// Rebuilds a part again and again, within the width of `room`, and goes on from what is no larger. Requires: no overlap.
/// Ensures: no overlap, and no more burden than before.
/// Source: iterated greedy search, R. Ruiz and T. Stutzle, European J. Operational Research 177 (2007).
void rework(packing::Layout& layout, const packing::Envelope& room, packing::Random& random,
            const ReworkOptions& options);

} // namespace tuckwright::nesting
