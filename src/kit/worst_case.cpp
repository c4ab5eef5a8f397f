// SPDX-License-Identifier: GPL-3.0-or-later
// Worst-case stack-up: each dimension at the end of its range that leaves the least room. Common practice, no source.
#include "tuckwright/worst_case.hpp"

#include <algorithm>
#include <cmath>

#include "tuckwright/units.hpp"

namespace tuckwright {

namespace {

void set_height(Shape& shape, double mm)
{
    std::visit([&](auto& s) { s.height = mm; }, shape);
}

/// Its floor anew, so that the top of an open one is the item's top, and one with a lid of its own stays in the middle.
void shrink(Cavity& cavity, const Shape& outside)
{
    cavity.shape = smallest(cavity.shape, cavity.off);
    if (cavity.neck) {
        Spread across = cavity.off; // the opening is measured with the same care
        across.mm[height_index(cavity.shape)] = 0;
        cavity.neck = smallest(*cavity.neck, across);
    }
    const double neck = cavity.neck ? height_of(*cavity.neck) : 0;
    const double above = height_of(outside) - height_of(cavity.shape) - neck;
    switch (cavity.opens) {
    case Opening::top: cavity.floor = snap(above); break;
    case Opening::closed: cavity.floor = snap_down(above / 2); break;
    case Opening::both: set_height(cavity.shape, height_of(outside)); break;
    }
}

/// Parts as large as they may be, moved out with the side of the outside that they touch.
void grow(std::vector<Part>& parts, const Shape& before, const Shape& after)
{
    const double higher = height_of(after) - height_of(before);
    const auto half_growth = [&](double Box::*side) {
        const auto* b = std::get_if<Box>(&after);
        return (b != nullptr ? b->*side - std::get<Box>(before).*side
                             : std::get<Cylinder>(after).diameter - std::get<Cylinder>(before).diameter) /
               2;
    };
    const auto outward = [](double at, double by) { return at == 0 ? at : snap_up(at + std::copysign(by, at)); };
    for (Part& part : parts) {
        part.shape = largest(part.shape, part.off);
        part.at.x = outward(part.at.x, half_growth(&Box::length));
        part.at.y = outward(part.at.y, half_growth(&Box::width));
        part.at.z += part.at.z > height_of(before) / 2 ? higher : 0;
    }
}

/// An outside, what is fixed to it and its cavity, all at their worst.
void stretch(Shape& outside, std::vector<Part>& parts, std::optional<Cavity>& inside, const Spread& off)
{
    const Shape before = outside;
    outside = largest(outside, off);
    grow(parts, before, outside);
    if (inside) {
        shrink(*inside, outside);
    }
}

/// The lid above the rim and in the cavity, and its skirt, each at its worst. A lid that had no skirt gets none. Carried
/// loose, a lid with a skirt counts as a little higher than it can be: as high as what it adds and its skirt at worst.
/// Requires: its outside and that of its vessel are at their worst.
void stretch(Item& lid, double measured_height, const Item& vessel)
{
    Closure& closes = *lid.closes;
    const bool has_skirt = measured_height > closes.adds + closes.intrudes;
    const double reach = measured_height - closes.adds; // down from the rim
    closes.adds = snap_up(closes.adds + closes.adds_off);
    closes.intrudes = snap_up(closes.intrudes + closes.intrudes_off);
    if (has_skirt) {
        const double lowest = std::min(reach + lid.outside_off.mm[height_index(lid.outside)] + closes.adds_off,
                                       height_of(vessel.outside));
        set_height(lid.outside, snap_up(std::max({height_of(lid.outside), closes.adds + lowest,
                                                  closes.adds + closes.intrudes})));
    } else {
        set_height(lid.outside, snap_up(std::max(height_of(lid.outside), closes.adds + closes.intrudes)));
        closes.intrudes = snap_up(height_of(lid.outside) - closes.adds + 2 / nanometres_per_millimetre); // grid rounding
    }
    // A reach that is below the vessel's foot, or leaves nothing of its cavity, counts as standing higher instead.
    const double room = height_of(vessel.inside->shape) - 1 / nanometres_per_millimetre;
    if (closes.intrudes > room) {
        closes.adds = snap_up(closes.adds + closes.intrudes - room);
        closes.intrudes = snap_down(room);
    }
    closes.adds = std::max(closes.adds, snap_up(height_of(lid.outside) - height_of(vessel.outside)));
}

} // namespace

Kit worst_case(Kit kit)
{
    std::vector<double> heights;
    for (Item& item : kit.items) {
        heights.push_back(height_of(item.outside));
        stretch(item.outside, item.parts, item.inside, item.outside_off);
        for (Stowage& form : item.forms) {
            stretch(form.outside, form.parts, form.inside, form.outside_off);
        }
    }
    for (std::size_t i = 0; i < kit.items.size(); ++i) {
        const bool is_exact = !kit.items[i].closes || (!any(kit.items[i].outside_off) &&
                                                       kit.items[i].closes->adds_off == 0 &&
                                                       kit.items[i].closes->intrudes_off == 0);
        if (!is_exact) {
            stretch(kit.items[i], heights[i], kit.items[kit.items[i].closes->item]);
        }
    }
    return kit;
}

} // namespace tuckwright
