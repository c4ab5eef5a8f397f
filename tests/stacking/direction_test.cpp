// SPDX-License-Identifier: GPL-3.0-or-later
#include "stacking/direction.hpp"

#include <catch2/catch.hpp>

#include "support/stacking_samples.hpp"

using namespace tuckwright;
using stacking::Direction;

TEST_CASE("the axes of a turn in lowest whole numbers")
{
    CHECK(stacking::exact_axis({1, 0, 0, 0}, 2) == Direction{0, 0, 1});
    CHECK(stacking::exact_axis({0, 3, 0, 0}, 2) == Direction{0, 0, -1});
    CHECK(stacking::exact_axis({1, 0, 1, 0}, 2) == Direction{1, 0, 0});
    CHECK(stacking::exact_axis({2, 0, 0, 1}, 0) == Direction{3, 4, 0});
    CHECK(stacking::exact_axis({2, 0, 0, 1}, 1) == Direction{-4, 3, 0});
}

TEST_CASE("random axes are parallel to the matrix's columns and exactly at right angles to each other")
{
    test::Dice dice(41);
    for (int k = 0; k < 300; ++k) {
        const Quaternion turn = test::random_turn(dice);
        const Matrix3 m = rotation_matrix(turn);
        Direction axes[3];
        for (std::size_t a = 0; a < 3; ++a) {
            axes[a] = stacking::exact_axis(turn, a).value();
            const Vec3 v = stacking::to_vector(axes[a]);
            CHECK(dot(v, {m[0][a], m[1][a], m[2][a]}) == Approx(norm(v)).epsilon(1e-14));
        }
        CHECK(stacking::sign_of_dot(axes[0], axes[1]) == 0);
        CHECK(stacking::sign_of_dot(axes[1], axes[2]) == 0);
        CHECK(stacking::sign_of_dot(axes[0], axes[2]) == 0);
    }
}

TEST_CASE("axes whose numbers would overflow are refused, not wrong")
{
    const std::int64_t big = (std::int64_t{1} << 50) + 1;
    CHECK_FALSE(stacking::exact_axis({big, big - 2, 3, 5}, 2).has_value());
    CHECK_FALSE(stacking::exact_axis({std::int64_t{1} << 62, 0, 0, 1}, 2).has_value());
}

TEST_CASE("the part across an axis")
{
    CHECK(stacking::part_across({30, 40, 77}, {0, 0, 1}) == Direction{3, 4, 0});
    CHECK(stacking::part_across({1, 0, 0}, {1, 1, 0}) == Direction{1, -1, 0});
    CHECK_FALSE(stacking::part_across({5, 5, 0}, {1, 1, 0}).has_value());
    CHECK_FALSE(stacking::part_across({std::int64_t{1} << 41, 0, 0}, {0, 0, 1}).has_value());
}

TEST_CASE("ways in: along a cavity, down a sleeve, down or level into the bundle")
{
    const Bundle yawed = stacking_samples::cup_in_yawed_lying_pot();
    CHECK(stacking::ways_in(yawed, 1, true) == std::vector<Direction>{{-3, -4, 0}});
    CHECK(stacking::ways_in(yawed, 0, false) == std::vector<Direction>{{0, 0, -1}});
    for (const Direction& way : stacking::ways_in(yawed, 0, true)) {
        CHECK(way[2] <= 0);
    }
    const Bundle ringed = stacking_samples::mug_in_ring_in_lidded_pot();
    CHECK(stacking::ways_in(ringed, 3, false) == std::vector<Direction>{{0, 0, -1}});
    CHECK(stacking::ways_in(ringed, 0, false) == std::vector<Direction>{{0, 0, -1}});
}
