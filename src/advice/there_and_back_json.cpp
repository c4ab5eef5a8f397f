// SPDX-License-Identifier: GPL-3.0-or-later
#include <nlohmann/json.hpp>

#include "report/json_layout.hpp"
#include "report/json_rules.hpp"
#include "tuckwright/report.hpp"
#include "tuckwright/there_and_back.hpp"

namespace tuckwright {

namespace {

using nlohmann::ordered_json;

ordered_json or_null(const std::string& text) { return text.empty() ? ordered_json() : ordered_json(text); }

ordered_json or_null(const std::optional<double>& number) { return number ? ordered_json(*number) : ordered_json(); }

ordered_json part(const Whereabouts& where)
{
    return {{"in", or_null(where.in)}, {"form", where.form}, {"stowed", where.stowed}};
}

ordered_json elsewhere_part(const ThereAndBack& answer)
{
    ordered_json list = ordered_json::array();
    for (const Elsewhere& one : answer.elsewhere) {
        list.push_back({{"id", one.id},
                        {"copies", one.copies},
                        {"before", part(one.before)},
                        {"now", part(one.now)},
                        {"cause", to_string(one.cause)},
                        {"rule", one.rule ? report::rule_part(*one.rule) : ordered_json()},
                        {"text", one.words}});
    }
    return list;
}

} // namespace

std::string there_and_back_json(const ThereAndBack& answer)
{
    ordered_json changes = ordered_json::array(), times = ordered_json::array();
    for (const StateChange& change : answer.changes) {
        changes.push_back({{"id", change.id},
                           {"copies", change.copies},
                           {"difference", to_string(change.difference)},
                           {"text", change.words}});
    }
    for (const Reordered& one : answer.reordered) {
        times.push_back({{"id", one.id}, {"in", or_null(one.in)}, {"after", or_null(one.after)}});
    }
    const ordered_json json{{"format", "tuckwright-there-and-back"},
                            {"version", 1},
                            {"kit", answer.out.kit},
                            {"bettered", answer.bettered},
                            {"keeping", to_string(answer.keeping)},
                            {"places_ml", or_null(answer.places_ml)},
                            {"vessels_ml", or_null(answer.vessels_ml)},
                            {"vessels_refuted", answer.vessels_refuted},
                            {"searched_ml", or_null(answer.searched_ml)},
                            {"changes", std::move(changes)},
                            {"new_rules", report::rules_part(answer.new_rules)},
                            {"old_rules", report::rules_part(answer.old_rules)},
                            {"elsewhere", elsewhere_part(answer)},
                            {"reordered", std::move(times)},
                            {"out", ordered_json::parse(to_json(answer.out))},
                            {"back", ordered_json::parse(to_json(answer.back))}};
    return report::laid_out(json) + "\n";
}

} // namespace tuckwright
