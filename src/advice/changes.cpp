// SPDX-License-Identifier: GPL-3.0-or-later
// A kit with one thing smaller, or without it. Walls, bases and what is fixed to a thing stay as they are; so a smaller
// vessel holds less, and a narrower one has a narrower lid.
#include <algorithm>
#include <cmath>
#include <fmt/format.h>

#include "tuckwright/contract.hpp"
#include "tuckwright/savings.hpp"
#include "tuckwright/units.hpp"

namespace tuckwright {

namespace {

constexpr double least_left = 0.5; ///< mm that any size has at least after a change

/// A reason, or nothing if it went well.
using Reason = std::optional<std::string>;

bool is_plan(Dimension side) { return side != Dimension::height; }

/// Makes a size smaller; false if hardly anything is left.
bool lessen(double& size, double mm)
{
    size = snap_up(size - mm);
    return size >= least_left;
}

/// Makes a shape smaller along a side of the thing that it belongs to, which may be of the other kind.
bool lessen(Shape& shape, Dimension side, double mm)
{
    if (side == Dimension::height) {
        return std::visit([&](auto& s) { return lessen(s.height, mm); }, shape);
    }
    if (auto* c = std::get_if<Cylinder>(&shape)) {
        return lessen(c->diameter, mm) && (c->foot == 0 || lessen(c->foot, mm));
    }
    auto& b = std::get<Box>(shape);
    return (side == Dimension::width || lessen(b.length, mm)) && (side == Dimension::length || lessen(b.width, mm));
}

/// What is fixed to a side or the top of a thing comes in with it.
void follow(Part& part, double height, Dimension side, double mm)
{
    const auto come_in = [&](double& at) {
        at = snap(at > 0 ? std::max(0.0, at - mm / 2) : std::min(0.0, at + mm / 2));
    };
    if (side == Dimension::height) {
        part.at.z = part.at.z > height / 2 ? snap(part.at.z - mm) : part.at.z;
        return;
    }
    if (side != Dimension::width) {
        come_in(part.at.x);
    }
    if (side != Dimension::length) {
        come_in(part.at.y);
    }
}

/// The outside, parts and inside of an item, or of one of its forms.
struct Described {
    Shape& outside;
    std::vector<Part>& parts;
    std::optional<Cavity>& inside;
};

Described described(Item& item, const std::string& form)
{
    for (Stowage& stowage : item.forms) {
        if (!form.empty() && stowage.name == form) {
            return {stowage.outside, stowage.parts, stowage.inside};
        }
    }
    return {item.outside, item.parts, item.inside};
}

bool lessen(const Described& thing, Dimension side, double mm)
{
    const double height = height_of(thing.outside);
    for (Part& part : thing.parts) {
        follow(part, height, side, mm);
    }
    if (!lessen(thing.outside, side, mm)) {
        return false;
    }
    // Whatever its tolerance, something is left of the inside.
    const double off = thing.inside ? *std::max_element(thing.inside->off.mm.begin(), thing.inside->off.mm.end()) : 0;
    Shape worst = thing.inside ? thing.inside->shape : thing.outside;
    if (!lessen(worst, side, mm + 2 * off)) {
        return false;
    }
    return !thing.inside || (lessen(thing.inside->shape, side, mm) &&
                             (!thing.inside->neck || !is_plan(side) || lessen(*thing.inside->neck, side, mm)));
}

/// Takes height from what a lid adds, if it is shut, or else from what it hangs into its vessel first.
bool lower_lid(Item& lid, bool shut, double mm)
{
    Closure& closes = *lid.closes;
    double& first = shut || closes.intrudes < mm ? closes.adds : closes.intrudes;
    first = snap_up(first - mm);
    return first >= 0 && lessen(lid.outside, Dimension::height, mm);
}

/// Whether a lid is as wide as a mouth.
bool covers(const Shape& lid, const Shape& mouth)
{
    if (const auto* round = std::get_if<Cylinder>(&lid)) {
        const auto* other = std::get_if<Cylinder>(&mouth);
        return other == nullptr || round->diameter >= other->diameter;
    }
    const auto &box = std::get<Box>(lid), *other = std::get_if<Box>(&mouth);
    return other == nullptr || (box.length >= other->length && box.width >= other->width);
}

/// Whether a lid still goes with its vessel in one of that one's forms.
bool goes_with(const Item& lid, const Shape& outside, const std::optional<Cavity>& inside)
{
    const Closure& closes = *lid.closes;
    return !inside || (covers(lid.outside, inside->neck ? *inside->neck : inside->shape) &&
                       closes.intrudes < height_of(inside->shape) - least_left &&
                       height_of(lid.outside) - closes.adds <= height_of(outside));
}

bool lids_fit(const Kit& kit)
{
    return std::all_of(kit.items.begin(), kit.items.end(), [&](const Item& lid) {
        if (!lid.closes) {
            return true;
        }
        const Item& vessel = kit.items[lid.closes->item];
        return goes_with(lid, vessel.outside, vessel.inside) &&
               std::all_of(vessel.forms.begin(), vessel.forms.end(),
                           [&](const Stowage& form) { return goes_with(lid, form.outside, form.inside); });
    });
}

/// A ring that would no longer be held in its vessel, or be too wide or too high for it.
Reason why_not_pressed(const Kit& kit)
{
    for (const Item& ring : kit.items) {
        const auto* wide = std::get_if<Cylinder>(&ring.outside);
        if (!ring.press || wide == nullptr) {
            continue;
        }
        const Item& vessel = kit.items[ring.press->item];
        const Shape bore = smallest(vessel.inside->shape, vessel.inside->off),
                    most = largest(ring.outside, ring.outside_off);
        const double room = std::get<Cylinder>(bore).diameter, width = std::get<Cylinder>(most).diameter;
        const auto* inner = ring.inside ? std::get_if<Cylinder>(&ring.inside->shape) : nullptr;
        const bool is_shut =
            inner != nullptr && inner->diameter - ring.inside->off.mm.front() - (width - room) < least_left;
        if (width - ring.press->gives > room || height_of(most) > height_of(bore) || is_shut) {
            return fmt::format("{} could no longer be pressed into it", ring.id);
        }
    }
    return std::nullopt;
}

/// The vessel that a lid closes, or the lid of a vessel.
std::optional<std::size_t> partner_of(const Kit& kit, std::size_t item)
{
    if (kit.items[item].closes) {
        return kit.items[item].closes->item;
    }
    for (std::size_t other = 0; other < kit.items.size(); ++other) {
        if (kit.items[other].closes && kit.items[other].closes->item == item) {
            return other;
        }
    }
    return std::nullopt;
}

Reason why_fixed(const Item& item, Dimension side)
{
    if (item.sheet) {
        return "a sheet takes its size from how it is rolled or folded";
    }
    if (item.cloth) {
        return "a cloth takes whichever size fits best";
    }
    if (item.pouch) {
        return "a pouch is as large as what is in it";
    }
    if (item.press && is_plan(side)) {
        return "it is as wide as the vessel that it is pressed into";
    }
    return std::nullopt;
}

Reason make_smaller(Kit& kit, WhatIf& what_if, const std::string& form, bool shut)
{
    Item& item = kit.items[what_if.item];
    const Dimension side = *what_if.side;
    if (const auto fixed = why_fixed(item, side)) {
        return fixed;
    }
    const auto too_small = [&] { return fmt::format("hardly anything of its {} would be left", to_string(side)); };
    const auto partner = is_plan(side) ? partner_of(kit, what_if.item) : std::nullopt;
    if (item.closes && !is_plan(side)) {
        return lower_lid(item, shut, what_if.mm) && lids_fit(kit) ? std::nullopt : Reason(too_small());
    }
    if (!lessen(described(item, form), side, what_if.mm)) {
        return too_small();
    }
    if (partner) {
        what_if.also = partner;
        Item& other = kit.items[*partner];
        if (!lessen(Described{other.outside, other.parts, other.inside}, side, what_if.mm)) {
            return too_small();
        }
    }
    return lids_fit(kit) ? why_not_pressed(kit) : Reason("its lid would no longer go with it");
}

/// Why a thing that no copy remains of cannot stay at home.
Reason why_needed(const Kit& kit, std::size_t index)
{
    const Item& item = kit.items[index];
    for (const CarryRule& rule : kit.rules) {
        if (rule.second == item.id && (rule.keep == Keep::within || rule.keep == Keep::together)) {
            return fmt::format("{} needs it ({})", rule.first, rule.why);
        }
        if (rule.first == item.id && rule.keep == Keep::together) {
            return fmt::format("{} goes with it ({})", rule.second, rule.why);
        }
    }
    for (const Item& other : kit.items) {
        if (other.press && other.press->item == index) {
            return fmt::format("{} is pressed into it", other.id);
        }
    }
    for (const Band& band : kit.bands) {
        const auto partner = partner_of(kit, index);
        if (band.over == item.id || (partner && !item.closes && band.over == kit.items[*partner].id)) {
            return fmt::format("{} holds it shut", band.id);
        }
    }
    if (item.closes && kit.items[item.closes->item].is_full()) {
        return fmt::format("it shuts {}, which is full", kit.items[item.closes->item].id);
    }
    return std::nullopt;
}

void erase(Kit& kit, std::size_t index)
{
    const std::string id = kit.items[index].id;
    kit.items.erase(kit.items.begin() + static_cast<std::ptrdiff_t>(index));
    for (Item& item : kit.items) {
        for (std::size_t* link :
             {item.closes ? &item.closes->item : nullptr, item.press ? &item.press->item : nullptr}) {
            if (link != nullptr && *link > index) {
                --*link;
            }
        }
    }
    kit.rules.erase(std::remove_if(kit.rules.begin(), kit.rules.end(),
                                   [&](const CarryRule& rule) { return rule.first == id || rule.second == id; }),
                    kit.rules.end());
}

Reason leave_out(Kit& kit, WhatIf& what_if)
{
    const std::size_t index = what_if.item;
    const bool is_lid = kit.items[index].closes.has_value();
    const auto partner = is_lid ? std::nullopt : partner_of(kit, index);
    what_if.also = partner;
    if (kit.items[index].count > 1) {
        if (is_lid) {
            return "each of its vessels has one";
        }
        --kit.items[index].count;
        if (partner) {
            --kit.items[*partner].count;
        }
        return std::nullopt;
    }
    if (const auto needed = why_needed(kit, index)) {
        return needed;
    }
    if (kit.items.size() <= (partner ? 2u : 1u)) {
        return "nothing would be left";
    }
    std::vector<std::size_t> gone{index};
    if (partner) {
        if (const auto needed = why_needed(kit, *partner)) {
            return needed;
        }
        gone.push_back(*partner);
    }
    std::sort(gone.rbegin(), gone.rend());
    for (const std::size_t one : gone) {
        erase(kit, one);
    }
    return std::nullopt;
}

} // namespace

std::optional<Kit> changed(const Kit& kit, WhatIf& what_if)
{
    require(what_if.item < kit.items.size(), "a what-if is about a thing of its kit");
    require(what_if.change == Change::left_out || what_if.side.has_value(), "what gets smaller does so along a side");
    Kit next = kit;
    const Reason reason = what_if.change == Change::left_out ? leave_out(next, what_if)
                                                             : make_smaller(next, what_if, what_if.form, what_if.shut);
    what_if.why_not = reason.value_or("");
    return reason ? std::nullopt : std::optional(std::move(next));
}

} // namespace tuckwright
