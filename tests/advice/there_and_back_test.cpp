// SPDX-License-Identifier: GPL-3.0-or-later
/// A kit packed both ways: what is kept, what goes elsewhere, and why.
#include <algorithm>
#include <catch2/catch.hpp>
#include <fstream>
#include <iterator>
#include <random>

#include "advice/carried.hpp"
#include "advice/kept_places.hpp"
#include "advice/way_back_judge.hpp"
#include "support/workload.hpp"
#include "tuckwright/proof.hpp"
#include "tuckwright/savings.hpp"

using namespace tuckwright;

namespace {

BothWays read(const std::string& text)
{
    const auto both = read_both_ways_text(text, "kit.yaml");
    INFO((both ? "" : to_string(both.problems().front())));
    REQUIRE(both.ok());
    return *both;
}

SolveOptions quick(unsigned threads = 2)
{
    SolveOptions options;
    options.effort = Effort::quick;
    options.threads = threads;
    return options;
}

/// Packed both ways, and judged.
ThereAndBack packed(const BothWays& kits)
{
    ThereAndBack answer = there_and_back(kits, quick());
    for (const std::string& fault : test::faults_of(kits, answer)) {
        FAIL_CHECK(fault);
    }
    return answer;
}

const BothWays& dunes()
{
    static const BothWays both = [] {
        std::ifstream file(TUCKWRIGHT_SOURCE_DIR "/kits/chowder-dunes.yaml");
        return read({std::istreambuf_iterator<char>(file), {}});
    }();
    return both;
}

const ThereAndBack& dunes_packed()
{
    static const ThereAndBack answer = packed(dunes());
    return answer;
}

const Elsewhere* find(const std::vector<Elsewhere>& all, const std::string& id)
{
    const auto found = std::find_if(all.begin(), all.end(), [&](const Elsewhere& one) { return one.id == id; });
    return found != all.end() ? &*found : nullptr;
}

const std::string pot =
    "  - {id: pot, weight: 90, cylinder: {diameter: 90, height: 70}, inside: {wall: 1, base: 1}, kind: lips}\n";
const std::string rag = "  - {id: rag, weight: 20, box: {length: 60, width: 50, height: 12}, kind: [clean, soft]}\n";
const std::string tin =
    "  - {id: tin, weight: 15, cylinder: {diameter: 50, height: 40}, inside: {wall: 1, base: 1, lid: own}, "
    "contents: {what: oats, amount: 40}}\n";
const std::string die = "  - {id: die, weight: 5, box: {length: 12, width: 12, height: 12}}\n";

BothWays way(const std::string& way_back, const std::string& items)
{
    return read("kit: Soup\nway-back: " + way_back + "\nitems:\n" + items);
}

/// A kit of some tins, boxes and a rag, with a pot, and a way back on which some are empty, sooty, gone or added.
std::string random_kit(std::mt19937& random)
{
    const auto from = [&](int low, int high) {
        return low + static_cast<int>(random() % static_cast<unsigned>(high - low + 1));
    };
    std::string items, empty, gone, sooty = "pot: sooty";
    const int things = from(2, 4);
    for (int k = 0; k < things; ++k) {
        const std::string id = "t" + std::to_string(k), size = std::to_string(from(25, 60));
        const bool is_tin = from(0, 1) == 0;
        items += "  - {id: " + id + ", weight: " + std::to_string(from(5, 90)) +
                 (is_tin ? ", cylinder: {diameter: " + size + ", height: " + std::to_string(from(20, 60)) +
                               "}, inside: {wall: 1, base: 1, lid: own}, contents: {what: tea, amount: 20}"
                         : ", box: {length: " + size + ", width: 22, height: " + std::to_string(from(8, 20)) + "}");
        items += from(0, 2) == 0 ? ", kind: soft, count: 2}\n" : ", kind: lips}\n";
        (is_tin ? empty : gone) += from(0, 1) == 0 ? id + ", " : "";
        sooty += is_tin && from(0, 2) == 0 ? ", " + id + ": sooty" : "";
    }
    return "kit: Soup\nway-back: {empty: [" + empty + "t], gone: [" + gone + "g], becomes: {" + sooty +
           "}, added: [{id: bag, weight: 9, cloth: {volume: 25 ml, thickness: 6}, kind: soft}]}\nitems:\n" + pot +
           items +
           "  - {id: t, weight: 4, box: {length: 30, width: 20, height: 9}, contents: {what: salt, amount: 9}}\n"
           "  - {id: g, weight: 4, box: {length: 24, width: 20, height: 9}}\n";
}

} // namespace

TEST_CASE("random kits are packed both ways, and what is told of them is right")
{
    std::mt19937 random(20);
    for (int k = 0; k < test::count(4, 1); ++k) {
        const std::string text = random_kit(random);
        INFO(text);
        const auto both = read_both_ways_text(text, "kit.yaml");
        INFO((both ? "" : to_string(both.problems().front())));
        REQUIRE(both.ok());
        packed(*both);
    }
}

TEST_CASE("by who lies in whom, rules are broken just where the exact check says so")
{
    if (test::slow_build) { // three searches of ten things
        return;
    }
    const Bundle& bundle = dunes_packed().back;
    const advice::Carried things = advice::carried(bundle);
    int broken = 0;
    for (const Keep keep : {Keep::apart, Keep::within, Keep::out, Keep::together, Keep::shut}) {
        for (const PlacedItem& first : bundle.items) {
            for (const PlacedItem& second : bundle.items) {
                if (first.id == second.id) {
                    continue;
                }
                Bundle other = bundle; // without its steps something else is refused, but only after the rules
                other.rules = {{keep, first.id, second.id, "for the test"}};
                other.steps.clear();
                const auto objections = check(other);
                REQUIRE_FALSE(objections.empty());
                const bool refused = objections.front().rule == "carrying";
                broken += refused ? 1 : 0;
                CAPTURE(first.id, second.id, static_cast<int>(keep));
                CHECK(advice::broken(things, other.rules.front()).has_value() == refused);
            }
        }
    }
    CHECK(broken > 100);
}

TEST_CASE("the sample kit goes back in another way, and the reason is told")
{
    if (test::slow_build) { // three searches of ten things
        return;
    }
    const ThereAndBack& answer = dunes_packed();
    const Elsewhere* cloth = find(answer.elsewhere, "cloth");
    REQUIRE(cloth != nullptr);
    CHECK(cloth->before.in == "pot");
    CHECK(cloth->now.in.empty());
    CHECK(cloth->cause == Cause::rule);
    REQUIRE(cloth->rule);
    CHECK(cloth->rule->why == "what is sooty keeps apart from what is soft");
    // By hand, out: 165 + 40 + 70 + 30 + 48 + 150 + 22 + 32 + 110 + 92 + 180 + 22; back: without 180 of bread, 150 of
    // barley and 75 of spirit, with 45 of water in the cloth and 25 of rubbish.
    CHECK(total_weight_g(answer.out) == Approx(961));
    CHECK(total_weight_g(answer.back) == Approx(626));
    const std::string text = there_and_back_text(answer);
    CHECK(text.find("Dish cloth: now outside all vessels; before in Pot. Why: Pot and Dish cloth keep apart now") !=
          std::string::npos);
    CHECK(text.find("35 g of spirit left of 110 g") != std::string::npos);
}

TEST_CASE("a spoilt answer is refused")
{
    if (test::slow_build) { // three searches of ten things
        return;
    }
    const BothWays& kits = dunes();
    const ThereAndBack& good = dunes_packed();
    REQUIRE_FALSE(good.elsewhere.empty());
    const auto is_refused = [&](const auto& spoil) {
        ThereAndBack spoilt = good;
        spoil(spoilt);
        return !test::faults_of(kits, spoilt).empty();
    };
    CHECK(is_refused([](ThereAndBack& a) { a.elsewhere.pop_back(); }));
    CHECK(is_refused([](ThereAndBack& a) { a.elsewhere.push_back(a.elsewhere.front()); }));
    CHECK(is_refused([](ThereAndBack& a) { std::swap(a.elsewhere.front().before, a.elsewhere.front().now); }));
    CHECK(is_refused([](ThereAndBack& a) { a.elsewhere.front().now = a.elsewhere.front().before; }));
    for (const Cause cause : {Cause::vessel_gone, Cause::vessel_full, Cause::too_large, Cause::no_room,
                              Cause::need_not_stand, Cause::must_stand, Cause::search}) {
        CHECK(is_refused([&](ThereAndBack& a) {
            const auto cloth = std::find_if(a.elsewhere.begin(), a.elsewhere.end(),
                                            [](const Elsewhere& e) { return e.id == "cloth"; });
            cloth->cause = cause;
        }));
    }
    CHECK(is_refused([](ThereAndBack& a) {
        a.elsewhere.front().cause = Cause::rule;
        a.elsewhere.front().rule = CarryRule{Keep::apart, "cup", "spoon", "because"};
    }));
    CHECK(is_refused(
        [](ThereAndBack& a) { std::erase_if(a.changes, [](const StateChange& c) { return c.id == "bread"; }); }));
    CHECK(is_refused(
        [](ThereAndBack& a) { a.changes.front().difference = Difference::added, a.changes.front().id = "bread"; }));
    CHECK(is_refused([](ThereAndBack& a) { a.back.items.front().solids.front().pose.center.z += 3; }));
    CHECK(is_refused([](ThereAndBack& a) { std::swap(a.out, a.back); }));
    CHECK(is_refused([](ThereAndBack& a) { a.searched_ml = 0.5 * *a.searched_ml; }));
    CHECK(
        is_refused([](ThereAndBack& a) { a.places_ml = a.vessels_ml = a.searched_ml = packed_volume_ml(a.back) + 1; }));
}

TEST_CASE("what is only lighter goes back where it was")
{
    const BothWays kits = way("{left: {tin: 10}, gone: die}", pot + rag + tin + die);
    const ThereAndBack answer = packed(kits);
    CHECK(answer.keeping == Keeping::places);
    CHECK(answer.elsewhere.empty());
    CHECK(answer.reordered.empty());
    CHECK(packed_volume_ml(answer.back) <= packed_volume_ml(answer.out) * (1 + 1e-5));
    CHECK(there_and_back_text(answer).find("Everything goes back where it was, in the same order.") !=
          std::string::npos);
}

TEST_CASE("what was in something that is gone goes elsewhere for that reason")
{
    const BothWays kits = way("{gone: pot}", pot + rag + tin);
    const ThereAndBack answer = packed(kits);
    const Elsewhere* inner = find(answer.elsewhere, "tin");
    REQUIRE(inner != nullptr);
    CHECK(inner->cause == Cause::vessel_gone);
    CHECK(inner->words == "pot does not come back");
}

TEST_CASE("an empty tin may take something that has to leave its old place")
{
    const BothWays kits = way("{empty: tin, changed: [{id: die, goes-in: tin}]}", pot + rag + tin + die);
    const ThereAndBack answer = packed(kits);
    const Elsewhere* inner = find(answer.elsewhere, "die");
    REQUIRE(inner != nullptr);
    CHECK(inner->now.in == "tin");
    CHECK(inner->cause == Cause::rule);
    CHECK(inner->words == "die has to go in tin now: the kit file says so");
}

TEST_CASE("what no longer finds room in its shut vessel, or is too large for it now, says so")
{
    const std::string lid = "  - {id: lid, weight: 9, cylinder: {diameter: 92, height: 6}, closes: {item: pot, adds: "
                            "2, intrudes: 4, shut: yes}}\n";
    const std::string cake = "{id: cake, weight: 90, cylinder: {diameter: 84, height: 40}, goes-in: pot}";
    const BothWays full = way("{added: [" + cake + "]}", pot + lid + tin);
    const ThereAndBack crowded =
        packed(full); // by hand: 90 - 2 walls wide, 65 high inside; 40 of cake leave 25, the tin is 40
    const Elsewhere* inner = find(crowded.elsewhere, "tin");
    REQUIRE(inner != nullptr);
    CHECK(inner->before.in == "pot");
    CHECK(inner->cause == Cause::no_room);
    CHECK(inner->words.find("with cake, which lies in there now") != std::string::npos);
    const BothWays swollen = way("{changed: [{id: die, box: {length: 80, width: 70, height: 60}}]}", pot + lid + die);
    const ThereAndBack large = packed(swollen); // the diagonal of 80 x 70 is 106
    inner = find(large.elsewhere, "die");
    REQUIRE(inner != nullptr);
    CHECK(inner->cause == Cause::too_large);
}

TEST_CASE("old places are let go only where a rule is broken, and the contained one gives way")
{
    const BothWays kits = way("{becomes: {pot: sooty}}", pot + rag + tin + die);
    const Bundle out = solve(kits.out, quick());
    REQUIRE(has_bundle(out.status));
    const auto lies_in = [&](const std::string& id) {
        const auto item =
            std::find_if(out.items.begin(), out.items.end(), [&](const PlacedItem& one) { return one.id == id; });
        return item->in ? out.items[item->in->item].id : "";
    };
    REQUIRE(lies_in("rag") == "pot");
    const auto kept = advice::kept_places(out, kits.back);
    for (const advice::CarriedThing& thing : kept.things) {
        CHECK(thing.anywhere == (thing.id == "rag"));
    }
    CHECK(kept.pattern.items.size() == 3);
    const Kit pinned = advice::with_vessels_kept(kits.back, kept);
    CHECK(pinned.rules.size() > kits.back.rules.size());
    for (const CarryRule& rule : pinned.rules) {
        const bool is_old = std::find(kits.back.rules.begin(), kits.back.rules.end(), rule) != kits.back.rules.end();
        CHECK((is_old || (rule.first != "rag" && (rule.keep == Keep::within || rule.keep == Keep::out))));
    }
}

TEST_CASE("rules that come and go with the way back are told")
{
    const BothWays kits = way("{becomes: {pot: sooty}, gone: tin, changed: [{id: die, not-in: nothing}]}",
                              pot + rag + tin +
                                  "  - {id: die, weight: 5, box: {length: 12, width: 12, height: 12}, not-in: pot, "
                                  "apart-from: tin}\n");
    for (const CarryRule& rule : new_rules(kits)) { // two usual rules about the same pair count once
        CHECK(rule == CarryRule{Keep::apart, "pot", "rag", "what is sooty keeps apart from what must stay clean"});
    }
    CHECK(new_rules(kits).size() == 1);
    REQUIRE(old_rules(kits).size() == 1); // not the one about the tin, which is gone
    CHECK(old_rules(kits).front() == CarryRule{Keep::out, "die", "pot", "the kit says so"});
}

TEST_CASE("what lies deeper in its old vessel than before has room in that vessel")
{
    const std::string crate =
        "  - {id: crate, weight: 99, box: {length: 100, width: 80, height: 60}, inside: {wall: 1, "
        "base: 1, lid: own}}\n";
    const std::string inner =
        "  - {id: tin, weight: 15, cylinder: {diameter: 50, height: 40}, inside: {wall: 1, base: 1, "
        "lid: own}, contents: {what: oats, amount: 40}, goes-in: crate}\n";
    const std::string dice =
        "  - {id: die, count: 2, weight: 5, box: {length: 12, width: 12, height: 12}, goes-in: crate}\n";
    BothWays kits = way("{empty: tin, changed: [{id: die, goes-in: tin}]}", crate + inner + dice);
    const Bundle out = solve(kits.out, quick());
    Bundle back = solve(kits.back, quick());
    REQUIRE(has_bundle(out.status));
    REQUIRE(has_bundle(back.status));
    std::erase_if(kits.back.rules, [](const CarryRule& rule) { return rule.first == "die"; }); // as if by chance
    back.rules = kits.back.rules;
    const auto moves = elsewhere(kits, out, back);
    REQUIRE(moves.size() == 1);
    CHECK(moves.front().id == "die");
    CHECK(moves.front().copies == 2);
    CHECK(moves.front().cause == Cause::room_now);
}

TEST_CASE("nothing may come back of what went out")
{
    const BothWays kits =
        way("{gone: [pot, rag, tin], added: [{id: shell, weight: 4, box: {length: 30, width: 20, height: 9}}]}",
            pot + rag + tin);
    const ThereAndBack answer = packed(kits);
    CHECK(answer.keeping == Keeping::nothing);
    CHECK(answer.elsewhere.empty());
    CHECK(answer.changes.size() == 4);
}

TEST_CASE("where the way back does not fit, that is told, and nothing about places")
{
    const BothWays kits =
        read("kit: Soup\nbundle: {shape: cylinder, diameter: 92, height: 72}\n"
             "way-back: {added: [{id: brick, weight: 900, box: {length: 80, width: 80, height: 60}}]}\nitems:\n" +
             pot + tin);
    const ThereAndBack answer = there_and_back(kits, quick());
    CHECK(has_bundle(answer.out.status));
    CHECK_FALSE(has_bundle(answer.back.status));
    CHECK(answer.elsewhere.empty());
    const std::string text = there_and_back_text(answer);
    CHECK(text.find("What goes elsewhere") == std::string::npos);
    CHECK(text.find("Back: does not fit, which is proved") != std::string::npos);
}

TEST_CASE("the same answer, byte for byte, on any number of threads")
{
    const BothWays kits =
        way("{becomes: {pot: sooty}, added: [{id: bag, weight: 9, cloth: {volume: 30 ml, thickness: 9}}]}",
            pot + rag + die);
    const ThereAndBack one = there_and_back(kits, quick(1)), two = there_and_back(kits, quick(2));
    CHECK(there_and_back_json(one) == there_and_back_json(two));
    CHECK(there_and_back_text(one) == there_and_back_text(two));
}
