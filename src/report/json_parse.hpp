// SPDX-License-Identifier: GPL-3.0-or-later
/// From text to a JSON value, within limits that a hostile file cannot break.
#pragma once
#include <nlohmann/json.hpp>
#include <string>
#include <string_view>

#include "tuckwright/result.hpp"

namespace tuckwright::report
{

/// Errors: more than 64 MiB, nested too deep, too many values, a key twice in one object, or not JSON (with the place).
Result<nlohmann::json> parse_json(std::string_view text, const std::string& file);

} // namespace tuckwright::report
