// SPDX-License-Identifier: GPL-3.0-or-later
/// Rules of carrying as JSON.
#pragma once
#include <nlohmann/json.hpp>
#include <vector>

#include "tuckwright/kit.hpp"

namespace tuckwright::report
{

/// {"keep": "apart", "first": ..., "second": ..., "why": ...}.
nlohmann::ordered_json rule_part(const CarryRule& rule);

/// All of them, in their order.
nlohmann::ordered_json rules_part(const std::vector<CarryRule>& rules);

} // namespace tuckwright::report
