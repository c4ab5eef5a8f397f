// SPDX-License-Identifier: GPL-3.0-or-later
#include "drawing/shown.hpp"

#include <algorithm>

#include "drawing/camera.hpp"
#include "drawing/covers.hpp"
#include "drawing/handled.hpp"
#include "tuckwright/contract.hpp"

namespace tuckwright::drawing {

namespace {

bool holds_items(const Bundle& bundle, std::size_t item)
{
    return std::any_of(bundle.items.begin(), bundle.items.end(),
                       [&](const PlacedItem& other) { return other.in && other.in->item == item; });
}

/// The shape made longer at its upper end; what tapers goes on as it does.
Solid heightened(const Solid& solid, double by)
{
    Solid longer = solid;
    if (auto* c = std::get_if<Cylinder>(&longer.shape)) {
        const double slope = (c->diameter - foot_of(*c)) / c->height;
        c->foot = c->foot == 0 ? 0 : c->foot;
        c->diameter += slope * by;
        c->height += by;
    } else {
        std::get<Box>(longer.shape).height += by;
    }
    longer.pose.center = longer.pose.center + (by / 2) * own_axis(solid.pose, 2);
    return longer;
}

/// The cavity as it is with or without the lid that closes it in the end.
Hollow hollow_of(const PlacedItem& item, const PlacedCavity& cavity, bool has_lid, bool lid_is_on)
{
    Hollow hollow{{cavity.shape, cavity.pose}, cavity.opens != Opening::closed, cavity.opens == Opening::both, {}, {}};
    if (cavity.neck) {
        hollow.neck = neck_of(cavity);
    }
    if (has_lid && cavity.opens == Opening::closed) {
        const Vec3 axis = own_axis(cavity.pose, 2);
        const Solid& body = item.solids.front();
        const double missing =
            dot(axis, body.pose.center - cavity.pose.center) + (height_of(body.shape) - height_of(cavity.shape)) / 2;
        if (missing > 0 && !hollow.neck) {
            const Solid whole = heightened(hollow.room, missing);
            if (lid_is_on) {
                Solid plug = whole;
                std::visit([&](auto& shape) { shape.height = missing; }, plug.shape);
                if (auto* c = std::get_if<Cylinder>(&plug.shape)) {
                    c->foot = 0;
                }
                plug.pose.center = hollow.room.pose.center + ((height_of(cavity.shape) + missing) / 2) * axis;
                hollow.plug = plug;
            } else {
                hollow.room = whole;
            }
        }
        hollow.open_top = !lid_is_on;
    }
    return hollow;
}

} // namespace

std::optional<std::size_t> lid_of(const Bundle& bundle, std::size_t item)
{
    for (std::size_t k = 0; k < bundle.items.size(); ++k) {
        if (bundle.items[k].closes == item) {
            return k;
        }
    }
    return std::nullopt;
}

std::optional<std::size_t> skirt_of(const Bundle& bundle, std::size_t item)
{
    const auto lid = lid_of(bundle, item);
    const auto& solids = bundle.items[item].solids;
    if (!lid || solids.size() < 2) {
        return std::nullopt;
    }
    const auto flat = [](Shape shape) {
        std::visit([](auto& s) { s.height = 0; }, shape);
        return shape;
    };
    const bool as_wide = flat(solids.back().shape) == flat(bundle.items[*lid].solids.front().shape);
    return as_wide ? std::optional(solids.size() - 1) : std::nullopt;
}

std::size_t owner_of(const Bundle& bundle, std::size_t item, std::size_t solid)
{
    return skirt_of(bundle, item) == solid ? *lid_of(bundle, item) : item;
}

std::vector<Solid> own_solids(const Bundle& bundle, std::size_t item)
{
    std::vector<Solid> solids = bundle.items[item].solids;
    if (skirt_of(bundle, item)) {
        solids.pop_back();
    }
    if (const auto vessel = bundle.items[item].closes; vessel && skirt_of(bundle, *vessel)) {
        solids.push_back(bundle.items[*vessel].solids.back());
    }
    return solids;
}

std::optional<std::size_t> parent_of(const Bundle& bundle, std::size_t item)
{
    const PlacedItem& it = bundle.items[item];
    return it.closes ? it.closes : it.in ? std::optional(it.in->item) : std::nullopt;
}

bool is_vessel(const Bundle& bundle, std::size_t item)
{
    const PlacedItem& it = bundle.items[item];
    if (it.cavities.empty() || it.full) {
        return false;
    }
    return lid_of(bundle, item) || holds_items(bundle, item) ||
           std::any_of(it.cavities.begin(), it.cavities.end(),
                       [](const PlacedCavity& cavity) { return cavity.opens != Opening::closed; });
}

namespace {

/// The bands that hold a shut lid of those that are there, and those round it all.
void put_covers(const Bundle& bundle, std::size_t covers, Shown& shown)
{
    for (std::size_t k = 0; k < bundle.bands.size(); ++k) {
        const Band& band = bundle.bands[k];
        if (band.over.empty() && !shown.root && !shown.item && covers > 0) {
            shown.bands.push_back(k);
            --covers;
        }
        const auto lid = held_lid(bundle, band);
        if (lid && shown.there[*lid] && shown.there[*bundle.items[*lid].closes]) {
            shown.bands.push_back(k);
        }
    }
    shown.bag = bundle.bag && !shown.root && !shown.item && covers > 0;
}

} // namespace

Shown shown_at(const Bundle& bundle, std::size_t step, std::size_t covers)
{
    const std::size_t n = bundle.items.size();
    Shown shown;
    shown.root = filled_at(bundle, step);
    std::vector<bool> placed(n, false);
    for (std::size_t k = 0; k < step; ++k) {
        placed[bundle.steps[k].item] = true;
    }
    if (step < bundle.steps.size()) {
        shown.item = bundle.steps[step].item;
        placed[*shown.item] = true;
    }
    // Whether an item lies in what is shown, or goes there now: each one's way up ends at the root, or at the item.
    shown.there.assign(n, false);
    shown.moving.assign(n, false);
    for (std::size_t k = 0; k < n; ++k) {
        std::optional<std::size_t> at = k;
        bool moves = false;
        while (at && at != shown.root && placed[*at]) {
            moves = moves || at == shown.item;
            at = parent_of(bundle, *at);
        }
        shown.there[k] = at == shown.root;
        shown.moving[k] = shown.there[k] && moves;
    }
    for (std::size_t k = 0; k < n; ++k) {
        shown.hollows.emplace_back();
        const auto lid = lid_of(bundle, k);
        for (const PlacedCavity& cavity : bundle.items[k].cavities) {
            shown.hollows[k].push_back(hollow_of(bundle.items[k], cavity, lid.has_value(), lid && shown.there[*lid]));
        }
    }
    put_covers(bundle, covers, shown);
    return shown;
}

} // namespace tuckwright::drawing
