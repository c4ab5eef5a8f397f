// SPDX-License-Identifier: GPL-3.0-or-later
/// Round things that stand side by side in a round bundle: a problem in the plan.
#pragma once
#include "nesting/squeeze.hpp"

namespace tuckwright::nesting {

/// Whether the bundle is round, and what lies directly in it, at least two bodies, stands side by side in one layer and
/// is round in plan.
bool is_disc_layer(const packing::Layout& layout);

/// Looks for places in the plan for what stands in such a layer, with all that it holds, in a smaller circle. Requires:
/// is_disc_layer(). Ensures: true and a smaller layout, free of overlap but for rounding; or false and the layout as it
/// was.
bool rearrange_discs(packing::Layout& layout, packing::Random& random, const SqueezeOptions& options);

} // namespace tuckwright::nesting
