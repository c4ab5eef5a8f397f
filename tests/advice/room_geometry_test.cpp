// SPDX-License-Identifier: GPL-3.0-or-later
/// The room that is left, against geometry.
#include <catch2/catch.hpp>

#include <cmath>
#include <numbers>

#include "solve/certificate.hpp"
#include "support/handmade_bundles_parts.hpp"
#include "tuckwright/proof.hpp"
#include "tuckwright/room.hpp"

using namespace tuckwright;
using namespace tuckwright::handmade;

namespace {

constexpr double radius = 60; ///< mm, of the pot less the clearance
constexpr double high = 40;   ///< mm, of its inside

/// A shut round pot, its inside 121 mm wide and 40 mm high, less a clearance of 0.5 mm, with discs as high as it.
Bundle pot_with(const std::vector<std::array<double, 3>>& discs)
{
    auto pot = hollow(item("pot", cylinder(123, high + 2, {0, 0, (high + 2) / 2})),
                      cylinder(2 * radius + 1, high, {0, 0, 1 + high / 2}), Opening::closed);
    std::vector<PlacedItem> items{pot};
    std::vector<std::size_t> order;
    for (const auto& [x, y, r] : discs) {
        order.push_back(items.size());
        items.push_back(in(item("disc-" + std::to_string(items.size()), cylinder(2 * r, high, {x, y, 1 + high / 2})), 0));
    }
    order.push_back(0);
    Bundle made = bundle("Discs in a pot", Cylinder{123, high + 2}, items);
    step_and_stand(made, order);
    certify(made);
    REQUIRE(check(made).empty());
    return made;
}

RoomLeft in_pot(const Bundle& bundle)
{
    const RoomAnswer answer = room_left(bundle);
    REQUIRE(answer.rooms.size() == 2);
    REQUIRE(answer.rooms[1].in == Lodging{0, 0});
    for (const Posing posing : posings) {
        INFO(to_string(posing));
        const auto& one = answer.rooms[1].of(posing);
        REQUIRE(one.has_value());
        CHECK(with_one_more(bundle, Lodging{0, 0}, one->solid).has_value());
    }
    return answer.rooms[1];
}

const Cylinder& standing(const RoomLeft& room) { return std::get<Cylinder>(room.of(Posing::standing)->solid.shape); }

constexpr double near = 0.02; ///< mm: air at curved contacts, which add up

} // namespace

TEST_CASE("an empty pot takes what is as large as its inside")
{
    const Bundle bundle = pot_with({});
    const RoomLeft room = in_pot(bundle);
    CHECK(standing(room) == Cylinder{2 * radius, high}); // to the nanometre
    // A square has the largest area of all rectangles in a circle: Euclid, Elements VI.27, for half of it.
    const auto& box = std::get<Box>(room.of(Posing::box)->solid.shape);
    CHECK(box.height == high);
    CHECK(box.length == Approx(std::numbers::sqrt2 * radius).margin(near));
    CHECK(box.width == Approx(std::numbers::sqrt2 * radius).margin(near));
    // Lying it is a rectangle in plan, and no thicker than the pot is high.
    const auto& lying = std::get<Cylinder>(room.of(Posing::lying)->solid.shape);
    CHECK(lying.diameter == high);
    CHECK(lying.height == Approx(2 * std::sqrt(radius * radius - high * high / 4)).margin(near));
    CHECK(room.of(Posing::lying)->stands_out == 0);
}

TEST_CASE("beside a lone disc at the wall of a pot the largest has what is left of the radius")
{
    for (const double r : {12.0, 25.0}) {
        const double across = standing(in_pot(pot_with({{radius - r, 0, r}}))).diameter;
        CHECK(across <= 2 * (radius - r));
        CHECK(across == Approx(2 * (radius - r)).margin(near));
    }
}

TEST_CASE("beside a lone disc in the middle of a pot it is half as wide as the ring")
{
    const double across = standing(in_pot(pot_with({{0, 0, 25}}))).diameter;
    CHECK(across <= radius - 25);
    CHECK(across == Approx(radius - 25).margin(near));
}

TEST_CASE("beside discs that kiss each other and the wall, Descartes' theorem tells the largest")
{
    // Curvatures k4 = k1 + k2 + k3 + 2 sqrt(k1 k2 + k2 k3 + k3 k1), the wall's being negative. Source: F. Soddy, The kiss
    // precise, Nature 137 (1936), 1021. The whole numbers -1, 2, 2, 3, 3 and then 6 are those of the Apollonian packing in
    // Graham, Lagarias, Mallows, Wilks, Yan, Apollonian circle packings: number theory, J. Number Theory 100 (2003), 1-45.
    const auto kissing = [](double a, double b, double c) { return a + b + c + 2 * std::sqrt(a * b + b * c + c * a); };
    REQUIRE(kissing(-1, 2, 2) == Approx(3));
    REQUIRE(kissing(-1, 2, 3) == Approx(6));
    const std::array<double, 3> left{-30, 0, 30}, right{30, 0, 30}, top{0, 40, 20}, bottom{0, -40, 20};
    CHECK(standing(in_pot(pot_with({left}))).diameter == Approx(2 * radius / 2).margin(near));
    CHECK(standing(in_pot(pot_with({left, right}))).diameter == Approx(2 * radius / 3).margin(near));
    CHECK(standing(in_pot(pot_with({left, right, top}))).diameter == Approx(2 * radius / 3).margin(near));
    CHECK(standing(in_pot(pot_with({left, right, top, bottom}))).diameter == Approx(2 * radius / 6).margin(near));
}

TEST_CASE("between three discs that kiss, apart from the wall")
{
    // The inner Soddy circle of three discs of radius r: r (2 / sqrt 3 - 1). Same source. The wall is far too near here for
    // anything larger outside: three discs of 27.8 mm in one of 60 mm leave 4.3 mm, the circle within is 1.1 mm larger.
    const double r = radius / (1 + 2 / std::sqrt(3.0)); // they touch the wall
    const double wall_gap = 1.0 / (2 / r - 1 / radius + 2 * std::sqrt(1 / (r * r) - 2 / (r * radius)));
    const double ring = 2 * r / std::sqrt(3.0);
    const auto at = [&](double degrees) {
        const double a = degrees * std::numbers::pi / 180;
        return std::array<double, 3>{snap((ring - 0.002) * std::cos(a)), snap((ring - 0.002) * std::sin(a)),
                                     snap(r - 0.01)};
    };
    const double across = standing(in_pot(pot_with({at(90), at(210), at(330)}))).diameter;
    CHECK(across == Approx(2 * std::max(wall_gap, r * (2 / std::sqrt(3.0) - 1))).margin(0.1));
}

TEST_CASE("beside a block in a square tin the rest is a box, to the nanometre")
{
    auto tin = hollow(item("tin", box(103, 83, 42, {51.5, 41.5, 21})), box(101, 81, 40, {51.5, 41.5, 21}), Opening::closed);
    auto block = in(item("block", box(40, 80, 40, {21.5 + 0.5, 41.5, 21})), 0);
    block.solids.front().pose.center.x = 1 + 0.5 + 20;
    Bundle made = bundle("A block in a tin", Box{103, 83, 42}, {tin, block});
    step_and_stand(made, {1, 0});
    REQUIRE(check(made).empty());
    const RoomLeft room = in_pot(made);
    const auto& rest = std::get<Box>(room.of(Posing::box)->solid.shape);
    CHECK(std::min(rest.length, rest.width) == 60);
    CHECK(std::max(rest.length, rest.width) == 80);
    CHECK(rest.height == 40);
    CHECK(standing(room) == Cylinder{60, 40});
    const auto& lying = std::get<Cylinder>(room.of(Posing::lying)->solid.shape);
    CHECK(lying == Cylinder{40, 80});
}

TEST_CASE("a pot that tapers takes no wider a cylinder than its floor, or one that is less high")
{
    // Volume is pi r^2 h in a cone cut off: the largest has its foot on the floor and its rim wherever the wall is not
    // narrower, and the wall only widens upwards.
    auto beaker = hollow(item("beaker", Solid{Cylinder{84, 92, 62}, {{0, 0, 46}, {}}}),
                         Solid{Cylinder{82, 90, 60}, {{0, 0, 47}, {}}}, Opening::closed);
    Bundle made = bundle("A beaker", Cylinder{84, 92}, {beaker});
    step_and_stand(made, {0});
    REQUIRE(check(made).empty());
    const RoomLeft room = in_pot(made);
    // Radius 30 at the floor, 41 at the top, 90 mm higher. A cylinder whose foot is z above the floor has the radius
    // 30 + 11 z / 90 and the height 90 - z, but nothing would carry it there: only z = 0 is on the floor.
    CHECK(standing(room).diameter >= 60 - near);
    CHECK(standing(room).height >= 89);
}
