// SPDX-License-Identifier: GPL-3.0-or-later
/// Bundles packed by hand whose vessels lie on their side or stand on their heads.
#pragma once
#include "support/handmade_bundles_parts.hpp"

namespace tuckwright::handmade {

/// A pot that lies, its mouth towards +x, with a tin that lies in it on the wall less the clearance.
inline Bundle tin_in_lying_pot()
{
    auto pot = hollow(item("pot", cylinder(128, 96, {48, 64, 64}, up_to_x), "lying"),
                      cylinder(126, 93, {49.5, 64, 64}, up_to_x), Opening::top);
    auto tin = in(item("tin", cylinder(60, 90, {48, 64, 31.5}, up_to_x), "lying"), 0);
    auto result = bundle("First aid", Box{96, 128, 128}, {pot, tin});
    step(result, 1, {-1, 0, 0});
    step(result, 0);
    stands(result, 0);
    stands(result, 1);
    return result;
}

/// Two levels of containers on their side: what stands out of the mug stands out of the pot as well, and lies on a
/// block beside the pot.
inline Bundle rod_out_of_two_lying_levels()
{
    auto pot = hollow(item("pot", cylinder(100, 80, {40, 50, 50}, up_to_x), "lying"),
                      cylinder(98, 78, {41, 50, 50}, up_to_x), Opening::top);
    auto mug = in(hollow(item("mug", cylinder(70, 90, {47, 50, 36.5}, up_to_x), "lying"),
                         cylinder(68, 89, {47.5, 50, 36.5}, up_to_x), Opening::top),
                  0);
    auto rod = in(item("rod", cylinder(10, 120, {63, 50, 8}, up_to_x), "lying"), 1);
    auto block = item("block", box(25, 60, 3, {109.5, 50, 1.5}));
    auto result = bundle("Porridge at the lock", Box{123, 100, 100}, {pot, mug, rod, block});
    step(result, 2, {-1, 0, 0});
    step(result, 1, {-1, 0, 0});
    step(result, 3);
    step(result, 0);
    for (std::size_t i = 0; i < 4; ++i) {
        stands(result, i);
    }
    result.certificate.rests[2] = {2, 3, {109.5, 50, 2.995}};
    return result;
}

/// A pot upside down over a cup that stands on the bundle's floor, with a lid carried loose on the pot's bottom.
inline Bundle pot_over_cup()
{
    auto pot = hollow(item("pot", cylinder(128, 96, {0, 0, 48}, upside_down), "upside down"),
                      cylinder(126, 93, {0, 0, 46.5}, upside_down), Opening::top);
    auto cup = in(item("cup", cylinder(80, 90, {0, 0, 45})), 0);
    auto lid = item("pot-lid", cylinder(128, 9, {0, 0, 100.5}));
    auto result = bundle("Soup under cover", Cylinder{128, 105}, {pot, cup, lid});
    step(result, 1, {0, 0, 1});
    step(result, 0);
    step(result, 2);
    stands(result, 0);
    stands(result, 1);
    lies_on(result, 2, 0, {0, 0, 95.995});
    return result;
}

/// A lidded pot upside down: it stands on its lid, and both on the floor.
inline Bundle lidded_pot_upside_down()
{
    auto pot = hollow(item("pot", cylinder(100, 80, {0, 0, 45}, upside_down), "upside down"),
                      cylinder(98, 74, {0, 0, 47}, upside_down), Opening::closed);
    auto tin = in(item("tin", cylinder(60, 40, {0, 0, 30}, upside_down), "upside down"), 0);
    auto lid = item("pot-lid", cylinder(102, 5, {0, 0, 2.5}, upside_down), "shut");
    lid.closes = 0;
    auto result = bundle("Turned over", Cylinder{102, 85}, {pot, tin, lid});
    step(result, 1, {0, 0, 1});
    step(result, 2, {0, 0, 1});
    step(result, 0);
    stands(result, 0);
    stands(result, 1);
    return result;
}

} // namespace tuckwright::handmade
