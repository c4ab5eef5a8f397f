// SPDX-License-Identifier: GPL-3.0-or-later
#include "solve/measures.hpp"

#include <algorithm>

#include "tuckwright/contract.hpp"
#include "tuckwright/fits.hpp"
#include "tuckwright/play.hpp"
#include "tuckwright/stowage.hpp"
#include "tuckwright/units.hpp"

namespace tuckwright {

namespace {

/// The tolerance of a part of a lid: as wide as the lid, but of another height.
Spread with_height(const Item& lid, double height_off)
{
    Spread spread = lid.outside_off;
    spread.mm[height_index(lid.outside)] = snap_up(height_off);
    return spread;
}

void measure_item(const Item& item, PlacedItem& placed)
{
    placed.soft = std::find(item.kinds.begin(), item.kinds.end(), Kind::soft) != item.kinds.end();
    const auto form = std::find_if(item.forms.begin(), item.forms.end(),
                                   [&](const Stowage& other) { return other.name == placed.stowed; });
    const Item as_it_is =
        in_form(item, form == item.forms.end() ? 0 : static_cast<std::size_t>(form - item.forms.begin()) + 1);
    placed.solids_off.assign(placed.solids.size(), Spread{});
    placed.solids_off.front() = as_it_is.outside_off;
    for (std::size_t k = 0; k < as_it_is.parts.size() && k + 1 < placed.solids.size(); ++k) {
        placed.solids_off[k + 1] = as_it_is.parts[k].off;
    }
    for (PlacedCavity& cavity : placed.cavities) {
        cavity.off = as_it_is.inside ? as_it_is.inside->off : Spread{};
    }
}

/// Whether a solid is as wide as a lid: then it is its skirt.
bool is_as_wide(const Shape& solid, const Shape& lid)
{
    if (solid.index() != lid.index()) {
        return false;
    }
    const auto* c = std::get_if<Cylinder>(&solid);
    return c != nullptr ? c->diameter == std::get<Cylinder>(lid).diameter
                        : std::get<Box>(solid).length == std::get<Box>(lid).length &&
                              std::get<Box>(solid).width == std::get<Box>(lid).width;
}

/// What a shut lid changes: its plate is as high as what it adds, it takes from the vessel's cavity, and the vessel's
/// last solid is its skirt, where it has one.
void measure_lid(const Item& lid, PlacedItem& placed, PlacedItem& vessel)
{
    placed.solids_off.assign(placed.solids.size(), with_height(lid, lid.closes->adds_off));
    if (vessel.solids.size() > 1 && is_as_wide(vessel.solids.back().shape, placed.solids.front().shape)) {
        const double height_off = lid.outside_off.mm[height_index(lid.outside)] + lid.closes->adds_off;
        vessel.solids_off.back() = with_height(lid, height_off);
    }
    PlacedCavity& cavity = vessel.cavities.front();
    double& height_off = cavity.off.mm[height_index(cavity.shape)];
    height_off = snap_up(height_off + lid.closes->intrudes_off);
}

} // namespace

void measure(const Kit& kit, Bundle& bundle)
{
    std::size_t next = 0;
    std::vector<const Item*> items;
    for (const Item& item : kit.items) {
        for (int copy = 1; copy <= item.count; ++copy, ++next) {
            require(next < bundle.items.size() && bundle.items[next].id == item.id, "a bundle of this very kit");
            measure_item(item, bundle.items[next]);
            items.push_back(&item);
        }
    }
    for (std::size_t i = 0; i < bundle.items.size(); ++i) {
        if (bundle.items[i].closes) {
            measure_lid(*items[i], bundle.items[i], bundle.items[*bundle.items[i].closes]);
        }
    }
    bundle.worst_case = kit.worst_case;
    bundle.fits = fits(bundle);
    bundle.plays = plays(bundle);
}

} // namespace tuckwright
