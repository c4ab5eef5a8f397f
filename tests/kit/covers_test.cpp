// SPDX-License-Identifier: GPL-3.0-or-later
/// Bags and bands as the file gives them.
#include <catch2/catch.hpp>

#include "tuckwright/kit_reader.hpp"

using namespace tuckwright;

TEST_CASE("bags and bands are kept apart from the items, wherever they stand")
{
    const auto kit = read_kit_text("kit: Soup\nunits: {length: cm}\nitems:\n"
                                   "  - {id: strap, weight: 20, band: {girth: 30.00000005}}\n"
                                   "  - {id: lid, weight: 1, cylinder: {diameter: 13, height: 1}, closes: {item: pot, adds: 0.4, intrudes: 0.6}}\n"
                                   "  - {id: sack, name: Canvas sack, weight: 2 oz, bag: {girth: 40.00000005, length: 22.00000005, thickness: 0.10000005}}\n"
                                   "  - {id: pot, weight: 9, cylinder: {diameter: 12.8, height: 9}, inside: {wall: 0.1, base: 0.1}}\n"
                                   "  - {id: cord, weight: 0, band: {girth: 1 m}}\n",
                                   "kit.yaml");
    REQUIRE(kit.ok());
    REQUIRE(kit->items.size() == 2);
    CHECK(kit->items[0].id == "lid");
    REQUIRE(kit->items[0].closes);
    CHECK(kit->items[0].closes->item == 1);
    CHECK(kit->items[1].id == "pot");
    REQUIRE(kit->bag);
    CHECK(kit->bag->id == "sack");
    CHECK(kit->bag->name == "Canvas sack");
    CHECK(kit->bag->weight_g == Approx(56.69904625));
    // What is within is rounded down, what lies outside up.
    CHECK(kit->bag->girth == 400);
    CHECK(kit->bag->length == 220);
    CHECK(kit->bag->thickness == 1.000001);
    REQUIRE(kit->bands.size() == 2);
    CHECK(kit->bands[0] == Band{"strap", "strap", 20, 300});
    CHECK(kit->bands[1] == Band{"cord", "cord", 0, 1000});
}

TEST_CASE("a band may hold a lid, wherever the two stand in the file")
{
    const auto kit = read_kit_text("kit: Soup\nitems:\n"
                                   "  - {id: elastic, weight: 5, band: {girth: 450, over: lid}}\n"
                                   "  - {id: lid, weight: 1, cylinder: {diameter: 130, height: 10}, closes: {item: pot, adds: 4, intrudes: 6}}\n"
                                   "  - {id: pot, weight: 9, cylinder: {diameter: 128, height: 90}, inside: {wall: 1, base: 1}}\n",
                                   "kit.yaml");
    REQUIRE(kit.ok());
    REQUIRE(kit->items.size() == 2);
    REQUIRE(kit->bands.size() == 1);
    CHECK(kit->bands[0] == Band{"elastic", "elastic", 5, 450, "lid"});
}

TEST_CASE("a kit without bag and bands has none")
{
    const auto kit =
        read_kit_text("kit: Soup\nitems:\n  - {id: tin, weight: 1, cylinder: {diameter: 9, height: 9}}\n", "kit.yaml");
    REQUIRE(kit.ok());
    CHECK(!kit->bag);
    CHECK(kit->bands.empty());
}
