// SPDX-License-Identifier: GPL-3.0-or-later
#include "tuckwright/kit_in_code.hpp"

#include <algorithm>

#include "kit/kinds.hpp"
#include "tuckwright/contract.hpp"
#include "tuckwright/units.hpp"

namespace tuckwright {

namespace {

using reading::UsualRule;

/// Two that are one vessel and its lid belong together.
bool is_lid_on(const Kit& kit, const Item& lid, const Item& vessel)
{
    return lid.closes && lid.closes->item < kit.items.size() && &kit.items[lid.closes->item] == &vessel;
}

bool takes_more(const Item& vessel) { return vessel.inside && !vessel.closes && !vessel.is_full(); }

bool is_about(const UsualRule& rule, const Item& first, const Item& second)
{
    return reading::is_of_kind(first, rule.first) && reading::is_of_kind(second, rule.second) &&
           !(rule.both_are_free && reading::is_of_kind(second, rule.first)) &&
           (rule.keep == Keep::apart || takes_more(second));
}

bool has_rule(const Kit& kit, Keep keep, const std::string& first, const std::string& second)
{
    return std::any_of(kit.rules.begin(), kit.rules.end(), [&](const CarryRule& rule) {
        return rule.keep == keep && ((rule.first == first && rule.second == second) ||
                                     (keep == Keep::apart && rule.first == second && rule.second == first));
    });
}

} // namespace

Cavity cavity_of(const Shape& outside, double wall, double base, Opening opens)
{
    require(wall > 0 && (opens == Opening::both || base > 0), "a cavity has a wall and a base");
    const int level_walls = opens == Opening::both ? 0 : opens == Opening::closed ? 2 : 1;
    Cavity made;
    made.opens = opens;
    made.floor = opens == Opening::both ? 0 : snap_up(base);
    const double outer = height_of(outside), height = opens == Opening::both ? outer : outer - level_walls * made.floor;
    if (const auto* round = std::get_if<Cylinder>(&outside)) {
        Cylinder room{snap_down(round->diameter - 2 * wall), snap_down(height), 0};
        if (round->foot != 0 && opens != Opening::both) {
            const double at_floor = round->foot + (round->diameter - round->foot) * made.floor / outer;
            room.foot = snap_down(at_floor - 2 * wall);
            require(room.foot > 0, "the wall leaves room at the foot");
        }
        require(room.diameter > 0 && room.height > 0, "wall and base leave room");
        made.shape = room;
    } else {
        const auto& box = std::get<Box>(outside);
        const Box room{snap_down(box.length - 2 * wall), snap_down(box.width - 2 * wall), snap_down(height)};
        require(room.length > 0 && room.width > 0 && room.height > 0, "wall and base leave room");
        made.shape = room;
    }
    return made;
}

Kit with_usual_rules(Kit kit)
{
    for (Item& item : kit.items) {
        item.name = item.name.empty() ? item.id : item.name;
        const bool tells_load = item.bears_g.has_value() || item.nothing_on_top;
        item.nothing_on_top = item.nothing_on_top || (reading::is_of_kind(item, Kind::fragile) && !tells_load);
    }
    for (std::size_t r = 0; r < reading::usual_rules().size(); ++r) {
        const UsualRule& rule = reading::usual_rules()[r];
        for (const Item& first : kit.items) {
            for (const Item& second : kit.items) {
                if (&first != &second && is_about(rule, first, second) && !is_lid_on(kit, first, second) &&
                    !is_lid_on(kit, second, first) && !has_rule(kit, rule.keep, first.id, second.id)) {
                    kit.rules.push_back({rule.keep, first.id, second.id, reading::usual_rule_reason(r)});
                }
            }
        }
    }
    return kit;
}

} // namespace tuckwright
