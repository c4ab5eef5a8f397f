// SPDX-License-Identifier: GPL-3.0-or-later
/// The items of a bundle's JSON, its steps and its certificate.
#pragma once
#include "report/json_node.hpp"
#include "tuckwright/bundle.hpp"

namespace tuckwright::report
{

/// Reads "items", "steps" and "certificate" into the bundle, and tells what is wrong with them.
/// Requires: the bundle's status has been read.
void read_items(const Node& root, Bundle& bundle);

} // namespace tuckwright::report
