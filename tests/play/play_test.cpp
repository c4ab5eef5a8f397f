// SPDX-License-Identifier: GPL-3.0-or-later
/// How far things can move, by figures that can be worked out on paper.
#include "tuckwright/play.hpp"

#include <catch2/catch.hpp>
#include <cmath>

#include "support/handmade_bundles.hpp"
#include "tuckwright/geometry.hpp"

using namespace tuckwright;
using namespace tuckwright::handmade;

namespace {

void check_free(const Play& play, std::array<std::array<double, 2>, 3> expected)
{
    for (std::size_t axis = 0; axis < 3; ++axis) {
        for (std::size_t side = 0; side < 2; ++side) {
            INFO(axis << " " << side);
            CHECK(play.free[axis][side] == Approx(expected[axis][side]).margin(3e-3));
            CHECK(play.free[axis][side] <= expected[axis][side] + 1e-9);
        }
    }
}

} // namespace

TEST_CASE("blocks in a box go as far as the walls and one another")
{
    const Bundle made = bundle("Blocks", Box{100, 40, 30},
                               {item("a", box(20, 30, 10, {15, 15, 5})), item("b", box(20, 30, 30, {60, 20, 15}))});
    const auto all = plays(made);
    REQUIRE(all.size() == 2);
    check_free(all[0], {{{5, 25}, {0, 10}, {0, 20}}});
    check_free(all[1], {{{25, 30}, {5, 5}, {0, 0}}});
    CHECK(longest_way(all[0]) == Approx(30).margin(0.01));
    CHECK(total_play(all) == Approx(60 + 65).margin(0.02));
}

TEST_CASE("a disc in a round wall goes to the wall, out of the middle along a chord")
{
    auto pot = hollow(item("pot", cylinder(102, 50, {0, 0, 25})), cylinder(100, 48, {0, 0, 26}), Opening::top);
    const Bundle made =
        bundle("Disc", Cylinder{102, 80}, {pot, in(item("disc", cylinder(40, 30, {10, 0, 17})), 0)});
    const auto all = plays(made);
    const double chord = std::sqrt(30.0 * 30 - 10 * 10);
    check_free(all[1], {{{40, 20}, {chord, chord}, {0, 48}}}); // up out of the mouth, to the envelope
    check_free(all[0], {{{0, 0}, {0, 0}, {0, 30}}});
}

TEST_CASE("two discs meet on their curved sides")
{
    const Bundle made = bundle("Discs", Box{200, 100, 10},
                               {item("a", cylinder(20, 10, {10, 50, 5})), item("b", cylinder(30, 10, {100, 62, 5}))});
    const auto all = plays(made);
    const double meeting = 90 - std::sqrt(25.0 * 25 - 12 * 12); // their centres are 25 apart then
    CHECK(all[0].free[0][1] == Approx(meeting).margin(3e-3));
    CHECK(all[0].free[0][1] <= meeting);
    CHECK(all[1].free[0][0] == Approx(meeting).margin(3e-3));
}

TEST_CASE("a vessel moves with what it holds, and a shut lid has no play of its own")
{
    Bundle made = cup_in_lidded_pot();
    const auto all = plays(made);
    check_free(all[1], {{{23, 23}, {23, 23}, {0, 0}}});
    check_free(all[2], {{{0, 0}, {0, 0}, {0, 0}}});
    check_free(all[0], {{{0, 0}, {0, 0}, {0, 0}}});
    made.envelope = Cylinder{139, 104};
    check_free(plays(made)[0], {{{5, 5}, {5, 5}, {0, 5}}});
}

TEST_CASE("ways are told along the axes of the vessel, not of the bundle")
{
    const Quaternion half_turned{2, 0, 0, 1}; // about 53 degrees
    auto tray = hollow(item("tray", box(62, 42, 20, {0, 0, 10}, half_turned)), box(60, 40, 18, {0, 0, 11}, half_turned),
                       Opening::closed);
    const Bundle made =
        bundle("Turned", Cylinder{80, 20}, {tray, in(item("block", box(50, 30, 18, {0, 0, 11}, half_turned)), 0)});
    check_free(plays(made)[1], {{{5, 5}, {5, 5}, {0, 0}}});
}

TEST_CASE("nothing overlaps anything when it has gone as far as is said")
{
    for (const auto& sample : handmade::all()) {
        INFO(sample.name);
        const Bundle made = sample.make();
        const auto all = plays(made);
        REQUIRE(all.size() == made.items.size());
        for (std::size_t i = 0; i < all.size(); ++i) {
            for (std::size_t axis = 0; axis < 3; ++axis) {
                CHECK(all[i].free[axis][0] >= 0);
                CHECK(all[i].free[axis][1] >= 0);
            }
            if (made.items[i].in || made.items[i].closes) {
                continue; // those of the bundle itself go along the world's axes
            }
            for (std::size_t j = 0; j < all.size(); ++j) {
                if (j == i || made.items[j].in || made.items[j].closes) {
                    continue;
                }
                for (std::size_t axis = 0; axis < 3; ++axis) {
                    Vec3 way{axis == 0 ? all[i].free[0][1] : 0, axis == 1 ? all[i].free[1][1] : 0,
                             axis == 2 ? all[i].free[2][1] : 0};
                    for (const Solid& a : made.items[i].solids) {
                        for (const Solid& b : made.items[j].solids) {
                            CHECK(separation(hull_of(a, way), hull_of(b)).distance > -1e-6);
                        }
                    }
                }
            }
        }
    }
}

TEST_CASE("what is soft does not rattle")
{
    Bundle made = bundle("Blocks", Box{100, 40, 30},
                         {item("a", box(20, 30, 10, {15, 15, 5})), item("b", box(20, 30, 30, {60, 20, 15}))});
    made.plays = plays(made);
    CHECK(rattlers(made) == std::vector<std::size_t>{1, 0});
    made.items[1].soft = true;
    CHECK(rattlers(made) == std::vector<std::size_t>{0});
}

TEST_CASE("what is pressed in does not move, and what lies in it does")
{
    const auto all = plays(ring_pressed_into_a_pot());
    check_free(all[1], {{{0, 0}, {0, 0}, {0, 0}}});
    check_free(all[2], {{{0.5, 0.5}, {0.5, 0.5}, {0, 1}}});
    CHECK(longest_way(plays(ring_pressed_into_a_lying_pot())[1]) == 0); // though there is air before it
}
