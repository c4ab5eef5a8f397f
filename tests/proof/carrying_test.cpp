// SPDX-License-Identifier: GPL-3.0-or-later
/// Rules of carrying that a bundle keeps, and those that it breaks.
#include <catch2/catch.hpp>

#include "faults.hpp"
#include "proof_support.hpp"
#include "support/handmade_bundles.hpp"

using namespace tuckwright;
using namespace tuckwright::handmade;

namespace {

/// What is said first about one rule for a bundle without others; "none" where the bundle is proved.
std::string said_of(Bundle bundle, Keep how, const std::string& first, const std::string& second,
                    const std::string& why = "fuel keeps apart from food")
{
    keep(bundle, how, first, second, why);
    return first_rule(bundle) == "none" ? "none" : said(bundle, "carrying");
}

/// What the rule says of a bundle whose places need not be sound.
std::string in_the_forest(const Bundle& bundle, Keep how, const std::string& first, const std::string& second)
{
    auto changed = bundle;
    keep(changed, how, first, second, "so it must be");
    return said(changed, "carrying");
}

/// A card in the lid, as in a dish, and only by name: it has no place there.
Bundle card_in_the_lid()
{
    auto bundle = pot_beside_tub();
    bundle.items[3] = hollow(bundle.items[3], bundle.items[3].solids[0], Opening::top);
    bundle.items.push_back(in(item("card", box(40, 30, 1, {64.5, 64.5, 98})), 3));
    return bundle;
}

} // namespace

TEST_CASE("rules of carrying that hold are no objection")
{
    const auto bundle = pot_beside_tub();
    CHECK(said_of(bundle, Keep::apart, "spirit", "oats") == "none");
    CHECK(said_of(bundle, Keep::apart, "oats", "spirit") == "none");
    CHECK(said_of(bundle, Keep::apart, "pot", "tub") == "none"); // the bundle that holds both is no vessel
    CHECK(said_of(bundle, Keep::apart, "pot-lid", "spirit") == "none");
    CHECK(said_of(bundle, Keep::within, "oats", "cup") == "none"); // one of the copies
    CHECK(said_of(bundle, Keep::within, "oats", "pot") == "none"); // at depth
    CHECK(said_of(bundle, Keep::within, "spirit", "tub") == "none");
    CHECK(said_of(bundle, Keep::within, "pot-lid", "pot") == "none");
    CHECK(said_of(bundle, Keep::out, "pot", "oats") == "none"); // the other way round it is in it
    CHECK(said_of(bundle, Keep::out, "pot", "pot-lid") == "none");
    CHECK(said_of(bundle, Keep::out, "spirit", "pot") == "none");
    CHECK(said_of(bundle, Keep::out, "pot-lid", "cup") == "none"); // both in one vessel, but not the one in the other
    CHECK(said_of(sleeve_round_cup_in_pot(), Keep::within, "cup", "windscreen") == "none");
    CHECK(said_of(pot_over_cup(), Keep::apart, "pot-lid", "cup") == "none"); // a loose lid is in nothing
}

TEST_CASE("what must keep apart is refused in one vessel, at whatever depth")
{
    const auto bundle = pot_beside_tub();
    CHECK(said_of(rod_out_of_two_lying_levels(), Keep::apart, "rod", "mug") ==
          "\"rod\" is in \"mug\", but fuel keeps apart from food");
    CHECK(said_of(bundle, Keep::apart, "oats", "pot") == "\"oats\" is in \"pot\", but fuel keeps apart from food");
    CHECK(said_of(bundle, Keep::apart, "pot", "oats") == "\"oats\" is in \"pot\", but fuel keeps apart from food");
    CHECK(said_of(bundle, Keep::apart, "cup", "tub") == "\"cup 2\" is in \"tub\", but fuel keeps apart from food");
    CHECK(said_of(bundle, Keep::apart, "oats", "cup") == "\"oats\" is in \"cup 1\", but fuel keeps apart from food");
    CHECK(said_of(bundle, Keep::apart, "cup", "spirit") ==
          "\"spirit\" is in \"cup 2\", but fuel keeps apart from food");
    // Spirit in the pot beside the cup with the oats, the one deeper than the other; then in the same cup.
    auto moved = bundle;
    moved.items[6].in = Lodging{0, 0};
    CHECK(in_the_forest(moved, Keep::apart, "spirit", "oats") ==
          "\"spirit\" and \"oats\" are both in \"pot\", but so it must be");
    CHECK(in_the_forest(moved, Keep::apart, "oats", "spirit") ==
          "\"oats\" and \"spirit\" are both in \"pot\", but so it must be");
    moved.items[6].in = Lodging{1, 0};
    CHECK(in_the_forest(moved, Keep::apart, "oats", "spirit") ==
          "\"oats\" and \"spirit\" are both in \"cup 1\", but so it must be");
    moved.items[6].in = Lodging{5, 0};
    moved.items[5].in = Lodging{0, 0}; // each in a cup of its own, both cups in the pot
    CHECK(in_the_forest(moved, Keep::apart, "oats", "spirit") ==
          "\"oats\" and \"spirit\" are both in \"pot\", but so it must be");
}

TEST_CASE("every copy counts, of the first and of the second")
{
    auto bundle = pot_beside_tub();
    bundle.items[4].id = "pot";
    bundle.items[4].copy = 2;
    bundle.items[2].id = bundle.items[6].id = "bag";
    bundle.items[6].copy = 2;
    CHECK(said_of(bundle, Keep::apart, "pot-lid", "bag", "it is hot") ==
          "\"pot-lid\" is shut on \"pot 1\" and \"bag 1\" is in it, but it is hot");
    CHECK(said_of(bundle, Keep::apart, "bag", "pot-lid", "it is hot") ==
          "\"bag 1\" is in \"pot 1\" and \"pot-lid\" is shut on it, but it is hot");
    bundle.items[2].in.reset();
    CHECK(in_the_forest(bundle, Keep::apart, "bag", "pot") == "\"bag 2\" is in \"pot 2\", but so it must be");
    CHECK(in_the_forest(bundle, Keep::within, "bag", "pot") ==
          "\"bag 1\" is not in any copy of \"pot\", but so it must be");
    CHECK(in_the_forest(bundle, Keep::out, "bag", "pot") == "\"bag 2\" is in \"pot 2\", but so it must be");
    // One copy of the second in another, and the first beside them: what is nearest is named.
    bundle.items[1].in = Lodging{5, 0};
    CHECK(in_the_forest(bundle, Keep::apart, "cup", "bag") == "\"bag 2\" is in \"cup 2\", but so it must be");
    CHECK(in_the_forest(bundle, Keep::apart, "bag", "cup") ==
          "\"bag 2\" and \"cup 1\" are both in \"cup 2\", but so it must be");
}

TEST_CASE("a shut lid lies in its vessel, and so does what lies in the lid")
{
    const auto bundle = pot_beside_tub();
    CHECK(said_of(bundle, Keep::apart, "pot-lid", "pot", "it is hot") ==
          "\"pot-lid\" is shut on \"pot\", but it is hot");
    CHECK(said_of(bundle, Keep::apart, "pot", "pot-lid", "it is hot") ==
          "\"pot-lid\" is shut on \"pot\", but it is hot");
    CHECK(said_of(bundle, Keep::apart, "pot-lid", "oats", "it is hot") ==
          "\"pot-lid\" is shut on \"pot\" and \"oats\" is in it, but it is hot");
    CHECK(said_of(bundle, Keep::out, "pot-lid", "pot", "it is hot") == "\"pot-lid\" is shut on \"pot\", but it is hot");
    CHECK(said_of(pot_over_cup(), Keep::within, "pot-lid", "pot", "it stays on") ==
          "\"pot-lid\" is not in \"pot\", but it stays on"); // it is loose
    const auto card = card_in_the_lid();
    CHECK(in_the_forest(card, Keep::within, "card", "pot-lid").empty());
    CHECK(in_the_forest(card, Keep::within, "card", "pot").empty());
    CHECK(in_the_forest(card, Keep::out, "card", "pot") == "\"card\" is in \"pot\", but so it must be");
    CHECK(in_the_forest(card, Keep::apart, "card", "oats") ==
          "\"card\" and \"oats\" are both in \"pot\", but so it must be");
    // A lidded pot in the tub: its lid is in the tub too, whatever it says itself.
    auto tub = bundle;
    tub.items[0].in = Lodging{4, 0};
    CHECK(in_the_forest(tub, Keep::within, "pot-lid", "tub").empty());
    CHECK(in_the_forest(tub, Keep::out, "pot-lid", "tub") == "\"pot-lid\" is in \"tub\", but so it must be");
    CHECK(in_the_forest(tub, Keep::apart, "pot-lid", "spirit") ==
          "\"pot-lid\" and \"spirit\" are both in \"tub\", but so it must be");
}

TEST_CASE("what is not within, or not out, is refused")
{
    const auto bundle = pot_beside_tub();
    CHECK(said_of(bundle, Keep::within, "spirit", "pot", "it is dry there") ==
          "\"spirit\" is not in \"pot\", but it is dry there");
    CHECK(said_of(bundle, Keep::within, "cup", "pot", "it is dry there") ==
          "\"cup 2\" is not in \"pot\", but it is dry there");
    CHECK(said_of(bundle, Keep::within, "tub", "cup", "it is dry there") ==
          "\"tub\" is not in any copy of \"cup\", but it is dry there");
    CHECK(said_of(bundle, Keep::within, "pot", "oats", "") ==
          "\"pot\" is not in \"oats\", against a rule of carrying"); // the other way round it is
    CHECK(said_of(bundle, Keep::out, "spirit", "tub", "soot") == "\"spirit\" is in \"tub\", but soot");
    CHECK(said_of(bundle, Keep::out, "oats", "cup", "soot") == "\"oats\" is in \"cup 1\", but soot");
    CHECK(said_of(bundle, Keep::out, "cup", "tub", "soot") == "\"cup 2\" is in \"tub\", but soot");
    CHECK(said_of(rod_out_of_cup(), Keep::out, "rod", "cup", "") ==
          "\"rod\" is in \"cup\", against a rule of carrying"); // though it stands out of it
}

TEST_CASE("what goes together shares its direct container, each copy of the first with some copy of the second")
{
    const auto bundle = pot_beside_tub();
    CHECK(said_of(bundle, Keep::together, "pot", "tub") == "none"); // both directly in the bundle
    CHECK(said_of(bundle, Keep::together, "tub", "pot") == "none");
    CHECK(said_of(bundle, Keep::together, "pot-lid", "cup") == "none"); // the lid is in the pot
    CHECK(said_of(bundle, Keep::together, "oats", "spirit", "they are one meal") ==
          "\"oats\" is not in the same container as \"spirit\", but they are one meal"); // two cups
    CHECK(said_of(bundle, Keep::together, "cup", "pot-lid", "x") ==
          "\"cup 2\" is not in the same container as \"pot-lid\", but x");
    CHECK(said_of(bundle, Keep::together, "oats", "cup", "x") ==
          "\"oats\" is not in the same container as any copy of \"cup\", but x"); // in it is not beside it
    CHECK(said_of(bundle, Keep::together, "pot-lid", "pot", "x") ==
          "\"pot-lid\" is not in the same container as \"pot\", but x");
    auto moved = bundle;
    moved.items[6].in = Lodging{1, 0};
    CHECK(in_the_forest(moved, Keep::together, "oats", "spirit").empty());
    moved.items[6].in = Lodging{0, 0};
    CHECK(in_the_forest(moved, Keep::together, "oats", "spirit") ==
          "\"oats\" is not in the same container as \"spirit\", but so it must be");
}

TEST_CASE("what must be shut is, on a vessel of that name")
{
    const auto bundle = pot_beside_tub();
    CHECK(said_of(bundle, Keep::shut, "pot-lid", "pot") == "none");
    CHECK(said_of(bundle, Keep::shut, "pot-lid", "tub", "it rains") == "\"pot-lid\" is not shut on \"tub\", but it rains");
    CHECK(said_of(bundle, Keep::shut, "cup", "pot", "") ==
          "\"cup 1\" is not shut on \"pot\", against a rule of carrying"); // in it, but no lid
    CHECK(said_of(pot_over_cup(), Keep::shut, "pot-lid", "pot", "it rains") ==
          "\"pot-lid\" is not shut on \"pot\", but it rains"); // it is loose
}

TEST_CASE("rules about nothing, or about one item, are refused")
{
    const auto bundle = pot_beside_tub();
    for (const Keep how : {Keep::apart, Keep::within, Keep::out, Keep::together, Keep::shut}) {
        CHECK(said_of(bundle, how, "spirit", "bread") == "a rule of carrying speaks of \"bread\", which is not there");
        CHECK(said_of(bundle, how, "bread", "spirit") == "a rule of carrying speaks of \"bread\", which is not there");
        CHECK(said_of(bundle, how, "cup 1", "pot") == "a rule of carrying speaks of \"cup 1\", which is not there");
        CHECK(said_of(bundle, how, "", "pot") == "a rule of carrying speaks of \"\", which is not there");
        CHECK(said_of(bundle, how, "cup", "cup") ==
              "a rule of carrying is about \"cup\" and itself; it must name two items");
    }
    CHECK(said_of(bundle, static_cast<Keep>(7), "spirit", "oats").find("none of apart, within, out, together and shut") !=
          std::string::npos);
}

TEST_CASE("all rules are looked at, and before any shapes")
{
    refuse({{"the last of many", fuel_apart_from_food, [](Bundle& b) { keep(b, Keep::apart, "oats", "cup"); },
             "carrying", "\"oats\" is in \"cup 1\""},
            {"moved beside the food, where it does not fit", fuel_apart_from_food,
             [](Bundle& b) {
                 b.items[6].in = Lodging{1, 0};
             },
             "carrying", "\"spirit\" and \"oats\" are both in \"cup 1\", but fuel keeps apart from food"},
            {"a lid taken off", fuel_apart_from_food, [](Bundle& b) { b.items[3].closes.reset(); }, "carrying",
             "\"pot-lid\" is not in \"pot\", but the lid stays on"},
            {"in a ring, which comes first", fuel_apart_from_food,
             [](Bundle& b) {
                 b.items[0].in = Lodging{1, 0};
                 keep(b, Keep::apart, "oats", "cup");
             },
             "forest", ""}});
    auto bundle = fuel_apart_from_food();
    keep(bundle, Keep::out, "oats", "cup");
    keep(bundle, Keep::out, "spirit", "cup");
    center(bundle, 6).z -= 1;
    const auto all = check(bundle, 100);
    REQUIRE(all.size() >= 3);
    CHECK(all[0].what == "\"oats\" is in \"cup 1\", but it is so by hand");
    CHECK(all[1].what == "\"spirit\" is in \"cup 2\", but it is so by hand");
    CHECK(all[2].rule == "inside");
    CHECK(check(bundle, 2).size() == 2);
}
