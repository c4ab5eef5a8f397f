// SPDX-License-Identifier: GPL-3.0-or-later
#include "tuckwright/kit_in_code.hpp"

#include <algorithm>

#include "kit/form_reading.hpp"
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

/// What is no length stays as it is, to be told by problems_of().
bool is_length(double mm) { return mm >= 0 && mm < 1e6; }
double up(double mm) { return is_length(mm) ? snap_up(mm) : mm; }
double down(double mm) { return is_length(mm) ? snap_down(mm) : mm; }

/// Each side rounded by a function.
template <class Round> Shape rounded(const Shape& shape, Round round)
{
    if (const auto* c = std::get_if<Cylinder>(&shape)) {
        return Cylinder{round(c->diameter), round(c->height), round(c->foot)};
    }
    const auto& b = std::get<Box>(shape);
    return Box{round(b.length), round(b.width), round(b.height)};
}

/// What is too small becomes no smaller, what is too large no larger; an open cavity still ends at the rim.
void put_on_grid(Shape& outside, std::vector<Part>& parts, std::optional<Cavity>& inside)
{
    outside = rounded(outside, up);
    for (Part& part : parts) {
        part.shape = rounded(part.shape, up);
    }
    if (!inside) {
        return;
    }
    inside->shape = rounded(inside->shape, down);
    const double neck = inside->neck ? height_of(*inside->neck) : 0;
    if (inside->opens == Opening::both) {
        inside->shape = std::visit(
            [&](auto shape) -> Shape {
                shape.height = height_of(outside);
                return shape;
            },
            inside->shape);
    } else if (inside->opens == Opening::top) {
        constexpr double grain = 1e-5; // mm: a floor that is wrong by more is a fault, to be told
        const double floor = height_of(outside) - neck - height_of(inside->shape);
        inside->floor = std::abs(floor - inside->floor) < grain ? floor : inside->floor;
    }
}

/// What has no shape of its own gets the one that the reader gives it, where the program has left it out.
void add_outside(Item& item)
{
    if (item.outside != Shape()) {
        return;
    }
    item.outside = item.cloth   ? reading::first_pad(*item.cloth)
                   : item.sheet ? reading::flat(*item.sheet)
                   : item.pouch ? reading::flat(*item.pouch)
                                : item.outside;
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
        item.upright = item.upright || item.contents || reading::is_of_kind(item, Kind::liquid);
        add_outside(item);
        put_on_grid(item.outside, item.parts, item.inside);
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
