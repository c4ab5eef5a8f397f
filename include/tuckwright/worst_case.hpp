// SPDX-License-Identifier: GPL-3.0-or-later
/// The kit as it is if every measurement is off in the bad direction.
#pragma once
#include "tuckwright/kit.hpp"

namespace tuckwright {

/// Outsides as large and cavities as small as they may be; lids stand higher above the rim, hang deeper into the vessel
/// and reach as far down round it as they may. Each measurement counts by itself, so that tolerances add up. Where the
/// kit's things fit at these sizes in some places, they fit in the same places at any sizes within the tolerances.
/// Requires: a sound kit. Ensures: a sound kit, with the same tolerances; without any, the same kit.
Kit worst_case(Kit kit);

} // namespace tuckwright
