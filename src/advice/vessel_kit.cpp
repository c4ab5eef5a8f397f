// SPDX-License-Identifier: GPL-3.0-or-later
#include "advice/vessel_kit.hpp"

#include <algorithm>
#include <cmath>

#include "nesting/kit_scene.hpp"
#include "nesting/lower_bound.hpp"
#include "solve/least_volume.hpp"
#include "tuckwright/contract.hpp"
#include "tuckwright/stowage.hpp"
#include "tuckwright/worst_case.hpp"

namespace tuckwright::advice {

std::optional<std::size_t> lid_of(const Kit& kit, std::size_t vessel)
{
    for (std::size_t item = 0; item < kit.items.size(); ++item) {
        if (kit.items[item].closes && kit.items[item].closes->item == vessel) {
            return item;
        }
    }
    return std::nullopt;
}

Kit vessel_kit(const Kit& kit, std::size_t vessel, Counts counts)
{
    const auto lid = lid_of(kit, vessel);
    counts[vessel] = 1;
    if (lid) {
        counts[*lid] = 1;
    }
    Kit inner = part_of(kit, counts);
    inner.bag.reset();
    inner.bands.clear();
    const std::string id = kit.items[vessel].id, lid_id = lid ? kit.items[*lid].id : "";
    Item& holder = inner.items[index_of(inner, id)];
    holder.upright = true;
    if (!lid) {
        require(holder.inside.has_value(), "the vessel has an inside");
        holder.inside->opens = Opening::closed;
    }
    const bool is_round = std::holds_alternative<Cylinder>(holder.outside);
    inner.bundle = {is_round ? BundleShape::cylinder : BundleShape::box, {}, {}, {}, {}};
    // Where the vessel itself goes in the kit is another question; all else that is here is in it.
    std::erase_if(inner.rules, [&](const CarryRule& rule) {
        return (rule.first == id && rule.keep != Keep::apart) || (rule.keep == Keep::within && rule.second == id) ||
               rule.first == lid_id || rule.second == lid_id;
    });
    for (const Item& item : inner.items) {
        if (item.id == lid_id) {
            inner.rules.push_back({Keep::shut, lid_id, id, "it is shut"});
        } else if (item.id != id) {
            inner.rules.push_back({Keep::within, item.id, id, "it goes in"});
        }
    }
    return inner;
}

Shape shut_cavity(const Kit& kit, std::size_t vessel)
{
    const Item& holder = kit.items[vessel];
    const Shape& cavity = holder.inside->shape;
    const auto lid = lid_of(kit, vessel);
    return lid ? lower_part(cavity, height_of(cavity) - nesting::lid_takes(kit.items[*lid], holder)) : cavity;
}

double least_stuff(const Item& item)
{
    if (item.sheet) {
        return item.sheet->length * item.sheet->width * item.sheet->thickness;
    }
    if (item.cloth) {
        return item.cloth->volume_ml * 1000;
    }
    if (item.pouch || item.press) {
        return 0; // its walls are little, and pressed in, they are less
    }
    double least = 1e300;
    for (std::size_t form = 0; form <= item.forms.size(); ++form) {
        const Item it = in_form(item, form);
        const double hollow = it.inside && !it.is_full() ? volume_ml(it.inside->shape) : 0;
        const double neck = hollow > 0 && it.inside->neck ? volume_ml(*it.inside->neck) : 0;
        least = std::min(least, std::max(0.0, volume_ml(it.outside) - hollow - neck));
    }
    if (item.closes) {
        Shape plate = item.outside;
        std::visit([&](auto& s) { s.height = std::min(s.height, item.closes->adds); }, plate);
        least = std::min(least, volume_ml(plate));
    }
    return least * 1000;
}

namespace {

/// Whether a plain thing that stands is too high, or too wide for a round room.
bool stands_too_large(const Item& item, const BundleRule& room)
{
    if (!item.upright || !item.forms.empty() || item.sheet || item.cloth || item.pouch || item.closes) {
        return false;
    }
    constexpr double rounding = 1 + 1e-9;
    const auto* c = std::get_if<Cylinder>(&item.outside);
    const auto* b = std::get_if<Box>(&item.outside);
    const double across = c != nullptr ? c->diameter : std::hypot(b->length, b->width);
    const bool tapers = c != nullptr && c->foot != 0;
    return height_of(item.outside) > *room.height * rounding ||
           (room.diameter && !tapers && across > *room.diameter * rounding);
}

} // namespace

bool cannot_go_in(const Kit& kit, std::size_t vessel, Counts counts, std::uint64_t work)
{
    const Kit whole = kit.worst_case ? worst_case(kit) : kit;
    const Shape room = shut_cavity(whole, vessel);
    counts[vessel] = 0;
    if (const auto lid = lid_of(kit, vessel)) {
        counts[*lid] = 0;
    }
    if (std::all_of(counts.begin(), counts.end(), [](int count) { return count == 0; })) {
        return false;
    }
    Kit inside = part_of(whole, counts);
    inside.bag.reset();
    inside.bands.clear();
    if (const auto* c = std::get_if<Cylinder>(&room)) { // where it tapers, its upper end
        const double air = c->foot == 0 ? 2 * kit.clearance : 0;
        inside.bundle = {BundleShape::cylinder, c->diameter - air, {}, {}, c->height};
    } else {
        const auto& b = std::get<Box>(room);
        inside.bundle = {BundleShape::box, {}, b.length - 2 * kit.clearance, b.width - 2 * kit.clearance, b.height};
    }
    const Kit pressed = pressed_in(inside);
    if (nesting::misfit_proof(pressed) ||
        std::any_of(inside.items.begin(), inside.items.end(),
                    [&](const Item& item) { return stands_too_large(item, inside.bundle); })) {
        return true;
    }
    constexpr double surely = 1 + 1e-5; // far more than rounding can matter
    const double most = volume_ml(room) * surely * surely;
    LeastVolume least(pressed);
    if (work > 0) {
        least.raise(most, work);
    }
    return least.ml() > volume_ml(room) * surely;
}

} // namespace tuckwright::advice
