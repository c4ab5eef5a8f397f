// SPDX-License-Identifier: GPL-3.0-or-later
#include <nlohmann/json.hpp>

#include "report/figures.hpp"
#include "report/json_envelope.hpp"
#include "report/json_layout.hpp"
#include "tuckwright/compare.hpp"
#include "tuckwright/contract.hpp"

namespace tuckwright {

namespace {

using nlohmann::ordered_json;

const char* word(Trial trial)
{
    switch (trial) {
    case Trial::packed: return "packed";
    case Trial::ruled_out: return "ruled-out";
    case Trial::left_out: return "left-out";
    }
    require(false, "a trial is one of the three");
    return "";
}

ordered_json things(const Kit& kit)
{
    ordered_json all = ordered_json::array();
    for (const Item& item : kit.items) {
        all.push_back({{"id", item.id}, {"name", item.name}, {"count", item.count}, {"weight_g", item.weight_g}});
    }
    const auto add_cover = [&](const auto& cover) {
        all.push_back({{"id", cover.id}, {"name", cover.name}, {"count", 1}, {"weight_g", cover.weight_g}});
    };
    if (kit.bag) {
        add_cover(*kit.bag);
    }
    for (const Band& band : kit.bands) {
        add_cover(band);
    }
    return all;
}

ordered_json kit_part(const Compared& kit)
{
    const bool has = kit.trial == Trial::packed && has_bundle(kit.bundle.status);
    const auto above = report::gap_of(kit.bundle);
    ordered_json taken = ordered_json::object();
    for (const Taken& one : kit.contender.chosen.taken) {
        taken[one.choice] = one.what;
    }
    ordered_json part;
    part["file"] = kit.contender.file;
    part["kit"] = kit.contender.chosen.kit.name;
    part["taken"] = std::move(taken);
    part["trial"] = word(kit.trial);
    part["status"] = kit.trial == Trial::packed ? ordered_json(to_string(kit.bundle.status)) : ordered_json(nullptr);
    part["explanation"] = kit.bundle.explanation;
    part["bundle"] = has ? report::envelope_part(outer_envelope(kit.bundle)) : ordered_json(nullptr);
    part["lower_bound_ml"] = kit.lower_bound_ml;
    part["gap"] = has && above ? ordered_json(*above) : ordered_json(nullptr);
    part["weight_g"] = {{"total", kit.empty_g + kit.contents_g}, {"empty", kit.empty_g}, {"contents", kit.contents_g}};
    part["steps"] = has ? ordered_json(kit.bundle.steps.size()) : ordered_json(nullptr);
    part["unbeaten"] = kit.unbeaten;
    part["things"] = things(kit.contender.chosen.kit);
    return part;
}

} // namespace

std::string to_json(const Comparison& comparison)
{
    require(!comparison.kits.empty(), "a comparison has at least one kit");
    ordered_json all;
    all["format"] = "tuckwright-comparison";
    all["version"] = 1;
    all["seed"] = comparison.seed;
    all["effort"] = comparison.effort;
    all["most"] = comparison.most;
    all["stopped"] = comparison.stopped;
    all["kits"] = ordered_json::array();
    for (const Compared& kit : comparison.kits) {
        all["kits"].push_back(kit_part(kit));
    }
    return report::laid_out(all) + "\n";
}

} // namespace tuckwright
