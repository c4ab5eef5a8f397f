// SPDX-License-Identifier: GPL-3.0-or-later
/// Bundles packed by hand, each sound to the last nanometre, for tests of every room that reads bundles.
#pragma once
#include <cmath>
#include <functional>
#include <string>
#include <utility>
#include <vector>

#include "tuckwright/bundle.hpp"
#include "tuckwright/units.hpp"

namespace tuckwright::handmade
{

inline constexpr Quaternion as_it_is{1, 0, 0, 0};
inline constexpr Quaternion up_to_x{1, 0, 1, 0};     ///< lying, its top towards +x
inline constexpr Quaternion upside_down{0, 1, 0, 0}; ///< turned half round about x

inline Solid cylinder(double diameter, double height, Vec3 center, Quaternion turn = as_it_is)
{
    return {Cylinder{diameter, height}, {center, turn}};
}

inline Solid box(double length, double width, double height, Vec3 center, Quaternion turn = as_it_is)
{
    return {Box{length, width, height}, {center, turn}};
}

inline PlacedItem item(const std::string& id, const Solid& solid, const std::string& form = "standing")
{
    PlacedItem result;
    result.id = id;
    result.name = id;
    result.form = form;
    result.weight_g = 50;
    result.solids = {solid};
    return result;
}

inline PlacedItem hollow(PlacedItem of, const Solid& cavity, Opening opens)
{
    of.cavities.push_back({cavity.shape, cavity.pose, opens});
    return of;
}

inline PlacedItem in(PlacedItem what, std::size_t container, std::size_t cavity = 0)
{
    what.in = Lodging{container, cavity};
    return what;
}

inline Bundle bundle(const std::string& kit, const Shape& envelope, std::vector<PlacedItem> items)
{
    Bundle result;
    result.kit = kit;
    result.effort = "by hand";
    result.status = Status::found;
    result.clearance = 0.5;
    result.rule.shape = std::holds_alternative<Cylinder>(envelope) ? BundleShape::cylinder : BundleShape::box;
    result.envelope = envelope;
    result.lower_bound_ml = volume_ml(envelope) / 2;
    result.items = std::move(items);
    return result;
}

inline void step(Bundle& bundle, std::size_t item, std::array<std::int64_t, 3> direction = {0, 0, -1})
{
    bundle.steps.push_back({item, direction, "Put " + bundle.items[item].id + " into its place."});
}

/// Rests on the floor or a wall.
inline void stands(Bundle& bundle, std::size_t item) { bundle.certificate.rests.push_back({item, std::nullopt, {}}); }

inline void lies_on(Bundle& bundle, std::size_t item, std::size_t on, Vec3 point)
{
    bundle.certificate.rests.push_back({item, on, point});
}

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
    step(result, 2);
    step(result, 1);
    step(result, 0);
    for (std::size_t i = 0; i < 3; ++i) {
        stands(result, i);
    }
    return result;
}

/// A rod that stands out of an open cup, and a flat tin beside the cup under nothing.
inline Bundle rod_out_of_cup()
{
    auto cup = hollow(item("cup", cylinder(80, 90, {-10, 0, 45})), cylinder(78, 88, {-10, 0, 46}), Opening::top);
    auto rod = in(item("rod", cylinder(8, 160, {24.5, 0, 82})), 0);
    auto tin = item("tin", box(10, 30, 40, {35, 0, 20}));
    auto result = bundle("Sketching by the river", Cylinder{100, 162}, {cup, rod, tin});
    step(result, 2);
    step(result, 1);
    step(result, 0);
    for (std::size_t i = 0; i < 3; ++i) {
        stands(result, i);
    }
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
    for (std::size_t i = 0; i < 3; ++i) {
        step(result, i);
        stands(result, i);
    }
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
            {"lidded pot upside down", lidded_pot_upside_down}};
}

} // namespace tuckwright::handmade
