// SPDX-License-Identifier: GPL-3.0-or-later
/// Kinds of items, the rules of carrying that a kit gives, and the usual ones.
#include <algorithm>
#include <catch2/catch.hpp>
#include <map>
#include <sstream>
#include <string>

#include "kit/kinds.hpp"
#include "tuckwright/kit_reader.hpp"

using namespace tuckwright;

namespace
{

/// A kit of boxes and vessels, one a line: an id, and further entries behind a colon. An id with "pot" is a vessel's.
std::string kit_text(const std::string& lines, const std::string& top = "")
{
    std::string text = "kit: Rules\n" + top + "items:\n";
    std::istringstream stream(lines);
    for (std::string line; std::getline(stream, line);) {
        const auto colon = line.find(':');
        const std::string id = line.substr(0, colon);
        const bool is_vessel = id.find("pot") != std::string::npos;
        text += "  - {id: " + id + ", weight: 10, " +
                (is_vessel ? "cylinder: {diameter: 90, height: 60}, inside: {wall: 1, base: 1}"
                           : "box: {length: 30, width: 20, height: 10}") +
                (colon == std::string::npos ? "" : "," + line.substr(colon + 1)) + "}\n";
    }
    return text;
}

Kit read(const std::string& lines, const std::string& top = "")
{
    const auto kit = read_kit_text(kit_text(lines, top), "kit.yaml");
    if (!kit) {
        for (const auto& problem : kit.problems()) {
            UNSCOPED_INFO(to_string(problem));
        }
        REQUIRE(kit.ok());
    }
    return *kit;
}

std::string first_problem(const std::string& lines, const std::string& top = "")
{
    const auto kit = read_kit_text(kit_text(lines, top), "kit.yaml");
    return kit ? "" : kit.problems().front().what;
}

/// "spirit apart oats: fuel keeps apart from food", a line for each rule.
std::string told(const Kit& kit)
{
    std::string text;
    for (const CarryRule& rule : kit.rules) {
        const std::string keep = rule.keep == Keep::within     ? "within"
                                 : rule.keep == Keep::out      ? "out"
                                 : rule.keep == Keep::together ? "together"
                                 : rule.keep == Keep::shut     ? "shut"
                                                               : "apart";
        text += rule.first + " " + keep + " " + rule.second + ": " + rule.why + "\n";
    }
    return text;
}

/// The usual rules that keep two things apart, whichever way round they are given.
std::vector<reading::UsualRule> apart_rules()
{
    std::vector<reading::UsualRule> found;
    for (const auto& rule : reading::usual_rules()) {
        if (rule.keep == Keep::apart) {
            found.push_back(rule);
        }
    }
    return found;
}

} // namespace

TEST_CASE("kinds are read once each, in the order of the enumeration")
{
    using Kinds = std::vector<Kind>;
    const Kit kit = read("a\nb: kind: lips\nc: kind: [liquid, fuel, liquid]\n");
    CHECK(kit.items[0].kinds.empty());
    CHECK(kit.items[1].kinds == Kinds{Kind::lips});
    CHECK(kit.items[2].kinds == Kinds{Kind::fuel, Kind::liquid});
    CHECK(kit.rules.size() == 1); // fuel and lips
    const std::map<std::string, Kind> words{{"fuel", Kind::fuel},
                                            {"flame", Kind::flame},
                                            {"food", Kind::food},
                                            {"drink", Kind::drink},
                                            {"lips", Kind::lips},
                                            {"sooty", Kind::sooty},
                                            {"clean", Kind::clean},
                                            {"soft", Kind::soft},
                                            {"sharp", Kind::sharp},
                                            {"hot", Kind::hot},
                                            {"pressurised", Kind::pressurised},
                                            {"liquid", Kind::liquid},
                                            {"fragile", Kind::fragile}};
    CHECK(words.size() == reading::kind_words().size());
    for (const auto& [word, kind] : words) {
        CAPTURE(word);
        CHECK(read("a: kind: " + word + "\n").items[0].kinds == Kinds{kind});
    }
}

TEST_CASE("what the file says of two things becomes a rule, each once and in its order")
{
    CHECK(told(read(
              "pot\ncup: not-in: pot\ntea: goes-in: pot, not-in: [bigpot, pot2], apart-from: cup\nbigpot\npot2\n")) ==
          "tea within pot: the kit says so\n"
          "cup out pot: the kit says so\n"
          "tea out bigpot: the kit says so\n"
          "tea out pot2: the kit says so\n"
          "tea apart cup: the kit says so\n");
    CHECK(told(read("a: apart-from: [b, b]\nb: apart-from: [a, c]\nc\n")) ==
          "a apart b: the kit says so\nb apart c: the kit says so\n");
}

TEST_CASE("each usual rule holds for two things of its kinds, whichever comes first")
{
    const std::map<std::string, std::string> reasons{
        {"fuel food", "fuel keeps apart from food"},
        {"fuel drink", "fuel keeps apart from drink"},
        {"fuel lips", "fuel keeps apart from what touches the lips"},
        {"flame fuel", "what makes a flame keeps apart from fuel"},
        {"sooty clean", "what is sooty keeps apart from what must stay clean"},
        {"sooty soft", "what is sooty keeps apart from what is soft"},
        {"sharp soft", "what is sharp keeps apart from what is soft"},
        {"sharp pressurised", "what is sharp keeps apart from what is under pressure"},
        {"flame pressurised", "what makes a flame keeps apart from what is under pressure"},
        {"hot pressurised", "what is hot after use keeps apart from what is under pressure"}};
    std::size_t found = 0;
    for (const auto first : reading::kind_words()) {
        for (const auto second : reading::kind_words()) {
            const std::string one(first), other(second);
            CAPTURE(one, other);
            const auto reason = reasons.find(one + " " + other);
            const std::string ab = "a: kind: " + one + "\n", cd = "c: kind: " + other + "\n";
            if (reason != reasons.end()) {
                ++found;
                CHECK(told(read(ab + cd)) == "a apart c: " + reason->second + "\n");
                CHECK(told(read(cd + ab)) == "a apart c: " + reason->second + "\n");
            } else if (reasons.count(other + " " + one) == 0) {
                CHECK(told(read(ab + cd)).empty());
            }
        }
    }
    CHECK(found == apart_rules().size());
}

TEST_CASE("what is sooty does not lie in what touches the lips, but in what is sooty too")
{
    const std::string told_so = "a out pot: what is sooty does not lie in what touches the lips\n";
    CHECK(told(read("a: kind: sooty\npot: kind: lips\n")) == told_so);
    CHECK(told(read("pot: kind: lips\na: kind: [sooty, hot]\n")) == told_so);
    CHECK(told(read("pot: kind: [lips, sooty]\na: kind: sooty\n")).empty());
    CHECK(told(read("pot: kind: sooty\na: kind: lips\n")).empty()); // a cup goes into a sooty pot
    CHECK(told(read("a: kind: sooty\nb: kind: lips\n")).empty());   // nothing lies in a spoon
    const std::string waived = "waive: [{rule: sooty-lips, why: I wash the cup}]\n";
    CHECK(read("a: kind: sooty, goes-in: pot\npot: kind: lips\n", waived).waived ==
          std::vector<std::string>{"what is sooty may lie in what touches the lips: I wash the cup"});
    CHECK(first_problem("a: kind: sooty, goes-in: pot\npot: kind: lips\n") ==
          "'a' goes in 'pot', against the usual rule sooty-lips: what is sooty does not lie in what touches the lips");
    CHECK(first_problem("a: kind: sooty, goes-in: pot2\npot2: goes-in: pot\npot: kind: lips\n").find("so in 'pot'") !=
          std::string::npos);
}

TEST_CASE("a pair has one rule, though several would say the same")
{
    CHECK(told(read("a: kind: fuel\nb: kind: [lips, drink, food]\n")) == "a apart b: fuel keeps apart from food\n");
    CHECK(told(read("a: kind: fuel\nb: kind: food, apart-from: a\n")) == "b apart a: the kit says so\n");
    CHECK(told(read("a: kind: [fuel, food]\nb: kind: [food, fuel]\n")) == "a apart b: fuel keeps apart from food\n");
    CHECK(told(read("a: kind: [fuel, food, sooty, clean], count: 3\n")).empty()); // a thing is never apart from itself
}

TEST_CASE("a lid and its own vessel belong together")
{
    const std::string lids = "pot: kind: sooty\npot2\n"
                             "a: kind: clean, closes: {item: pot, adds: 3, intrudes: 0}\n"
                             "b: kind: clean, closes: {item: pot2, adds: 3, intrudes: 0}\n";
    std::string text = kit_text(lids);
    for (auto at = text.find("box: {length: 30, width: 20, height: 10}"); at != std::string::npos;
         at = text.find("box: {length: 30, width: 20, height: 10}")) {
        text.replace(at, 40, "cylinder: {diameter: 91, height: 5}");
    }
    const auto kit = read_kit_text(text, "kit.yaml");
    REQUIRE(kit.ok());
    CHECK(told(*kit) == "pot apart b: what is sooty keeps apart from what must stay clean\n");
}

TEST_CASE("a lid that must be shut is a rule, and nothing may say otherwise")
{
    const auto text = [](const std::string& shut, const std::string& more) {
        return "kit: Lids\nitems:\n- {id: pot, weight: 1, cylinder: {diameter: 90, height: 60}, inside: {wall: 1, base: 1}}\n"
               "- {id: tub, weight: 1, cylinder: {diameter: 120, height: 60}, inside: {wall: 1, base: 1}}\n"
               "- {id: lid, weight: 1, cylinder: {diameter: 91, height: 5}, closes: {item: pot, adds: 3, intrudes: 0" +
               shut + "}" + more + "}\n";
    };
    const auto rules = [&](const std::string& shut, const std::string& more) {
        const auto kit = read_kit_text(text(shut, more), "kit.yaml");
        return kit ? told(*kit) : kit.problems().front().what + "; " + kit.problems().front().remedy;
    };
    CHECK(rules("", "") == "");
    CHECK(rules(", shut: no", "") == "");
    CHECK(rules(", shut: yes", "") == "lid shut pot: the kit says so\n");
    CHECK(rules(", shut: yes", ", goes-in: pot") == "lid within pot: the kit says so\nlid shut pot: the kit says so\n");
    CHECK(rules(", shut: yes", ", goes-in: tub") ==
          "'lid' must be shut on 'pot', but line 5 says that 'lid' goes in 'tub'; delete 'shut' here, or "
          "'goes-in' there");
    CHECK(rules(", shut: yes", ", not-in: pot") == "'lid' must be shut on 'pot', but line 5 keeps it off that; "
                                                    "delete 'shut' here, or 'pot' there");
    CHECK(rules(", shut: maybe", "").find("maybe") != std::string::npos);
}

TEST_CASE("a waived rule makes no rules, and is told with its reason")
{
    const std::string lines = "a: kind: fuel\nb: kind: [lips, food]\n";
    const Kit kit = read(lines, "waive: [{rule: fuel-food, why: ' bottle is sealed in a dry bag '}]\n");
    CHECK(told(kit) == "a apart b: fuel keeps apart from what touches the lips\n");
    CHECK(kit.waived == std::vector<std::string>{"fuel need not keep apart from food: bottle is sealed in a dry bag"});
    const Kit both = read(lines, "waive: [{rule: sharp-soft, why: no need}, {rule: fuel-food, why: it is shut}, "
                                 "{rule: fuel-lips, why: отдельно}]\n");
    CHECK(both.rules.empty());
    CHECK(both.waived == std::vector<std::string>{"what is sharp need not keep apart from what is soft: no need",
                                                  "fuel need not keep apart from food: it is shut",
                                                  "fuel need not keep apart from what touches the lips: отдельно"});
    CHECK(told(read("pot\na: kind: fuel, goes-in: pot\nb: kind: food, goes-in: pot\n",
                    "waive: [{rule: fuel-food, why: it is shut}]\n")) ==
          "a within pot: the kit says so\nb within pot: the kit says so\n");
}

TEST_CASE("every usual rule can be waived")
{
    for (const auto& rule : apart_rules()) {
        const std::string word(rule.word);
        CAPTURE(word);
        const std::string first = word.substr(0, word.find('-')), second = word.substr(word.find('-') + 1);
        const std::string lines = "a: kind: " + first + "\nb: kind: " + second + "\n";
        CHECK(read(lines).rules.size() == 1);
        CHECK(read(lines, "waive: [{rule: " + word + ", why: I said so}]\n").rules.empty());
    }
}

TEST_CASE("goes-in contradicts what it brings together, near and far")
{
    CHECK(first_problem("pot\na: goes-in: pot, not-in: pot\n").find("'a' must not lie in 'pot'") == 0);
    CHECK(first_problem("pot\na: goes-in: pot\nb: goes-in: pot, apart-from: a\n").find("'b' must keep apart") == 0);
    CHECK(first_problem("pot: apart-from: a\na: goes-in: pot\n").find("'pot' must keep apart from 'a'") == 0);
    CHECK(first_problem("pot: count: 2\na: goes-in: pot\nb: goes-in: pot, apart-from: a\n").empty()); // one in each
    CHECK(first_problem("pot: count: 2\na: goes-in: pot, apart-from: pot\n").find("'a' must keep apart") == 0);
    CHECK(
        first_problem("pot: count: 2, goes-in: bigpot\nbigpot\na: goes-in: pot\nb: goes-in: pot, apart-from: a\n") ==
        "'b' must keep apart from 'a', but line 6 says that 'b' goes in 'pot', and so in 'bigpot', and line 5 that 'a' "
        "goes in 'pot', and so in 'bigpot'");
    CHECK(first_problem("pot\npot2: goes-in: pot\na: goes-in: pot2\nb: goes-in: pot, not-in: pot2\n").empty());
}

TEST_CASE("a usual rule against goes-in is told with its word and how to waive it")
{
    const auto kit = read_kit_text(kit_text("pot: kind: lips\na: kind: fuel, goes-in: pot\n"), "kit.yaml");
    REQUIRE_FALSE(kit.ok());
    REQUIRE(kit.problems().size() == 1);
    CHECK(kit.problems()[0].line == 4);
    CHECK(kit.problems()[0].what.find("the usual rule fuel-lips") != std::string::npos);
    CHECK(kit.problems()[0].remedy.find("waive: [{rule: fuel-lips, why: ...}]") != std::string::npos);
    const std::string lines = "pot\na: kind: fuel, goes-in: pot\nb: kind: food, goes-in: pot\n";
    CHECK(first_problem(lines).find("against the usual rule fuel-food") != std::string::npos);
    const auto both = read_kit_text(
        kit_text("pot\na: kind: [fuel, food], goes-in: pot\nb: kind: [fuel, food], goes-in: pot\n"), "kit.yaml");
    REQUIRE_FALSE(both.ok());
    CHECK(both.problems().size() == 1); // for the two, not each way round
}

TEST_CASE("each usual rule against goes-in is refused with both things and its word")
{
    for (const auto& rule : apart_rules()) {
        const std::string word(rule.word);
        CAPTURE(word);
        const std::string first = word.substr(0, word.find('-')), second = word.substr(word.find('-') + 1);
        const auto kit = read_kit_text(
            kit_text("pot\none: goes-in: pot, kind: " + first + "\nother: goes-in: pot, kind: " + second + "\n"),
            "kit.yaml");
        REQUIRE_FALSE(kit.ok());
        const std::string& what = kit.problems().front().what;
        CHECK(what.find("'one' goes in 'pot'") != std::string::npos);
        CHECK(what.find("'other' goes in 'pot'") != std::string::npos);
        CHECK(what.find("the usual rule " + word) != std::string::npos);
    }
}

TEST_CASE("what goes together is a rule, but for lids and what lies in the other")
{
    CHECK(told(read("a: together-with: [b, c]\nb\nc: together-with: a\n")) ==
          "a together b: the kit says so\na together c: the kit says so\nc together a: the kit says so\n");
    CHECK(told(read("a: kind: fuel, together-with: b\nb: kind: food\n")) == // side by side in the bundle
          "a together b: the kit says so\na apart b: fuel keeps apart from food\n");
    CHECK(first_problem("pot\na: goes-in: pot, together-with: pot\n")
              .find("'a' must lie together with 'pot', but line 4 says that 'a' goes in 'pot'") == 0);
    CHECK(first_problem("pot: together-with: a\na: goes-in: pot\n").find("'pot' must lie together with 'a', but") == 0);
    CHECK(first_problem("a: together-with: a\n").find("'a' names itself in 'together-with'") == 0);
    CHECK(first_problem("a: together-with: b\n").find("there is no item with the id 'b'") == 0);
    CHECK(read("pot\na: goes-in: pot\nb: goes-in: pot, together-with: a\n").rules.size() == 3);
}

TEST_CASE("what may lie on a thing, and how soon it is wanted, is read as it is given")
{
    const Kit kit = read("a\nb: nothing-on-top: yes, reach: first\nc: bears: 0.5 kg, reach: last\n"
                         "d: nothing-on-top: no, reach: any\ne: reach: early\n");
    CHECK_FALSE(kit.items[0].nothing_on_top);
    CHECK_FALSE(kit.items[0].bears_g);
    CHECK(kit.items[0].reach == Wanted::any);
    CHECK(kit.items[1].nothing_on_top);
    CHECK(kit.items[1].reach == Wanted::first);
    CHECK(kit.items[2].bears_g == 500.0);
    CHECK(kit.items[2].reach == Wanted::last);
    CHECK_FALSE(kit.items[3].nothing_on_top);
    CHECK(kit.items[3].reach == Wanted::any);
    CHECK(kit.items[4].reach == Wanted::early);
    CHECK(first_problem("a: bears: 5, nothing-on-top: yes\n").find("'bears' says how much may lie on it") == 0);
}

TEST_CASE("nothing lies on what is fragile, unless it says what it bears or the file waives that")
{
    CHECK(read("a: kind: fragile\n").items[0].nothing_on_top);
    const Kit bears = read("a: kind: fragile, bears: 20\nb: kind: fragile, bears: 20, nothing-on-top: no\n");
    CHECK_FALSE(bears.items[0].nothing_on_top);
    CHECK_FALSE(bears.items[1].nothing_on_top);
    CHECK(first_problem("a: kind: fragile, nothing-on-top: no\n") ==
          "'nothing-on-top: no' is against the usual rule fragile-top: nothing lies on what is fragile");
    const Kit waived = read("a: kind: fragile\nb: kind: fragile, nothing-on-top: no\n",
                            "waive: [{rule: fragile-top, why: they lie in wool}]\n");
    CHECK_FALSE(waived.items[0].nothing_on_top);
    CHECK_FALSE(waived.items[1].nothing_on_top);
    CHECK(waived.waived == std::vector<std::string>{"things may lie on what is fragile: they lie in wool"});
}

TEST_CASE("a liquid stands upright and is closed")
{
    CHECK(read("a: kind: liquid\n").items[0].upright);
    CHECK(read("a: kind: liquid, upright: yes\n").items[0].upright);
    CHECK(first_problem("a: kind: liquid, upright: no\n").find("item 'a' holds a liquid") == 0);
    CHECK(first_problem("pot: kind: liquid\n") == "'pot' holds a liquid, but is open at the top");
    const std::string bottle =
        "kit: k\nitems: [{id: a, weight: 1, kind: liquid, cylinder: {diameter: 90, height: 60}, ";
    const auto own = read_kit_text(bottle + "inside: {wall: 1, base: 1, lid: own}}]", "kit.yaml");
    REQUIRE(own.ok());
    CHECK(own->items[0].upright);
    const std::string lid =
        ", {id: b, weight: 1, cylinder: {diameter: 91, height: 5}, closes: {item: a, adds: 3, intrudes: 0}}]";
    CHECK(read_kit_text(bottle + "contents: {what: milk, amount: 9}, inside: {wall: 1, base: 1}}" + lid, "k").ok());
    CHECK_FALSE(read_kit_text(bottle + "inside: {wall: 1, base: 1}}" + lid, "k").ok()); // the lid may be carried loose
}

TEST_CASE("a kit as large as can be, of every kind, is read soon")
{
    const auto lines = [](bool in_a_chain) {
        std::string text;
        for (int i = 0; i < 500; ++i) {
            text += "pot" + std::to_string(i) + ": kind: [fuel, food, lips, sooty, soft, sharp]" +
                    (in_a_chain && i > 0 ? ", goes-in: pot" + std::to_string(i - 1) : "") + "\n";
        }
        return text;
    };
    CHECK(read(lines(false)).rules.size() == 500 * 499 / 2);
    const auto chain = read_kit_text(kit_text(lines(true)), "kit.yaml");
    REQUIRE_FALSE(chain.ok());
    CHECK(chain.problems().size() == 1000);
}
