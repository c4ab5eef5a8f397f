// SPDX-License-Identifier: GPL-3.0-or-later
/// What a kit's file says of the way back, as it is read.
#include <algorithm>
#include <catch2/catch.hpp>
#include <string>

#include "tuckwright/trip.hpp"
#include "tuckwright/way_back.hpp"

using namespace tuckwright;

namespace {

const std::string shelf_folder = TUCKWRIGHT_SOURCE_DIR "/kits/shelf/";

std::string told(const std::vector<Problem>& problems)
{
    std::string text;
    for (const Problem& problem : problems) {
        text += to_string(problem) + "\n";
    }
    return text;
}

BothWays read(const std::string& text, const std::vector<Taken>& chosen = {}, const std::string& name = "kit.yaml")
{
    const auto both = read_both_ways_text(text, name, chosen);
    INFO((both ? "" : told(both.problems())));
    REQUIRE(both.ok());
    return *both;
}

const std::string things = R"(items:
  - {id: pot, weight: 120 g, cylinder: {diameter: 100, height: 80}, inside: {wall: 1, base: 1}, kind: lips}
  - {id: rag, weight: 20 g, box: {length: 50, width: 40, height: 10}, kind: [clean, soft], not-in: mug}
  - {id: oats, weight: 15 g, box: {length: 60, width: 40, height: 30}, contents: {what: oats, amount: 100 g}}
  - {id: spirit, weight: 30 g, cylinder: {diameter: 40, height: 90}, contents: {what: spirit, amount: 80 g}, kind: [fuel, liquid]}
  - {id: jar, weight: 90 g, cylinder: {diameter: 60, height: 60}, inside: {wall: 2, base: 2, lid: own}, contents: {what: jam, amount: 70 g}}
  - {id: mug, count: 3, weight: 40 g, cylinder: {diameter: 80, height: 60}, inside: {wall: 1, base: 1}}
)";

BothWays way(const std::string& way_back)
{
    return read("kit: Soup\nwaive: [{rule: fuel-lips, why: the bottle is in a bag of its own}]\nway-back:\n" +
                way_back + things);
}

const Item& item(const Kit& kit, const std::string& id)
{
    const auto found = std::find_if(kit.items.begin(), kit.items.end(), [&](const Item& one) { return one.id == id; });
    REQUIRE(found != kit.items.end());
    return *found;
}

bool has(const Kit& kit, const std::string& id)
{
    return std::any_of(kit.items.begin(), kit.items.end(), [&](const Item& one) { return one.id == id; });
}

bool keeps(const Kit& kit, Keep keep, const std::string& first, const std::string& second)
{
    return std::any_of(kit.rules.begin(), kit.rules.end(), [&](const CarryRule& rule) {
        return rule.keep == keep && ((rule.first == first && rule.second == second) ||
                                     (keep == Keep::apart && rule.first == second && rule.second == first));
    });
}

double weight_of(const Kit& kit)
{
    double grams = 0;
    for (const Item& one : kit.items) {
        grams += one.count * (one.weight_g + (one.contents ? one.contents->weight_g : 0));
    }
    return grams;
}

} // namespace

TEST_CASE("the way out is the kit as it is without a way back")
{
    const BothWays both = way("  {gone: jar, empty: oats}\n");
    const auto plain = read_kit_text(
        "kit: Soup\nwaive: [{rule: fuel-lips, why: the bottle is in a bag of its own}]\n" + things, "kit.yaml");
    REQUIRE(plain.ok());
    CHECK(plain->rules == both.out.rules);
    CHECK(plain->items.size() == both.out.items.size());
    CHECK(weight_of(*plain) == weight_of(both.out));
    CHECK(both.out.name == "Soup");
    CHECK(both.back.name == "Soup, on the way back");
    // By hand: 120 + 20 + 15 + 100 + 30 + 80 + 90 + 70 + 3 x 40.
    CHECK(weight_of(both.out) == 645);
}

TEST_CASE("what is used up weighs nothing, and no longer keeps its vessel upright or full")
{
    const BothWays both = way(
        "  {empty: [oats, jar, spirit], added: [{id: rubbish, weight: 1, box: {length: 9, width: 9, height: 9}}]}\n");
    // By hand: 645 without 100 of oats, 70 of jam and 80 of spirit, and 1 of rubbish.
    CHECK(weight_of(both.back) == 396);
    CHECK(item(both.out, "oats").upright);
    CHECK_FALSE(item(both.back, "oats").contents);
    CHECK_FALSE(item(both.back, "oats").upright);
    CHECK(item(both.out, "jar").is_full());
    CHECK_FALSE(item(both.back, "jar").is_full());
    // A bottle is never quite empty: it stays shut, upright, and fuel.
    CHECK(item(both.back, "spirit").upright);
    CHECK(item(both.back, "spirit").contents->weight_g == 0);
    CHECK(item(both.back, "spirit").kinds == item(both.out, "spirit").kinds);
}

TEST_CASE("something may be left of contents, in any unit")
{
    const BothWays both = way("  left: {spirit: 1 oz, oats: 30}\n");
    CHECK(item(both.back, "spirit").contents->weight_g == Approx(28.349523125).epsilon(1e-12));
    CHECK(item(both.back, "oats").contents->weight_g == 30);
    CHECK(item(both.back, "oats").upright);
    CHECK(weight_of(both.back) == Approx(645 - 80 + 28.349523125 - 70).epsilon(1e-12));
}

TEST_CASE("what is gone is named by no rule any more")
{
    const BothWays both = way("  {gone: [mug, jar]}\n");
    CHECK_FALSE(has(both.back, "mug"));
    CHECK_FALSE(has(both.back, "jar"));
    CHECK(has(both.out, "mug"));
    CHECK(keeps(both.out, Keep::out, "rag", "mug"));
    CHECK(both.back.rules.size() < both.out.rules.size());
    for (const CarryRule& rule : both.back.rules) {
        CHECK(rule.first != "mug");
        CHECK(rule.second != "mug");
    }
}

TEST_CASE("what becomes sooty keeps apart from what is soft, and need not be kept clean itself")
{
    const BothWays both = way("  becomes: {pot: sooty, mug: [sooty, hot]}\n");
    CHECK(item(both.back, "pot").kinds == std::vector<Kind>{Kind::lips, Kind::sooty});
    CHECK(item(both.back, "mug").kinds == std::vector<Kind>{Kind::sooty, Kind::hot});
    CHECK(keeps(both.back, Keep::apart, "pot", "rag"));
    CHECK_FALSE(keeps(both.out, Keep::apart, "pot", "rag"));
    const BothWays dirty = way("  becomes: {rag: sooty}\n");
    CHECK(item(dirty.back, "rag").kinds == std::vector<Kind>{Kind::sooty, Kind::soft});
    CHECK(item(dirty.out, "rag").kinds == std::vector<Kind>{Kind::clean, Kind::soft});
}

TEST_CASE("fields of a thing are changed, taken away, or given anew")
{
    const BothWays both =
        way("  changed:\n"
            "    - {id: rag, weight: 55 g, kind: nothing, apart-from: oats, cloth: {volume: 30 ml, thickness: 4}}\n"
            "    - {id: mug, count: 2}\n");
    const Item& rag = item(both.back, "rag");
    CHECK(rag.weight_g == 55);
    CHECK(rag.kinds.empty());
    CHECK(rag.cloth);
    CHECK(keeps(both.back, Keep::apart, "rag", "oats"));
    CHECK_FALSE(keeps(both.out, Keep::apart, "rag", "oats"));
    CHECK(item(both.back, "mug").count == 2);
    CHECK(item(both.out, "rag").weight_g == 20);
}

TEST_CASE("what is added may be named by things that were there before")
{
    const BothWays both =
        read("kit: Soup\nway-back:\n"
             "  added: [{id: rubbish, weight: 30 g, cloth: {volume: 60 ml, thickness: 8}, goes-in: pot}]\n" +
             things + "  - {id: bowl, weight: 9, box: {length: 90, width: 80, height: 40}, apart-from: rubbish}\n");
    CHECK_FALSE(has(both.out, "rubbish"));
    CHECK(has(both.back, "rubbish"));
    CHECK(keeps(both.back, Keep::apart, "bowl", "rubbish"));
    CHECK(keeps(both.back, Keep::within, "rubbish", "pot"));
}

TEST_CASE("a rule is waived on the way back alone")
{
    const BothWays both = way("  {becomes: {pot: sooty}, waive: [{rule: sooty-soft, why: the pot is in a sack by "
                              "then}, {rule: sooty-clean, why: the same}]}\n");
    CHECK_FALSE(keeps(both.back, Keep::apart, "pot", "rag"));
    CHECK(both.out.waived.size() == 1);
    CHECK(both.back.waived.size() == 3);
}

TEST_CASE("choices are settled both ways, and the name of one stands for what is taken")
{
    const std::string kit =
        "kit: Soup\nway-back: {becomes: {stove: sooty}, gone: tin, empty: b, "
        "changed: [{id: cup, goes-in: stove}]}\n"
        "items:\n  - choice: stove\n    one-of:\n"
        "      - {id: a, weight: 9, cylinder: {diameter: 99, height: 60}, inside: {wall: 1, base: 1}}\n"
        "      - take: big\n        items:\n"
        "          - {id: b, weight: 8, cylinder: {diameter: 99, height: 60}, inside: {wall: 1, base: 1},"
        " contents: {what: twigs, amount: 5}}\n"
        "          - {id: tin, weight: 7, box: {length: 30, width: 20, height: 10}}\n"
        "  - {id: cup, weight: 5, cylinder: {diameter: 60, height: 40}}\n";
    const BothWays small = read(kit, {{"stove", "a"}}), big = read(kit, {{"stove", "big"}});
    CHECK(small.back.name == "Soup (stove: a), on the way back");
    CHECK(item(small.back, "a").kinds == std::vector<Kind>{Kind::sooty});
    CHECK(keeps(small.back, Keep::within, "cup", "a"));
    CHECK(item(big.back, "b").kinds == std::vector<Kind>{Kind::sooty});
    CHECK_FALSE(item(big.back, "b").contents);
    CHECK(has(big.out, "tin"));
    CHECK_FALSE(has(big.back, "tin"));
    CHECK(keeps(big.back, Keep::within, "cup", "b"));
}

TEST_CASE("things may be added from a shelf")
{
    const BothWays both = read("kit: Jetty\nshelf: things.yaml\nway-back: {added: [{from: bowl, weight: 77 g}]}\n"
                               "items: [from: pot]\n",
                               {}, shelf_folder + "kit.yaml");
    CHECK(both.out.items.size() == 1);
    CHECK(item(both.back, "bowl").weight_g == 77);
    const auto none = read_both_ways_text("kit: Jetty\nway-back: {added: [{from: bowl}]}\n" + things, "kit.yaml");
    REQUIRE_FALSE(none.ok());
    CHECK(none.problems().front().what == "'from' takes a thing from a shelf, but this kit has none");
}

TEST_CASE("a trip is over on the way back")
{
    const BothWays both =
        read("kit: Pier\ntrip: {people: 1, days: 1, boils: 1, water-each: 400 ml, start: 10 C, altitude: 0 m, "
             "fuel: {what: tablets, heat-share: 50 %, reserve: 20 %}}\nway-back: {}\n"
             "items: [{id: pot, weight: 9, cylinder: {diameter: 99, height: 60}}]\n");
    REQUIRE(both.out.trip);
    REQUIRE(both.back.trip);
    CHECK_FALSE(both.out.trip->is_over);
    CHECK(both.back.trip->is_over);
}

TEST_CASE("a kit that says nothing of a way back has none")
{
    const auto both = read_both_ways_text(
        "kit: Soup\nitems: [{id: pot, weight: 9, cylinder: {diameter: 99, height: 60}}]\n", "soup.yaml");
    REQUIRE_FALSE(both.ok());
    CHECK(told(both.problems()) ==
          "soup.yaml:1:1: this kit does not say what is different on the way back; say it at the top of "
          "the file, such as 'way-back: {empty: oats, gone: tablets, becomes: {pot: sooty}}'\n");
}
