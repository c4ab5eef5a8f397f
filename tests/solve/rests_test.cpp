// SPDX-License-Identifier: GPL-3.0-or-later
/// What things rest on: points on material, found wherever there is a micrometre of it, and proved by the check.
#include "solve/rests.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

#include "support/handmade_bundles.hpp"
#include "support/random_solids.hpp"
#include "support/workload.hpp"
#include "tuckwright/proof.hpp"

using namespace tuckwright;
using namespace tuckwright::handmade;
using tuckwright::test::Dice;

namespace {

/// The bundle with the rests that are found; then what the check says first.
std::string rule_with_found_rests(Bundle bundle)
{
    bundle.certificate.rests = rests(bundle);
    const auto objections = check(bundle);
    return objections.empty() ? "none" : objections.front().rule;
}

/// An open vessel of 100 mm, round or square, with walls of `wall`, in the middle of a large box; and a thing on its rim.
Bundle on_rim(bool round, double wall, const Solid& thing)
{
    const Vec3 middle{200, 200, 50}, inner{200, 200, 51};
    const double width = snap(100 - 2 * wall);
    auto vessel = round ? hollow(item("pot", cylinder(100, 100, middle)), cylinder(width, 98, inner), Opening::top)
                        : hollow(item("pot", box(100, 100, 100, middle)), box(width, width, 98, inner), Opening::top);
    auto result = bundle("On the rim", Box{400, 400, 400}, {vessel, item("thing", thing)});
    step(result, 0);
    step(result, 1);
    return result;
}

Solid on_top(const Shape& shape, double x, double y, Quaternion turn = as_it_is)
{
    return {shape, {{snap(200 + x), snap(200 + y), 100 + height_of(shape) / 2}, turn}};
}

/// A turn about the upright axis and its angle.
struct Yaw {
    Quaternion turn;
    double angle;
};

Yaw some_yaw(Dice& dice)
{
    const Quaternion q{1000, 0, 0, dice.below(2000) - 1000};
    return {q, 2 * std::atan2(static_cast<double>(q.z), 1000)};
}

constexpr double hairs[] = {1e-3, 3e-3, 1e-2, 0.1, 1};

} // namespace

TEST_CASE("what is packed by hand has rests that are found and proved")
{
    for (const auto& sample : all()) {
        INFO(sample.name);
        CHECK(rule_with_found_rests(sample.make()) == "none");
    }
}

TEST_CASE("a plate that covers the edge of a mouth by a micrometre rests there, and by none it does not")
{
    Dice dice(101);
    for (int trial = 0; trial < test::count(60, 15); ++trial) {
        const double wall = dice.between(0.3, 5), inner = 50 - wall, width = dice.between(20, 2 * inner - 2);
        const double angle = dice.between(0, 6.283), touching = inner - width / 2;
        const auto plate = [&](bool round, double beyond) {
            const double away = touching + beyond;
            const Shape shape = Cylinder{snap(width), 4};
            return on_rim(round, wall,
                          round ? on_top(shape, away * std::cos(angle), away * std::sin(angle))
                                : on_top(shape, 0.3 * touching, away));
        };
        for (const bool round : {true, false}) {
            CAPTURE(trial, wall, width, angle, round);
            CHECK(rule_with_found_rests(plate(round, -1e-5)) == "rest");
            for (const double hair : hairs) {
                CAPTURE(hair);
                CHECK(rule_with_found_rests(plate(round, std::min(hair, wall))) == "none");
            }
        }
    }
}

TEST_CASE("a box whose corner or side is over the rim by a micrometre rests there")
{
    Dice dice(102);
    for (int trial = 0; trial < test::count(60, 15); ++trial) {
        const double wall = dice.between(0.3, 5), inner = 50 - wall, length = dice.between(5, 60),
                     width = dice.between(5, 60);
        const Yaw yaw = some_yaw(dice);
        // Turned so that one corner looks along the angle of the diagonal: the others are nearer to the middle.
        const double toward = yaw.angle + std::atan2(width, length), half = std::hypot(length, width) / 2;
        const auto cornered = [&](double beyond) {
            const double away = inner - half + beyond;
            return on_rim(
                true, wall,
                on_top(Box{snap(length), snap(width), 10}, away * std::cos(toward), away * std::sin(toward), yaw.turn));
        };
        const auto sided = [&](double beyond) {
            return on_rim(false, wall, on_top(Box{snap(length), snap(width), 10}, 0, inner - width / 2 + beyond));
        };
        CAPTURE(trial, wall, length, width, yaw.angle);
        CHECK(rule_with_found_rests(sided(-1e-5)) == "rest");
        if (half < inner) {
            CHECK(rule_with_found_rests(cornered(-1e-5)) == "rest");
        }
        for (const double hair : hairs) {
            CAPTURE(hair);
            CHECK(rule_with_found_rests(sided(std::min(hair, wall))) == "none");
            CHECK(rule_with_found_rests(cornered(hair)) == "none");
        }
    }
}

TEST_CASE("whatever lies across a mouth rests on the rim: rods, bars, vessels upside down")
{
    Dice dice(103);
    for (int trial = 0; trial < test::count(60, 15); ++trial) {
        const double wall = dice.between(0.01, 5);
        const auto some = [&](double most) { return dice.between(-most, most); };
        const Yaw yaw = some_yaw(dice);
        const bool round = trial % 2 == 0;
        CAPTURE(trial, wall, yaw.angle, round);
        CHECK(rule_with_found_rests(on_rim(round, wall, on_top(Box{160, 20, 10}, some(9), some(40), yaw.turn))) ==
              "none");
        CHECK(rule_with_found_rests(on_rim(round, wall, on_top(Cylinder{180, 3}, some(30), some(30)))) == "none");
        const Quaternion lying = compose(yaw.turn, up_to_x);
        const Solid rod{Cylinder{8, 160}, {{snap(200 + some(9)), snap(200 + some(9)), 104}, lying}};
        CHECK(rule_with_found_rests(on_rim(round, wall, rod)) == "none");
        // A pot upside down, its rim across the rim: two rings that cross at two places.
        auto upturned = on_rim(round, wall, on_top(Cylinder{100, 60}, 0, dice.between(1, 90)));
        const Vec3 below = upturned.items[1].solids[0].pose.center;
        upturned.items[1].solids[0].pose.turn = upside_down;
        upturned.items[1] =
            hollow(upturned.items[1], cylinder(98, 58, {below.x, below.y, 129}, upside_down), Opening::top);
        CHECK(rule_with_found_rests(upturned) == "none");
    }
}

TEST_CASE("nothing rests on its own bore or on another's")
{
    auto over = on_rim(true, 2, on_top(Cylinder{60, 30}, 0, 0));
    CHECK(rests(over).size() == 1); // the pot
    over.items[1] = hollow(over.items[1], cylinder(58, 30, over.items[1].solids[0].pose.center), Opening::both);
    CHECK(rests(over).size() == 1);
    auto ring = on_rim(true, 2, on_top(Cylinder{160, 30}, 0, 0));
    CHECK(rests(ring).size() == 2);
    ring.items[1] = hollow(ring.items[1], cylinder(102, 30, ring.items[1].solids[0].pose.center), Opening::both);
    CHECK(rests(ring).size() == 1); // it would fall over the pot
}

TEST_CASE("what hangs by its shut lid rests on what is under the lid")
{
    auto pot = hollow(item("pot", cylinder(60, 80, {60, 60, 60})), cylinder(58, 72, {60, 60, 60}), Opening::closed);
    auto lid = item("lid", cylinder(80, 4, {60, 60, 102}), "shut");
    lid.closes = 0;
    auto result =
        bundle("Held by its lid", Box{140, 120, 104}, {pot, lid, item("post", box(20, 20, 100, {105, 60, 50}))});
    step(result, 2);
    step(result, 1);
    step(result, 0);
    CHECK(rule_with_found_rests(result) == "none");
}
