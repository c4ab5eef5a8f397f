// SPDX-License-Identifier: GPL-3.0-or-later
/// Faults of what is pressed into a vessel: each breaks the rule that it fills its cavity, on its axis and below the rim.
#include <algorithm>

#include "properties/spoilers.hpp"
#include "tuckwright/report.hpp"
#include "tuckwright/units.hpp"

namespace properties {

using namespace tuckwright;
using test::Dice;

namespace {

/// One of the items that are pressed into a vessel, or null.
PlacedItem* pressed_item(Bundle& bundle, Dice& dice)
{
    PlacedItem& item = bundle.items[any(dice, bundle.items.size())];
    return item.pressed ? &item : nullptr;
}

void shift(PlacedItem& item, Vec3 by)
{
    for (Solid& solid : item.solids) {
        Vec3& p = solid.pose.center;
        p = {snap(p.x + by.x), snap(p.y + by.y), snap(p.z + by.z)};
    }
    for (PlacedCavity& cavity : item.cavities) {
        Vec3& p = cavity.pose.center;
        p = {snap(p.x + by.x), snap(p.y + by.y), snap(p.z + by.z)};
    }
}

/// By a nanometre or by a millimetre.
double little_or_much(Dice& dice) { return (dice.below(2) == 0 ? -1 : 1) * (dice.below(2) == 0 ? 1e-6 : 1.0); }

Spoiled not_told(Bundle bundle, Dice& dice)
{
    PlacedItem* item = pressed_item(bundle, dice);
    if (item == nullptr || bundle.clearance == 0) {
        return std::nullopt;
    }
    item->pressed.reset();
    return to_json(bundle);
}

/// It is as wide as its vessel inside only where it is pressed in.
Spoiled told_of_another(Bundle bundle, Dice& dice)
{
    PlacedItem& item = bundle.items[any(dice, bundle.items.size())];
    const auto* body = std::get_if<Cylinder>(&item.solids.front().shape);
    const bool fills = item.in && bundle.clearance == 0;
    if (item.pressed || fills || item.closes) {
        return std::nullopt;
    }
    item.pressed = (body != nullptr ? body->diameter : 100) + 1;
    return to_json(bundle);
}

Spoiled of_another_width(Bundle bundle, Dice& dice)
{
    PlacedItem* item = pressed_item(bundle, dice);
    if (item == nullptr) {
        return std::nullopt;
    }
    double& diameter = std::get<Cylinder>(item->solids.front().shape).diameter;
    diameter = snap(diameter + little_or_much(dice));
    return to_json(bundle);
}

Spoiled not_wider(Bundle bundle, Dice& dice)
{
    PlacedItem* item = pressed_item(bundle, dice);
    if (item == nullptr) {
        return std::nullopt;
    }
    item->pressed = snap(std::get<Cylinder>(item->solids.front().shape).diameter - 0.5 * dice.below(3));
    return to_json(bundle);
}

/// Beside the axis, with all that lies in it.
Spoiled off_the_axis(Bundle bundle, Dice& dice)
{
    PlacedItem* item = pressed_item(bundle, dice);
    if (item == nullptr) {
        return std::nullopt;
    }
    const Matrix3 m = rotation_matrix(item->solids.front().pose.turn);
    const std::size_t across = static_cast<std::size_t>(dice.below(2));
    const double by = little_or_much(dice);
    shift(*item, {by * m[0][across], by * m[1][across], by * m[2][across]});
    return to_json(bundle);
}

/// So far along the axis that it stands out of the rim, or of the floor.
Spoiled out_of_the_cavity(Bundle bundle, Dice& dice)
{
    PlacedItem* item = pressed_item(bundle, dice);
    if (item == nullptr) {
        return std::nullopt;
    }
    const auto& cavity = bundle.items[item->in->item].cavities[item->in->cavity];
    const Matrix3 m = rotation_matrix(cavity.pose.turn);
    const double by = (dice.below(2) == 0 ? -1 : 1) *
                      (height_of(cavity.shape) - height_of(item->solids.front().shape) + 0.5 * (1 + dice.below(9)));
    shift(*item, {by * m[0][2], by * m[1][2], by * m[2][2]});
    return to_json(bundle);
}

} // namespace

std::vector<Spoiler> pressed_spoilers()
{
    return {{"pressed in, and not told so", not_told},
            {"told of what is not pressed in", told_of_another},
            {"pressed in, of another width", of_another_width},
            {"pressed in, but not wider by itself", not_wider},
            {"pressed in beside the axis", off_the_axis},
            {"pressed in and out again", out_of_the_cavity}};
}

} // namespace properties
