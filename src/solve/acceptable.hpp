// SPDX-License-Identifier: GPL-3.0-or-later
/// What a proposal must meet that the search itself knows nothing of.
#pragma once
#include "nesting/search.hpp"
#include "tuckwright/kit.hpp"

namespace tuckwright {

/// Whether a proposal can be put together, has more than an empty mouth under each thing, passes through the bag and the
/// bands, and loads nothing too much, as far as can be told before it is settled and proved.
bool acceptable(const Kit& kit, const nesting::Proposal& proposal);

} // namespace tuckwright
