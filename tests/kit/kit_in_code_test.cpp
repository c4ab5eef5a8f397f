// SPDX-License-Identifier: GPL-3.0-or-later
/// Kits built in code: what the reader does to those from files, and faults that would mislead the search.
#include <catch2/catch.hpp>

#include <algorithm>
#include <filesystem>
#include <functional>
#include <limits>

#include "tuckwright/kit_in_code.hpp"
#include "tuckwright/kit_reader.hpp"

using namespace tuckwright;

namespace {

Kit read(const std::string& items)
{
    auto kit = read_kit_text("kit: Test\nbundle: {shape: cylinder}\nitems:\n" + items, "test.yaml");
    REQUIRE(kit);
    return std::move(kit).value();
}

void check_same(const Cavity& made, const Cavity& from_file)
{
    CHECK(made.shape == from_file.shape);
    CHECK(made.opens == from_file.opens);
    CHECK(made.floor == Approx(from_file.floor).margin(1e-9));
}

/// A pot with its lid, a beaker that tapers, a bottle of spirit and a loaf; all sound.
Kit sound()
{
    Item pot{.id = "pot", .name = "Pot", .weight_g = 150, .outside = Cylinder{120, 100}};
    pot.inside = cavity_of(pot.outside, 1, 1.5);
    Item lid{.id = "lid", .name = "Lid", .weight_g = 40, .outside = Cylinder{121, 10}};
    lid.closes = Closure{0, 4, 3};
    Item beaker{
        .id = "beaker", .name = "Beaker", .weight_g = 50, .outside = Cylinder{84, 92, 62}, .kinds = {Kind::lips}};
    beaker.inside = cavity_of(beaker.outside, 1.5, 2);
    Item bottle{.id = "bottle",
                .name = "Bottle",
                .weight_g = 90,
                .outside = Cylinder{40, 80},
                .kinds = {Kind::fuel, Kind::liquid}};
    bottle.upright = true;
    const Item loaf{.id = "loaf", .name = "Loaf", .weight_g = 300, .outside = Box{70, 50, 30}, .kinds = {Kind::food}};
    Kit kit{.name = "In code", .items = {pot, lid, beaker, bottle, loaf}};
    kit.rules = {{Keep::apart, "bottle", "loaf", "fuel keeps apart from food"},
                 {Keep::apart, "bottle", "beaker", "fuel keeps apart from what touches the lips"}};
    return kit;
}

} // namespace

TEST_CASE("a cavity made of wall and base is that of the reader")
{
    const Kit kit = read(
        "  - {id: can, weight: 1 g, cylinder: {diameter: 84.3, height: 92.7}, inside: {wall: 1.3, base: 0.7}}\n"
        "  - {id: case, weight: 1 g, box: {length: 80.1, width: 60, height: 30.3}, inside: {wall: 0.9, base: 1.1}}\n"
        "  - {id: beaker, weight: 1 g, cylinder: {diameter: 84, height: 92, foot: 62}, inside: {wall: 1.5, base: 2}}\n"
        "  - {id: sleeve, weight: 1 g, cylinder: {diameter: 90, height: 70}, inside: {wall: 2, opens: both}}\n"
        "  - {id: tin, weight: 1 g, cylinder: {diameter: 60, height: 40}, inside: {wall: 0.4, base: 0.6, lid: own}}\n");
    const std::vector<std::array<double, 2>> thick{{1.3, 0.7}, {0.9, 1.1}, {1.5, 2}, {2, 0}, {0.4, 0.6}};
    for (std::size_t k = 0; k < kit.items.size(); ++k) {
        const Item& item = kit.items[k];
        CAPTURE(item.id);
        check_same(cavity_of(item.outside, thick[k][0], thick[k][1], item.inside->opens), *item.inside);
    }
    CHECK_THROWS_AS(cavity_of(Cylinder{10, 50}, 5, 1), ContractBroken);
    CHECK_THROWS_AS(cavity_of(Cylinder{60, 50, 4}, 3, 1), ContractBroken); // the foot closes
    CHECK_THROWS_AS(cavity_of(Box{10, 10, 10}, 1, 0), ContractBroken);
}

TEST_CASE("the usual rules of a kit in code are those of the same kit in a file")
{
    Kit bare_kit = sound();
    const std::vector<CarryRule> wanted = bare_kit.rules;
    bare_kit.rules.clear();
    const Kit code = with_usual_rules(bare_kit);
    CHECK(code.rules == wanted);
    CHECK(with_usual_rules(code).rules == wanted); // twice is once

    int compared = 0;
    for (const auto& entry :
         std::filesystem::directory_iterator(std::filesystem::path(TUCKWRIGHT_SOURCE_DIR) / "kits")) {
        const auto kit = entry.path().extension() == ".yaml" ? read_kit_file(entry.path().string())
                                                             : Result<Kit>(Problem{"", 0, 0, "no kit", ""});
        if (!kit || !kit->waived.empty()) {
            continue;
        }
        CAPTURE(entry.path());
        CHECK(problems_of(*kit).empty());
        Kit bare = *kit;
        std::erase_if(bare.rules, [](const CarryRule& rule) {
            return rule.why.find("keeps apart from") != std::string::npos ||
                   rule.why.find("does not lie in") != std::string::npos;
        });
        const Kit again = with_usual_rules(bare);
        CHECK(std::is_permutation(again.rules.begin(), again.rules.end(), kit->rules.begin(), kit->rules.end()));
        ++compared;
    }
    CHECK(compared >= 10);
}

TEST_CASE("what is fragile bears nothing unless it says so, and names come from ids")
{
    Kit kit = sound();
    kit.items[4].kinds = {Kind::fragile};
    kit.items[3].kinds = {Kind::fragile};
    kit.items[3].bears_g = 100;
    kit.items[2].name.clear();
    const Kit made = with_usual_rules(kit);
    CHECK(made.items[4].nothing_on_top);
    CHECK_FALSE(made.items[3].nothing_on_top);
    CHECK(made.items[2].name == "beaker");
}

TEST_CASE("what holds a liquid or has contents stands, soft things get an outside, and sides are put on the grid")
{
    Kit kit = sound();
    kit.items[3].upright = false;
    kit.items[4].contents = Contents{"crumbs", 20};
    kit.items.push_back({.id = "towel", .weight_g = 60, .cloth = Cloth{300, 8}});
    kit.items.push_back({.id = "foil", .weight_g = 30, .sheet = Sheet{400, 90, 0.3}});
    kit.items.push_back({.id = "ring", .weight_g = 30, .outside = Cylinder{190 / 3.0, 181 / 7.0}});
    kit.items.back().inside = Cavity{Cylinder{180 / 3.0 + 1e-9, 181 / 7.0 - 2}, Opening::top, 2};
    REQUIRE_FALSE(problems_of(kit).empty());
    const Kit made = with_usual_rules(kit);
    CHECK(made.items[3].upright);
    CHECK(made.items[4].upright);
    CHECK_FALSE(made.items[0].upright);
    CHECK(problems_of(made).empty());
    const Kit same = read("  - {id: towel, weight: 60 g, cloth: {volume: 300 ml, thickness: 8}}\n"
                          "  - {id: foil, weight: 30 g, sheet: {length: 400, width: 90, thickness: 0.3}}\n");
    CHECK(made.items[5].outside == same.items[0].outside);
    CHECK(made.items[6].outside == same.items[1].outside);
    const auto& ring = std::get<Cylinder>(made.items[7].outside);
    const auto& bore = std::get<Cylinder>(made.items[7].inside->shape);
    CHECK(ring.diameter == 63.333334);
    CHECK(ring.height == 25.857143);
    CHECK(bore.diameter == 60);
    CHECK(made.items[7].inside->floor + bore.height == Approx(ring.height).margin(1e-9));
    Kit odd = sound();
    odd.items[3].outside = Cylinder{std::numeric_limits<double>::infinity(), -3};
    CHECK(problems_of(with_usual_rules(odd)).size() == 1); // no fault is hidden
}

TEST_CASE("an open bottle, one that may lie, and rules that are missing are told where nothing else is wrong")
{
    const auto told = [](const std::function<void(Kit&)>& spoil) {
        Kit kit = sound();
        spoil(kit);
        const auto problems = problems_of(kit);
        return problems.size() == 1 ? problems.front().what : std::to_string(problems.size());
    };
    using Catch::Contains;
    CHECK_THAT(told([](Kit& k) { k.items[3].upright = false; }),
               Contains("item 'bottle': it holds a liquid and need not stand"));
    CHECK_THAT(told([](Kit& k) { k.items[3].inside = cavity_of(k.items[3].outside, 1, 1); }),
               Contains("item 'bottle': it holds a liquid, but is open"));
    CHECK_THAT(told([](Kit& k) { k.rules.pop_back(); }),
               Contains("ask for a rule that is not there: fuel keeps apart from what touches"));
    CHECK(told([](Kit& k) { k.rules.clear(), k.waived.push_back("fuel need not keep apart: it is sealed"); }) == "0");
    CHECK_THAT(told([](Kit& k) {
                   k.items[4].cloth = Cloth{300, 8};
               }),
               Contains("item 'loaf': a cloth's volume")); // the box has 105
    CHECK_THAT(told([](Kit& k) {
                   k.items[4].sheet = Sheet{400, 0, 0.3};
               }),
               Contains("item 'loaf': a side of its sheet"));
    CHECK_THAT(told([](Kit& k) { k.items[4].pouch = Pouch{300, -1, 1}; }), Contains("item 'loaf': its pouch's girth"));
}

TEST_CASE("each fault of a kit in code is told with its item, and a sound kit has none")
{
    REQUIRE(problems_of(sound()).empty());
    struct Fault {
        std::function<void(Kit&)> spoil;
        std::string words;
    };
    const double none = std::numeric_limits<double>::quiet_NaN();
    const std::vector<Fault> faults{
        {[](Kit& k) { k.items.clear(); }, "the kit has no items"},
        {[](Kit& k) { k.clearance = -1; }, "clearance"},
        {[](Kit& k) { k.bundle.height = 0; }, "a limit of the bundle"},
        {[](Kit& k) { k.items[3].id.clear(); }, "an item has no id"},
        {[](Kit& k) { k.items[3].id = "pot"; }, "item 'pot': another item has the same id"},
        {[](Kit& k) { k.items[3].name.clear(); }, "item 'bottle': it has no name"},
        {[](Kit& k) { k.items[3].count = 0; }, "item 'bottle': count is 0"},
        {[](Kit& k) { k.items[3].weight_g = -5; }, "item 'bottle': its weight"},
        {[&](Kit& k) { k.items[3].weight_g = none; }, "item 'bottle': its weight"},
        {[](Kit& k) {
             k.items[3].outside = Cylinder{0, 80};
         },
         "item 'bottle': a side of its outside"},
        {[](Kit& k) {
             k.items[4].outside = Box{70, -50, 30};
         },
         "item 'loaf': a side of its outside"},
        {[](Kit& k) {
             k.items[3].outside = Cylinder{40, 80, 41};
         },
         "item 'bottle': a side of its outside"},
        {[&](Kit& k) {
             k.items[4].parts.push_back({Box{1, 1, 1}, {none, 0, 0}});
         },
         "item 'loaf': a part's size"},
        {[](Kit& k) {
             k.items[0].inside->shape = Cylinder{120, 98.5};
         },
         "item 'pot': its cavity is not narrower"},
        {[](Kit& k) {
             k.items[2].inside->shape = Cylinder{81, 90};
         },
         "item 'beaker': its cavity is not narrower"}, // straight
        {[](Kit& k) { k.items[0].inside->floor = 0; }, "item 'pot': its cavity ends 98.5 mm above the item's bottom"},
        {[](Kit& k) { k.items[0].inside->floor = 5; }, "item 'pot': its cavity ends 103.5 mm above the item's bottom"},
        {[](Kit& k) {
             k.items[0].inside->shape = Cylinder{-1, 98.5};
         },
         "item 'pot': a side of its cavity"},
        {[](Kit& k) { k.items[4].bears_g = -1; }, "item 'loaf': what it bears"},
        {[&](Kit& k) {
             k.items[4].contents = Contents{"bread", none};
         },
         "item 'loaf': the weight of its contents"},
        {[](Kit& k) {
             k.items[3].press = PressFit{9, 2};
         },
         "item 'bottle': it is pressed into"},
        {[](Kit& k) { k.items[1].closes->item = 99; }, "item 'lid': it closes what is no open vessel"},
        {[](Kit& k) { k.items[1].closes->item = 1; }, "item 'lid': it closes what is no open vessel"},
        {[](Kit& k) { k.items[1].closes->item = 4; }, "item 'lid': it closes what is no open vessel"},
        {[](Kit& k) { k.items[1].closes->adds = -4; }, "item 'lid': what its lid adds"},
        {[](Kit& k) {
             k.rules.push_back({Keep::apart, "pot", "kettle", ""});
         },
         "a rule is about 'pot' and 'kettle'"},
        {[](Kit& k) {
             k.bands.push_back({"band", "Band", 5, 300, "cap"});
         },
         "band 'band' has no girth, or holds"},
        {[](Kit& k) { k.bag = Bag{"bag", "Bag", 20, 0, 300, 1}; }, "the bag's girth"},
    };
    for (const Fault& fault : faults) {
        Kit kit = sound();
        kit.rules.clear(); // which name items that some faults take away
        fault.spoil(kit);
        const std::vector<Problem> told = problems_of(kit);
        CAPTURE(fault.words);
        REQUIRE(told.size() == 1);
        CHECK(told.front().what.find(fault.words) != std::string::npos);
        CHECK_FALSE(told.front().remedy.empty());
    }
    Kit twice = sound();
    twice.items[3].count = 0;
    twice.items[4].weight_g = -1;
    CHECK(problems_of(twice).size() == 2); // all at once
}
