// SPDX-License-Identifier: GPL-3.0-or-later
/// The items of a bundle's JSON, its steps and its certificate.
#pragma once
#include <optional>

#include "report/json_node.hpp"
#include "tuckwright/bundle.hpp"

namespace tuckwright::report {

inline constexpr double largest_weight = 1e12; ///< g

/// The object in a field that only a bundle has. Nothing where there is no bundle, or after a fault: it must be null
/// then, and an object otherwise.
std::optional<Node> part_of_bundle(const Node& root, const char* key, Status status);

/// Reads "items", "steps" and "certificate" into the bundle, and tells what is wrong with them.
/// Requires: the bundle's status has been read.
void read_items(const Node& root, Bundle& bundle);

} // namespace tuckwright::report
