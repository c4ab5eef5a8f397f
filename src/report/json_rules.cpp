// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/json_rules.hpp"

#include "tuckwright/contract.hpp"

namespace tuckwright::report
{

using nlohmann::ordered_json;

namespace
{

const char* word(Keep keep)
{
    switch (keep) {
    case Keep::apart: return "apart";
    case Keep::within: return "within";
    case Keep::out: return "out";
    case Keep::together: return "together";
    case Keep::shut: return "shut";
    }
    require(false, "a rule of carrying is one of the five");
    return "";
}

} // namespace

ordered_json rule_part(const CarryRule& rule)
{
    return {{"keep", word(rule.keep)}, {"first", rule.first}, {"second", rule.second}, {"why", rule.why}};
}

ordered_json rules_part(const std::vector<CarryRule>& rules)
{
    ordered_json parts = ordered_json::array();
    for (const CarryRule& rule : rules) {
        parts.push_back(rule_part(rule));
    }
    return parts;
}

} // namespace tuckwright::report
