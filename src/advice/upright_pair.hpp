// SPDX-License-Identifier: GPL-3.0-or-later
/// Two solids with an axis in common, one of them round about it: how they stand apart, in closed form.
#pragma once
#include <optional>

#include "tuckwright/geometry.hpp"

namespace tuckwright::advice {

/// The unit direction from the first to the second along which they are farthest apart, or overlap least, as
/// separation() gives it, but at a fraction of the cost; nothing for pairs of other kinds. What tapers is another kind.
std::optional<Vec3> upright_normal(const Hull& first, const Hull& second);

} // namespace tuckwright::advice
