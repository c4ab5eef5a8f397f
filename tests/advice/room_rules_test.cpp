// SPDX-License-Identifier: GPL-3.0-or-later
/// The room that is left, and what keeps things out of it.
#include <catch2/catch.hpp>

#include <cmath>

#include "solve/certificate.hpp"
#include "support/handmade_bundles.hpp"
#include "tuckwright/geometry.hpp"
#include "tuckwright/proof.hpp"
#include "tuckwright/room.hpp"

using namespace tuckwright;
using namespace tuckwright::handmade;

namespace {

RoomOptions quick()
{
    RoomOptions options;
    options.effort = Effort::quick;
    return options;
}

/// Two blocks of 60 x 80 mm side by side under 80 mm of air, the one 20 mm high, the other 40 mm.
Bundle two_blocks()
{
    Bundle made = bundle("Two blocks", Box{120, 80, 120},
                         {item("low", box(60, 80, 20, {30, 40, 10})), item("high", box(60, 80, 40, {90, 40, 20}))});
    step_and_stand(made, {0, 1});
    return made;
}

const Solid& solid_of(const RoomLeft& room, Posing posing)
{
    REQUIRE(room.of(posing).has_value());
    return room.of(posing)->solid;
}

} // namespace

TEST_CASE("on top of things, as high as the bundle allows")
{
    const Bundle made = two_blocks();
    const RoomAnswer answer = room_left(made);
    REQUIRE(answer.rooms.size() == 1);
    const auto& largest = std::get<Box>(solid_of(answer.rooms[0], Posing::box).shape);
    CHECK(volume_ml(largest) == Approx(120 * 80 * 80 / 1000.0)); // over both, rather than over the low one alone
    CHECK(largest.height == 80);
    const auto& can = std::get<Cylinder>(solid_of(answer.rooms[0], Posing::standing).shape);
    CHECK(can == Cylinder{80, 80});
    CHECK(answer.rooms[0].of(Posing::standing)->step.find("One more thing") != std::string::npos);
}

TEST_CASE("nothing lies on what may bear nothing, or only so much")
{
    for (const bool nothing : {true, false}) {
        Bundle made = two_blocks();
        made.items[1].nothing_on_top = nothing;
        if (!nothing) {
            made.items[1].bears_g = 500; // nobody knows what the new thing weighs
        }
        certify(made);
        REQUIRE(check(made).empty());
        const RoomAnswer answer = room_left(made);
        const Solid& box = solid_of(answer.rooms[0], Posing::box);
        CHECK(volume_ml(box.shape) == Approx(60 * 80 * 100 / 1000.0).epsilon(1e-5)); // over the low one alone
        CHECK(extent(hull_of(box)).low.z == Approx(20));
        CHECK(extent(hull_of(box)).high.x <= 60);
    }
}

TEST_CASE("where nothing may lie on anything there is no room on top")
{
    Bundle made = two_blocks();
    made.items[0].nothing_on_top = made.items[1].nothing_on_top = true;
    certify(made);
    const RoomAnswer answer = room_left(made, quick());
    for (const Posing posing : posings) {
        CHECK_FALSE(answer.rooms[0].of(posing).has_value());
    }
    CHECK(room_text(made, answer).find("was found to go into: the bundle beside and on") !=
          std::string::npos);
}

TEST_CASE("out of an open cup it may stand, as high as the bundle is; under a shut lid not")
{
    const Bundle open = rod_out_of_cup(); // a cup 78 mm wide inside, the bundle is 162 mm high, its rim at 90 mm
    const RoomAnswer answer = room_left(open);
    REQUIRE(answer.rooms.size() == 2);
    const auto& can = answer.rooms[1].of(Posing::standing);
    REQUIRE(can.has_value());
    CHECK(std::get<Cylinder>(can->solid.shape).height == Approx(160));
    CHECK(can->stands_out == Approx(72));
    CHECK(room_text(open, answer).find("72 mm of it beyond the rim") != std::string::npos);

    const Bundle shut = cup_in_lidded_pot();
    for (const RoomLeft& room : room_left(shut).rooms) {
        for (const Posing posing : posings) {
            if (room.in == Lodging{0, 0} && room.of(posing)) {
                CHECK(room.of(posing)->stands_out == 0);
                CHECK(extent(hull_of(room.of(posing)->solid)).high.z <= 90);
            }
        }
    }
}

TEST_CASE("what goes through a narrow opening is no wider than that, less the clearance")
{
    auto crock = narrowed(hollow(item("crock", cylinder(120, 90, {0, 0, 45})), cylinder(116, 80, {0, 0, 47}), Opening::top),
                          Cylinder{80, 3});
    Bundle made = bundle("An empty crock", Cylinder{120, 90}, {crock});
    step_and_stand(made, {0});
    REQUIRE(check(made).empty());
    const RoomAnswer answer = room_left(made);
    REQUIRE(answer.rooms.size() == 2);
    CHECK(std::get<Cylinder>(solid_of(answer.rooms[1], Posing::standing).shape).diameter == Approx(79).margin(0.01));
    CHECK(std::get<Cylinder>(solid_of(answer.rooms[1], Posing::standing).shape).height == 80);
    const auto& box = std::get<Box>(solid_of(answer.rooms[1], Posing::box).shape);
    CHECK(std::hypot(box.length, box.width) == Approx(79).margin(0.01));
    const auto& lying = std::get<Cylinder>(solid_of(answer.rooms[1], Posing::lying).shape);
    CHECK(std::hypot(lying.diameter, lying.height) == Approx(79).margin(0.01));
}

TEST_CASE("what its contents fill has no room")
{
    Bundle made = cup_in_lidded_pot();
    made.items[1].full = true;
    const RoomAnswer answer = room_left(made, quick());
    CHECK(answer.rooms.size() == 2); // the bundle and the pot
    CHECK_FALSE(answer.rooms[0].in.has_value());
    CHECK(answer.rooms[1].in == Lodging{0, 0});
}

TEST_CASE("a bag that goes round everything leaves no more than its girth")
{
    const Bundle made = tins_in_a_bag();
    REQUIRE(check(made).empty());
    for (const RoomLeft& room : room_left(made).rooms) {
        for (const Posing posing : posings) {
            if (const auto& one = room.of(posing)) {
                const auto with = with_one_more(made, room.in, one->solid);
                REQUIRE(with.has_value());
                std::vector<Solid> all;
                for (const PlacedItem& placed : with->items) {
                    all.insert(all.end(), placed.solids.begin(), placed.solids.end());
                }
                CHECK(outline_girth(all) <= made.bag->girth * (1 + 1e-6));
            }
        }
    }
}

TEST_CASE("in a vessel on its side sizes are told along it")
{
    const Bundle made = tin_in_lying_pot();
    const RoomAnswer answer = room_left(made, quick());
    const std::string text = room_text(made, answer);
    CHECK(text.find("In pot, which lies on its side, beside tin:") != std::string::npos);
    CHECK(text.find("round, along it:") != std::string::npos);
    const Solid& can = solid_of(answer.rooms[1], Posing::standing);
    CHECK(std::abs(rotation_matrix(can.pose.turn)[0][2]) == Approx(1)); // its axis along x, as the pot's
}
