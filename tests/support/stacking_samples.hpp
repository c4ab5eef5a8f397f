// SPDX-License-Identifier: GPL-3.0-or-later
/// Bundles for the tests of the stacking order: what must go first, what bars what, and towers by chance.
#pragma once
#include <algorithm>
#include <string>
#include <utility>
#include <vector>

#include "support/handmade_bundles_parts.hpp"
#include "support/random_solids.hpp"
#include "tuckwright/stacking.hpp"

namespace tuckwright::stacking_samples {

using handmade::box;
using handmade::bundle;
using handmade::cylinder;
using handmade::hollow;
using handmade::in;
using handmade::item;

/// One field of all steps that take the bundle in, such as &Step::item.
template <class Field> std::vector<Field> of_steps(const Bundle& bundle, Field Step::*field)
{
    std::vector<Field> all;
    for (const Step& step : stacking_order(bundle).steps) {
        all.push_back(step.*field);
    }
    return all;
}

/// A mug in a ring in a pot with a lid; the items come in an order in which they cannot go in.
inline Bundle mug_in_ring_in_lidded_pot()
{
    auto lid = item("pot-lid", cylinder(129, 3, {0, 0, 97.5}), "shut");
    lid.closes = 1;
    auto pot = hollow(item("pot", cylinder(128, 96, {0, 0, 48})), cylinder(126, 87, {0, 0, 46.5}), Opening::closed);
    auto ring = in(hollow(item("ring", cylinder(100, 60, {0, 0, 33})), cylinder(98, 60, {0, 0, 33}), Opening::both), 1);
    auto mug = in(item("mug", cylinder(96.4, 80, {0, 0, 43})), 2);
    lid.name = "Pot lid";
    pot.name = "Steel pot, 1.1 l";
    ring.name = "Wind ring";
    mug.name = "Mug, blue";
    return bundle("Soup for one", Cylinder{129, 99}, {lid, pot, ring, mug});
}

/// A tin of tea under a board that juts out over it from a block. Straight from above, the tin must go in first.
inline Bundle tin_under_board()
{
    auto block = item("block", box(40, 60, 50, {20, 30, 25}));
    auto board = item("board", box(100, 60, 5, {50, 30, 52.5}));
    auto tin = item("tin", cylinder(40, 45, {70, 30, 22.5}));
    return bundle("Tea by the lock", Box{100, 60, 55}, {board, block, tin});
}

/// A stool of one leg and a seat that juts out, and a hook that grips the seat from above and below: only level ways
/// lead in.
inline Bundle hook_round_seat()
{
    auto stool = item("stool", box(100, 40, 5, {50, 20, 47.5}));
    stool.solids.push_back(box(5, 40, 45, {2.5, 20, 22.5}));
    auto hook = item("hook", box(60, 20, 5, {75, 20, 52.5}));
    hook.solids.push_back(box(5, 20, 20, {102.5, 20, 45}));
    hook.solids.push_back(box(45, 20, 5, {82.5, 20, 37.5}));
    return bundle("Bike repair", Box{105, 40, 55}, {stool, hook});
}

/// Two links of a chain, each a square ring of four bars: nothing takes them apart.
inline Bundle chained_rings()
{
    auto flat = item("flat ring", box(60, 10, 10, {30, 5, 25}));
    flat.solids.push_back(box(60, 10, 10, {30, 55, 25}));
    flat.solids.push_back(box(10, 40, 10, {5, 30, 25}));
    flat.solids.push_back(box(10, 40, 10, {55, 30, 25}));
    auto tall = item("tall ring", box(60, 10, 10, {60, 30, 5}));
    tall.solids.push_back(box(60, 10, 10, {60, 30, 45}));
    tall.solids.push_back(box(10, 10, 30, {35, 30, 25}));
    tall.solids.push_back(box(10, 10, 30, {85, 30, 25}));
    auto tin = item("tin", box(10, 10, 10, {95, 5, 5}));
    return bundle("Chain", Box{100, 60, 50}, {tin, flat, tall});
}

/// Three slanting boards, each with its high end over the low end of the next: a pinwheel about the origin.
inline std::vector<PlacedItem> pinwheel(double height)
{
    constexpr double side = 60;
    const Quaternion yaws[] = {{1, 0, 0, 0}, {500, 0, 0, 866}, {-500, 0, 0, 866}};
    const Quaternion rising{12, 0, -1, 0}; // about -y: the +x end goes up, by about 9.5 degrees
    std::vector<PlacedItem> boards;
    for (const Quaternion& yaw : yaws) {
        const Quaternion turn = compose(yaw, rising);
        const Matrix3 m = rotation_matrix(yaw);
        const double outward = -side * 0.28867513; // the middle of an edge of the triangle
        boards.push_back(
            item("board", box(76, 8, 4, {snap(outward * m[0][1]), snap(outward * m[1][1]), height}, turn)));
        boards.back().copy = static_cast<int>(boards.size());
    }
    return boards;
}

/// The pinwheel in a pot, whose wall leaves no way but straight down.
inline Bundle pinwheel_in_pot()
{
    std::vector<PlacedItem> items{
        hollow(item("pot", cylinder(200, 60, {0, 0, 30})), cylinder(198, 58, {0, 0, 31}), Opening::top)};
    for (const PlacedItem& board : pinwheel(25)) {
        items.push_back(in(board, 0));
    }
    return bundle("Pinwheel", Cylinder{200, 60}, items);
}

inline Bundle pinwheel_on_table() { return bundle("Pinwheel", Cylinder{200, 60}, pinwheel(25)); }

/// A cup in a pot that lies with its top along (3, 4, 0) / 5 turned out of the world's axes.
inline Bundle cup_in_yawed_lying_pot()
{
    const Quaternion lying = compose({2, 0, 0, 1}, handmade::up_to_x); // yawed by 53.13 degrees: cosine 3/5
    auto pot = hollow(item("pot", cylinder(100, 120, {0, 0, 50}, lying)), cylinder(96, 116, {1.2, 1.6, 50}, lying),
                      Opening::top);
    auto cup = in(item("cup", cylinder(80, 60, {-15.6, -20.8, 50}, lying)), 0);
    return bundle("Tea by the lock", Cylinder{160, 100}, {pot, cup});
}

/// A tower by chance: things fall one after the other straight down on a table or on each other, some with a ring or a
/// tin inside; the items are then shuffled. So there is an order for it.
inline Bundle random_tower(std::uint64_t seed, int things)
{
    test::Dice dice(seed);
    std::vector<PlacedItem> items;
    std::vector<Hull> lying;
    for (int k = 0; k < things; ++k) {
        Solid body = test::random_solid(dice, 60, dice.below(3) > 0);
        const bool vessel = dice.below(3) == 0;
        if (vessel) {
            const double diameter = snap(dice.between(20, 80));
            body.shape = Cylinder{diameter, snap(dice.between(20, 80))};
        }
        // Lowered in halving steps until it nearly touches something, from far above.
        double z = 4000;
        for (double step = 2000; step > 1e-3; step /= 2) {
            for (;;) {
                body.pose.center.z = z - step;
                const Hull falling = hull_of(body);
                const bool free =
                    extent(falling).low.z >= 0 && std::all_of(lying.begin(), lying.end(), [&](const Hull& other) {
                        return separation(hull_of(body, {0, 0, 4000}), other).distance >= 1e-3;
                    });
                if (!free) {
                    break;
                }
                z -= step;
            }
        }
        body.pose.center.z = snap_up(z);
        lying.push_back(hull_of(body));
        const std::size_t at = items.size();
        items.push_back(item("thing", body));
        items.back().copy = k + 1;
        if (vessel) {
            const auto& outside = std::get<Cylinder>(body.shape);
            const Solid room{Cylinder{snap(outside.diameter - 4), outside.height}, body.pose};
            items.back() = hollow(items.back(), room, Opening::both);
            const Solid core{Cylinder{snap(outside.diameter - 6), snap(outside.height / 2)}, body.pose};
            items.push_back(in(item("core", core), at));
            items.back().copy = k + 1;
        }
    }
    std::vector<std::size_t> now_at(items.size());
    for (std::size_t k = 0; k < items.size(); ++k) {
        now_at[k] = k;
    }
    for (std::size_t k = items.size(); k-- > 1;) {
        std::swap(now_at[k], now_at[static_cast<std::size_t>(dice.below(static_cast<int>(k) + 1))]);
    }
    std::vector<PlacedItem> shuffled(items.size());
    for (std::size_t k = 0; k < items.size(); ++k) {
        if (items[k].in) {
            items[k].in->item = now_at[items[k].in->item];
        }
        shuffled[now_at[k]] = items[k];
    }
    return bundle("Tower", Cylinder{400, 4000}, shuffled);
}

} // namespace tuckwright::stacking_samples
