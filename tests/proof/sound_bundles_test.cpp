// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>
#include <chrono>

#include "faults.hpp"
#include "proof_support.hpp"
#include "support/handmade_bundles.hpp"

using namespace tuckwright;

TEST_CASE("bundles packed by hand are proved")
{
    for (const auto& sample : handmade::all()) {
        INFO(sample.name << objections_of(sample.make()));
        CHECK(check(sample.make(), 100).empty());
    }
}

TEST_CASE("the proof follows the bundle as data: the order of items does not matter to it")
{
    auto bundle = handmade::touching_boxes();
    std::swap(bundle.items[0], bundle.items[1]); // copies alike in all but their place
    std::swap(bundle.certificate.rests[4].on, bundle.certificate.rests[5].on);
    INFO(objections_of(bundle));
    CHECK(check(bundle, 100).empty());
    for (const auto& sample : handmade::all()) {
        const Bundle backwards = reversed(sample.make());
        INFO(sample.name << objections_of(backwards));
        CHECK(check(backwards, 100).empty());
    }
}

TEST_CASE("a bundle may be put together in several orders")
{
    using Steps = std::vector<std::pair<std::size_t, std::array<std::int64_t, 3>>>;
    const std::array<std::int64_t, 3> down{0, 0, -1}, up{0, 0, 1}, level{-5, 3, 0}, aslant{2, 1, -1};
    const auto rule_after = [](Bundle bundle, const Steps& steps) {
        bundle.steps.clear();
        for (const auto& [item, direction] : steps) {
            bundle.steps.push_back({item, direction, ""});
        }
        return first_rule(bundle);
    };
    const auto lidded = handmade::cup_in_lidded_pot();
    CHECK(rule_after(lidded, {{0, down}, {1, down}, {2, down}}) == "none");
    CHECK(rule_after(lidded, {{1, down}, {0, aslant}, {2, down}}) == "none");
    CHECK(rule_after(lidded, {{1, down}, {2, level}, {0, level}}) == "none"); // the lid slides over the rim
    CHECK(rule_after(lidded, {{2, down}, {0, down}, {1, down}}) == "step");
    const auto sleeve = handmade::sleeve_round_cup_in_pot();
    CHECK(rule_after(sleeve, {{0, down}, {1, down}, {2, down}}) == "none");
    CHECK(rule_after(sleeve, {{2, up}, {1, down}, {0, down}}) == "none"); // on the table, from below
    CHECK(rule_after(sleeve, {{1, down}, {2, up}, {0, down}}) == "step"); // the pot's floor is in the way
    const auto over = handmade::pot_over_cup();
    CHECK(rule_after(over, {{1, up}, {0, level}, {2, down}}) == "none");
    CHECK(rule_after(over, {{0, down}, {1, up}, {2, down}}) == "step"); // through the ground
    // What waits on the table in another vessel is in nobody's way.
    auto two = handmade::many_pots(2);
    CHECK(rule_after(two, {{2, down},
                           {1, down},
                           {5, down},
                           {4, down},
                           {0, down},
                           {3, down},
                           {6, down},
                           {7, down},
                           {8, down},
                           {9, down},
                           {10, down},
                           {11, down}}) == "none");
}

TEST_CASE("a full vessel may be in another and have a lid shut on it")
{
    auto bundle = handmade::cup_in_lidded_pot();
    bundle.items[1].full = true;
    CHECK(first_rule(bundle) == "none");
    bundle.items[0].full = true;
    CHECK(first_rule(bundle) == "forest");
    bundle.items.erase(bundle.items.begin() + 1); // the cup
    bundle.items[1].closes = 0;
    bundle.steps = {{1, {0, 0, -1}, ""}, {0, {0, 0, -1}, ""}};
    bundle.certificate.rests.pop_back();
    CHECK(first_rule(bundle) == "none");
}

TEST_CASE("a handle may stand above the rim beside the mouth")
{
    auto bundle = handmade::rod_out_of_cup();
    bundle.items[0].solids.push_back(handmade::box(4, 20, 30, {-52, 0, 85}));
    bundle.envelope = Cylinder{120, 162};
    INFO(objections_of(bundle));
    CHECK(first_rule(bundle) == "none");
}

TEST_CASE("sixty items are checked in a blink")
{
    const auto bundle = handmade::many_pots(5);
    REQUIRE(bundle.items.size() == 75);
    const auto start = std::chrono::steady_clock::now();
    INFO(objections_of(bundle));
    CHECK(check(bundle, 100).empty());
    const std::chrono::duration<double> took = std::chrono::steady_clock::now() - start;
    CHECK(took.count() < 4.0); // about a tenth of that in a release build on an idle machine
}
