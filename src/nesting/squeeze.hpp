// SPDX-License-Identifier: GPL-3.0-or-later
/// Shrinking the envelope of a layout, and reworking a layout into a smaller one.
#pragma once
#include <cstdint>
#include <functional>

#include "packing/polish.hpp"
#include "packing/random.hpp"

namespace tuckwright::nesting {

struct SqueezeOptions {
    packing::EnvelopeLimits limits;
    std::uint64_t work = 0;      ///< pairs of pieces measured before it ends
    std::function<bool()> stop;
    std::function<void(double)> found = nullptr; ///< told each smaller volume in mm^3 within the limits
    /// What squeeze() does with each smaller layout before it is accepted; whether that went well. It may get larger.
    std::function<bool(packing::Layout&)> finish = nullptr;
};

/// Whether an envelope is within limits, but for rounding.
bool within(const packing::Envelope& envelope, const packing::EnvelopeLimits& limits);

/// Shrinks the envelope step by step as long as short separations succeed, then compacts. Requires: no overlap.
/// Returns whether the layout lies within the limits; then it is free of overlap.
bool squeeze(packing::Layout& layout, packing::Random& random, const SqueezeOptions& options);

/// Tries to make a layout smaller by larger changes: other aspects, bodies evicted and nested elsewhere, swaps.
/// Requires: no overlap, within the limits. Ensures: the same, no larger than before. What is a little larger than the
/// best is followed too, ever less as the work is used up. Source: threshold accepting, G. Dueck and T. Scheuer, J.
/// Computational Physics 90 (1990).
void refine(packing::Layout& layout, packing::Random& random, const SqueezeOptions& options);

} // namespace tuckwright::nesting
