// SPDX-License-Identifier: GPL-3.0-or-later
/// A lower bound of the volume of the smallest bundle with everything standing, lying or on its side.
#pragma once
#include <cstdint>

#include "tuckwright/kit.hpp"

namespace tuckwright::nesting {

/// A lower bound in ml of the envelope, in its bag if there is one, never above `incumbent_ml`; that much, up to 5e-8 of
/// it, once the incumbent is proved the smallest. Holds for every bundle in which everything lies along the axes: stands,
/// lies or is on its side, turned freely about the upright axis in a round cell and square to the walls of a box; what
/// leans counts with its volume. `work` limits the effort: sets of things looked at, and as much as that. Ensures: the
/// same on every machine; 0 for kits too large for it. Requires: incumbent_ml > 0. Source: see the .cpp.
double bound_along_axes_ml(const Kit& kit, double incumbent_ml, std::uint64_t work);

} // namespace tuckwright::nesting
