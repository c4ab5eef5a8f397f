// SPDX-License-Identifier: GPL-3.0-or-later
/// Whether the figures that a bundle's JSON prints for people and other programs follow from the rest.
#pragma once
#include "report/json_node.hpp"
#include "tuckwright/bundle.hpp"

namespace tuckwright::report
{

/// Tells of a volume, gap, weight, rotation or container's name that is not what the bundle gives, and as
/// check_cover_steps() does; returns what that returns, true where there is no bundle.
/// Requires: the bundle was read from this very object, without a fault.
bool check_printed_figures(const Node& root, const Bundle& bundle);

} // namespace tuckwright::report
