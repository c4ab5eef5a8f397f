// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "support/handmade_bundles.hpp"
#include "tuckwright/bundle.hpp"
#include "tuckwright/contract.hpp"

using namespace tuckwright;

TEST_CASE("each status has its word, and the first three have a bundle")
{
    CHECK(std::string(to_string(Status::proved_best)) == "proved-best");
    CHECK(std::string(to_string(Status::found)) == "found");
    CHECK(std::string(to_string(Status::stopped)) == "stopped");
    CHECK(std::string(to_string(Status::does_not_fit)) == "does-not-fit");
    CHECK(std::string(to_string(Status::not_found)) == "not-found");
    CHECK_THROWS_AS(to_string(static_cast<Status>(7)), ContractBroken);
    CHECK(has_bundle(Status::proved_best));
    CHECK(has_bundle(Status::found));
    CHECK(has_bundle(Status::stopped));
    CHECK_FALSE(has_bundle(Status::does_not_fit));
    CHECK_FALSE(has_bundle(Status::not_found));
}

TEST_CASE("the gap is the share above the bound, and never negative")
{
    auto bundle = handmade::touching_boxes(); // 60 x 40 x 20 mm: 48 ml
    bundle.lower_bound_ml = 40;
    CHECK(gap(bundle) == Approx(0.2));
    bundle.lower_bound_ml = 48;
    CHECK(gap(bundle) == 0);
    bundle.lower_bound_ml = 48.0000000001; // rounding of a bound that is met
    CHECK(gap(bundle) == 0);
}

TEST_CASE("a gap needs a bundle and a bound")
{
    auto bundle = handmade::touching_boxes();
    bundle.lower_bound_ml = 0;
    CHECK_THROWS_AS(gap(bundle), ContractBroken);
    bundle.lower_bound_ml = 40;
    bundle.status = Status::not_found;
    CHECK_THROWS_AS(gap(bundle), ContractBroken);
}

TEST_CASE("the total weight is that of all items and what they hold")
{
    auto bundle = handmade::cup_in_lidded_pot();
    bundle.items[0].weight_g = 212;
    bundle.items[1].weight_g = 68.5;
    bundle.items[2].weight_g = 0;
    bundle.items[1].contents_g = 30.25;
    CHECK(total_weight_g(bundle) == Approx(310.75));
    bundle.items.clear();
    CHECK(total_weight_g(bundle) == 0);
}

TEST_CASE("labels tell copies apart, but only where there are several")
{
    const auto tins = handmade::tangent_cylinders();
    CHECK(label(tins, 0) == "tin 1");
    CHECK(label(tins, 2) == "tin 3");
    const auto pot = handmade::cup_in_lidded_pot();
    CHECK(label(pot, 0) == "pot");
    CHECK(label(pot, 2) == "pot-lid");
    CHECK_THROWS_AS(label(pot, 3), ContractBroken);
}
