// SPDX-License-Identifier: GPL-3.0-or-later
/// Rules of carrying change what is packed.
#include <catch2/catch.hpp>

#include "support/kit_text.hpp"

using namespace tuckwright;
using namespace tuckwright::test;

namespace {

/// Bottle and bag fit the pot together, with a mug's room to spare.
Kit pot_bottle_bag(std::vector<CarryRule> rules)
{
    KitText text(round_bundle(), 0.5);
    text.item("pot", cylinder(120, 100) + ", inside: {wall: 1, base: 1}");
    text.item("bottle", cylinder(50, 90));
    text.item("bag", box(80, 50, 40));
    Kit kit = kit_of(text.text());
    kit.rules = std::move(rules);
    return kit;
}

bool in_pot(const Bundle& bundle, std::size_t item)
{
    return bundle.items[item].in && bundle.items[item].in->item == 0;
}

} // namespace

TEST_CASE("what keeps apart is not packed into one vessel, at the price of room")
{
    const Bundle free = solved(pot_bottle_bag({}), Effort::quick);
    REQUIRE(has_bundle(free.status));
    CHECK(in_pot(free, 1));
    CHECK(in_pot(free, 2));
    const std::vector<CarryRule> rules{{Keep::apart, "bottle", "bag", "fuel keeps apart from food"}};
    const Bundle apart = solved(pot_bottle_bag(rules), Effort::quick);
    REQUIRE(has_bundle(apart.status));
    CHECK_FALSE((in_pot(apart, 1) && in_pot(apart, 2)));
    CHECK(volume_ml(apart.envelope) > volume_ml(free.envelope));
    CHECK(apart.rules == rules);
}

TEST_CASE("each usual rule packs anew what would lie in one vessel without it")
{
    for (const std::string word : {"fuel-food", "fuel-drink", "fuel-lips", "flame-fuel", "sooty-clean", "sooty-soft",
                                   "sharp-soft", "sharp-pressurised", "flame-pressurised", "hot-pressurised"}) {
        CAPTURE(word);
        const std::string first = word.substr(0, word.find('-')), second = word.substr(word.find('-') + 1);
        KitText text(round_bundle(), 0.5);
        text.item("pot", cylinder(120, 100) + ", inside: {wall: 1, base: 1}");
        text.item("bottle", cylinder(50, 90) + ", kind: " + first);
        text.item("bag", box(80, 50, 40) + ", kind: " + second);
        const Bundle waived =
            solved(kit_of("waive: [{rule: " + word + ", why: to see what it changes}]\n" + text.text()), Effort::quick);
        REQUIRE(has_bundle(waived.status));
        CHECK((in_pot(waived, 1) && in_pot(waived, 2)));
        CHECK(waived.waived.size() == 1);
        const Bundle kept = solved(text, Effort::quick);
        REQUIRE(has_bundle(kept.status));
        CHECK_FALSE((in_pot(kept, 1) && in_pot(kept, 2)));
        REQUIRE(kept.rules.size() == 1);
        CHECK(kept.rules[0].keep == Keep::apart);
    }
}

TEST_CASE("what is sooty is packed beside the mug, not in it")
{
    KitText text(round_bundle(), 0.5);
    text.item("mug", cylinder(100, 90) + ", inside: {wall: 1, base: 1}, kind: lips");
    text.item("stove", cylinder(80, 60) + ", kind: sooty");
    const Bundle waived =
        solved(kit_of("waive: [{rule: sooty-lips, why: to see what it changes}]\n" + text.text()), Effort::quick);
    REQUIRE(has_bundle(waived.status));
    CHECK(in_pot(waived, 1));
    const Bundle kept = solved(text, Effort::quick);
    REQUIRE(has_bundle(kept.status));
    CHECK_FALSE(in_pot(kept, 1));
    CHECK(volume_ml(kept.envelope) > volume_ml(waived.envelope));
    REQUIRE(kept.rules.size() == 1);
    CHECK(kept.rules[0].keep == Keep::out);
}

TEST_CASE("what must lie in a vessel does, and what must not does not")
{
    const Bundle out = solved(pot_bottle_bag({{Keep::out, "bottle", "pot", "the kit says so"}}), Effort::quick);
    REQUIRE(has_bundle(out.status));
    CHECK_FALSE(in_pot(out, 1));
    CHECK(in_pot(out, 2));
    const Bundle in =
        solved(pot_bottle_bag({{Keep::within, "bag", "pot", "x"}, {Keep::apart, "bag", "bottle", "x"}}), Effort::quick);
    REQUIRE(has_bundle(in.status));
    CHECK(in_pot(in, 2));
    CHECK_FALSE(in_pot(in, 1));
}

TEST_CASE("rules that can't be kept end with the reason, not with a search")
{
    const Bundle bundle = solved(pot_bottle_bag({{Keep::within, "bag", "pot", "the kit says so"},
                                                 {Keep::within, "bottle", "pot", "the kit says so"},
                                                 {Keep::apart, "bag", "bottle", "fuel keeps apart from food"}}),
                                 Effort::quick);
    CHECK(bundle.status == Status::does_not_fit);
    CHECK(bundle.explanation == "the bag and the bottle must both lie in the pot, but fuel keeps apart from food");
}
