// SPDX-License-Identifier: GPL-3.0-or-later
/// Choices in a kit file: every combination is the kit that one would have written by hand.
#include <algorithm>
#include <catch2/catch.hpp>
#include <set>
#include <string>

#include "tuckwright/kit_reader.hpp"

using namespace tuckwright;

namespace {

const std::string soup = R"(kit: Soup
items:
  - choice: pot
    one-of:
      - {id: small-pot, weight: 120, cylinder: {diameter: 104, height: 90}, inside: {wall: 1, base: 1}}
      - take: big
        items:
          - {id: big-pot, weight: 170, cylinder: {diameter: 124, height: 100}, inside: {wall: 1, base: 1}}
          - {id: big-lid, weight: 30, cylinder: {diameter: 125, height: 8}, closes: {item: pot, adds: 2, intrudes: 5}}
  - {id: cup, weight: 60, cylinder: {diameter: 80, height: 60}, inside: {wall: 1, base: 1}, goes-in: pot, apart-from: [gas, tea]}
  - choice: stove
    one-of:
      - {id: gas, weight: 85, cylinder: {diameter: 70, height: 45}}
      - - {id: twigs, weight: 180, cylinder: {diameter: 95, height: 70}, inside: {wall: 1, base: 1}}
        - {id: plate, weight: 20, cylinder: {diameter: 90, height: 2}, apart-from: cup}
      - nothing
  - {id: tea, weight: 30, cylinder: {diameter: 60, height: 34}, not-in: stove}
)";

std::vector<std::string> ids(const Kit& kit)
{
    std::vector<std::string> all;
    for (const Item& item : kit.items) {
        all.push_back(item.id);
    }
    return all;
}

bool has_rule(const Kit& kit, Keep keep, const std::string& first, const std::string& second)
{
    return std::any_of(kit.rules.begin(), kit.rules.end(), [&](const CarryRule& rule) {
        return rule.keep == keep && rule.first == first && rule.second == second;
    });
}

std::string messages(const std::vector<Problem>& problems)
{
    std::string text;
    for (const auto& problem : problems) {
        text += to_string(problem) + "\n";
    }
    return text;
}

Kit chosen(const std::vector<Taken>& taken)
{
    const auto kit = read_kit_text(soup, "soup.yaml", taken);
    INFO((kit ? "" : messages(kit.problems())));
    REQUIRE(kit.ok());
    return *kit;
}

std::string refusal(const std::string& text, const std::vector<Taken>& taken = {})
{
    const auto kit = read_kit_text(text, "kit.yaml", taken);
    REQUIRE_FALSE(kit.ok());
    return messages(kit.problems());
}

/// A kit with so many choices of so many alternatives each.
std::string kit_of_choices(int choices, int alternatives)
{
    std::string text = "kit: Many\nitems:\n";
    for (int c = 0; c < choices; ++c) {
        text += "  - choice: c" + std::to_string(c) + "\n    one-of:\n";
        for (int a = 0; a < alternatives; ++a) {
            text += "      - {id: t" + std::to_string(c) + "-" + std::to_string(a) +
                    ", weight: 1, cylinder: {diameter: 20, height: 20}}\n";
        }
    }
    return text;
}

} // namespace

TEST_CASE("every combination of two choices, in the file's order")
{
    const auto kits = read_kits_text(soup, "soup.yaml");
    INFO((kits ? "" : messages(kits.problems())));
    REQUIRE(kits.ok());
    REQUIRE(kits->size() == 6);
    using Ids = std::vector<std::string>;
    CHECK(ids((*kits)[0].kit) == Ids{"small-pot", "cup", "gas", "tea"});
    CHECK(ids((*kits)[1].kit) == Ids{"small-pot", "cup", "twigs", "plate", "tea"});
    CHECK(ids((*kits)[2].kit) == Ids{"small-pot", "cup", "tea"});
    CHECK(ids((*kits)[3].kit) == Ids{"big-pot", "big-lid", "cup", "gas", "tea"});
    CHECK(ids((*kits)[5].kit) == Ids{"big-pot", "big-lid", "cup", "tea"});
    CHECK((*kits)[4].taken == std::vector<Taken>{{"pot", "big"}, {"stove", "twigs"}});
    CHECK((*kits)[4].kit.name == "Soup (pot: big, stove: twigs)");
    for (const auto& one : *kits) { // and each is what comes of choosing it
        CHECK(ids(chosen(one.taken)) == ids(one.kit));
        CHECK(chosen(one.taken).rules == one.kit.rules);
        CHECK(chosen(one.taken).name == one.kit.name);
    }
}

TEST_CASE("a choice's name stands for what is taken, and rules about what stays at home are left out")
{
    const Kit small = chosen({{"pot", "small-pot"}, {"stove", "gas"}});
    CHECK(has_rule(small, Keep::within, "cup", "small-pot"));
    CHECK(has_rule(small, Keep::apart, "cup", "gas"));
    CHECK(has_rule(small, Keep::apart, "cup", "tea"));

    CHECK_FALSE(has_rule(small, Keep::out, "tea", "gas")); // it has no inside that something could be kept out of

    const Kit big = chosen({{"pot", "big"}, {"stove", "twigs"}});
    CHECK(has_rule(big, Keep::within, "cup", "big-pot"));
    CHECK(has_rule(big, Keep::out, "tea", "twigs"));
    CHECK(has_rule(big, Keep::apart, "cup", "tea"));
    REQUIRE(big.items[1].closes);
    CHECK(big.items[big.items[1].closes->item].id == "big-pot");

    const Kit none = chosen({{"pot", "big"}, {"stove", "nothing"}});
    CHECK(none.rules.size() == 2);
    CHECK(has_rule(none, Keep::within, "cup", "big-pot"));
    CHECK(has_rule(none, Keep::apart, "cup", "tea"));
}

TEST_CASE("alternatives may share an id, which then names whichever is taken")
{
    const std::string text = "kit: Tea\nitems:\n"
                             "  - choice: pot\n    one-of:\n"
                             "      - {take: small, items: [{id: pot, weight: 1, cylinder: {diameter: 80, height: 80}, "
                             "inside: {wall: 1, base: 1}}]}\n"
                             "      - {take: big, items: [{id: pot, weight: 2, cylinder: {diameter: 90, height: 80}, "
                             "inside: {wall: 1, base: 1}}]}\n"
                             "  - {id: tin, weight: 3, cylinder: {diameter: 40, height: 30}, goes-in: pot}\n";
    const auto kits = read_kits_text(text, "tea.yaml");
    REQUIRE(kits.ok());
    REQUIRE(kits->size() == 2);
    for (const auto& one : *kits) {
        CHECK(has_rule(one.kit, Keep::within, "tin", "pot"));
    }
    CHECK((*kits)[1].kit.items[0].weight_g == 2);
}

TEST_CASE("a file without choices is one kit, the same as ever")
{
    const std::string text = "kit: Tea\nitems: [{id: tin, weight: 3, cylinder: {diameter: 40, height: 30}}]\n";
    const auto kits = read_kits_text(text, "tea.yaml");
    REQUIRE(kits.ok());
    REQUIRE(kits->size() == 1);
    CHECK(kits->front().kit.name == "Tea");
    CHECK(kits->front().taken.empty());
    CHECK(refusal(text, {{"pot", "big"}}) ==
          "kit.yaml:1:1: there is no choice 'pot' in this kit; it has no choices at all: do not choose\n");
}

TEST_CASE("choices left open, unknown ones and unknown alternatives are told, each with a remedy")
{
    CHECK(refusal(soup) ==
          "kit.yaml:3:5: the choice 'pot' is open: small-pot or big; compare them all with 'tuckwright "
          "compare', or say which, such as '--choose pot=small-pot'\n"
          "kit.yaml:11:5: the choice 'stove' is open: gas, twigs or nothing; compare them all with "
          "'tuckwright compare', or say which, such as '--choose stove=gas'\n");
    CHECK(refusal(soup, {{"pot", "bigg"}, {"stvoe", "gas"}, {"stove", "gas"}}) ==
          "kit.yaml:1:1: there is no choice 'stvoe' in this kit; did you mean 'stove'?\n"
          "kit.yaml:3:5: the choice 'pot' has no alternative 'bigg'; did you mean 'big'?\n");
    CHECK(refusal(soup, {{"pot", "big"}, {"stove", "gas"}, {"pot", "small-pot"}}).find("settled in two ways") !=
          std::string::npos);
}

TEST_CASE("a fault in any alternative is told once, whatever is chosen")
{
    std::string faulty = soup;
    faulty.replace(faulty.find("weight: 20,"), 11, "wieght: 20,");
    const std::string expected =
        "kit.yaml:15:11: item 'plate' has no 'weight'; weigh it without contents, and write it such "
        "as 'weight: 120 g'\n"
        "kit.yaml:15:23: unknown key 'wieght' in item 'plate'; did you mean 'weight'?\n";
    CHECK(refusal(faulty) == expected);
    CHECK(refusal(faulty, {{"pot", "big"}, {"stove", "gas"}}) == expected);
    const auto kits = read_kits_text(faulty, "kit.yaml");
    REQUIRE_FALSE(kits.ok());
    CHECK(messages(kits.problems()) == expected);
}

TEST_CASE("up to a thousand combinations are listed, and no more")
{
    const auto most = read_kits_text(kit_of_choices(3, 10), "many.yaml");
    REQUIRE(most.ok());
    CHECK(most->size() == 1000);
    std::set<std::string> names;
    for (const auto& one : *most) {
        names.insert(one.kit.name);
    }
    CHECK(names.size() == 1000);
    const auto too_many = read_kits_text(kit_of_choices(10, 2), "many.yaml");
    REQUIRE_FALSE(too_many.ok());
    CHECK(messages(too_many.problems()) == "many.yaml:3:5: the choices make 1024 combinations, which is more than can "
                                           "be compared (1000, of 50 things each); "
                                           "take out alternatives, or settle a choice\n");
    CHECK_FALSE(read_kits_text(kit_of_choices(100, 10), "many.yaml").ok()); // far above what a number holds
    std::vector<Taken> each;
    for (int c = 0; c < 10; ++c) {
        each.push_back({"c" + std::to_string(c), "t" + std::to_string(c) + "-1"});
    }
    CHECK(read_kit_text(kit_of_choices(10, 2), "many.yaml", each).ok()); // but one of them can be packed
}
