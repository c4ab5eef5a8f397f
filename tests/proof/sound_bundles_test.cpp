// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>
#include <chrono>

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
