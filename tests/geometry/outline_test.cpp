// SPDX-License-Identifier: GPL-3.0-or-later
/// The way round the outline of solids seen from above, against lengths known in closed form.
#include <catch2/catch.hpp>
#include <cmath>
#include <numbers>

#include "support/random_solids.hpp"
#include "tuckwright/geometry.hpp"

using namespace tuckwright;

namespace {

constexpr double pi = std::numbers::pi;

Solid standing(double diameter, double height, double x, double y, double z = 0)
{
    return {Cylinder{diameter, height}, {{x, y, z}, {}}};
}

/// Never below, and at most a share of 1e-6 above.
void check_girth(const std::vector<Solid>& solids, double truth)
{
    CHECK(outline_girth(solids) >= truth * (1 - 1e-12));
    CHECK(outline_girth(solids) <= truth * (1 + 1.01e-6));
}

} // namespace

TEST_CASE("the way round equal discs is that of an open belt")
{
    const double d = 50;
    check_girth({standing(d, 60, 3, 4)}, pi * d);
    check_girth({standing(d, 60, -25, 0), standing(d, 20, 25, 0, 900)}, 2 * d + pi * d);
    check_girth({standing(d, 60, 0, 0), standing(d, 60, d, 0), standing(d, 60, 25, 25 * std::sqrt(3))}, 3 * d + pi * d);
    check_girth({standing(d, 60, 0, 0), standing(d, 60, d, 0), standing(d, 60, 2 * d, 0)}, 4 * d + pi * d);
    check_girth({standing(d, 60, 0, 0), standing(20, 60, 10, 5)}, pi * d); // within the other
    CHECK(outline_girth({}) == 0);
}

TEST_CASE("the way round boxes and what lies is that of rectangles, however turned in the plan")
{
    for (const Quaternion turn : {Quaternion{1, 0, 0, 0}, Quaternion{1, 0, 0, 1}, Quaternion{5, 0, 0, 2}}) {
        check_girth({{Box{80, 30, 10}, {{1, 2, 3}, turn}}}, 220);
        check_girth({{Cylinder{30, 80}, {{7, 0, 0}, compose(turn, {1, 0, 1, 0})}}}, 220); // lying
    }
    // Tipped by the angle of 3, 4, 5 about y, 80 x 10 reaches 80 * 4/5 + 10 * 3/5 along x.
    check_girth({{Box{80, 30, 10}, {{0, 0, 40}, {3, 0, 1, 0}}}}, 2 * (80 * 0.8 + 10 * 0.6 + 30));
    // A square and a disc beside it: the half of the disc's outline, and three sides.
    check_girth({{Box{40, 40, 40}, {{0, 0, 0}, {}}}, standing(40, 40, 60, 0)}, 40 + 2 * (20 + 60) + pi * 20);
}
