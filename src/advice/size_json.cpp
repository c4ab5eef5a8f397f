// SPDX-License-Identifier: GPL-3.0-or-later
#include <nlohmann/json.hpp>

#include "report/json_envelope.hpp"
#include "report/json_layout.hpp"
#include "tuckwright/contract.hpp"
#include "tuckwright/savings.hpp"

namespace tuckwright {

namespace {

using nlohmann::ordered_json;

const char* word(StretchPart part)
{
    switch (part) {
    case StretchPart::whole: return "whole";
    case StretchPart::base: return "base";
    case StretchPart::top: return "top";
    case StretchPart::wall: return "wall";
    case StretchPart::lid: return "lid";
    case StretchPart::air: return "air";
    case StretchPart::bulge: return "bulge";
    case StretchPart::bag: return "bag";
    }
    require(false, "a part is one of the eight");
    return "";
}

ordered_json reference(const Bundle& bundle, std::size_t item)
{
    return {{"id", bundle.items[item].id}, {"copy", bundle.items[item].copy}};
}

ordered_json references(const Bundle& bundle, const std::vector<std::size_t>& items)
{
    ordered_json list = ordered_json::array();
    for (const std::size_t item : items) {
        list.push_back(reference(bundle, item));
    }
    return list;
}

ordered_json chain_part(const Bundle& bundle, const Chain& chain)
{
    ordered_json stretches = ordered_json::array();
    for (const Stretch& stretch : chain.stretches) {
        stretches.push_back({{"part", word(stretch.part)},
                             {"item", stretch.item ? reference(bundle, *stretch.item) : ordered_json(nullptr)},
                             {"mm", stretch.mm}});
    }
    ordered_json rivals = ordered_json::array();
    for (const Rival& rival : chain.rivals) {
        rivals.push_back({{"of", reference(bundle, rival.of)}, {"items", references(bundle, rival.items)}});
    }
    return {{"dimension", to_string(chain.dimension)},
            {"mm", chain.mm},
            {"along", {chain.along.x, chain.along.y, chain.along.z}},
            {"straight", chain.straight},
            {"stretches", std::move(stretches)},
            {"rivals", std::move(rivals)},
            {"others", references(bundle, chain.others)}};
}

ordered_json what_if_part(const Kit& kit, const SizeAnswer& answer, const WhatIf& ask)
{
    const ordered_json nothing = nullptr;
    return {{"id", kit.items[ask.item].id},
            {"change", to_string(ask.change)},
            {"side", ask.side ? ordered_json(to_string(*ask.side)) : nothing},
            {"less_mm", ask.side ? ordered_json(ask.mm) : nothing},
            {"with", ask.also ? ordered_json(kit.items[*ask.also].id) : nothing},
            {"kept", ask.kept},
            {"searched", ask.searched},
            {"saved_ml", ask.bundle ? ordered_json(saved_ml(answer.bundle, ask)) : nothing},
            {"bundle", ask.bundle ? report::envelope_part(outer_envelope(*ask.bundle)) : nothing},
            {"why_not", ask.why_not.empty() ? nothing : ordered_json(ask.why_not)}};
}

} // namespace

std::string size_json(const Kit* kit, const SizeAnswer& answer)
{
    const Bundle& bundle = answer.bundle;
    const bool is_there = has_bundle(bundle.status);
    ordered_json all;
    all["format"] = "tuckwright-size";
    all["version"] = 1;
    all["kit"] = bundle.kit;
    all["seed"] = bundle.seed;
    all["effort"] = bundle.effort;
    all["status"] = to_string(bundle.status);
    all["explanation"] = bundle.explanation;
    all["worst_case"] = bundle.worst_case;
    all["bundle"] = is_there ? report::envelope_part(outer_envelope(bundle)) : ordered_json(nullptr);
    all["lower_bound_ml"] = bundle.lower_bound_ml;
    all["bettered"] = answer.bettered;
    all["stopped"] = answer.stopped;
    all["chains"] = ordered_json::array();
    for (const Chain& chain : answer.chains) {
        all["chains"].push_back(chain_part(bundle, chain));
    }
    all["what_ifs"] = ordered_json::array();
    for (const WhatIf& ask : answer.what_ifs) {
        require(kit != nullptr, "what-ifs are about the things of a kit");
        all["what_ifs"].push_back(what_if_part(*kit, answer, ask));
    }
    return report::laid_out(all) + "\n";
}

} // namespace tuckwright
