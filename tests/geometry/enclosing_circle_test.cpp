// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "support/random_solids.hpp"
#include "tuckwright/contract.hpp"
#include "tuckwright/geometry.hpp"

using namespace tuckwright;
using test::Dice;

TEST_CASE("one circle encloses itself, and a circle within another changes nothing")
{
    CHECK(enclosing_circle({{{3, 4, 5}}}) == std::array<double, 3>{3, 4, 5});
    const auto [x, y, r] = enclosing_circle({{{3, 4, 5}}, {{4, 4, 2}}, {{3, 4, 0}}, {{3, 4, 5}}});
    CHECK(x == Approx(3));
    CHECK(y == Approx(4));
    CHECK(r == Approx(5));
}

TEST_CASE("two circles apart, and three equal ones that touch")
{
    const auto two = enclosing_circle({{{-10, 0, 1}}, {{10, 0, 3}}});
    CHECK(two[0] == Approx(1));
    CHECK(two[1] == Approx(0).margin(1e-12));
    CHECK(two[2] == Approx(12));
    // The radius for three unit circles is 1 + 2/sqrt(3): their centres form a triangle of side 2.
    const double h = std::sqrt(3.0);
    const auto three = enclosing_circle({{{-1, 0, 1}}, {{1, 0, 1}}, {{0, h, 1}}});
    CHECK(three[0] == Approx(0).margin(1e-9));
    CHECK(three[1] == Approx(h / 3));
    CHECK(three[2] == Approx(1 + 2 / h));
}

TEST_CASE("random circles: all are enclosed, and no moved centre does better")
{
    Dice dice(21);
    for (int round = 0; round < 50; ++round) {
        std::vector<std::array<double, 3>> circles;
        for (int k = 0, n = 1 + dice.below(30); k < n; ++k) {
            const double x = dice.between(-100, 100), y = dice.between(-100, 100);
            circles.push_back({x, y, dice.between(0, 40)});
        }
        const auto reach = [&](double x, double y) {
            double most = 0;
            for (const auto& c : circles) {
                most = std::max(most, std::hypot(c[0] - x, c[1] - y) + c[2]);
            }
            return most;
        };
        const auto [x, y, r] = enclosing_circle(circles);
        CHECK(reach(x, y) <= r);
        // The reach is convex in the centre: if no near centre is better, none is.
        for (int k = 0; k < 36; ++k) {
            const double step = 1e-3, angle = 0.1745 * k;
            CHECK(reach(x + step * std::cos(angle), y + step * std::sin(angle)) >= r - 1e-9);
        }
    }
}

TEST_CASE("no circle at all, or a negative radius, is a broken contract")
{
    CHECK_THROWS_AS(enclosing_circle({}), ContractBroken);
    CHECK_THROWS_AS(enclosing_circle({{{0, 0, -1}}}), ContractBroken);
}
