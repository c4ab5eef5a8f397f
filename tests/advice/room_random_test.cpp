// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "advice/random_bundles.hpp"
#include "advice/room_judge.hpp"
#include "support/handmade_bundles.hpp"
#include "support/workload.hpp"
#include "tuckwright/proof.hpp"

using namespace tuckwright;
using namespace room_test;

namespace {

RoomOptions quick()
{
    RoomOptions options;
    options.effort = Effort::quick;
    return options;
}

} // namespace

TEST_CASE("in 200 random bundles every thing told passes the exact check, and none 2 % larger fits near it")
{
    int things = 0;
    const int bundles = test::count(200, 6);
    for (int seed = 0; seed < bundles; ++seed) {
        const Bundle bundle = random_bundle(static_cast<std::uint64_t>(seed));
        INFO("seed " << seed);
        things += judge(bundle, room_left(bundle, quick()));
    }
    CHECK(things > 4 * bundles); // the bundles have room to spare
}

TEST_CASE("bundles packed by hand of every kind: on their side, upside down, pressed, narrow, in a bag")
{
    int things = 0;
    for (const auto& sample : handmade::all()) {
        const Bundle bundle = sample.make();
        INFO(sample.name);
        if (bundle.items.size() < 20) {
            things += judge(bundle, room_left(bundle, quick()));
        }
    }
    CHECK(things > 20);
}

TEST_CASE("the judge finds room where there is some")
{
    const Bundle bundle = handmade::cup_in_lidded_pot();
    // In the empty cup, 78 mm wide and 86 mm high, a tin half as large, and larger by 2 %, has room all round.
    const Solid tin = handmade::cylinder(30, 40, {0, 0, 24.1});
    CHECK(least_conflict(bundle, Lodging{1, 0}, Posing::standing, tin, 1) <= 0);
    CHECK(least_conflict(bundle, Lodging{1, 0}, Posing::standing, scaled(tin, 1.02), 1) <= 0);
    CHECK(least_conflict(bundle, Lodging{1, 0}, Posing::standing, scaled(tin, 3), 1) > 0);
    // What fits nowhere is not proved either.
    CHECK_FALSE(with_one_more(bundle, Lodging{1, 0}, scaled(tin, 3)).has_value());
    CHECK(with_one_more(bundle, Lodging{1, 0}, handmade::cylinder(30, 40, {0, 0, 24})).has_value());
    CHECK_FALSE(with_one_more(bundle, Lodging{1, 0}, handmade::cylinder(30, 40, {0, 0, 24.1})).has_value()); // it hovers
    CHECK_FALSE(with_one_more(bundle, std::nullopt, handmade::cylinder(30, 40, {0, 0, 20})).has_value());
}

TEST_CASE("the same bundle, the same answer, on any number of threads")
{
    for (const std::uint64_t seed : {3, 4}) {
        const Bundle bundle = random_bundle(seed);
        RoomOptions one = quick(), two = quick();
        one.threads = 1;
        two.threads = 3;
        CHECK(room_json(bundle, room_left(bundle, one)) == room_json(bundle, room_left(bundle, two)));
    }
}

TEST_CASE("stopped before it begins, it tells nothing and says so")
{
    const std::atomic<bool> stop = true;
    RoomOptions options = quick();
    options.stop = &stop;
    const Bundle bundle = handmade::cup_in_lidded_pot();
    const RoomAnswer answer = room_left(bundle, options);
    CHECK_FALSE(answer.complete);
    CHECK(answer.rooms.size() == 3);
    CHECK(room_text(bundle, answer).find("stopped before all places had been looked at") != std::string::npos);
}
