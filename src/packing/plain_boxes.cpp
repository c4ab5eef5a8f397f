// SPDX-License-Identifier: GPL-3.0-or-later
#include "packing/plain_boxes.hpp"

#include <algorithm>

#include "tuckwright/contract.hpp"
#include "tuckwright/units.hpp"

namespace tuckwright::packing {

namespace {

Place place_of(const Stance& stance)
{
    Place place;
    place.form = stance.form;
    place.c = stance.quarter ? 0 : 1;
    place.s = stance.quarter ? 1 : 0;
    return place;
}

/// Whether all that there is to the body is its box.
bool is_plain_box(const Scene& scene, int body)
{
    const Body& one = scene.bodies[at(body)];
    return scene.ways(body) == 1 && one.pieces.size() == 1 && std::holds_alternative<Box>(one.pieces.front().shape) &&
           !one.hollow && !one.held && !one.pressed;
}

std::vector<Stance> stances_of(const Scene& scene, int body)
{
    std::vector<Stance> stances;
    const Body& box = scene.bodies[at(body)];
    for (const Form form : box.forms) {
        if (form == Form::leaning || (scene.fits[at(scene.row(body, 0))][0] & bit(form)) == 0) {
            continue;
        }
        const Piece piece = piece_at(box, 0, place_of({{}, form, false}), body);
        const auto a = to_nanometres(2 * piece.a), b = to_nanometres(2 * piece.b),
                   high = to_nanometres(2 * piece.half_height);
        for (const Stance& stance : {Stance{{a, b, high}, form, false}, Stance{{b, a, high}, form, true}}) {
            if (std::none_of(stances.begin(), stances.end(), [&](const Stance& s) { return s.size == stance.size; })) {
                stances.push_back(stance);
            }
        }
    }
    return stances;
}

} // namespace

std::vector<std::vector<Stance>> stances_of_plain_boxes(const Scene& scene)
{
    std::vector<std::vector<Stance>> all;
    for (int body = 0; scene.company.empty() && body < static_cast<int>(scene.bodies.size()); ++body) {
        all.push_back(is_plain_box(scene, body) ? stances_of(scene, body) : std::vector<Stance>{});
        if (all.back().empty()) {
            return {};
        }
    }
    return all;
}

std::optional<Layout> layout_of_boxes(const Scene& scene, const Lengths& room, const std::vector<PlacedBox>& boxes)
{
    require(boxes.size() == scene.bodies.size(), "every body has a place");
    Layout layout(scene, Envelope{false, 0, from_nanometres(room[0]) / 2, from_nanometres(room[1]) / 2,
                                  from_nanometres(room[2])});
    for (int body = 0; body < static_cast<int>(boxes.size()); ++body) {
        const auto& [corner, stance] = boxes[at(body)];
        Place place = place_of(stance);
        const Piece piece = piece_at(scene.bodies[at(body)], 0, place, body); // its middle, with the body at the origin
        place.x = from_nanometres(2 * corner[0] + stance.size[0] - room[0]) / 2 - piece.x;
        place.y = from_nanometres(2 * corner[1] + stance.size[1] - room[1]) / 2 - piece.y;
        place.z = from_nanometres(2 * corner[2] + stance.size[2]) / 2 - piece.z;
        if (!layout.may_enter(body, outermost, place.form)) {
            return std::nullopt;
        }
        layout.put(body, place);
    }
    return layout;
}

} // namespace tuckwright::packing
