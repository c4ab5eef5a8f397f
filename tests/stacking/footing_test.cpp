// SPDX-License-Identifier: GPL-3.0-or-later
/// What stands and what topples, by hand.
#include <catch2/catch.hpp>
#include <cmath>

#include "support/handmade_bundles.hpp"
#include "tuckwright/footing.hpp"

using namespace tuckwright;
using namespace tuckwright::handmade;

namespace {

Bundle pile(std::vector<PlacedItem> items) { return bundle("A pile", Cylinder{400, 400}, std::move(items)); }

PlacedItem open_pot()
{
    return hollow(item("pot", cylinder(110, 90, {0, 0, 45})), cylinder(108, 89, {0, 0, 45.5}), Opening::top);
}

} // namespace

TEST_CASE("a thing stands while its centre is over what carries it")
{
    const auto overhang = [](double shift) {
        return footings(
            pile({item("below", box(40, 40, 10, {0, 0, 5})), item("above", box(40, 40, 10, {shift, 0, 15}))}))[1];
    };
    CHECK(overhang(0).carried);
    CHECK(overhang(0).overhang == 0);
    CHECK(overhang(19).overhang == 0);
    CHECK(overhang(25).overhang == Approx(5)); // carried from x = 5 to 20
    CHECK(overhang(25).carried);
    CHECK_FALSE(overhang(41).carried); // beside it, in the air
    CHECK(footings(pile({item("one", box(40, 40, 10, {0, 0, 5}))}))[0].overhang == 0);
    CHECK_FALSE(footings(pile({item("one", box(40, 40, 10, {0, 0, 7}))}))[0].carried);
}

TEST_CASE("nothing stands on an open mouth, and a wide plate stands on its rim")
{
    CHECK_FALSE(footings(pile({open_pot(), item("plate", cylinder(104, 12, {0, 0, 96}))}))[1].carried);
    CHECK_FALSE(footings(pile({open_pot(), item("peg", cylinder(8, 40, {10, 5, 110}))}))[1].carried);
    const Footing plate = footings(pile({open_pot(), item("plate", cylinder(112, 12, {0, 0, 96}))}))[1];
    CHECK(plate.carried);
    CHECK(plate.overhang == 0);
    const Footing board = footings(pile({open_pot(), item("board", box(160, 20, 4, {0, 0, 92}))}))[1];
    CHECK(board.carried);
    CHECK(board.overhang == 0);
    // A peg half on the rim, half over the mouth, falls in: its middle is 4 mm from where the rim carries it.
    const Footing peg = footings(pile({open_pot(), item("peg", cylinder(10, 30, {50, 0, 105}))}))[1];
    CHECK(peg.carried);
    CHECK(peg.overhang > 3);
}

TEST_CASE("a sleeve's bore carries nothing")
{
    const auto sleeve =
        hollow(item("sleeve", cylinder(152, 85, {0, 0, 42.5})), cylinder(151, 85, {0, 0, 42.5}), Opening::both);
    CHECK_FALSE(footings(pile({sleeve, item("tub", cylinder(62, 51, {42.6, 0, 110.5}))}))[1].carried);
    CHECK(footings(pile({sleeve, item("tub", cylinder(62, 51, {75.5, 0, 110.5}))}))[1].carried);
    auto inside = in(item("cup", cylinder(80, 90, {0, 0, 45})), 0); // on the bundle's floor, through the sleeve
    CHECK(footings(pile({sleeve, inside}))[1].overhang == 0);
}

TEST_CASE("a thing stands on two others, and on a lying rod only along its line")
{
    const auto left = item("left", box(10, 40, 20, {-40, 0, 10})), right = item("right", box(10, 40, 20, {40, 0, 10}));
    CHECK(footings(pile({left, right, item("board", box(100, 30, 5, {0, 0, 22.5}))}))[2].overhang == 0);
    const auto rod = item("rod", cylinder(10, 100, {0, 0, 5}, up_to_x), "lying");
    CHECK(footings(pile({rod}))[0].overhang == Approx(0).margin(1e-9));
    CHECK(footings(pile({rod, item("tin", box(30, 30, 20, {0, 0, 20}))}))[1].overhang == Approx(0).margin(1e-9));
    CHECK(footings(pile({rod, item("tin", box(30, 30, 20, {0, 6, 20}))}))[1].overhang == Approx(6));
    // In the valley between two rods.
    const auto other = item("other", cylinder(10, 100, {0, 14, 5}, up_to_x), "lying");
    const double rise = std::sqrt(100 - 49);
    const Footing third = footings(pile({rod, other, item("third", cylinder(10, 100, {0, 7, 5 + rise}, up_to_x))}))[2];
    CHECK(third.carried);
    CHECK(third.overhang < steady_overhang);
}

TEST_CASE("what a vessel holds counts for its balance")
{
    auto block = item("block", box(40, 40, 10, {0, 0, 5}));
    auto tray = hollow(item("tray", box(100, 40, 20, {15, 0, 20})), box(98, 38, 19, {15, 0, 20.5}), Opening::top);
    CHECK(footings(pile({block, tray}))[1].overhang == 0); // its middle is at 15, carried to 20
    auto stone = in(item("stone", box(10, 10, 10, {55, 0, 16})), 1);
    stone.weight_g = 450;
    CHECK(footings(pile({block, tray, stone}))[1].overhang == Approx(31)); // (50 * 15 + 450 * 55) / 500 = 51
    CHECK(footings(pile({block, tray, stone}))[2].overhang == 0);
}

TEST_CASE("a tapering wall carries what it holds all round; what one side holds would topple")
{
    auto mug = hollow(item("mug", cylinder(82, 90, {0, 0, 45})), cylinder(78, 88, {0, 0, 46}), Opening::top);
    std::get<Cylinder>(mug.solids[0].shape).foot = 66;
    std::get<Cylinder>(mug.cavities[0].shape).foot = 62; // 62 mm across at the floor and 1 mm more each 5.5 mm
    const Footing seated = footings(pile({mug, in(item("tin", cylinder(70, 20, {0, 0, 56})), 0)}))[1];
    CHECK(seated.carried);
    CHECK(seated.overhang == 0);
    CHECK_FALSE(topples(seated));
    const Footing hangs = footings(pile({mug, in(item("tin", cylinder(60, 20, {6.9, 0, 76.9})), 0)}))[1];
    CHECK(hangs.carried);
    CHECK(hangs.overhang > 28); // next to the whole radius of 30
    CHECK(topples(hangs));
    CHECK_FALSE(footings(pile({mug, in(item("tin", cylinder(60, 20, {0, 0, 76.9})), 0)}))[1].carried);
}

TEST_CASE("shut lids and what lies in a lying vessel need no footing")
{
    for (const Footing& footing : footings(cup_in_lidded_pot())) {
        CHECK(footing.carried);
        CHECK(footing.overhang == 0);
    }
    CHECK(toppling(cup_in_lidded_pot()).empty());
    for (const Footing& footing : footings(rod_out_of_two_lying_levels())) {
        CHECK(footing.carried);
    }
    CHECK(toppling(pile({item("below", box(40, 40, 10, {0, 0, 5})), item("above", box(40, 40, 10, {25, 0, 15}))})) ==
          std::vector<std::size_t>{1});
}

TEST_CASE("what stands on little and high falls at a touch, what lies on a line does not")
{
    const auto tilt = [](const Solid& solid) { return footings(pile({item("one", solid)}))[0].tilt; };
    CHECK(tilt(box(12, 70, 100, {0, 0, 50})) == Approx(6.843).margin(0.01)); // atan(6 / 50)
    CHECK(tilt(cylinder(40, 20, {0, 0, 10})) == Approx(63.4).margin(0.2));   // atan(20 / 10)
    CHECK(tilt(cylinder(10, 90, {0, 0, 5}, up_to_x)) == 90);
    CHECK_FALSE(topples(footings(pile({item("one", box(15, 70, 100, {0, 0, 50}))}))[0])); // 8.5 degrees
    CHECK(topples(footings(pile({item("one", box(12, 70, 100, {0, 0, 50}))}))[0]));
    const auto flask = item("flask", cylinder(60, 100, {0, 0, 50})),
               cosy = item("cosy", cylinder(160, 100, {25, 0, 150}));
    const Footing far = footings(pile({flask, cosy}))[1]; // 5 mm within the edge, 50 mm up
    CHECK(far.overhang == 0);
    CHECK(far.tilt == Approx(5.7).margin(0.2));
    CHECK(topples(far));
}

TEST_CASE("what is pressed into a vessel does not topple, whatever is below it")
{
    Bundle held = ring_pressed_into_a_pot();
    held.items.pop_back();                                     // the plate
    held.items[2].solids[0] = cylinder(20, 69, {40, 0, 36.5}); // a peg far aside, and the ring on it
    held.items[1].solids[0].pose.center.z = held.items[1].cavities[0].pose.center.z = 106;
    held.items[1].cavities.clear();
    held.items[2].in = Lodging{0, 0};
    CHECK(footings(held)[1].carried);
    CHECK(footings(held)[1].overhang == 0);
    held.items[1].pressed.reset();
    CHECK(footings(held)[1].overhang > 20);
}

TEST_CASE("a rod that lies across another one is carried where they cross")
{
    const auto across = [](double x, double y) {
        const auto below = item("below", cylinder(20, 100, {0, 0, 10}, up_to_x));
        const auto above = item("above", cylinder(20, 80, {x, y, 30}, {1, 1, 0, 0})); // along y
        return footings(pile({below, above}))[1];
    };
    CHECK(across(7.3, 0).carried);
    CHECK(across(7.3, 0).overhang == Approx(0).margin(1e-9));
    CHECK(across(7.3, 15).overhang == Approx(15));
    CHECK_FALSE(across(51, 0).carried); // past its end
    CHECK_FALSE(across(0, 41).carried);
}
