// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>
#include <cmath>
#include <numbers>
#include <string>

#include "support/kit_text.hpp"

using namespace tuckwright;

namespace {

/// Two tins of 50 x 60 mm, in a bag of that girth and length where one is given.
Bundle two_tins(const std::string& bag)
{
    std::string text = "kit: Two tins\nitems:\n  - {id: tin, count: 2, weight: 40, cylinder: {diameter: 50, height: 60}}\n";
    text += bag.empty() ? "" : "  - {id: sack, weight: 30, bag: {" + bag + ", thickness: 1}}\n";
    return test::solved(test::kit_of(text), Effort::quick);
}

} // namespace

TEST_CASE("a bag changes the best bundle, and one that is too tight is refused", "[solve][covers]")
{
    const Bundle tower = two_tins("");
    REQUIRE(has_bundle(tower.status));
    CHECK(height_of(tower.envelope) == Approx(120));

    // Round two equal discs that touch it is 2 d + pi d: 257.08 mm.
    const double round = 2 * 50 + std::numbers::pi * 50;
    Bundle beside = two_tins("girth: 258, length: 70");
    REQUIRE(has_bundle(beside.status));
    CHECK(height_of(beside.envelope) == Approx(60));
    CHECK(std::get<Cylinder>(beside.envelope).diameter == Approx(100).epsilon(1e-4));
    CHECK(std::get<Cylinder>(outer_envelope(beside)).diameter ==
          Approx(std::get<Cylinder>(beside.envelope).diameter + 2).epsilon(1e-6));
    REQUIRE(beside.bag.has_value());
    CHECK(check(beside).empty());
    beside.bag->girth = std::floor(round);
    const auto tight = check(beside);
    REQUIRE_FALSE(tight.empty());
    CHECK(tight.front().rule == "girth");
    beside.bag->girth = 258;
    beside.bag->length = 59.9;
    CHECK_FALSE(check(beside).empty());

    CHECK_FALSE(has_bundle(two_tins("girth: 250, length: 70").status));
}
