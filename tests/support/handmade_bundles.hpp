// SPDX-License-Identifier: GPL-3.0-or-later
/// Bundles packed by hand, each sound to the last nanometre, for tests of every room that reads bundles.
#pragma once
#include <cmath>
#include <functional>
#include <string>
#include <utility>
#include <vector>

#include "support/handmade_bundles_carrying.hpp"
#include "support/handmade_bundles_handling.hpp"
#include "support/handmade_bundles_covered.hpp"
#include "support/handmade_bundles_narrow.hpp"
#include "support/handmade_bundles_parts.hpp"
#include "support/handmade_bundles_pressed.hpp"
#include "support/handmade_bundles_turned.hpp"

namespace tuckwright::handmade {

/// A cup coaxial in a pot under a shut lid, which fills the envelope.
inline Bundle cup_in_lidded_pot()
{
    auto pot = hollow(item("pot", cylinder(128, 96, {0, 0, 48})), cylinder(126, 87, {0, 0, 46.5}), Opening::closed);
    auto cup = in(hollow(item("cup", cylinder(80, 87, {0, 0, 46.5})), cylinder(78, 86, {0, 0, 47}), Opening::top), 0);
    auto lid = item("pot-lid", cylinder(129, 3, {0, 0, 97.5}), "shut");
    cup.upright = true;
    lid.closes = 0;
    auto result = bundle("Soup for one", Cylinder{129, 99}, {pot, cup, lid});
    step(result, 1);
    step(result, 2);
    step(result, 0);
    stands(result, 0);
    stands(result, 1);
    return result;
}

/// The same with a deeper lid, whose skirt hangs round the pot.
inline Bundle cup_in_pot_with_skirted_lid()
{
    auto result = cup_in_lidded_pot();
    result.items[0].solids.push_back(cylinder(129, 17, {0, 0, 87.5}));
    return result;
}

/// A sleeve round a cup in an open pot: the cup stands on the pot's floor, through the sleeve.
inline Bundle sleeve_round_cup_in_pot()
{
    auto pot = hollow(item("pot", cylinder(128, 96, {0, 0, 48})), cylinder(126, 93, {0, 0, 49.5}), Opening::top);
    auto sleeve =
        in(hollow(item("windscreen", cylinder(100, 70, {10, 0, 38})), cylinder(98, 70, {10, 0, 38}), Opening::both), 0);
    auto cup = in(item("cup", cylinder(97, 90, {10, 0, 48})), 1);
    auto result = bundle("Tea on the quay", Cylinder{128, 96}, {pot, sleeve, cup});
    step_and_stand(result, {2, 1, 0});
    return result;
}

/// A rod that stands out of an open cup, and a flat tin beside the cup under nothing.
inline Bundle rod_out_of_cup()
{
    auto cup = hollow(item("cup", cylinder(80, 90, {-10, 0, 45})), cylinder(78, 88, {-10, 0, 46}), Opening::top);
    auto rod = in(item("rod", cylinder(8, 160, {24.5, 0, 82})), 0);
    auto tin = item("tin", box(10, 30, 40, {35, 0, 20}));
    auto result = bundle("Sketching by the river", Cylinder{100, 162}, {cup, rod, tin});
    step_and_stand(result, {2, 1, 0});
    return result;
}

/// A rod that leans in an open cup, by a rational angle about x.
inline Bundle rod_leaning_in_cup()
{
    auto result = rod_out_of_cup();
    const double w = 40, x = 1, n = w * w + x * x, cosine = (w * w - x * x) / n, sine = 2 * w * x / n;
    const double up = snap_up(2 + 80 * cosine + 4 * sine);
    result.items[1].solids = {cylinder(8, 160, {-10, 0, up}, {40, 1, 0, 0})};
    result.items[1].form = "leaning";
    result.envelope = Cylinder{100, 163};
    result.lower_bound_ml = 600;
    return result;
}

/// Two boxes turned about the upright axis, one on the other; the corners touch a round envelope within a nanometre.
inline Bundle yawed_boxes()
{
    const double diameter = 2 * snap_up(std::sqrt(30.0 * 30.0 + 15.0 * 15.0));
    auto lower = item("tool roll", box(60, 30, 20, {0, 0, 10}, {2, 0, 0, 1}));
    auto upper = item("pump", box(60, 30, 15, {0, 0, 27.5}, {3, 0, 0, 1}));
    auto result = bundle("Bike repair", Cylinder{diameter, 35}, {lower, upper});
    step(result, 0);
    step(result, 1, {0, 0, -3});
    stands(result, 0);
    lies_on(result, 1, 0, {0, 0, 19.995});
    return result;
}

/// Eight boxes that fill a box without any gap.
inline Bundle touching_boxes()
{
    std::vector<PlacedItem> items;
    for (int k = 0; k < 8; ++k) {
        const double x = k % 2 == 0 ? 15 : 45, y = k / 2 % 2 == 0 ? 10 : 30, z = k / 4 == 0 ? 5 : 15;
        items.push_back(item("biscuits", box(30, 20, 10, {x, y, z})));
        items.back().copy = k + 1;
    }
    auto result = bundle("Biscuits", Box{60, 40, 20}, items);
    for (std::size_t k = 0; k < 8; ++k) {
        step(result, k);
        if (k < 4) {
            stands(result, k);
        } else {
            const Vec3 below = items[k - 4].solids[0].pose.center;
            lies_on(result, k, k - 4, {below.x, below.y, 9.995});
        }
    }
    return result;
}

/// Three standing cylinders: the second is a micrometre from the first, along a direction that no axis shows; the third
/// touches the first along the direction (3, 4), whose length is a whole number.
inline Bundle tangent_cylinders()
{
    const double apart = 50.001, x = snap_up(apart / std::sqrt(5.0)), y = snap_up(2 * apart / std::sqrt(5.0));
    auto first = item("tin", cylinder(50, 60, {80, 80, 30}));
    auto second = item("tin", cylinder(50, 60, {80 + x, 80 + y, 30}));
    auto third = item("tin", cylinder(50, 60, {50, 40, 30}));
    second.copy = 2;
    third.copy = 3;
    auto result = bundle("Three tins", Box{140, 160, 60}, {first, second, third});
    result.certificate.planes.push_back({0, 0, 1, 0, {1, 2, 0}});
    result.certificate.planes.push_back({2, 0, 0, 0, {3, 4, 0}});
    step_and_stand(result, {0, 1, 2});
    return result;
}

/// `side` x `side` pots in a box, each with a cup and a turned box in it: many pairs, none of them close to failing.
inline Bundle many_pots(int side)
{
    std::vector<PlacedItem> items;
    for (int k = 0; k < side * side; ++k) {
        const double x = 30 + 61 * (k % side), y = 30 + 61 * (k / side);
        const std::size_t pot = items.size();
        items.push_back(
            hollow(item("pot", cylinder(60, 50, {x, y, 25})), cylinder(58, 49, {x, y, 25.5}), Opening::top));
        items.push_back(
            in(hollow(item("cup", cylinder(50, 40, {x, y, 21})), cylinder(48, 39, {x, y, 21.5}), Opening::top), pot));
        items.push_back(in(item("stock", box(20, 10, 30, {x, y, 17}, {3, 0, 0, 1})), pot + 1));
        for (std::size_t i = pot; i < items.size(); ++i) {
            items[i].copy = k + 1;
        }
    }
    const double edge = 61.0 * side - 1;
    auto result = bundle("A crate of pots", Box{edge, edge, 50}, std::move(items));
    for (std::size_t i = 0; i < result.items.size(); ++i) {
        step(result, i);
        stands(result, i);
    }
    return result;
}

/// Things on the rims of open vessels, each with its point on what is solid: a bar across a pot's mouth, a ring on the
/// bar, a peg that stands on the pot's rim, a tub on a sleeve, a brick on a tin whose own lid is shut.
inline Bundle things_on_rims()
{
    auto pot = hollow(item("pot", cylinder(128, 96, {64, 64, 48})), cylinder(126, 93, {64, 64, 49.5}), Opening::top);
    auto sleeve =
        hollow(item("sleeve", cylinder(100, 96, {178, 64, 48})), cylinder(98, 96, {178, 64, 48}), Opening::both);
    auto bar = item("bar", box(127.6, 20, 10, {64, 64, 101}));
    auto tub = hollow(item("tub", cylinder(100, 30, {178, 64, 111})), cylinder(98, 28, {178, 64, 112}), Opening::top);
    auto peg = item("peg", cylinder(20, 30, {64, 10, 111}));
    auto tin = hollow(item("tin", box(40, 40, 40, {248, 64, 20})), box(38, 38, 36, {248, 64, 20}), Opening::closed);
    auto brick = item("brick", box(10, 10, 10, {248, 64, 45}));
    auto ring = hollow(item("ring", cylinder(60, 20, {64, 64, 116})), cylinder(58, 20, {64, 64, 116}), Opening::both);
    auto result = bundle("On the rim", Box{268, 128, 126}, {pot, sleeve, bar, tub, peg, tin, brick, ring});
    for (std::size_t i = 0; i < result.items.size(); ++i) {
        step(result, i);
    }
    stands(result, 0);
    stands(result, 1);
    lies_on(result, 2, 0, {127.4, 64, 95.995});
    lies_on(result, 3, 1, {178, 14.5, 95.995});
    lies_on(result, 4, 0, {64, 0.5, 95.995});
    stands(result, 5);
    lies_on(result, 6, 5, {248, 64, 39.995});
    lies_on(result, 7, 2, {93.5, 64, 105.995});
    return result;
}

struct Sample {
    std::string name;
    std::function<Bundle()> make;
};

/// All of them but the large one.
inline std::vector<Sample> all()
{
    return {{"cup in lidded pot", cup_in_lidded_pot},
            {"cup in pot with skirted lid", cup_in_pot_with_skirted_lid},
            {"sleeve round cup in pot", sleeve_round_cup_in_pot},
            {"rod out of cup", rod_out_of_cup},
            {"rod leaning in cup", rod_leaning_in_cup},
            {"tin in lying pot", tin_in_lying_pot},
            {"yawed boxes", yawed_boxes},
            {"rod out of two lying levels", rod_out_of_two_lying_levels},
            {"touching boxes", touching_boxes},
            {"tangent cylinders", tangent_cylinders},
            {"pot over cup", pot_over_cup},
            {"lidded pot upside down", lidded_pot_upside_down},
            {"things on rims", things_on_rims},
            {"fuel apart from food", fuel_apart_from_food},
            {"tins in a bag", tins_in_a_bag},
            {"tins under a shoulder", tins_under_a_shoulder},
            {"brick in a chest", brick_in_a_chest},
            {"ring pressed into a pot", ring_pressed_into_a_pot},
            {"ring pressed into a lying pot", ring_pressed_into_a_lying_pot},
            {"laden slab", laden_slab},
            {"card in sleeve in pot", card_in_sleeve_in_pot}};
}

} // namespace tuckwright::handmade
