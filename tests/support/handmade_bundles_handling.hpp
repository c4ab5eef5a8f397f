// SPDX-License-Identifier: GPL-3.0-or-later
/// Bundles packed by hand in which things bear others and are wanted sooner or later.
#pragma once
#include "support/handmade_bundles_parts.hpp"

namespace tuckwright::handmade {

/// A slab of 100 g, a tin of 200 g with 50 g of rice and a lid of glass of 250 g on one another; a post beside them.
inline Bundle laden_slab()
{
    auto slab = item("slab", box(100, 60, 10, {50, 30, 5}), "flat");
    auto tin = item("tin", box(100, 60, 20, {50, 30, 20}), "flat");
    auto glass = item("glass", box(60, 60, 10, {30, 30, 35}), "flat");
    auto post = item("post", box(20, 60, 40, {110, 30, 20}));
    slab.weight_g = 100;
    tin.weight_g = 200;
    tin.contents = "rice";
    tin.contents_g = 50;
    glass.weight_g = 250;
    slab.bears_g = 500;
    tin.bears_g = 250;
    glass.nothing_on_top = post.nothing_on_top = true;
    glass.reach = Wanted::first;
    glass.out_after = 0;
    slab.reach = Wanted::last;
    slab.out_after = 2;
    auto result = bundle("Glass on rice", Box{120, 60, 40}, {slab, tin, glass, post});
    for (const std::size_t k : std::vector<std::size_t>{0, 1, 3, 2}) {
        step(result, k);
    }
    stands(result, 0);
    lies_on(result, 1, 0, {50, 30, 9.995});
    lies_on(result, 2, 1, {30, 30, 29.995});
    stands(result, 3);
    return result;
}

/// A tin with a card on it in a sleeve in a lidded pot that stands on a plate. The card comes out after lid alone.
inline Bundle card_in_sleeve_in_pot()
{
    auto plate = item("plate", cylinder(129, 5, {0, 0, 2.5}), "flat");
    auto pot = hollow(item("pot", cylinder(128, 96, {0, 0, 53})), cylinder(126, 93, {0, 0, 54.5}), Opening::closed);
    auto sleeve =
        in(hollow(item("ring", cylinder(100, 70, {10, 0, 43})), cylinder(98, 70, {10, 0, 43}), Opening::both), 1);
    auto tin = in(item("tin", cylinder(60, 40, {10, 0, 28})), 2);
    auto card = in(item("card", cylinder(80, 2, {10, 0, 49}), "flat"), 2);
    auto lid = item("pot-lid", cylinder(129, 3, {0, 0, 102.5}), "shut");
    auto salt = in(item("salt", cylinder(16, 20, {-51, 0, 18})), 1);
    lid.closes = 1;
    plate.bears_g = 300; // six things of 50 g
    card.reach = Wanted::early;
    card.out_after = 1; // the lid
    tin.reach = Wanted::early;
    tin.out_after = 2; // and the card
    salt.reach = Wanted::last;
    salt.out_after = 1;
    pot.reach = Wanted::first;
    pot.out_after = 0;
    plate.reach = Wanted::last;
    plate.out_after = 1; // the pot with all in it
    auto result = bundle("Card in a ring", Cylinder{129, 104}, {plate, pot, sleeve, tin, card, lid, salt});
    for (const std::size_t k : std::vector<std::size_t>{2, 3, 4, 6, 5, 0, 1}) {
        step(result, k);
    }
    stands(result, 0);
    lies_on(result, 1, 0, {0, 0, 4.995});
    stands(result, 2);
    stands(result, 3);
    lies_on(result, 4, 3, {10, 0, 47.995});
    stands(result, 6);
    return result;
}

} // namespace tuckwright::handmade
