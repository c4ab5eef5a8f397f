// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "tuckwright/geometry.hpp"

using namespace tuckwright;

TEST_CASE("how far a point lies outside of a hull in the plane")
{
    const std::vector<std::array<double, 2>> square{{0, 0}, {10, 0}, {10, 10}, {0, 10}, {5, 5}, {5, 0}};
    CHECK(distance_outside(square, {5, 5}) == 0);
    CHECK(distance_outside(square, {10, 3}) == 0);
    CHECK(distance_outside(square, {13, 3}) == Approx(3));
    CHECK(distance_outside(square, {13, 14}) == Approx(5));                  // 3-4-5 from the corner
    CHECK(distance_outside({{0, 0}, {10, 0}, {4, 0}}, {4, 2}) == Approx(2)); // a line
    CHECK(distance_outside({{0, 0}, {10, 0}}, {4, 0}) == Approx(0).margin(1e-12));
    CHECK(distance_outside({{3, 4}}, {0, 0}) == Approx(5));
    CHECK(std::isinf(distance_outside({}, {0, 0})));
}
