// SPDX-License-Identifier: GPL-3.0-or-later
#include <nlohmann/json.hpp>

#include "advice/provision_cautions.hpp"
#include "provision/working.hpp"
#include "tuckwright/contract.hpp"
#include "tuckwright/provision_report.hpp"

namespace tuckwright {

namespace {

using nlohmann::ordered_json;

ordered_json working_part(const std::vector<WorkingLine>& working)
{
    ordered_json lines = ordered_json::array();
    for (const WorkingLine& line : working) {
        lines.push_back({{"what", line.what},
                         {"words", line.words},
                         {"sum", line.sum},
                         {"value", line.value},
                         {"unit", line.unit}});
    }
    return lines;
}

ordered_json need_part(const Need& need)
{
    ordered_json part = {{"what", need.what}, {"weight_g", need.grams}, {"volume_ml", nullptr}};
    if (need.ml) {
        part["volume_ml"] = *need.ml;
    }
    const char* unit = need.ml ? "ml" : "g";
    part["unit"] = unit;
    part["offered"] = ordered_json::array();
    for (const Considered& one : need.vessels) {
        part["offered"].push_back({{"id", one.id},
                                   {"name", one.name},
                                   {"holds", one.holds},
                                   {"usable", one.usable},
                                   {"count", one.count},
                                   {"outside_ml", one.outside_ml}});
    }
    part["chosen"] = nullptr;
    if (need.chosen) {
        const Considered& chosen = need.vessels[*need.chosen];
        part["chosen"] = {{"id", chosen.id}, {"count", chosen.count}, {"each", need.each}, {"each_g", need.each_g}};
    }
    part["working"] = working_part(need.working);
    return part;
}

double percent(double share) { return provisioning::rounded(100 * share, 2, provisioning::Toward::nearest); }

ordered_json dilution_part(const Dilution& dilution)
{
    return {{"from_percent_vol", percent(dilution.from)},
            {"to_percent_vol", percent(dilution.to)},
            {"spirit_ml", dilution.spirit_ml},
            {"spirit_g", dilution.spirit_g},
            {"water_ml", dilution.water_ml},
            {"water_g", dilution.water_g},
            {"mixed_ml", dilution.mixed_ml},
            {"one_part_to_ten_percent_vol",
             {{"volumes_added_up", percent(dilution.thumb_plain)}, {"in_truth", percent(dilution.thumb_true)}}},
            {"working", working_part(dilution.working)}};
}

} // namespace

std::string provision_json(const Provision& needs, const Kit& kit)
{
    require(kit.trip != nullptr, "the kit has a trip");
    ordered_json object = {{"format", "tuckwright-provision"},
                           {"version", 1},
                           {"kit", kit.name},
                           {"people", needs.people},
                           {"days", needs.days},
                           {"boils", needs.boils},
                           {"water_l", needs.water_l},
                           {"boils_at_c", needs.boils_at_c},
                           {"heat_kj", needs.heat_kj},
                           {"fuel_kj", needs.fuel_kj},
                           {"working", working_part(needs.heat)},
                           {"fuel", need_part(needs.fuel)}};
    object["dilution"] = nullptr;
    if (needs.dilution) {
        object["dilution"] = dilution_part(*needs.dilution);
    }
    object["food"] = ordered_json::array();
    for (const Need& need : needs.food) {
        object["food"].push_back(need_part(need));
    }
    object["assumed"] = needs.assumed;
    object["sources"] = needs.sources;
    object["cautions"] = advice::provision_cautions(*kit.trip);
    return object.dump(2) + "\n";
}

} // namespace tuckwright
