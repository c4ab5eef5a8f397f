// SPDX-License-Identifier: GPL-3.0-or-later
/// Bundles packed by hand with something springy pressed into a vessel.
#pragma once
#include "support/handmade_bundles_parts.hpp"

namespace tuckwright::handmade {

/// Told to be pressed into what it lies in; so wide left to itself.
inline PlacedItem pressed(PlacedItem what, double relaxed)
{
    what.pressed = relaxed;
    what.stowed = "pressed into the pot";
    what.how = "press it together";
    return what;
}

/// A pot 110 mm wide inside. A ring, 112 mm across left to itself, lines it; a cup stands in the ring, and a plate lies
/// on the ring's wall, 1 mm thick, over the cup.
inline Bundle ring_pressed_into_a_pot()
{
    auto pot = hollow(item("pot", cylinder(112, 92, {0, 0, 46})), cylinder(110, 90, {0, 0, 47}), Opening::top);
    auto ring = pressed(
        in(hollow(item("ring", cylinder(110, 70, {0, 0, 37})), cylinder(108, 70, {0, 0, 37}), Opening::both), 0), 112);
    auto cup = in(item("cup", cylinder(107, 69, {0, 0, 36.5})), 1);
    auto plate = in(item("plate", cylinder(109, 6, {0, 0, 75})), 0);
    auto result = bundle("Soup at the ford", Cylinder{112, 92}, {pot, ring, cup, plate});
    step(result, 1);
    step(result, 2);
    step(result, 3);
    step(result, 0);
    stands(result, 0);
    stands(result, 1);
    stands(result, 2);
    lies_on(result, 3, 1, {54.25, 0, 71.995});
    return result;
}

/// The same ring in a pot that lies: its wall holds it up, at the very middle of it.
inline Bundle ring_pressed_into_a_lying_pot()
{
    auto pot = hollow(item("pot", cylinder(112, 92, {46, 56, 56}, up_to_x)), cylinder(110, 90, {47, 56, 56}, up_to_x),
                      Opening::top);
    auto ring = pressed(in(hollow(item("ring", cylinder(110, 70, {40, 56, 56}, up_to_x)),
                                  cylinder(108, 70, {40, 56, 56}, up_to_x), Opening::both),
                           0),
                        112);
    auto result = bundle("Soup in the barn", Box{92, 112, 112}, {pot, ring});
    step(result, 1, {-1, 0, 0});
    step(result, 0);
    stands(result, 0);
    stands(result, 1);
    return result;
}

} // namespace tuckwright::handmade
