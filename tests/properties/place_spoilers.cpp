// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "properties/sampling_judge.hpp"
#include "properties/spoilers.hpp"
#include "tuckwright/report.hpp"
#include "tuckwright/units.hpp"

namespace properties {

using namespace tuckwright;
using test::Dice;

bool related(const Bundle& bundle, std::size_t a, std::size_t b)
{
    const auto holds = [&](std::size_t outer, std::size_t inner) {
        std::size_t depth = 0;
        for (auto in = bundle.items[inner].in; in && depth <= bundle.items.size(); in = bundle.items[in->item].in) {
            if (in->item == outer) {
                return true;
            }
            ++depth;
        }
        return false;
    };
    return holds(a, b) || holds(b, a);
}

namespace {

bool overlap(const Bundle& bundle, std::size_t i, std::size_t j)
{
    for (const auto& a : sampling::bodies_of(bundle.items[i])) {
        for (const auto& b : sampling::bodies_of(bundle.items[j])) {
            if (sampling::common_depth(a, b) > clear) {
                return true;
            }
        }
    }
    return false;
}

sampling::Body room_of(const Bundle& bundle, const Lodging& in)
{
    const auto& cavity = bundle.items[in.item].cavities[in.cavity];
    return sampling::body_of(cavity.shape, cavity.pose);
}

/// Whether the item clearly breaks out of the cavity that is said to hold it.
bool breaks_out(const Bundle& bundle, std::size_t item)
{
    const Lodging& in = *bundle.items[item].in;
    const Opening opens = bundle.items[in.item].cavities[in.cavity].opens;
    const sampling::Body room = room_of(bundle, in);
    const double clearance = bundle.items[item].pressed ? 0 : bundle.clearance;
    for (const auto& body : sampling::bodies_of(bundle.items[item])) {
        const auto out = sampling::beyond(body, room);
        if (out.walls + static_cast<long double>(clearance) > clear || (opens != Opening::both && out.floor > clear) ||
            (opens == Opening::closed && out.top > clear)) {
            return true;
        }
    }
    return false;
}

void shift(PlacedItem& item, Vec3 by)
{
    const auto add = [&](Vec3& p) { p = {snap(p.x + by.x), snap(p.y + by.y), snap(p.z + by.z)}; };
    for (auto& solid : item.solids) {
        add(solid.pose.center);
    }
    for (auto& cavity : item.cavities) {
        add(cavity.pose.center);
    }
}

Spoiled move_into_another(Bundle bundle, Dice& dice)
{
    const std::size_t i = any(dice, bundle.items.size()), j = any(dice, bundle.items.size());
    if (i == j || related(bundle, i, j)) {
        return std::nullopt;
    }
    const Vec3 from = bundle.items[i].solids[0].pose.center, to = bundle.items[j].solids[0].pose.center;
    const double share = dice.between(0.01, 1);
    shift(bundle.items[i], {share * (to.x - from.x), share * (to.y - from.y), share * (to.z - from.z)});
    return overlap(bundle, i, j) ? Spoiled(to_json(bundle)) : std::nullopt;
}

Spoiled shrink_cavity(Bundle bundle, Dice& dice)
{
    const std::size_t item = any(dice, bundle.items.size());
    if (!bundle.items[item].in) {
        return std::nullopt;
    }
    const Lodging in = *bundle.items[item].in;
    Shape& shape = bundle.items[in.item].cavities[in.cavity].shape;
    const double factor = dice.between(0.3, 1);
    if (auto* c = std::get_if<Cylinder>(&shape)) {
        c->diameter = snap(c->diameter * factor);
    } else {
        auto& b = std::get<Box>(shape);
        double& side = dice.below(2) == 0 ? b.length : b.width;
        side = snap(factor * side);
    }
    return breaks_out(bundle, item) ? Spoiled(to_json(bundle)) : std::nullopt;
}

/// Into the bundle, or into another's cavity.
Spoiled swap_parent(Bundle bundle, Dice& dice)
{
    const std::size_t i = any(dice, bundle.items.size()), k = any(dice, bundle.items.size());
    auto& item = bundle.items[i];
    const auto before = item.in;
    if (item.closes) {
        return std::nullopt;
    }
    if (dice.below(2) == 0) {
        item.in.reset();
    } else if (k != i && !bundle.items[k].cavities.empty()) {
        item.in = Lodging{k, 0};
    }
    if (item.in == before) {
        return std::nullopt;
    }
    const bool apart_from_holder = !before || related(bundle, i, before->item) || !overlap(bundle, i, before->item);
    const bool wrong = !apart_from_holder || (item.in && breaks_out(bundle, i));
    return wrong ? Spoiled(to_json(bundle)) : std::nullopt;
}

Spoiled hold_in_a_ring(Bundle bundle, Dice& dice)
{
    const std::size_t inner = any(dice, bundle.items.size());
    if (!bundle.items[inner].in || bundle.items[inner].cavities.empty()) {
        return std::nullopt;
    }
    bundle.items[bundle.items[inner].in->item].in = Lodging{inner, 0}; // each in the other
    return to_json(bundle);
}

Spoiled raise_clearance(Bundle bundle, Dice& dice)
{
    const std::size_t item = any(dice, bundle.items.size());
    if (!bundle.items[item].in || bundle.items[item].closes) {
        return std::nullopt;
    }
    const auto out = sampling::beyond(sampling::bodies_of(bundle.items[item])[0], room_of(bundle, *bundle.items[item].in));
    const double gap = static_cast<double>(-out.walls); // at least as narrow as this
    bundle.clearance = snap(std::max(bundle.clearance, gap) + dice.between(0.06, 3));
    return breaks_out(bundle, item) ? Spoiled(to_json(bundle)) : std::nullopt;
}

void to_grid(Shape& shape)
{
    if (auto* c = std::get_if<Cylinder>(&shape)) {
        *c = {snap(c->diameter), snap(c->height)};
    } else {
        auto& b = std::get<Box>(shape);
        b = {snap(b.length), snap(b.width), snap(b.height)};
    }
}

/// The envelope as a room in the world's frame.
sampling::Body envelope_room(const Bundle& bundle)
{
    Pose pose;
    pose.center.z = height_of(bundle.envelope) / 2;
    if (const auto* box = std::get_if<Box>(&bundle.envelope)) {
        pose.center = {box->length / 2, box->width / 2, box->height / 2};
    }
    return sampling::body_of(bundle.envelope, pose);
}

bool stands_out(const PlacedItem& item, const sampling::Body& room)
{
    for (const auto& body : sampling::bodies_of(item)) {
        const auto out = sampling::beyond(body, room);
        if (out.walls > clear || out.floor > clear || out.top > clear) {
            return true;
        }
    }
    return false;
}

Spoiled move_out_of_the_bundle(Bundle bundle, Dice& dice)
{
    auto& item = bundle.items[any(dice, bundle.items.size())];
    const double by = dice.between(0.1, 200);
    shift(item, dice.below(2) == 0 ? Vec3{0, 0, dice.below(2) == 0 ? by : -by} : Vec3{by, 0, 0});
    return stands_out(item, envelope_room(bundle)) ? Spoiled(to_json(bundle)) : std::nullopt;
}

Spoiled shrink_envelope(Bundle bundle, Dice& dice)
{
    const double less = dice.between(0.1, 20);
    if (auto* c = std::get_if<Cylinder>(&bundle.envelope)) {
        (dice.below(2) == 0 ? c->diameter : c->height) -= less;
    } else {
        auto& b = std::get<Box>(bundle.envelope);
        (dice.below(3) == 0 ? b.length : dice.below(2) == 0 ? b.width : b.height) -= less;
    }
    to_grid(bundle.envelope);
    bundle.lower_bound_ml = std::min(bundle.lower_bound_ml, volume_ml(bundle.envelope) / 2);
    const sampling::Body room = envelope_room(bundle);
    const bool wrong = std::any_of(bundle.items.begin(), bundle.items.end(),
                                   [&](const PlacedItem& item) { return stands_out(item, room); });
    return wrong ? Spoiled(to_json(bundle)) : std::nullopt;
}

Spoiled lower_limits(Bundle bundle, Dice& dice)
{
    const double less = dice.below(2) == 0 ? 1e-6 : snap(dice.between(0.001, 30));
    if (const auto* c = std::get_if<Cylinder>(&bundle.envelope)) {
        const bool across = dice.below(2) == 0;
        (across ? bundle.rule.diameter : bundle.rule.height) = snap((across ? c->diameter : c->height) - less);
    } else {
        const auto& b = std::get<Box>(bundle.envelope);
        switch (dice.below(3)) {
        case 0: bundle.rule.length = snap(b.length - less); break;
        case 1: bundle.rule.width = snap(b.width - less); break;
        default: bundle.rule.height = snap(b.height - less);
        }
    }
    return to_json(bundle);
}

/// Lies or leans, but is said to have to stand.
Spoiled demand_upright(Bundle bundle, Dice& dice)
{
    auto& item = bundle.items[any(dice, bundle.items.size())];
    if (item.upright || sampling::bodies_of(item)[0].axis[2][2] > 0.999L) {
        return std::nullopt;
    }
    item.upright = true;
    return to_json(bundle);
}

/// An item moved over the middle of a mouth that is wider than it is; its rest names a point just below the rim.
Spoiled hover_over_a_mouth(Bundle bundle, Dice& dice)
{
    const std::size_t i = any(dice, bundle.items.size()), k = any(dice, bundle.items.size());
    auto& item = bundle.items[i];
    if (i == k || item.closes || related(bundle, i, k) || bundle.items[k].cavities.empty() ||
        bundle.items[k].cavities[0].opens == Opening::closed) {
        return std::nullopt;
    }
    const sampling::Body mouth = room_of(bundle, Lodging{k, 0});
    if (mouth.axis[2][2] < 0.999L) {
        return std::nullopt;
    }
    const Vec3 from = item.solids[0].pose.center, over = bundle.items[k].cavities[0].pose.center;
    const double rim = over.z + static_cast<double>(mouth.half[2]);
    const double floor = static_cast<double>(sampling::beyond(sampling::bodies_of(item)[0], mouth).floor);
    const double bottom = over.z - static_cast<double>(mouth.half[2]) - floor;
    shift(item, {over.x - from.x, over.y - from.y, rim - bottom});
    for (const auto& body : sampling::bodies_of(item)) {
        if (sampling::beyond(body, mouth).walls > -clear) {
            return std::nullopt; // touches the rim
        }
    }
    auto& rests = bundle.certificate.rests;
    std::erase_if(rests, [&](const Rest& rest) { return rest.item == i; });
    rests.push_back({i, k, {over.x, over.y, snap(rim - 0.005)}});
    return to_json(bundle);
}

Spoiled fill_a_vessel(Bundle bundle, Dice& dice)
{
    const auto& in = bundle.items[any(dice, bundle.items.size())].in;
    if (!in) {
        return std::nullopt;
    }
    bundle.items[in->item].full = true;
    return to_json(bundle);
}

} // namespace

std::vector<Spoiler> place_spoilers()
{
    return {{"an item moved into another", move_into_another},
            {"an item moved out of the bundle", move_out_of_the_bundle},
            {"a cavity shrunk below what it holds", shrink_cavity},
            {"a parent swapped", swap_parent},
            {"two that hold each other", hold_in_a_ring},
            {"clearance raised", raise_clearance},
            {"the envelope shrunk", shrink_envelope},
            {"limits lowered", lower_limits},
            {"a lying item that should stand", demand_upright},
            {"an item that hovers over a mouth", hover_over_a_mouth},
            {"a full vessel with things in it", fill_a_vessel}};
}

} // namespace properties
