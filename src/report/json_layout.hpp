// SPDX-License-Identifier: GPL-3.0-or-later
/// How a JSON value is laid out as text: what fits on one line stays on it, and numbers are written out plainly.
#pragma once
#include <nlohmann/json.hpp>
#include <string>

namespace tuckwright::report
{

/// The value as text, without a newline at its end. Floating numbers have the fewest digits that give the same double
/// back, without an exponent where that is readable; whole ones have no point. Text that is not UTF-8 is mended.
/// Requires: no number that is not finite.
std::string laid_out(const nlohmann::ordered_json& value);

} // namespace tuckwright::report
