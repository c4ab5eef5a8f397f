// SPDX-License-Identifier: GPL-3.0-or-later
/// The exact lower bound for kits of a few plain boxes.
#pragma once
#include <cstdint>

#include "tuckwright/kit.hpp"

namespace tuckwright::nesting {

/// The least volume in ml of a box-shaped bundle of the kit with everything along the axes, within the limits, but at
/// most `incumbent_ml`; 0 where this much work (pairs of boxes looked at) does not prove it, or the kit has anything
/// but a few plain boxes, or a bag. Requires: incumbent_ml > 0.
double bound_of_few_boxes_ml(const Kit& kit, double incumbent_ml, std::uint64_t work);

} // namespace tuckwright::nesting
