// SPDX-License-Identifier: GPL-3.0-or-later
/// Tolerances, fits and plays in a bundle's JSON.
#pragma once
#include <nlohmann/json.hpp>

#include "report/json_node.hpp"
#include "tuckwright/bundle.hpp"

namespace tuckwright::report {

/// {"diameter": 0.5, "height": 0.5}, as the shape's own sizes are named.
nlohmann::ordered_json tolerance_part(const Shape& shape, const Spread& off);
nlohmann::ordered_json fits_part(const Bundle& bundle);
nlohmann::ordered_json plays_part(const Bundle& bundle);

/// The "tolerance" of a solid or cavity.
Spread read_tolerance(const Node& parent, const Shape& shape);
/// Reads "fits" and "plays", and tells what is wrong with them. Requires: the bundle's items have been read.
void read_measures(const Node& root, Bundle& bundle);

} // namespace tuckwright::report
