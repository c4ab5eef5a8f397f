// SPDX-License-Identifier: GPL-3.0-or-later
/// Bundles packed by hand with rules of carrying that they keep.
#pragma once
#include <string>
#include <vector>

#include "support/handmade_bundles_parts.hpp"

namespace tuckwright::handmade {

inline void keep(Bundle& bundle, Keep how, const std::string& first, const std::string& second,
                 const std::string& why = "it is so by hand")
{
    bundle.rules.push_back({how, first, second, why});
}

/// Oats in a cup in a pot under a shut lid; beside it spirit in a second cup in an open tub. Without rules.
inline Bundle pot_beside_tub()
{
    auto pot = hollow(item("pot", cylinder(128, 96, {64.5, 64.5, 48})), cylinder(126, 87, {64.5, 64.5, 46.5}),
                      Opening::closed);
    auto cup = in(
        hollow(item("cup", cylinder(80, 87, {64.5, 64.5, 46.5})), cylinder(78, 86, {64.5, 64.5, 47}), Opening::top), 0);
    auto oats = in(item("oats", cylinder(60, 80, {64.5, 64.5, 44})), 1);
    auto lid = item("pot-lid", cylinder(129, 3, {64.5, 64.5, 97.5}), "shut");
    auto tub = hollow(item("tub", cylinder(100, 90, {180, 64.5, 45})), cylinder(98, 88, {180, 64.5, 46}), Opening::top);
    auto second = in(
        hollow(item("cup", cylinder(80, 87, {180, 64.5, 45.5})), cylinder(78, 86, {180, 64.5, 46}), Opening::top), 4);
    auto spirit = in(item("spirit", cylinder(60, 80, {180, 64.5, 43})), 5);
    lid.closes = 0;
    second.copy = 2;
    auto result = bundle("Porridge for two", Box{230, 129, 99}, {pot, cup, oats, lid, tub, second, spirit});
    for (const std::size_t k : std::vector<std::size_t>{2, 1, 3, 0, 6, 5, 4}) {
        step(result, k);
        if (k != 3) {
            stands(result, k);
        }
    }
    return result;
}

/// The same with a rule of each kind, between vessels, what they hold, copies and the shut lid.
inline Bundle fuel_apart_from_food()
{
    auto result = pot_beside_tub();
    keep(result, Keep::apart, "spirit", "oats", "fuel keeps apart from food");
    keep(result, Keep::apart, "spirit", "pot", "fuel keeps apart from food");
    keep(result, Keep::apart, "spirit", "pot-lid", "fuel keeps apart from food");
    keep(result, Keep::apart, "tub", "oats", "the tub is sooty");
    keep(result, Keep::within, "oats", "pot", "oats stay dry");
    keep(result, Keep::within, "oats", "cup");
    keep(result, Keep::within, "spirit", "cup", "a leak stays in the cup");
    keep(result, Keep::within, "pot-lid", "pot", "the lid stays on");
    keep(result, Keep::out, "oats", "tub", "the tub is sooty");
    keep(result, Keep::out, "pot-lid", "tub", "the tub is sooty");
    keep(result, Keep::out, "pot", "cup", "");
    return result;
}

} // namespace tuckwright::handmade
