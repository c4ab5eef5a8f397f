// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include <algorithm>
#include <numbers>

#include "support/random_solids.hpp"
#include "tuckwright/geometry.hpp"

using namespace tuckwright;
using test::Dice;

namespace
{

/// The largest dot product over points of the solid's edges, sampled finely in long double, without supports.
long double sampled_support(const Solid& solid, Vec3 d)
{
    const Matrix3 m = rotation_matrix(solid.pose.turn);
    const auto along = [&](long double x, long double y, long double z) {
        const long double p[3] = {x, y, z};
        long double sum = static_cast<long double>(d.x) * solid.pose.center.x +
                          static_cast<long double>(d.y) * solid.pose.center.y +
                          static_cast<long double>(d.z) * solid.pose.center.z;
        for (std::size_t k = 0; k < 3; ++k) {
            sum += p[k] * (static_cast<long double>(m[0][k]) * d.x + static_cast<long double>(m[1][k]) * d.y +
                           static_cast<long double>(m[2][k]) * d.z);
        }
        return sum;
    };
    long double best = -1e9L;
    for (const int up : {-1, 1}) {
        if (const auto* box = std::get_if<Box>(&solid.shape)) {
            for (const int x : {-1, 1}) {
                for (const int y : {-1, 1}) {
                    best = std::max(best, along(x * box->length / 2, y * box->width / 2, up * box->height / 2));
                }
            }
        } else {
            const auto& c = std::get<Cylinder>(solid.shape);
            for (int k = 0; k < 20000; ++k) {
                const long double angle = 2 * std::numbers::pi_v<long double> * k / 20000;
                best = std::max(
                    best, along(c.diameter / 2 * std::cos(angle), c.diameter / 2 * std::sin(angle), up * c.height / 2));
            }
        }
    }
    return best;
}

} // namespace

TEST_CASE("the support agrees with the farthest sampled point")
{
    Dice dice(11);
    for (int k = 0; k < 60; ++k) {
        const Solid solid = test::random_solid(dice, 100, k % 2 == 0);
        const Vec3 d = dice.direction();
        const double reach = support(hull_of(solid), d);
        const auto sampled = static_cast<double>(sampled_support(solid, d));
        CHECK(reach >= sampled - 1e-9);
        CHECK(reach <= sampled + 1e-5); // a rim of 120 mm in 20000 steps: 60 mm * (1 - cos(pi / 20000)) < 1e-6 mm
    }
}

TEST_CASE("the support point is on the solid and attains the support, for any length of the direction")
{
    Dice dice(12);
    for (int k = 0; k < 500; ++k) {
        const Vec3 sweep = k % 3 == 0 ? dice.between(0, 300) * dice.direction() : Vec3{};
        const Hull hull = hull_of(test::random_solid(dice, 100, k % 2 == 0), sweep);
        const Vec3 d = dice.between(0.01, 50) * dice.direction();
        CHECK(dot(support_point(hull, d), d) == Approx(support(hull, d)).epsilon(1e-12).margin(1e-9));
        CHECK(support(hull, 3.0 * d) == Approx(3 * support(hull, d)).epsilon(1e-12));
    }
}

TEST_CASE("a cylinder's support along its own axis keeps all digits")
{
    const Hull turned = hull_of({Cylinder{200, 10}, {{0, 0, 0}, {7, 3, -2, 5}}});
    const Vec3 axis{turned.rotation[0][2], turned.rotation[1][2], turned.rotation[2][2]};
    CHECK(std::abs(support(turned, axis) - 5) < 1e-12);
}

TEST_CASE("a swept hull is the solid plus the sweep where that goes along the direction")
{
    Dice dice(13);
    for (int k = 0; k < 200; ++k) {
        const Solid solid = test::random_solid(dice, 50, false);
        const Vec3 sweep = dice.between(1, 100) * dice.direction();
        const Vec3 d = dice.direction();
        Solid moved = solid;
        moved.pose.center = solid.pose.center + sweep;
        const double ends = std::max(support(hull_of(solid), d), support(hull_of(moved), d));
        CHECK(support(hull_of(solid, sweep), d) == Approx(ends).margin(1e-9));
    }
}

TEST_CASE("the extent of a lying cylinder and of a swept box")
{
    const Extent lying = extent(hull_of({Cylinder{40, 100}, {{10, 20, 30}, {1, 0, 1, 0}}}));
    CHECK(lying.low.x == Approx(-40));
    CHECK(lying.high.x == Approx(60));
    CHECK(lying.low.y == Approx(0).margin(1e-12));
    CHECK(lying.high.z == Approx(50));
    const Extent swept = extent(hull_of({Box{10, 20, 30}, {}}, {0, -7, 100}));
    CHECK(swept.low.y == Approx(-17));
    CHECK(swept.high.y == Approx(10));
    CHECK(swept.low.z == Approx(-15));
    CHECK(swept.high.z == Approx(115));
}
