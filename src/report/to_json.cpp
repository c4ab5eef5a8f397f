// SPDX-License-Identifier: GPL-3.0-or-later
#include <nlohmann/json.hpp>

#include "kit/kinds.hpp"
#include "report/covers.hpp"
#include "report/figures.hpp"
#include "report/json_envelope.hpp"
#include "report/json_layout.hpp"
#include "report/json_measures.hpp"
#include "report/json_rules.hpp"
#include "tuckwright/contract.hpp"
#include "tuckwright/report.hpp"
#include "tuckwright/units.hpp"

namespace tuckwright
{

namespace
{

using nlohmann::ordered_json;

/// The number on the grid that a length stands for: never more than six decimals.
double length(double mm) { return snap(mm); }

ordered_json vector(const Vec3& v) { return {length(v.x), length(v.y), length(v.z)}; }

const char* word(Opening opens)
{
    switch (opens) {
    case Opening::top: return "top";
    case Opening::both: return "both";
    case Opening::closed: return "closed";
    }
    require(false, "an opening is one of the three");
    return "";
}

const char* word(Wanted reach)
{
    switch (reach) {
    case Wanted::any: return "any";
    case Wanted::first: return "first";
    case Wanted::early: return "early";
    case Wanted::last: return "last";
    }
    require(false, "a reach is one of the four");
    return "";
}

ordered_json shape_part(const Shape& shape)
{
    if (const auto* cylinder = std::get_if<Cylinder>(&shape)) {
        ordered_json sizes = {{"diameter", length(cylinder->diameter)}, {"height", length(cylinder->height)}};
        if (cylinder->foot != 0) {
            sizes["foot"] = length(cylinder->foot);
        }
        return {{"cylinder", std::move(sizes)}};
    }
    const auto& box = std::get<Box>(shape);
    return {{"box", {{"length", length(box.length)}, {"width", length(box.width)}, {"height", length(box.height)}}}};
}

ordered_json shape_and_place(const Shape& shape, const Pose& pose)
{
    ordered_json part = shape_part(shape);
    part["center"] = vector(pose.center);
    part["quaternion"] = {pose.turn.w, pose.turn.x, pose.turn.y, pose.turn.z};
    ordered_json rows = ordered_json::array();
    for (const auto& row : rotation_matrix(pose.turn)) {
        rows.push_back({row[0], row[1], row[2]});
    }
    part["rotation"] = std::move(rows);
    return part;
}

ordered_json envelope(const Bundle& bundle)
{
    if (!has_bundle(bundle.status)) {
        return nullptr;
    }
    return report::envelope_part(outer_envelope(bundle));
}

ordered_json limits(const BundleRule& rule)
{
    ordered_json part;
    part["shape"] = rule.shape == BundleShape::cylinder ? "cylinder" : "box";
    const auto put = [&](const char* key, const std::optional<double>& limit) {
        if (limit) {
            part[key] = length(*limit);
        }
    };
    put("diameter_mm", rule.diameter);
    put("length_mm", rule.length);
    put("width_mm", rule.width);
    put("height_mm", rule.height);
    return part;
}

ordered_json weights(const Bundle& bundle)
{
    if (!has_bundle(bundle.status)) {
        return nullptr;
    }
    const auto sums = report::weights_of(bundle);
    return {{"total", sums.total}, {"empty", sums.empty}, {"contents", sums.contents}};
}

ordered_json name_of(const Bundle& bundle, std::size_t item)
{
    require(item < bundle.items.size(), "an item that another refers to is one of the bundle's");
    return {{"id", bundle.items[item].id}, {"copy", bundle.items[item].copy}};
}

ordered_json item_part(const Bundle& bundle, const PlacedItem& item)
{
    ordered_json part = {{"id", item.id}, {"copy", item.copy}, {"name", item.name}};
    part["in"] = nullptr;
    if (item.in) {
        part["in"] = name_of(bundle, item.in->item);
        part["in"]["cavity"] = item.in->cavity;
    }
    part["closes"] = item.closes ? name_of(bundle, *item.closes) : ordered_json(nullptr);
    part["form"] = item.form;
    part["stowed"] = item.stowed;
    part["how"] = item.how;
    if (item.pressed) {
        part["pressed_from_mm"] = snap(*item.pressed);
    }
    part["kinds"] = ordered_json::array();
    for (const Kind kind : item.kinds) {
        part["kinds"].push_back(reading::kind_words()[static_cast<std::size_t>(kind)]);
    }
    part["upright"] = item.upright;
    part["nothing_on_top"] = item.nothing_on_top;
    part["bears_g"] = item.bears_g ? ordered_json(*item.bears_g) : ordered_json(nullptr);
    part["reach"] = word(item.reach);
    part["out_after"] = item.out_after ? ordered_json(*item.out_after) : ordered_json(nullptr);
    part["weight_g"] = item.weight_g;
    part["contents"] = item.contents;
    part["contents_g"] = item.contents_g;
    part["contents_fill"] = item.full;
    part["soft"] = item.soft;
    part["solids"] = ordered_json::array();
    for (std::size_t k = 0; k < item.solids.size(); ++k) {
        part["solids"].push_back(shape_and_place(item.solids[k].shape, item.solids[k].pose));
        const Spread off = k < item.solids_off.size() ? item.solids_off[k] : Spread{};
        part["solids"].back()["tolerance"] = report::tolerance_part(item.solids[k].shape, off);
    }
    part["cavities"] = ordered_json::array();
    for (const auto& cavity : item.cavities) {
        part["cavities"].push_back(shape_and_place(cavity.shape, cavity.pose));
        part["cavities"].back()["opens"] = word(cavity.opens);
        part["cavities"].back()["neck"] = cavity.neck ? shape_part(*cavity.neck) : ordered_json(nullptr);
        part["cavities"].back()["tolerance"] = report::tolerance_part(cavity.shape, cavity.off);
    }
    return part;
}

ordered_json items(const Bundle& bundle)
{
    ordered_json parts = ordered_json::array();
    for (const auto& item : bundle.items) {
        parts.push_back(item_part(bundle, item));
    }
    return parts;
}

ordered_json steps(const Bundle& bundle)
{
    ordered_json parts = ordered_json::array();
    for (const auto& step : bundle.steps) {
        require(step.item < bundle.items.size(), "a step's item is one of the bundle's");
        const auto& item = bundle.items[step.item];
        parts.push_back({{"item", item.id},
                         {"copy", item.copy},
                         {"into", report::into_of(bundle, step.item)},
                         {"direction", step.direction},
                         {"via", step.via ? vector(*step.via) : ordered_json(nullptr)},
                         {"text", step.text}});
    }
    return parts;
}

ordered_json certificate(const Certificate& proof)
{
    ordered_json planes = ordered_json::array(), rests = ordered_json::array();
    for (const auto& plane : proof.planes) {
        planes.push_back({{"first", {plane.first, plane.first_solid}},
                          {"second", {plane.second, plane.second_solid}},
                          {"normal", plane.normal}});
    }
    for (const auto& rest : proof.rests) {
        rests.push_back({{"item", rest.item},
                         {"on", rest.on ? ordered_json(*rest.on) : ordered_json(nullptr)},
                         {"point", vector(rest.point)}});
    }
    return {{"planes", std::move(planes)}, {"rests", std::move(rests)}};
}

} // namespace

std::string to_json(const Bundle& bundle)
{
    // Without a bundle there is nothing placed, whatever the struct may still hold.
    const Bundle nothing;
    const Bundle& placed = has_bundle(bundle.status) ? bundle : nothing;
    const auto gap_part = report::gap_of(bundle);
    ordered_json all;
    all["format"] = "tuckwright-bundle";
    all["version"] = 1;
    all["kit"] = bundle.kit;
    all["seed"] = bundle.seed;
    all["effort"] = bundle.effort;
    all["status"] = to_string(bundle.status);
    all["explanation"] = bundle.explanation;
    all["clearance_mm"] = length(bundle.clearance);
    all["worst_case"] = bundle.worst_case;
    all["limits"] = limits(bundle.rule);
    all["rules"] = report::rules_part(bundle.rules);
    all["waived"] = bundle.waived;
    all["bundle"] = envelope(bundle);
    all["lower_bound_ml"] = bundle.lower_bound_ml;
    all["gap"] = gap_part ? ordered_json(*gap_part) : ordered_json(nullptr);
    all["weight_g"] = weights(bundle);
    all["bag"] = report::bag_part(placed);
    all["bands"] = report::bands_part(placed);
    all["items"] = items(placed);
    all["fits"] = report::fits_part(placed);
    all["plays"] = report::plays_part(placed);
    all["steps"] = steps(placed);
    all["certificate"] = certificate(placed.certificate);
    return report::laid_out(all) + "\n";
}

} // namespace tuckwright
