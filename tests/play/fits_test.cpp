// SPDX-License-Identifier: GPL-3.0-or-later
/// How things fit, by figures that can be worked out on paper.
#include "tuckwright/fits.hpp"

#include <catch2/catch.hpp>
#include <cmath>

#include "tuckwright/geometry.hpp"

#include "support/handmade_bundles.hpp"
#include "support/kit_text.hpp"

using namespace tuckwright;
using namespace tuckwright::handmade;

namespace {

/// The fit of these items; there must be just one.
Fit fit_of(const Bundle& bundle, FitWay way, const std::vector<std::size_t>& items)
{
    std::vector<Fit> found;
    for (const Fit& fit : fits(bundle)) {
        if (fit.way == way && fit.items == items) {
            found.push_back(fit);
        }
    }
    REQUIRE(found.size() == 1);
    return found.front();
}

/// Discs of 10 mm in a tin that is 51 mm high inside, all in line.
Bundle stack(std::size_t discs)
{
    auto tin = hollow(item("tin", cylinder(44, 53, {0, 0, 26.5})), cylinder(42, 51, {0, 0, 26.5}), Opening::closed);
    Bundle made = bundle("Stack", Cylinder{44, 53}, {tin});
    for (std::size_t i = 0; i < discs; ++i) {
        made.items.push_back(in(item("disc", cylinder(40, 10, {0, 0, 6 + 10.0 * static_cast<double>(i)})), 0));
        made.items.back().copy = static_cast<int>(i + 1);
    }
    return made;
}

} // namespace

TEST_CASE("one thing in a vessel has half of what is left, and at worst half of that less both tolerances")
{
    Bundle made = stack(1);
    CHECK(fit_of(made, FitWay::all_round, {1}).room == Approx(1));
    CHECK(fit_of(made, FitWay::all_round, {1}).worst == Approx(1));
    made.items[1].solids_off = {{{0.5, 0.25, 0}}};
    made.items[0].cavities[0].off = {{0.75, 1, 0}};
    CHECK(fit_of(made, FitWay::all_round, {1}).worst == Approx((2 - 0.5 - 0.75) / 2));
    CHECK(fit_of(made, FitWay::along, {1}).worst == Approx(41 - 0.25 - 1));
    made.items[1].solids_off = {{{2.5, 0.25, 0}}};
    CHECK(fit_of(made, FitWay::all_round, {1}).worst == Approx((2 - 2.5 - 0.75) / 2));
}

TEST_CASE("a stack of five in a shut tin has the sum of all tolerances against it")
{
    // Worst-case stack-up: the tolerances of all parts and of the gap itself add up. Common practice, no source.
    Bundle made = stack(5);
    made.items[0].cavities[0].off = {{0, 0.3, 0}};
    for (std::size_t i = 1; i <= 5; ++i) {
        made.items[i].solids_off = {{{0.5, 0.1 * static_cast<double>(i), 0}}};
    }
    const Fit fit = fit_of(made, FitWay::along, {1, 2, 3, 4, 5});
    CHECK(fit.room == Approx(1));
    CHECK(fit.worst == Approx(1 - 0.3 - (0.1 + 0.2 + 0.3 + 0.4 + 0.5)));
    CHECK(fit.worst <= 1 - 1.8 + 1e-12);
}

TEST_CASE("sizes that are the worst already give the measured room back")
{
    Bundle made = stack(5);
    made.worst_case = true;
    made.items[0].cavities[0].off = {{0.25, 0.5, 0}};
    for (std::size_t i = 1; i <= 5; ++i) {
        made.items[i].solids_off = {{{0.5, 0.25, 0}}};
    }
    const Fit along = fit_of(made, FitWay::along, {1, 2, 3, 4, 5});
    CHECK(along.worst == Approx(1));
    CHECK(along.room == Approx(1 + 0.5 + 5 * 0.25));
    const Fit round = fit_of(made, FitWay::all_round, {3});
    CHECK(round.worst == Approx(1));
    CHECK(round.room == Approx(1 + (0.25 + 0.5) / 2));
}

TEST_CASE("a rod beside a cup in a pot counts with both across, wherever they stand now")
{
    auto pot = hollow(item("pot", cylinder(112, 90, {0, 0, 45})), cylinder(110, 88, {0, 0, 46}), Opening::top);
    auto cup = in(item("cup", cylinder(70, 60, {-15, 3, 32})), 0);
    auto rod = in(item("rod", cylinder(30, 80, {37, 0, 42})), 0);
    cup.solids_off = {{{1, 1, 0}}};
    rod.solids_off = {{{0.5, 1, 0}}};
    pot.cavities[0].off = {{2, 2, 0}};
    Bundle made = bundle("Beside", Cylinder{112, 90}, {pot, cup, rod});
    const Fit fit = fit_of(made, FitWay::across, {1, 2});
    CHECK(fit.room == Approx(110 - 70 - 30).margin(1e-6));
    CHECK(fit.worst == Approx(110 - 70 - 30 - 1 - 0.5 - 2).margin(1e-6));
    CHECK(fit.room <= 10 + 1e-9);
    made.items[2].solids[0].pose.center.z = 110; // above the cup, not beside it
    CHECK(fits(made).size() == 2);
}

TEST_CASE("a row across a box counts from wall to wall")
{
    auto tray = hollow(item("tray", box(102, 42, 20, {51, 21, 10})), box(100, 40, 18, {51, 21, 11}), Opening::top);
    Bundle made = bundle("Row", Box{102, 42, 20}, {tray});
    for (const double x : {16.0, 50.0, 84.0}) {
        made.items.push_back(in(item("block", box(30, 36, 10, {x, 20, 7})), 0));
        made.items.back().copy = static_cast<int>(made.items.size() - 1);
        made.items.back().solids_off = {{{0.5, 1, 0.25}}};
    }
    made.items[0].cavities[0].off = {{0.75, 0.5, 0}};
    const Fit row = fit_of(made, FitWay::across, {1, 2, 3});
    CHECK(row.room == Approx(10));
    CHECK(row.worst == Approx(10 - 1.5 - 0.75));
    const Fit one = fit_of(made, FitWay::all_round, {2});
    CHECK(one.room == Approx(2));
    CHECK(one.worst == Approx((4 - 1 - 0.5) / 2));
}

TEST_CASE("what stands out of a cup counts with the cup's floor under the lid")
{
    auto tin = hollow(item("tin", cylinder(84, 104, {0, 0, 52})), cylinder(82, 102, {0, 0, 52}), Opening::closed);
    auto cup = in(hollow(item("cup", cylinder(60, 50, {0, 0, 26})), cylinder(58, 48, {0, 0, 27}), Opening::top), 0);
    auto rod = in(item("rod", cylinder(10, 95, {0, 0, 50.5})), 1);
    tin.cavities[0].off = {{0, 1, 0}};
    cup.solids_off = {{{0, 0.5, 0}}};
    cup.cavities[0].off = {{0, 0.25, 0}};
    rod.solids_off = {{{0, 2, 0}}};
    const Bundle made = bundle("Standing out", Cylinder{84, 104}, {tin, cup, rod});
    const Fit fit = fit_of(made, FitWay::along, {1});
    CHECK(fit.room == Approx(102 - 2 - 95));
    CHECK(fit.worst == Approx(102 - 2 - 95 - 1 - 0.5 - 0.25 - 2));
}

TEST_CASE("sticks that cross under a lid count once where they lie beside each other")
{
    auto tin = hollow(item("tin", cylinder(124, 112, {0, 0, 54})), cylinder(122, 110, {0, 0, 54}), Opening::closed);
    Bundle made = bundle("Crossed", Cylinder{124, 112}, {tin});
    for (const double x : {-1.0, 1.0}) { // some 44 degrees to either side, one 2 mm higher
        auto stick = in(item("stick", box(4, 4, 100 * std::sqrt(2.0) - 4, {0, 5 * x, 51 + x})), 0);
        stick.solids.front().pose.turn = {5, 0, x > 0 ? 2 : -2, 0}; // nearly: the exact turn is no whole number
        stick.copy = x > 0 ? 2 : 1;
        stick.solids_off = {{{0.5, 0.5, 0.5}}};
        made.items.push_back(stick);
    }
    made.items[2].solids.front().pose.center.y = -2; // now they meet if one is dragged up
    const auto spans = [&](std::size_t i) {
        const Hull hull = hull_of(made.items[i].solids.front());
        return std::pair(-support(hull, {0, 0, -1}), support(hull, {0, 0, 1}));
    };
    const Fit fit = fit_of(made, FitWay::along, {1, 2});
    CHECK(fit.room == Approx(110 - (spans(2).second - spans(1).first)).margin(1e-6));
    CHECK(fit.worst < fit.room);
    CHECK(fit.worst > fit.room - 3);
}

TEST_CASE("what lies in a cavity with a narrow opening has the air that it had on its way through")
{
    auto jar = hollow(item("jar", cylinder(86, 120, {0, 0, 60})), cylinder(80, 104, {0, 0, 54}), Opening::top);
    jar.cavities[0].neck = Cylinder{66, 14};
    auto tin = in(item("tin", cylinder(65, 55, {0, 0, 29.5})), 0);
    tin.solids_off = {{{0.8, 0.8, 0}}};
    Bundle made = bundle("Jar", Cylinder{86, 120}, {jar, tin});
    CHECK(fit_of(made, FitWay::opening, {1}).room == Approx(0.5));
    CHECK(fit_of(made, FitWay::opening, {1}).worst == Approx((66 - 65 - 0.8) / 2));
    CHECK(fit_of(made, FitWay::all_round, {1}).room == Approx(7.5));
    CHECK(tightest(made, 1).empty());
    made.fits = fits(made);
    CHECK(tightest(made, 1).front().way == FitWay::opening);
    made.items[1].solids.front().pose.turn = {9, 1, 0, 0};
    for (const Fit& fit : fits(made)) {
        CHECK(fit.way != FitWay::opening); // slanting, it may have passed in some other way
    }
}

TEST_CASE("the tightest fits are those with the least room between the walls, copies once")
{
    Bundle made = stack(5);
    for (std::size_t i = 1; i <= 5; ++i) {
        made.items[i].solids_off = {{{0.5, 0.5, 0}}};
    }
    made.fits = fits(made);
    CHECK(has_tolerances(made));
    CHECK_FALSE(has_tolerances(stack(5)));
    const auto tight = tightest(made, 3);
    REQUIRE(tight.size() == 2);
    CHECK(tight[0].way == FitWay::along);
    CHECK(tight[1].way == FitWay::all_round);
    CHECK(tightest(made, 1).size() == 1);
}

TEST_CASE("what is pressed in is held by as much as it would be wider, at worst less both tolerances")
{
    Bundle made = ring_pressed_into_a_pot();
    made.items[1].solids_off = {{{0.25, 1, 0}}};
    made.items[0].cavities[0].off = {{0.5, 1, 0}};
    const Fit fit = fit_of(made, FitWay::pressed, {1});
    CHECK(fit.in == Lodging{0, 0});
    CHECK(fit.room == Approx(112 - 110));
    CHECK(fit.worst == Approx(112 - 110 - 0.25 - 0.5));
    for (const Fit& other : fits(made)) { // it has no room, and leaves none beside it
        const bool about_ring = std::find(other.items.begin(), other.items.end(), 1) != other.items.end();
        CHECK((other.way == FitWay::pressed) == about_ring);
    }
    made.fits = fits(made);
    for (const Fit& tight : tightest(made, 9)) {
        CHECK(tight.way != FitWay::pressed);
    }
    made.worst_case = true; // the ring is as wide, and the bore as narrow, as each may be
    CHECK(fit_of(made, FitWay::pressed, {1}).room == Approx(112 - 110 - 0.75));
    CHECK(fit_of(made, FitWay::pressed, {1}).worst == Approx(112 - 110 - 2 * 0.75));
}
