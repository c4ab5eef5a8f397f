// SPDX-License-Identifier: GPL-3.0-or-later
/// Random solids in rooms that they only just fit, or only just not: the exact answer on both sides.
#include <catch2/catch.hpp>
#include <cmath>

#include "judge.hpp"
#include "proof/disc.hpp"
#include "proof/room.hpp"
#include "proof_support.hpp"
#include "tuckwright/units.hpp"

using namespace tuckwright;
using namespace tuckwright::proof;

namespace {

Quaternion some_turn(Engine& engine)
{
    std::uniform_int_distribution<std::int64_t> part(-30, 30);
    const std::array<Quaternion, 6> plain{Quaternion{1, 0, 0, 0}, {1, 0, 1, 0},          {1, 1, 0, 0},
                                          {100000, 1, 0, 0},      {100000, 99999, 0, 0}, {3, 0, 0, 1}};
    if (engine() % 3 == 0) {
        return plain[engine() % plain.size()];
    }
    return {part(engine), part(engine), part(engine), 1 + std::abs(part(engine))};
}

Solid some_solid(Engine& engine)
{
    const Vec3 center{between(engine, -20, 20), between(engine, -20, 20), between(engine, -20, 20)};
    if (engine() % 3 != 0) {
        return {Cylinder{between(engine, 2, 60), between(engine, 2, 60)}, {center, some_turn(engine)}};
    }
    return {Box{between(engine, 2, 60), between(engine, 2, 60), between(engine, 2, 60)}, {center, some_turn(engine)}};
}

} // namespace

TEST_CASE("a round room holds what is narrower by ten nanometres and refuses what is wider by ten")
{
    Engine engine(161803);
    for (int trial = 0; trial < 4000; ++trial) {
        const Solid solid = some_solid(engine);
        Pose where{{between(engine, -20, 20), between(engine, -20, 20), 0}, some_turn(engine)};
        if (engine() % 3 == 0) {
            where.turn = solid.pose.turn; // an axis shared
        }
        const auto body = judge::body_of(solid.shape, solid.pose);
        const double needed =
            static_cast<double>(judge::farthest_from_axis(body, judge::body_of(Cylinder{1, 1}, where)));
        const Piece piece = piece_of(solid.shape, solid.pose);
        const auto fit = [&](double radius) {
            const Piece cavity = piece_of(Cylinder{2 * snap(radius) + 1, 500}, where);
            return against_walls(piece, room_of(cavity, nanometres(0.5), true, true));
        };
        INFO("trial " << trial << ", needed radius " << needed);
        const proof::Fit wide = fit(needed + 1e-5), narrow = fit(needed - 1e-5);
        CHECK((wide.inside && !wide.outside));
        CHECK((!narrow.inside && narrow.outside));
        CHECK(narrow.excess_nm == Approx(10).margin(2));
    }
}

TEST_CASE("a box room holds what is narrower by ten nanometres and refuses what is wider by ten, floors too")
{
    Engine engine(141421);
    for (int trial = 0; trial < 2000; ++trial) {
        const Solid solid = some_solid(engine);
        const Pose where{{between(engine, -20, 20), between(engine, -20, 20), 0}, some_turn(engine)};
        const auto body = judge::body_of(solid.shape, solid.pose);
        const auto axes = judge::body_of(Box{1, 1, 1}, where);
        std::array<double, 3> needed{};
        for (std::size_t k = 0; k < 3; ++k) {
            needed[k] = static_cast<double>(judge::farthest_along(body, axes, k));
        }
        const Piece piece = piece_of(solid.shape, solid.pose);
        const auto room = [&](double x, double y, double z) {
            const Piece cavity =
                piece_of(Box{2 * snap(needed[0] + x), 2 * snap(needed[1] + y), 2 * snap(needed[2] + z)}, where);
            return room_of(cavity, 0, false, false);
        };
        const double wide = 1e-5, narrow = -1e-5;
        INFO("trial " << trial);
        CHECK(against_walls(piece, room(wide, wide, narrow)).inside);
        CHECK(against_walls(piece, room(narrow, wide, wide)).outside);
        CHECK(against_walls(piece, room(wide, narrow, wide)).outside);
        const Room high = room(wide, wide, wide), low = room(wide, wide, narrow);
        CHECK((against_bottom(piece, high).inside && against_top(piece, high).inside));
        CHECK((against_bottom(piece, low).outside != against_top(piece, low).outside));
    }
}

TEST_CASE("coaxial and touching fits are decided to the nanometre")
{
    const auto in_tube = [](const Solid& solid, double diameter) {
        return against_walls(piece_of(solid.shape, solid.pose),
                             room_of(piece_of(Cylinder{diameter, 100}, {}), 0, true, true));
    };
    const Solid coaxial{Cylinder{50, 20}, {{0, 0, 0}, {7, 0, 0, 3}}};
    CHECK(in_tube(coaxial, 50).inside);
    CHECK(in_tube(coaxial, 49.999999).outside);
    const Solid aside{Cylinder{50, 20}, {{3, 4, 0}, {}}}; // 5 mm off the axis
    CHECK(in_tube(aside, 60).inside);
    CHECK(in_tube(aside, 59.999999).outside);
    const Solid across{Cylinder{30, 40}, {{0, 0, 0}, {1, 0, 1, 0}}}; // seen as a box of 40 by 30
    CHECK(in_tube(across, 50).inside);
    CHECK(in_tube(across, 49.999999).outside);
    const Solid across_turned{Cylinder{30, 40}, {{0, 0, 0}, {2, 1, 2, 1}}}; // the same, its axis level in between
    CHECK(dot(axes_of(across_turned.pose.turn)[2], Vector{0, 0, 1}) == 0);
    CHECK(in_tube(across_turned, 50).inside);
    CHECK(in_tube(across_turned, 49.999999).outside);
    const Solid block{Box{30, 40, 9}, {{0, 0, 0}, {2, 0, 0, 1}}};
    CHECK(in_tube(block, 50).inside);
    CHECK(in_tube(block, 49.999999).outside);
}

TEST_CASE("a clearance as wide as the room leaves nothing")
{
    const Piece dot_sized = piece_of(Box{0.000002, 0.000002, 1}, {});
    const Piece tube = piece_of(Cylinder{10, 10}, {});
    CHECK(against_walls(dot_sized, room_of(tube, nanometres(4.9), true, true)).inside);
    CHECK(against_walls(dot_sized, room_of(tube, nanometres(5), true, true)).outside);
    CHECK(against_walls(dot_sized, room_of(tube, nanometres(7), true, true)).outside);
}

TEST_CASE("the clearance is taken from both pairs of a box's side walls, and from neither end")
{
    const auto fits = [](double x, double y, double z) {
        const Room room = room_of(piece_of(Box{20, 30, 40}, {}), nanometres(0.5), false, false);
        const Piece block = piece_of(Box{x, y, z}, {});
        return against_walls(block, room).inside && against_bottom(block, room).inside &&
               against_top(block, room).inside;
    };
    CHECK(fits(19, 29, 40));
    CHECK_FALSE(fits(19.000001, 29, 40));
    CHECK_FALSE(fits(19, 29.000001, 40));
    CHECK_FALSE(fits(19, 29, 40.000001));
}

TEST_CASE("a wall between the bounds of an irrational reach is neither kept nor crossed for certain")
{
    const Piece tin = piece_of(Cylinder{10, 20}, {{0, 0, 0}, {5, 1, 2, 3}});
    const Vector up{0, 0, 1};
    const Bounds needed = reach(tin, up);
    REQUIRE(needed.below < needed.above);
    const auto top_at = [&](const Rational& half) {
        const Rational wide = nanometres(100);
        return against_top(tin,
                           room_of(piece_from(false, {wide, wide, half}, {0, 0, 0}, axes_of({})), 0, false, false));
    };
    CHECK(top_at(needed.above).inside);
    CHECK(!top_at(needed.above).outside);
    const proof::Fit unsure = top_at((needed.below + needed.above) / 2);
    CHECK((!unsure.inside && !unsure.outside));
    CHECK(top_at(needed.below * Rational(999999) / Rational(1000000)).outside);
}

TEST_CASE("no multiplier proves a disc within a circle that is too small, and the right one proves one wide enough")
{
    Engine engine(5772);
    int proved = 0;
    for (int trial = 0; trial < 400; ++trial) {
        const auto axis = axes_of(some_turn(engine));
        const Rational radius = nanometres(between(engine, 1, 50));
        const SlantedDisc disc{{nanometres(between(engine, -30, 30)), nanometres(between(engine, -30, 30))},
                               {axis[0][0], axis[0][1]},
                               {axis[1][0], axis[1][1]},
                               radius,
                               axis[2][2]};
        const double reached = within_circle(disc, 0).excess_nm; // how far it reaches from the middle
        for (int k = 0; k <= 60; ++k) {
            const Rational multiplier = radius * radius * Rational(1 + k * k * k / 20000.0);
            CHECK_FALSE(multiplier_proves(disc, Rational(reached - 1e-3), multiplier));
            proved += multiplier_proves(disc, Rational(reached * 1.02), multiplier) ? 1 : 0;
        }
        CHECK(within_circle(disc, Rational(reached + 1e-3)).inside);
        CHECK(within_circle(disc, Rational(reached - 1e-3)).outside);
    }
    CHECK(proved > 200);
}
