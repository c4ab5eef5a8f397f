// SPDX-License-Identifier: GPL-3.0-or-later
/// Random kits of the kinds that packers find hard: all alike, nearly alike, needles, plates, one huge thing, crowds of tiny
/// ones, cups in cups, and sizes from a hundredth of a millimetre to ten metres.
#pragma once
#include <algorithm>
#include <array>
#include <cmath>
#include <string>
#include <utility>
#include <vector>

#include "properties/random_kits.hpp"

namespace properties {

/// Evenly spread on a scale of powers.
inline double log_length(tuckwright::test::Dice& dice, double low, double high)
{
    return low * std::pow(high / low, dice.between(0, 1));
}

inline RandomItem plain_item(int number, std::vector<double> outside, int count = 1)
{
    RandomItem item;
    item.id = "thing-" + std::to_string(number);
    item.outside = std::move(outside);
    item.count = count;
    return item;
}

/// Open at the top.
inline RandomItem vessel_item(int number, double diameter, double height, double wall)
{
    RandomItem item = plain_item(number, {diameter, height});
    item.wall = wall;
    item.rest = "opens: top";
    return item;
}

inline RandomItem some_vessel(tuckwright::test::Dice& dice, int number, double low, double high)
{
    const double diameter = some_length(dice, low, high);
    return vessel_item(number, diameter, some_length(dice, low, high), 1);
}

/// Round or with corners, each side from that range.
inline RandomItem some_solid(tuckwright::test::Dice& dice, int number, double low, double high)
{
    RandomItem item = plain_item(number, {log_length(dice, low, high), log_length(dice, low, high)});
    if (dice.below(2) == 0) {
        item.outside.push_back(log_length(dice, low, high));
    }
    return item;
}

inline std::vector<RandomItem> all_alike(tuckwright::test::Dice& dice)
{
    RandomItem one = dice.below(3) == 0 ? some_vessel(dice, 0, 25, 90) : some_solid(dice, 0, 10, 100);
    one.count = 2 + dice.below(6);
    return {one};
}

/// Apart by a nanometre to a hundredth of a millimetre.
inline std::vector<RandomItem> nearly_alike(tuckwright::test::Dice& dice)
{
    const RandomItem one = some_solid(dice, 0, 10, 100);
    std::vector<RandomItem> items;
    for (int k = 0, number = 2 + dice.below(5); k < number; ++k) {
        items.push_back(plain_item(k, one.outside));
        for (double& side : items.back().outside) {
            side += log_length(dice, 1e-6, 1e-2);
        }
    }
    return items;
}

inline std::vector<RandomItem> needles(tuckwright::test::Dice& dice)
{
    std::vector<RandomItem> items;
    for (int k = 0, number = 1 + dice.below(4); k < number; ++k) {
        const double thick = log_length(dice, 0.05, 3), length = log_length(dice, 80, 900);
        items.push_back(dice.below(2) == 0 ? plain_item(k, {thick, length}) : plain_item(k, {length, thick, 1.3 * thick}));
    }
    items.push_back(some_vessel(dice, 90, 40, 130));
    return items;
}

inline std::vector<RandomItem> plates(tuckwright::test::Dice& dice)
{
    std::vector<RandomItem> items;
    for (int k = 0, number = 2 + dice.below(4); k < number; ++k) {
        const double thick = log_length(dice, 0.02, 2), wide = log_length(dice, 60, 400);
        items.push_back(dice.below(2) == 0 ? plain_item(k, {wide, thick})
                                           : plain_item(k, {wide, log_length(dice, 60, 400), thick}));
    }
    return items;
}

inline std::vector<RandomItem> one_huge(tuckwright::test::Dice& dice)
{
    std::vector<RandomItem> items;
    const double wide = log_length(dice, 800, 9000), high = log_length(dice, 800, 9000);
    items.push_back(dice.below(2) == 0 ? plain_item(0, {wide, high}) : vessel_item(0, wide, high, 2));
    for (int k = 1, number = 2 + dice.below(4); k <= number; ++k) {
        items.push_back(some_solid(dice, k, 3, 40));
    }
    return items;
}

inline std::vector<RandomItem> tiny_crowd(tuckwright::test::Dice& dice, int most)
{
    std::vector<RandomItem> items;
    for (int k = 0, left = most / 3 + dice.below(most - most / 3); left > 0; ++k) {
        items.push_back(some_solid(dice, k, 0.5, 6));
        items.back().count = std::min(left, 1 + dice.below(most / 4));
        left -= items.back().count;
    }
    items.push_back(vessel_item(900, 60, 40, 1));
    return items;
}

/// Each cup goes into the next larger one, hardly.
inline std::vector<RandomItem> cups_in_cups(tuckwright::test::Dice& dice, int cups)
{
    std::vector<RandomItem> items;
    const double wall = some_length(dice, 0.3, 1.2), air = 1 + log_length(dice, 1e-5, 1); // twice the clearance, and some
    const double low = dice.below(2) == 0 ? 0 : 0.5;
    double diameter = some_length(dice, 20, 50), height = some_length(dice, 30, 60);
    for (int k = 0; k < cups; ++k) {
        items.push_back(vessel_item(k, diameter, height, wall));
        diameter += 2 * wall + air;
        height += wall - low;
    }
    return items;
}

inline std::vector<RandomItem> any_sizes(tuckwright::test::Dice& dice)
{
    std::vector<RandomItem> items;
    for (int k = 0, number = 2 + dice.below(4); k < number; ++k) {
        items.push_back(some_solid(dice, k, 0.01, 9999));
    }
    return items;
}

inline constexpr std::array<const char*, 9> nasty_kinds{"ordinary",   "all alike",  "nearly alike", "needles",  "plates",
                                                        "one huge",   "tiny crowd", "cups in cups", "any sizes"};

/// A kit of that kind. `large` ones have ten cups and hundreds of tiny things instead of five and twenty.
inline std::vector<RandomItem> nasty_items(tuckwright::test::Dice& dice, std::size_t kind, bool large)
{
    switch (kind) {
    case 1: return all_alike(dice);
    case 2: return nearly_alike(dice);
    case 3: return needles(dice);
    case 4: return plates(dice);
    case 5: return one_huge(dice);
    case 6: return tiny_crowd(dice, large ? 300 : 20);
    case 7: return cups_in_cups(dice, large ? 10 : 5);
    case 8: return any_sizes(dice);
    default: return random_items(dice);
    }
}

} // namespace properties
