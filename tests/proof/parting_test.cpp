// SPDX-License-Identifier: GPL-3.0-or-later
/// Planes between two pieces, one candidate of the check at a time: touching is apart, a nanometre less is not. Places and
/// turns are such that all lengths are whole: a turn (2, 0, 0, 1) has cosine 3/5, and (1, 2, 2, 4) fifths and 25ths.
#include <catch2/catch.hpp>

#include "proof/apart.hpp"
#include "proof_support.hpp"

using namespace tuckwright;
using namespace tuckwright::proof;

namespace {

constexpr double nm = 1e-6;

Piece cube(double side, const Vec3& center, const Quaternion& turn = {})
{
    return piece_of(Box{side, side, side}, {center, turn});
}

/// Whether two are told apart, both ways round.
bool apart(const Piece& first, const Piece& second, const std::vector<Vector>& normals = {})
{
    std::vector<Vector> back;
    for (const Vector& normal : normals) {
        back.push_back(times(-1, normal));
    }
    const bool proved = part(first, second, normals).proved;
    CHECK(part(second, first, back).proved == proved);
    return proved;
}

Vec3 along(const Vector& unit, double mm)
{
    return {approximate(unit[0]) * mm, approximate(unit[1]) * mm, approximate(unit[2]) * mm};
}

} // namespace

TEST_CASE("where a corner points at something round, each of the world's axes parts what no axis of their own does")
{
    const Quaternion turn{2, 0, 0, 1}, tipped{2, 1, 0, 0}; // a corner of a cube of 10 is 7 from the middle then
    const Quaternion standing{4, 0, 0, 1}, lying{4, 1, 4, 1};
    const auto tin = [](const Vec3& center, const Quaternion& how) { return piece_of(Cylinder{10, 40}, {center, how}); };
    const Vec3 middle{0, 0, 0};
    for (const double side : {1.0, -1.0}) {
        const double touching = 12 * side, near = (12 - nm) * side;
        CHECK(apart(cube(10, middle, turn), tin({touching, 0, 0}, standing)));
        CHECK_FALSE(apart(cube(10, middle, turn), tin({near, 0, 0}, standing)));
        CHECK(apart(cube(10, middle, turn), tin({0, touching, 0}, standing)));
        CHECK_FALSE(apart(cube(10, middle, turn), tin({0, near, 0}, standing)));
        CHECK(apart(cube(10, middle, tipped), tin({0, 0, touching}, lying)));
        CHECK_FALSE(apart(cube(10, middle, tipped), tin({0, 0, near}, lying)));
        CHECK(part(cube(10, middle, turn), tin({near, 0, 0}, standing), {}).missed_nm == Approx(1).margin(1e-3));
    }
}

TEST_CASE("each own axis of either piece parts what touches along it, whatever way they are turned")
{
    for (const Quaternion& turn : {Quaternion{2, 0, 0, 1}, {1, 2, 2, 4}, {4, 2, 1, 2}, {2, 1, 4, 2}}) {
        const auto axes = axes_of(turn);
        const Piece block = piece_of(Box{20, 30, 40}, {{0, 0, 0}, turn});
        for (std::size_t k = 0; k < 3; ++k) {
            const double half = 10 + 5 * static_cast<double>(k);
            INFO("axis " << k << " of a turn that begins with " << turn.w);
            for (const double side : {1.0, -1.0}) {
                const Piece next = piece_of(Box{20, 30, 40}, {along(axes[k], side * 2 * half), turn});
                const Piece near = piece_of(Box{20, 30, 40}, {along(axes[k], side * (2 * half - 25 * nm)), turn});
                CHECK(apart(block, next));
                CHECK_FALSE(apart(block, near));
                CHECK(part(block, near, {}).missed_nm == Approx(25).margin(1e-3));
            }
            // An overlap of less than half a nanometre is one too.
            for (std::size_t j = 0; j < 3; ++j) {
                if (axes[k][j] != 0) {
                    Vector by{0, 0, 0};
                    by[j] = axes[k][j] < 0 ? 1 : -1;
                    CHECK_FALSE(apart(block, moved(piece_of(Box{20, 30, 40}, {along(axes[k], 2 * half), turn}), by)));
                }
            }
            // A cylinder along that axis, whose own axes are others: only the block's axis parts them, or only its own.
            const Piece tin = piece_of(Cylinder{14, 2 * half}, {along(axes[2], 20 + half), turn});
            const Piece low = piece_of(Cylinder{14, 2 * half}, {along(axes[2], 20 + half - 25 * nm), turn});
            CHECK((apart(block, tin) && !apart(block, low)));
        }
    }
}

TEST_CASE("a plane of the certificate parts round things that touch aslant, and its length is no matter")
{
    const Piece first = piece_of(Cylinder{50, 60}, {{0, 0, 0}, {}});
    const Piece touching = piece_of(Cylinder{50, 60}, {{30, 40, 10}, {}});
    const Piece near = piece_of(Cylinder{50, 60}, {{30 - 3 * nm, 40 - 4 * nm, 10}, {}});
    CHECK_FALSE(apart(first, touching));
    for (const long size : {1L, 3L, 1'000'000'000L}) {
        const Vector normal{3 * size, 4 * size, 0};
        CHECK(apart(first, touching, {normal}));
        CHECK_FALSE(apart(first, near, {normal}));
        CHECK(part(first, near, {normal}).missed_nm == Approx(5).margin(1e-3));
        CHECK(apart(first, touching, {{1, 0, 0}, normal})); // not only the first plane is tried
        CHECK_FALSE(part(first, touching, {times(-1, normal)}).proved); // it points from the first to the second
    }
    const Piece lying = piece_of(Cylinder{50, 60}, {{0, 0, 0}, {1, 1, 0, 0}}), above = moved(lying, nanometres(Vec3{30, 0, 40}));
    CHECK_FALSE(apart(lying, above));
    CHECK(apart(lying, above, {{3, 0, 4}}));
}

TEST_CASE("only planes that do not oppose the way count for what is drawn away")
{
    const Piece low = cube(10, {0, 0, 0}), high = cube(10, {0, 0, 10}), beside = cube(10, {10, 0, 0});
    // Drawn back against the direction: up from what it comes down onto, not down through it.
    CHECK(part(high, low, {}, Vector{0, 0, -1}).proved);
    CHECK_FALSE(part(high, low, {}, Vector{0, 0, 1}).proved);
    CHECK(part(beside, low, {}, Vector{0, 0, 1}).proved); // the plane is along the way
    CHECK(part(beside, low, {}, Vector{-1, 0, 5}).proved);
    const Parting none = part(beside, low, {}, Vector{1, 0, 0});
    CHECK_FALSE(none.proved);
    CHECK(none.tried); // those along the way were, in vain
    CHECK(none.missed_nm == Approx(1e7));
}

TEST_CASE("a straight move keeps to one side of a plane with both its ends")
{
    const Piece wall = cube(10, {0, 0, 0});
    const auto passes = [&](const Vec3& from, const Vec3& to) {
        return part_moving(cube(10, to), nanometres(from), wall, {}).proved;
    };
    CHECK(passes({20, 0, 0}, {10, 0, 0}));
    CHECK_FALSE(passes({-nm, 0, 0}, {10, 0, 0})); // begins a nanometre within it
    CHECK(passes({5, 30, 7}, {10, 0, 0}));
    CHECK_FALSE(passes({-5, 0, 0}, {10, 0, 0}));
    CHECK(passes({-5, 0, 0}, {-10, 0, 0}));
    CHECK_FALSE(passes({5, 0, 0}, {-10, 0, 0}));
    CHECK_FALSE(passes({-20, 0, 0}, {10, 0, 0})); // from the other side, right through it
    CHECK_FALSE(passes({0, -20, 0}, {0, 10, 0}));
    CHECK(passes({0, 0, 3}, {0, 0, 10}));
    CHECK_FALSE(passes({0, 0, -3}, {0, 0, 10}));
}
