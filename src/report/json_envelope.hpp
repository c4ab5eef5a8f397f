// SPDX-License-Identifier: GPL-3.0-or-later
/// The size of a bundle as JSON.
#pragma once
#include <nlohmann/json.hpp>

#include "tuckwright/shape.hpp"

namespace tuckwright::report
{

/// Shape, sizes and volume of an envelope: {"shape": "cylinder", "diameter_mm": ..., "height_mm": ..., "volume_ml": ...}.
nlohmann::ordered_json envelope_part(const Shape& envelope);

} // namespace tuckwright::report
