// SPDX-License-Identifier: GPL-3.0-or-later
/// Bundles packed by hand with an opening narrower than the cavity below it.
#pragma once
#include "support/handmade_bundles_parts.hpp"

namespace tuckwright::handmade {

inline PlacedItem narrowed(PlacedItem of, const Shape& neck)
{
    of.cavities.back().neck = neck;
    return of;
}

/// A step in two moves: straight in beside its place, then aside.
inline void step_aside(Bundle& bundle, std::size_t item, Vec3 via)
{
    step(bundle, item);
    bundle.steps.back().via = via;
}

/// A crock with a shoulder 3 mm thick. A wide tin and a slim one have been pushed to its wall, a peg stands between.
inline Bundle tins_under_a_shoulder()
{
    auto crock =
        narrowed(hollow(item("crock", cylinder(120, 90, {0, 0, 45})), cylinder(116, 80, {0, 0, 47}), Opening::top),
                 Cylinder{80, 3});
    auto wide = in(item("wide tin", cylinder(50, 40, {-32, 0, 27})), 0);
    auto slim = in(item("slim tin", cylinder(40, 40, {37, 0, 27})), 0);
    auto peg = in(item("peg", cylinder(20, 79, {4, 0, 46.5})), 0);
    auto result = bundle("Pears in the orchard", Cylinder{120, 90}, {crock, wide, slim, peg});
    step_aside(result, 1, {18, 0, 0});
    step_aside(result, 2, {-18, 0, 0});
    step(result, 3);
    step(result, 0);
    for (std::size_t item = 0; item < 4; ++item) {
        stands(result, item);
    }
    return result;
}

/// A chest with a rectangular opening in a thin rim, under a shut lid that reaches over the rim alone; a brick in it has
/// been pushed into the corner.
inline Bundle brick_in_a_chest()
{
    auto chest =
        narrowed(hollow(item("chest", box(100, 80, 50, {50, 40, 25})), box(96, 76, 48, {50, 40, 26}), Opening::closed),
                 Box{60, 50, 0});
    auto brick = in(item("brick", box(55, 40, 30, {30, 22.5, 17})), 0);
    auto lid = item("chest-lid", box(70, 60, 4, {50, 40, 52}), "shut");
    lid.closes = 0;
    auto result = bundle("Tea in the boathouse", Box{100, 80, 54}, {chest, brick, lid});
    step_aside(result, 1, {20, 17.5, 0});
    step(result, 2);
    step(result, 0);
    stands(result, 0);
    stands(result, 1);
    return result;
}

} // namespace tuckwright::handmade
