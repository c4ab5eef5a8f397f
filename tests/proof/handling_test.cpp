// SPDX-License-Identifier: GPL-3.0-or-later
/// What things bear, and after how many others they come out: told rightly, and wrongly.
#include <catch2/catch.hpp>

#include "faults.hpp"
#include "proof_support.hpp"
#include "support/handmade_bundles.hpp"

using namespace tuckwright;
using namespace tuckwright::handmade;

TEST_CASE("loads that are borne, and reach that is told rightly, are no objection")
{
    CHECK(objections_of(laden_slab()).empty());
    CHECK(objections_of(card_in_sleeve_in_pot()).empty());
    auto light = laden_slab();
    light.items[2].bears_g = 0; // nothing lies on it
    CHECK(objections_of(light).empty());
}

TEST_CASE("more than a thing may bear is refused, through others and with what they hold")
{
    refuse({{"the tin with its rice", laden_slab, [](Bundle& b) { b.items[0].bears_g = 499.999; }, "load",
             "\"slab\" bears 499.999 g, but 500 g may lie on it: \"tin\", \"glass\""},
            {"the glass", laden_slab, [](Bundle& b) { b.items[1].bears_g = 0; }, "load",
             "\"tin\" bears 0 g, but 250 g may lie on it: \"glass\""},
            {"heavier than told", laden_slab, [](Bundle& b) { b.items[2].weight_g = 251; }, "load", "\"slab\" bears"},
            {"fuller than told", laden_slab, [](Bundle& b) { b.items[1].contents_g = 51; }, "load", "\"slab\" bears"},
            {"in a pot, with its lid", card_in_sleeve_in_pot, [](Bundle& b) { b.items[0].bears_g = 299; }, "load",
             "\"plate\" bears 299 g, but 300 g may lie on it: \"pot\", \"ring\", \"tin\", \"card\", \"pot-lid\", "
             "\"salt\""},
            {"a negative limit", laden_slab, [](Bundle& b) { b.items[0].bears_g = -1; }, "number", "what it bears"}});
}

TEST_CASE("something on what may bear nothing is refused")
{
    refuse({{"the glass on the tin", laden_slab, [](Bundle& b) { b.items[1].nothing_on_top = true; }, "load",
             "nothing may lie on \"tin\", but these are not proved to lie off it: \"glass\""},
            {"on the lowest, through others", laden_slab, [](Bundle& b) { b.items[0].nothing_on_top = true; }, "load",
             "\"tin\", \"glass\""},
            {"weightless", laden_slab,
             [](Bundle& b) {
                 b.items[2].weight_g = 0;
                 b.items[1].nothing_on_top = true;
             },
             "load", "\"glass\""},
            {"in the pot", card_in_sleeve_in_pot, [](Bundle& b) { b.items[3].nothing_on_top = true; }, "load",
             "nothing may lie on \"tin\", but these are not proved to lie off it: \"card\""},
            {"a little over a neighbour", laden_slab,
             [](Bundle& b) {
                 b.items[3].solids[0] = box(20, 60, 30, {110, 30, 15});
                 center(b, 2).x += 50;
                 b.certificate.rests[2].point.x += 50;
             },
             "load", "nothing may lie on \"post\""}});
}

TEST_CASE("its lid, what it holds, what it is in and what stands beside it are no load")
{
    auto bundle = card_in_sleeve_in_pot();
    for (const std::size_t item : {1U, 2U, 4U, 5U, 6U}) { // pot, ring, card, lid, salt
        bundle.items[item].nothing_on_top = true;
    }
    CHECK(objections_of(bundle).empty());
    auto stacked = card_in_sleeve_in_pot(); // something on the pot's lid lies on the pot too
    stacked.items.push_back(item("map", cylinder(100, 2, {0, 0, 105}), "flat"));
    stacked.envelope = Cylinder{129, 106};
    stacked.lower_bound_ml = 100;
    step(stacked, 7);
    lies_on(stacked, 7, 5, {0, 0, 103.995});
    stacked.items[0].bears_g = 350;
    stacked.items[1].out_after = 1;
    stacked.items[3].out_after = 3;
    stacked.items[4].out_after = stacked.items[6].out_after = 2;
    stacked.items[0].out_after = 2;
    CHECK(objections_of(stacked).empty());
    for (const std::size_t item : {1U, 5U}) {
        auto bare = stacked;
        bare.items[item].nothing_on_top = true;
        CHECK(said(bare, "load").find("but these are not proved to lie off it: \"map\"") != std::string::npos);
    }
}

TEST_CASE("a number of things before it that is not so is refused")
{
    refuse({{"too few", laden_slab, [](Bundle& b) { b.items[0].out_after = 1; }, "reach",
             "\"slab\": it is told to come out after 1 things, but it comes out after 2"},
            {"too many", laden_slab, [](Bundle& b) { b.items[2].out_after = 1; }, "reach",
             "\"glass\": it is told to come out after 1 things, but it comes out after 0"},
            {"none told", laden_slab, [](Bundle& b) { b.items[2].out_after.reset(); }, "reach", "does not tell"},
            {"nobody asked", laden_slab, [](Bundle& b) { b.items[2].reach = Wanted::any; }, "reach", "nobody asked"},
            {"a step left out", laden_slab, [](Bundle& b) { b.steps.pop_back(); }, "step", "\"glass\": no step places it"},
            {"a lid forgotten", card_in_sleeve_in_pot, [](Bundle& b) { b.items[4].out_after = 0; }, "reach",
             "\"card\": it is told to come out after 0 things, but it comes out after 1"},
            {"what lies on it forgotten", card_in_sleeve_in_pot, [](Bundle& b) { b.items[3].out_after = 1; }, "reach",
             "after 2"}});
}

TEST_CASE("what lies in the way by its shape is counted once, with all that it holds")
{
    auto bundle = pot_beside_tub(); // oats in a cup in a pot under a lid; spirit in a cup in an open tub
    const auto count = [&](std::size_t item, std::size_t told) {
        auto changed = bundle;
        changed.items[item].reach = Wanted::early;
        changed.items[item].out_after = told;
        return first_rule(changed);
    };
    CHECK(count(2, 1) == "none"); // oats: the lid
    CHECK(count(1, 1) == "none"); // the cup with the oats
    CHECK(count(3, 0) == "none"); // the lid itself
    CHECK(count(6, 0) == "none");
    CHECK(count(2, 0) == "reach");
    CHECK(count(2, 2) == "reach");
    CHECK(count(6, 1) == "reach");
}

TEST_CASE("what can't be drawn out where it lies comes after the vessel")
{
    auto bundle = pot_over_cup(); // a pot upside down over a cup, its lid loose on top
    bundle.items[1].reach = Wanted::first;
    bundle.items[1].out_after = 2; // the lid and the pot
    CHECK(objections_of(bundle).empty());
    bundle.items[1].out_after = 1;
    CHECK(said(bundle, "reach") == "\"cup\": it is told to come out after 1 things, but it comes out after 2");
}
