// SPDX-License-Identifier: GPL-3.0-or-later
#include "advice/part_of_kit.hpp"

#include <algorithm>
#include <map>

#include "tuckwright/contract.hpp"

namespace tuckwright::advice {

std::size_t index_of(const Kit& kit, const std::string& id)
{
    const auto found = std::find_if(kit.items.begin(), kit.items.end(), [&](const Item& item) { return item.id == id; });
    require(found != kit.items.end(), "an item of that id is in the kit");
    return static_cast<std::size_t>(found - kit.items.begin());
}

Kit part_of(const Kit& kit, const Counts& counts)
{
    require(counts.size() == kit.items.size(), "there is a number for each item");
    Kit part = kit;
    part.items.clear();
    std::map<std::size_t, std::size_t> place;
    for (std::size_t item = 0; item < kit.items.size(); ++item) {
        require(counts[item] >= 0 && counts[item] <= kit.items[item].count, "no more copies than there are");
        if (counts[item] > 0) {
            place[item] = part.items.size();
            part.items.push_back(kit.items[item]);
            part.items.back().count = counts[item];
        }
    }
    const auto is_there = [&](const std::string& id) {
        return std::any_of(part.items.begin(), part.items.end(), [&](const Item& item) { return item.id == id; });
    };
    for (Item& item : part.items) {
        if (item.closes && place.contains(item.closes->item)) {
            item.closes->item = place[item.closes->item];
        } else {
            item.closes.reset();
        }
        if (item.press && place.contains(item.press->item)) {
            item.press->item = place[item.press->item];
        } else {
            item.press.reset();
        }
    }
    std::erase_if(part.rules, [&](const CarryRule& rule) { return !is_there(rule.first) || !is_there(rule.second); });
    std::erase_if(part.bands, [&](const Band& band) { return !band.over.empty() && !is_there(band.over); });
    return part;
}

} // namespace tuckwright::advice
