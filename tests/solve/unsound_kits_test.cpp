// SPDX-License-Identifier: GPL-3.0-or-later
/// Kits built in code: unsound ones are refused before any search, and the rules of kinds are kept.
#include <catch2/catch.hpp>

#include <algorithm>

#include "tuckwright/kit_in_code.hpp"
#include "tuckwright/proof.hpp"
#include "tuckwright/solve.hpp"

using namespace tuckwright;

namespace {

/// A beaker, a lid of a pot that is not there, and a bottle of spirit that just fits the beaker.
Kit beaker_and_bottle()
{
    Item beaker{.id = "beaker", .name = "Beaker", .weight_g = 50, .outside = Cylinder{80, 90}, .kinds = {Kind::lips}};
    beaker.inside = cavity_of(beaker.outside, 1, 1);
    const Item bottle{.id = "bottle", .name = "Bottle", .weight_g = 90, .outside = Cylinder{60, 80}, .kinds = {Kind::fuel}};
    return {.name = "In code", .clearance = 0.5, .items = {beaker, bottle}};
}

Bundle packed(const Kit& kit) { return solve(kit, {.effort = Effort::quick, .threads = 1}); }

} // namespace

TEST_CASE("a kit that is unsound is refused with the item's name, not searched")
{
    Kit kit = beaker_and_bottle();
    kit.items[1].closes = Closure{7, 0, 0};
    CHECK_THROWS_AS(packed(kit), ContractBroken);
    CHECK_THROWS_WITH(packed(kit), Catch::Contains("item 'bottle': it closes what is no open vessel"));
    CHECK_THROWS_WITH(packed({}), Catch::Contains("the kit has no items"));
    CHECK_THROWS_WITH(packed(kit), Catch::StartsWith("src/solve/solve.cpp:")); // wherever it was built
}

TEST_CASE("fuel lies in a beaker by size alone, and beside it once the usual rules are asked for")
{
    const Kit bare = beaker_and_bottle();
    const Bundle nested = packed(bare);
    REQUIRE(has_bundle(nested.status));
    CHECK(nested.items[1].in.has_value());
    const Kit kit = with_usual_rules(bare);
    const Bundle apart = packed(kit);
    REQUIRE(has_bundle(apart.status));
    CHECK_FALSE(apart.items[1].in.has_value());
    CHECK(check(apart).empty());
    CHECK(check_against(apart, kit).empty());
    CHECK_FALSE(check_against(nested, kit).empty());
}
