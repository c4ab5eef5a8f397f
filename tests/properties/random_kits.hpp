// SPDX-License-Identifier: GPL-3.0-or-later
/// Small random kits as kit files: vessels, lids, sleeves, boxes, rods; sizes to a tenth of a millimetre.
#pragma once
#include <cmath>
#include <string>
#include <vector>

#include "support/kit_text.hpp"
#include "support/random_solids.hpp"

namespace properties {

/// One item's line of the file, with lengths that can be scaled.
struct RandomItem {
    std::string id;
    std::vector<double> outside;  ///< diameter, height; or length, width, height
    double wall = 0;              ///< 0: solid
    std::string rest;             ///< further fields
    int count = 1;
    bool lid = false;             ///< of the item before
};

inline double some_length(tuckwright::test::Dice& dice, double low, double high)
{
    return std::round(dice.between(low, high) * 10) / 10;
}

inline RandomItem random_item(tuckwright::test::Dice& dice, int number)
{
    RandomItem item;
    item.id = "thing-" + std::to_string(number);
    const auto length = [&](double low, double high) { return some_length(dice, low, high); };
    switch (dice.below(6)) {
    case 0:
        item.outside = {length(60, 130), length(40, 110)};
        item.wall = 1;
        item.rest = "opens: top";
        break;
    case 1:
        item.outside = {length(50, 110), length(30, 90)};
        item.wall = 1;
        item.rest = "opens: both";
        break;
    case 2:
        item.outside = {length(50, 130), length(40, 90), length(20, 60)};
        item.wall = 1;
        item.rest = "lid: own";
        break;
    case 3: item.outside = {length(20, 80), length(15, 80)}; break;
    case 4: item.outside = {length(6, 14), length(60, 170)}; break;
    default: item.outside = {length(30, 150), length(15, 70), length(6, 40)};
    }
    item.count = dice.below(5) == 0 ? 2 : 1;
    return item;
}

/// Two to five items; every other vessel that is open at the top has a lid.
inline std::vector<RandomItem> random_items(tuckwright::test::Dice& dice)
{
    std::vector<RandomItem> items;
    const int number = 2 + dice.below(4);
    for (int k = 0; k < number; ++k) {
        items.push_back(random_item(dice, k));
        const RandomItem vessel = items.back();
        if (vessel.rest == "opens: top" && dice.below(2) == 0) {
            RandomItem lid;
            lid.id = vessel.id + "-lid";
            lid.outside = {vessel.outside[0] + 1, 9};
            lid.count = vessel.count;
            lid.lid = true;
            items.push_back(lid);
        }
    }
    return items;
}

inline tuckwright::test::KitText text_of(const std::vector<RandomItem>& items, const std::string& bundle,
                                         double scale = 1)
{
    using namespace tuckwright::test;
    KitText kit(bundle, 0.5 * scale);
    for (const RandomItem& item : items) {
        const auto& o = item.outside;
        std::string fields = o.size() == 2 ? cylinder(o[0] * scale, o[1] * scale)
                                           : box(o[0] * scale, o[1] * scale, o[2] * scale);
        if (item.wall > 0) {
            fields += ", inside: {wall: " + mm(item.wall * scale);
            fields += item.rest == "opens: both" ? "" : ", base: " + mm(item.wall * scale);
            fields += ", " + item.rest + "}";
        }
        if (item.lid) {
            fields += ", closes: {item: " + item.id.substr(0, item.id.size() - 4) + ", adds: " + mm(3 * scale) +
                      ", intrudes: " + mm(6 * scale) + "}";
        }
        kit.item(item.id, fields, item.count);
    }
    return kit;
}

} // namespace properties
