// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <catch2/catch.hpp>

#include "bench/generated_kits.hpp"
#include "bench/suites.hpp"
#include "tuckwright/kit_reader.hpp"

using namespace tuckwright;
using namespace tuckwright::bench;

TEST_CASE("generated kits are sound, with as many vessels as they should have, the first of them a pot")
{
    for (const int items : {8, 12, 16, 25, 40, 50, 100, 400}) {
        for (std::uint64_t seed = 1; seed <= 12; ++seed) {
            CAPTURE(items, seed);
            const auto kit = read_kit_text(generated_kit(items, seed), "kit.yaml");
            REQUIRE(kit.ok());
            REQUIRE(kit->items.size() == static_cast<std::size_t>(items));
            const auto vessels = std::count_if(kit->items.begin(), kit->items.end(),
                                               [](const Item& item) { return item.inside.has_value(); });
            CHECK(100 * vessels >= 18 * items);
            CHECK(100 * vessels <= 30 * items);
            REQUIRE(kit->items.front().inside.has_value());
            CHECK(kit->items.front().inside->opens == Opening::top);
        }
    }
}

TEST_CASE("the same number of items and seed give the same text, others another")
{
    CHECK(generated_kit(12, 3) == generated_kit(12, 3));
    CHECK(generated_kit(12, 3) != generated_kit(12, 4));
    CHECK(generated_kit(12, 3) != generated_kit(12, 5));
    CHECK(generated_kit(1, 2).find("inside") != std::string::npos);
    // The stored bests are those of these very kits: what a later generator makes must not pass for them.
    std::uint64_t digest = 14695981039346656037U; // FNV-1a, 64 bits (Fowler, Noll, Vo; RFC 9923)
    for (const Case& one : kits({}).cases) {
        for (const char c : one.kit) {
            digest = (digest ^ static_cast<unsigned char>(c)) * 1099511628211U;
        }
    }
    CHECK(digest == 3534597834345309491U);
}

TEST_CASE("every case of every suite is a sound kit with the number of things that it says")
{
    for (const Suite& suite :
         {equal_circles(), circles_of_radii(), classic_boxes(), rings(), kits({}), growth(), threads()}) {
        CHECK_FALSE(suite.cases.empty());
        for (const Case& one : suite.cases) {
            CAPTURE(one.name);
            CHECK(one.suite == suite.name);
            const auto kit = read_kit_text(one.kit, "kit.yaml");
            REQUIRE(kit.ok());
            int things = 0;
            for (const Item& item : kit->items) {
                things += item.count;
            }
            CHECK(things == one.items);
            CHECK(one.figure(1000) > one.figure(999));
        }
    }
}
