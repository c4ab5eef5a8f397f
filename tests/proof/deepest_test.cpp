// SPDX-License-Identifier: GPL-3.0-or-later
/// The judge of overlaps, by pairs whose overlap is known, and by points looked at one by one.
#include <catch2/catch.hpp>

#include "judge.hpp"
#include "proof/deepest.hpp"
#include "support/random_solids.hpp"
#include "support/workload.hpp"

using namespace tuckwright;

TEST_CASE("an overlap of two micrometres is found, and none where there is air")
{
    test::Dice dice(901);
    for (int trial = 0; trial < test::count(300, 30); ++trial) {
        // One stands on the other, both turned as one; then pressed in by so much, or lifted.
        const Quaternion turn = test::random_turn(dice);
        const double high = dice.between(0.5, 90), low = dice.between(0.5, 90), aside = dice.between(-8, 8);
        const Shape upper = dice.below(2) == 0 ? Shape(Cylinder{20, high}) : Shape(Box{20, 30, high});
        const Shape lower = dice.below(2) == 0 ? Shape(Cylinder{24, low}) : Shape(Box{22, 18, low});
        const auto below = judge::body_of(lower, {{1, 2, 3}, turn});
        for (const long double by : {0.002L, 0.0002L, -0.0002L, -1.0L}) {
            auto above = judge::body_of(upper, {{0, 0, 0}, turn});
            above.center = below.world({aside, aside / 2, low / 2.0L + high / 2.0L - by});
            const auto found = judge::deepest_common(above, below);
            CHECK(found <= by / 2 + 1e-9L);
            CHECK((by < 0 || found >= by / 2 - 3e-5L));
        }
    }
}

TEST_CASE("what comes down beside another, edge to edge, does not meet it")
{
    const auto placed = judge::body_of(Box{30, 20, 10}, {{45, 30, 5}, {}});
    const judge::Point down{0, 0, -1};
    CHECK(judge::deepest_on_the_way(judge::body_of(Box{30, 20, 10}, {{15, 10, 15}, {}}), down, placed) <= 0);
    CHECK(judge::deepest_on_the_way(judge::body_of(Box{30.1, 20.1, 10}, {{15, 10, 15}, {}}), down, placed) <= 0);
    CHECK(judge::deepest_on_the_way(judge::body_of(Box{30.1, 20.1, 10}, {{15, 10, -5}, {}}), down, placed) > 0.024L);
}

TEST_CASE("no point that is looked at lies deeper than the deepest, at rest and on the way")
{
    test::Dice dice(902);
    int common = 0;
    for (int trial = 0; trial < test::count(400, 40); ++trial) {
        const Solid one = test::random_solid(dice, 60, false), two = test::random_solid(dice, 60, false);
        const auto a = judge::body_of(one.shape, one.pose), b = judge::body_of(two.shape, two.pose);
        const auto sampled = judge::common_depth(a, b, 6), deepest = judge::deepest_common(a, b);
        if (sampled > 0) {
            ++common;
            CHECK(deepest >= sampled - 2e-5L);
        }
        const Vec3 d = dice.direction();
        const judge::Point ahead{d.x, d.y, d.z};
        const auto on_the_way = judge::deepest_on_the_way(a, ahead, b);
        CHECK((deepest < 0 || on_the_way >= deepest - 5e-4L));
        for (const long double back : {20.0L, 70.0L}) {
            auto there = a;
            for (std::size_t k = 0; k < 3; ++k) {
                there.center[k] -= back * ahead[k];
            }
            const auto seen = judge::common_depth(there, b, 6);
            CHECK((seen < 0 || on_the_way >= seen - 5e-4L));
        }
    }
    CHECK(common >= test::count(80, 8));
}
