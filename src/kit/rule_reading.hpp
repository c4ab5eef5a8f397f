// SPDX-License-Identifier: GPL-3.0-or-later
/// What a kit file says beside its items: version, units, clearance, and the rule for the bundle.
#pragma once
#include "kit/fields.hpp"
#include "tuckwright/kit.hpp"

namespace tuckwright::reading
{

/// The units of plain numbers in this file.
Units read_units(Reading& reading, const Node& node);
/// Millimetres, from 0 to 50, rounded up to the grid.
double read_clearance(Reading& reading, const Node& node);
/// Shape and limits; limits are rounded down to the grid.
BundleRule read_bundle_rule(Reading& reading, const Node& node);

} // namespace tuckwright::reading
