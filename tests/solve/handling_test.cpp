// SPDX-License-Identifier: GPL-3.0-or-later
/// What may not bear others, and what is wanted soon, changes what is packed.
#include <catch2/catch.hpp>

#include "support/kit_text.hpp"
#include "tuckwright/handling.hpp"

using namespace tuckwright;
using namespace tuckwright::test;

namespace {

/// Two discs, smallest on one another.
Bundle two_discs(const std::string& fields, const std::string& bundle = round_bundle())
{
    return solved(KitText(bundle).item("disc", cylinder(80, 20) + fields, 2), Effort::quick);
}

/// A pot in which two tins stand on one another.
Bundle pot_with_tins(const std::string& lower, const std::string& upper)
{
    KitText text(round_bundle(), 0.5);
    text.item("pot", cylinder(100, 80) + ", inside: {wall: 1, base: 1}");
    text.item("red", cylinder(90, 38) + lower);
    text.item("blue", cylinder(90, 30) + upper);
    return solved(text, Effort::quick);
}

} // namespace

TEST_CASE("what may bear nothing is packed side by side, at the price of room")
{
    const Bundle free = two_discs(""), bare = two_discs(", nothing-on-top: yes");
    REQUIRE(has_bundle(free.status));
    REQUIRE(has_bundle(bare.status));
    CHECK(volume_ml(free.envelope) == Approx(201.06).epsilon(1e-3));
    CHECK(volume_ml(bare.envelope) == Approx(402.12).epsilon(1e-2));
    for (const std::size_t disc : {0U, 1U}) {
        CHECK(bare.items[disc].nothing_on_top);
        CHECK(load_on(bare, disc).empty());
    }
    const Bundle fragile = two_discs(", kind: fragile");
    REQUIRE(has_bundle(fragile.status));
    CHECK(load_on(fragile, 0).empty());
    CHECK(load_on(fragile, 1).empty());
}

TEST_CASE("what bears little carries no more")
{
    const Bundle enough = two_discs(", bears: 10"), little = two_discs(", bears: 9");
    REQUIRE(has_bundle(enough.status));
    REQUIRE(has_bundle(little.status));
    CHECK(volume_ml(enough.envelope) == Approx(201.06).epsilon(1e-3));
    CHECK(volume_ml(little.envelope) > 400);
    const Bundle three =
        solved(KitText(round_bundle()).item("weak", cylinder(80, 20) + ", bears: 10").item("disc", cylinder(80, 20), 2),
               Effort::quick);
    REQUIRE(has_bundle(three.status));
    CHECK(volume_ml(three.envelope) == Approx(301.6).epsilon(1e-3));
    CHECK(load_on(three, 0).size() <= 1);
}

TEST_CASE("a rule of loads that can't be kept within the limits is named")
{
    const Bundle bare = two_discs(", nothing-on-top: yes", round_bundle(82, 60));
    CHECK(bare.status == Status::not_found);
    CHECK(bare.explanation.find("another disc would lie on the disc, on which nothing may (its 'nothing-on-top')") !=
          std::string::npos);
    CHECK(two_discs(", kind: fragile", round_bundle(82, 60)).explanation.find("the usual rule fragile-top") !=
          std::string::npos);
    CHECK(two_discs(", bears: 4", round_bundle(82, 60))
              .explanation.find("more than 4 g, of it another disc, would lie on the disc (its 'bears')") !=
          std::string::npos);
}

TEST_CASE("what is wanted first lies on top, and the number of things before it is told")
{
    const Bundle red = pot_with_tins(", reach: first", ""), blue = pot_with_tins("", ", reach: first");
    REQUIRE(has_bundle(red.status));
    REQUIRE(has_bundle(blue.status));
    CHECK(red.items[1].out_after == 0);
    CHECK(blue.items[2].out_after == 0);
    CHECK(volume_ml(red.envelope) == Approx(volume_ml(blue.envelope)).epsilon(1e-3));
    CHECK(red.items[1].solids[0].pose.center.z > red.items[2].solids[0].pose.center.z);
    CHECK(blue.items[2].solids[0].pose.center.z > blue.items[1].solids[0].pose.center.z);
    const Bundle both = pot_with_tins(", reach: last", ", reach: early");
    REQUIRE(has_bundle(both.status));
    CHECK(both.items[1].out_after == 1);
    CHECK(both.items[2].out_after == 0);
    CHECK_FALSE(both.items[0].out_after);
}

TEST_CASE("what goes together lies in one container")
{
    const auto kit = [](const std::string& fields) {
        KitText text(round_bundle(), 0.5);
        text.item("pot", cylinder(100, 80) + ", inside: {wall: 1, base: 1}");
        text.item("tin", cylinder(120, 30) + ", inside: {wall: 1, base: 1}");
        text.item("salt", cylinder(90, 70));
        text.item("pepper", cylinder(30, 5) + fields);
        return solved(text, Effort::quick);
    };
    const Bundle with = kit(", together-with: salt");
    REQUIRE(has_bundle(with.status));
    CHECK(with.items[2].in == with.items[3].in);
    REQUIRE(with.rules.size() == 1);
    CHECK(with.rules[0].keep == Keep::together);
    const Bundle apart = kit(", together-with: salt, not-in: pot");
    REQUIRE(has_bundle(apart.status));
    CHECK(apart.items[2].in == apart.items[3].in);
    const Bundle free = kit(", not-in: pot");
    REQUIRE(has_bundle(free.status));
    CHECK(volume_ml(free.envelope) < volume_ml(apart.envelope) * 0.999);
}
