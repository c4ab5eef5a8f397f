// SPDX-License-Identifier: GPL-3.0-or-later
/// How far pieces stand out of rooms: hand figures, and random pieces against their own corners and rims.
#include <algorithm>
#include <catch2/catch.hpp>

#include "packing/random_pieces.hpp"

using namespace tuckwright;
using namespace tuckwright::packing;

namespace {

const Room round_room{true, 50, 0, 0, 80, true, true};
const Room box_room{false, 0, 60, 40, 80, true, true};

/// Farthest that any corner or rim point lies beyond one of the walls.
double farthest_out(const Piece& p, const Room& room)
{
    double most = -1e300;
    for (const Vec3& v : rim_points(p, 720)) {
        if (room.round) {
            most = std::max(most, std::hypot(v.x, v.y) - room.radius);
        } else {
            most = std::max({most, std::abs(v.x) - room.half_length, std::abs(v.y) - room.half_width});
        }
        if (room.floor) {
            most = std::max(most, -v.z);
        }
        if (room.ceiling) {
            most = std::max(most, v.z - room.height);
        }
    }
    return most;
}

} // namespace

TEST_CASE("excess over walls, floor and ceiling is that worked out by hand")
{
    CHECK(excess(disc_at(0, 0, 40, 50, 40), round_room) == 0);                  // fills it
    CHECK(excess(disc_at(3, 4, 40, 50, 40), round_room) == Approx(5));          // pushed 5 out
    CHECK(excess(disc_at(0, 0, 42, 50, 40), round_room) == Approx(2));          // through the ceiling
    CHECK(excess(disc_at(0, 0, 40, 50, 43), round_room) == Approx(6));          // 3 at either end
    CHECK(excess(rectangle_at(0, 0, 5, 30, 40, 5), round_room) == 0);           // corners at 50
    CHECK(excess(rectangle_at(6, 0, 5, 30, 40, 5), round_room) == Approx(std::hypot(36, 40) - 50));
    CHECK(excess(rectangle_at(0, 0, 5, 30, 40, 5, 0.7), round_room) == Approx(0).margin(1e-12));
    CHECK(excess(lying_at(0, 0, 30, 40, 30), round_room) == 0);                 // ends reach 50
    CHECK(excess(lying_at(0, 0, 29, 40, 30), round_room) == Approx(1));         // through the floor
    CHECK(excess(lying_at(0, 5, 30, 40, 30), round_room) == Approx(std::hypot(40, 35) - 50));
    CHECK(excess(rectangle_at(0, 0, 40, 60, 40, 40), box_room) == 0);
    CHECK(excess(rectangle_at(1, -2, 43, 60, 40, 40), box_room) == Approx(1 + 2 + 3));
    CHECK(excess(disc_at(25, 0, 10, 40, 10), box_room) == Approx(5));
    CHECK(excess(rectangle_at(0, 0, 40, 40, 60, 40, std::numbers::pi / 2), box_room) == Approx(0).margin(1e-12));
}

TEST_CASE("nothing is in excess past an open end")
{
    Room sleeve = round_room;
    sleeve.floor = sleeve.ceiling = false;
    CHECK(excess(disc_at(0, 0, 100, 50, 40), sleeve) == 0);
    CHECK(excess(disc_at(0, 0, -100, 50, 40), sleeve) == 0);
    CHECK(excess(disc_at(3, 4, 200, 50, 40), sleeve) == Approx(5));
    Room pot = box_room;
    pot.ceiling = false;
    CHECK(excess(rectangle_at(0, 0, 100, 60, 40, 40), pot) == 0);
    CHECK(excess(rectangle_at(0, 0, 30, 60, 40, 40), pot) == Approx(10));
}

TEST_CASE("a piece is in excess exactly where one of its corners or rims is out")
{
    Dice dice(21);
    int out = 0, in = 0;
    for (int trial = 0; trial < 4000; ++trial) {
        Piece p = random_piece(dice, 25);
        p.z += 40;
        const bool open = dice.below(2) == 0;
        Room room = dice.below(2) == 0 ? round_room : box_room;
        room.ceiling = !open;
        const double farthest = farthest_out(p, room), sum = excess(p, room);
        CAPTURE(trial, static_cast<int>(p.kind), room.round, farthest, sum);
        if (farthest > 1e-9) {
            ++out;
            CHECK(sum >= farthest - 1e-9);
        } else if (farthest < -2e-3) { // rims are seen at steps of half a degree
            ++in;
            CHECK(sum == 0);
        }
    }
    CHECK(out > 500);
    CHECK(in > 500);
}

TEST_CASE("the support of a piece is that of the same solid in the geometry room")
{
    Dice dice(22);
    for (int trial = 0; trial < 5000; ++trial) {
        const Piece p = random_piece(dice, 60);
        const Vec3 n = dice.direction();
        CAPTURE(trial, static_cast<int>(p.kind));
        CHECK(piece_support(p, n.x, n.y, n.z) == Approx(support(hull_of(p), n)).margin(1e-9));
    }
}
