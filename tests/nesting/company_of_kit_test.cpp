// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "nesting/company_of_kit.hpp"
#include "nesting/lower_bound.hpp"
#include "support/kit_text.hpp"

using namespace tuckwright;
using namespace tuckwright::nesting;
using namespace tuckwright::test;

namespace {

/// pot 0, lid 1, mug 2 (two copies), rod 3.
Kit kitchen(std::vector<CarryRule> rules)
{
    KitText text(round_bundle(), 0.5);
    text.item("pot", cylinder(100, 80) + ", inside: {wall: 1, base: 1}");
    text.item("lid", cylinder(102, 9) + ", closes: {item: pot, adds: 4, intrudes: 5}");
    text.item("mug", cylinder(70, 60) + ", inside: {wall: 1, base: 1}", 2);
    text.item("rod", cylinder(80, 20));
    Kit kit = kit_of(text.text());
    kit.rules = std::move(rules);
    return kit;
}

} // namespace

TEST_CASE("without rules, company is empty") { CHECK(kit_scene(kitchen({}), {true}).scene.company.empty()); }

TEST_CASE("a rule counts for all copies, and a shut lid's for its vessel")
{
    const auto shut = kit_scene(kitchen({{Keep::apart, "mug", "rod", "x"}, {Keep::apart, "lid", "rod", "x"}}), {true});
    REQUIRE(shut.origins.size() == 4); // pot with lid, two mugs, rod
    const auto& apart = shut.scene.company.apart;
    CHECK(apart[1][3]);
    CHECK(apart[3][2]);
    CHECK(apart[0][3]);
    CHECK_FALSE(apart[0][1]);
    const auto loose = kit_scene(kitchen({{Keep::out, "rod", "mug", "x"}, {Keep::within, "lid", "pot", "x"}}), {false});
    REQUIRE(loose.origins.size() == 5); // pot, lid, two mugs, rod
    CHECK(loose.scene.company.out[4][2]);
    CHECK(loose.scene.company.out[4][3]);
    CHECK_FALSE(loose.scene.company.out[2][4]);
    CHECK(loose.scene.company.within[1] == std::vector<std::vector<int>>{{0}});
    CHECK(kit_scene(kitchen({{Keep::within, "lid", "pot", "x"}}), {true}).scene.company.within[0].empty());
}

TEST_CASE("rules that can't be kept are told with the items and the reason")
{
    CHECK_FALSE(rules_misfit(kitchen({{Keep::within, "rod", "pot", "the kit says so"}})));
    const auto wide = rules_misfit(kitchen({{Keep::within, "rod", "mug", "the kit says so"}}));
    REQUIRE(wide);
    CHECK(*wide == "the rod must lie in the mug (the kit says so), but fits it in no turn");
    const auto both = rules_misfit(kitchen({{Keep::within, "rod", "pot", "the kit says so"},
                                            {Keep::within, "mug", "pot", "the kit says so"},
                                            {Keep::apart, "mug", "rod", "fuel keeps apart from food"}}));
    REQUIRE(both);
    CHECK(*both == "the mug and the rod must both lie in the pot, but fuel keeps apart from food");
    const auto together = rules_misfit(kitchen({{Keep::together, "rod", "mug", "the kit says so"},
                                                {Keep::within, "rod", "pot", "the kit says so"},
                                                {Keep::apart, "mug", "rod", "fuel keeps apart from food"}}));
    REQUIRE(together);
    CHECK(*together == "the mug and the rod must lie together and in the pot, but fuel keeps apart from food");
    CHECK(misfit_proof(kitchen({{Keep::within, "rod", "mug", "the kit says so"}})) == wide);
    // Two mugs could hold one each: nothing is proved.
    Kit two = kitchen(
        {{Keep::within, "pin", "mug", "x"}, {Keep::within, "nut", "mug", "x"}, {Keep::apart, "pin", "nut", "x"}});
    Item small = two.items.back();
    small.outside = Cylinder{8, 20};
    small.id = "pin";
    two.items.push_back(small);
    small.id = "nut";
    two.items.push_back(small);
    CHECK_FALSE(rules_misfit(two));
}

TEST_CASE("rules only raise the lower bound")
{
    const double free = lower_bound_ml(kitchen({}));
    CHECK(lower_bound_ml(kitchen({{Keep::out, "mug", "pot", "x"}})) >= free);
    CHECK(lower_bound_ml(kitchen({{Keep::apart, "mug", "pot", "x"}, {Keep::apart, "rod", "pot", "x"}})) > free);
}
