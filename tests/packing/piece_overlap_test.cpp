// SPDX-License-Identifier: GPL-3.0-or-later
/// Overlap depths and contacts of pieces: against each other, against the geometry room, and against hand figures.
#include <catch2/catch.hpp>

#include "packing/random_pieces.hpp"

using namespace tuckwright;
using namespace tuckwright::packing;

namespace {

constexpr double near_nothing = 1e-9; // mm

bool lies(const Piece& p) { return p.kind == PieceKind::lying; }

Piece moved(Piece p, Vec3 by)
{
    p.x += by.x, p.y += by.y, p.z += by.z;
    return p;
}

/// A random pair, every other one slid along a random direction until overlap() just finds nothing.
std::pair<Piece, Piece> random_pair(Dice& dice, bool touching)
{
    const Piece p = random_piece(dice, 40), q = random_piece(dice, 40);
    if (!touching) {
        return {p, q};
    }
    const Vec3 direction = dice.direction();
    double low = 0, high = 400; // apart there for certain
    for (int k = 0; k < 60; ++k) {
        const double middle = (low + high) / 2;
        (overlap(p, moved(q, middle * direction)) > 0 ? low : high) = middle;
    }
    return {p, moved(q, high * direction)};
}

} // namespace

TEST_CASE("pieces overlap exactly where their contact says so")
{
    Dice dice(11);
    int apart = 0, overlapping = 0, cautious = 0;
    for (int trial = 0; trial < 60000; ++trial) {
        const auto [p, q] = random_pair(dice, trial % 2 == 0);
        const double depth = overlap(p, q), distance = contact(p, q).distance;
        CAPTURE(trial, static_cast<int>(p.kind), static_cast<int>(q.kind), depth, distance);
        CHECK(depth >= 0);
        CHECK(overlap(q, p) == Approx(depth).margin(near_nothing));
        CHECK(contact(q, p).distance == Approx(distance).margin(near_nothing));
        if (depth == 0) {
            ++apart;
            CHECK(distance >= -near_nothing);
        } else if (lies(p) || lies(q)) {
            cautious += distance > near_nothing ? 1 : 0; // may err towards overlap, and does now and then
            ++overlapping;
        } else {
            ++overlapping;
            CHECK(distance == Approx(-depth).margin(near_nothing));
        }
    }
    CHECK(apart > 20000);
    CHECK(overlapping > 10000);
    CHECK(cautious < overlapping / 20);
}

TEST_CASE("a contact's distance is what the supports along its normal say")
{
    Dice dice(12);
    for (int trial = 0; trial < 20000; ++trial) {
        const auto [p, q] = random_pair(dice, trial % 2 == 0);
        const Contact k = contact(p, q);
        CAPTURE(trial, static_cast<int>(p.kind), static_cast<int>(q.kind));
        CHECK(k.nx * k.nx + k.ny * k.ny + k.nz * k.nz == Approx(1).margin(1e-12));
        const Vec3 normal{k.nx, k.ny, k.nz};
        const double gap = -support(hull_of(q), -1.0 * normal) - support(hull_of(p), normal);
        CHECK(k.distance == Approx(gap).margin(1e-9));
        if (!k.curved) { // flat along the axes: a turned face would need rounding to be proved
            CHECK(std::abs(k.nx) + std::abs(k.ny) + std::abs(k.nz) == Approx(1).margin(1e-12));
        }
    }
}

TEST_CASE("pieces are never apart where the geometry says that they overlap")
{
    Dice dice(13);
    int apart = 0;
    for (int trial = 0; trial < 6000; ++trial) {
        const auto [p, q] = random_pair(dice, trial % 4 != 0);
        const double distance = separation(hull_of(p), hull_of(q)).distance, depth = overlap(p, q);
        CAPTURE(trial, static_cast<int>(p.kind), static_cast<int>(q.kind), depth, distance);
        if (depth == 0) {
            ++apart;
            CHECK(distance >= -1e-6);
        } else if (!lies(p) && !lies(q)) {
            CHECK(distance <= 1e-6);
        }
    }
    CHECK(apart > 3000);
}

TEST_CASE("overlap depths are those worked out by hand")
{
    const Piece tin = disc_at(0, 0, 10, 20, 10);
    CHECK(overlap(tin, disc_at(35, 0, 10, 20, 10)) == Approx(5));      // in plan: 20 + 20 - 35
    CHECK(overlap(tin, disc_at(24, 32, 10, 20, 10)) == 0);             // 40 apart, touching
    CHECK(overlap(tin, disc_at(0, 0, 28, 20, 10)) == Approx(2));       // along z: 10 + 10 - 18
    CHECK(overlap(tin, disc_at(0, 0, 30, 20, 10)) == 0);               // stands on it
    const Piece book = rectangle_at(0, 0, 5, 30, 20, 5);
    CHECK(overlap(book, rectangle_at(50, 0, 5, 30, 20, 5)) == Approx(10)); // flat, 10 high: as deep along z
    CHECK(overlap(book, rectangle_at(57, 0, 5, 30, 20, 5)) == Approx(3));
    CHECK(overlap(book, rectangle_at(0, 40, 5, 30, 20, 5)) == 0);
    CHECK(overlap(book, disc_at(33, 24, 5, 6, 5)) == Approx(1));       // over the corner: 6 - 5
    CHECK(overlap(book, disc_at(33, 24, 5, 4.9, 5)) == 0);
    const Piece rod = lying_at(0, 0, 4, 60, 4);
    CHECK(overlap(rod, lying_at(0, 8, 4, 60, 4)) == 0);                // side by side
    CHECK(overlap(rod, lying_at(0, 4.8, 4 + 6.4, 60, 4)) == Approx(0).margin(1e-12)); // in the groove above: 8 apart
    CHECK(overlap(rod, lying_at(0, 4.2, 4 + 5.6, 60, 4)) == Approx(1));               // 7 apart
    CHECK(overlap(rod, rectangle_at(0, 7, 10, 60, 4, 3)) == Approx(0).margin(1e-12)); // edge at (3, 3): 4.24 from the axis
}
