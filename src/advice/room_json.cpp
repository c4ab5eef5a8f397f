// SPDX-License-Identifier: GPL-3.0-or-later
#include <nlohmann/json.hpp>

#include "report/json_envelope.hpp"
#include "report/json_layout.hpp"
#include "tuckwright/room.hpp"

namespace tuckwright {

namespace {

using nlohmann::ordered_json;

ordered_json shape_part(const Shape& shape)
{
    if (const auto* round = std::get_if<Cylinder>(&shape)) {
        return {{"cylinder", {{"diameter", round->diameter}, {"height", round->height}}}};
    }
    const auto& box = std::get<Box>(shape);
    return {{"box", {{"length", box.length}, {"width", box.width}, {"height", box.height}}}};
}

ordered_json one_more_part(const std::optional<OneMore>& one)
{
    if (!one) {
        return nullptr;
    }
    ordered_json part = shape_part(one->solid.shape);
    const auto& [center, turn] = one->solid.pose;
    part["volume_ml"] = volume_ml(one->solid.shape);
    part["center"] = {center.x, center.y, center.z};
    part["quaternion"] = {turn.w, turn.x, turn.y, turn.z};
    part["stands_out_mm"] = one->stands_out;
    part["step"] = one->step;
    return part;
}

ordered_json place_part(const Bundle& bundle, const std::optional<Lodging>& in)
{
    if (!in) {
        return nullptr;
    }
    const PlacedItem& vessel = bundle.items[in->item];
    return {{"id", vessel.id}, {"copy", vessel.copy}, {"cavity", in->cavity}};
}

} // namespace

std::string room_json(const Bundle& bundle, const RoomAnswer& answer)
{
    ordered_json all;
    all["format"] = "tuckwright-room";
    all["version"] = 1;
    all["kit"] = bundle.kit;
    all["seed"] = bundle.seed;
    all["effort"] = bundle.effort;
    all["status"] = to_string(bundle.status);
    all["worst_case"] = bundle.worst_case;
    all["bundle"] = report::envelope_part(outer_envelope(bundle));
    all["complete"] = answer.complete;
    all["rooms"] = ordered_json::array();
    for (const RoomLeft& room : answer.rooms) {
        ordered_json part;
        part["in"] = place_part(bundle, room.in);
        for (const Posing posing : posings) {
            part[to_string(posing)] = one_more_part(room.of(posing));
        }
        part["standing_otherwise"] = one_more_part(room.other);
        all["rooms"].push_back(std::move(part));
    }
    return report::laid_out(all) + "\n";
}

} // namespace tuckwright
