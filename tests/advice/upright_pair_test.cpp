// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "advice/upright_pair.hpp"
#include "support/random_solids.hpp"
#include "support/workload.hpp"

using namespace tuckwright;

namespace {

double along(const Hull& a, const Hull& b, Vec3 n) { return -support(b, -1.0 * n) - support(a, n); }

} // namespace

TEST_CASE("pairs with an axis in common are as far apart as the general search says")
{
    test::Dice dice(5);
    int known = 0;
    const int pairs = test::count(4000, 400);
    for (int k = 0; k < pairs; ++k) {
        Solid a = test::random_solid(dice, 90, true), b = test::random_solid(dice, 90, true);
        if (k % 2 == 0) { // both upright, turned about it
            a.pose.turn = {1000, 0, 0, dice.below(2001) - 1000};
            b.pose.turn = {1000, 0, 0, dice.below(2001) - 1000};
        }
        const Hull first = hull_of(a), second = hull_of(b, {0, 0, k % 3 == 0 ? 5.0 : 0.0});
        const auto normal = advice::upright_normal(first, second);
        if (!normal) {
            continue;
        }
        ++known;
        INFO("pair " << k);
        CHECK(norm(*normal) == Approx(1).margin(1e-12));
        const double mine = along(first, second, *normal), theirs = separation(first, second).distance;
        CHECK(mine >= theirs - 1e-6); // overlaps are told there by an upper bound of their depth
        if (theirs > 1e-6) {
            CHECK(mine == Approx(theirs).margin(1e-6));
        }
    }
    CHECK(known > pairs / 4);
}

TEST_CASE("what tapers, leans or is dragged aside is another kind of pair")
{
    const Hull disc = hull_of({Cylinder{20, 30}, {}});
    CHECK_FALSE(advice::upright_normal(disc, hull_of({Cylinder{20, 30, 10}, {{50, 0, 0}, {}}})).has_value());
    CHECK_FALSE(advice::upright_normal(disc, hull_of({Cylinder{20, 30}, {{50, 0, 0}, {10, 1, 0, 0}}})).has_value());
    CHECK_FALSE(advice::upright_normal(disc, hull_of({Cylinder{20, 30}, {{50, 0, 0}, {}}}, {3, 0, 0})).has_value());
    CHECK_FALSE(advice::upright_normal(hull_of({Box{1, 2, 3}, {}}), hull_of({Box{1, 2, 3}, {{9, 0, 0}, {}}})).has_value());
    const auto away = advice::upright_normal(disc, hull_of({Box{10, 10, 40}, {{50, 0, 0}, {}}}));
    REQUIRE(away.has_value());
    CHECK(*away == Vec3{1, 0, 0});
}
