// SPDX-License-Identifier: GPL-3.0-or-later
/// What each item of a bundle rests on.
#pragma once
#include <optional>
#include <vector>

#include "tuckwright/bundle.hpp"

namespace tuckwright {

/// For each item that is not a shut lid, what keeps it from sinking by tolerance::rest_drop, with a point on the material
/// of both the lowered item and what it rests on: never in a cavity or its mouth. An item for which nothing was found has
/// no entry.
/// Requires: items and envelope in place. Complexity: quadratic in the items.
std::vector<Rest> rests(const Bundle& bundle);

/// The same for one item, which is no shut lid. Complexity: linear in the items.
std::optional<Rest> rest_of(const Bundle& bundle, std::size_t item);

} // namespace tuckwright
