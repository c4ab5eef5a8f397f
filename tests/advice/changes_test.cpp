// SPDX-License-Identifier: GPL-3.0-or-later
/// Kits with one thing smaller, or without it.
#include <catch2/catch.hpp>

#include "support/kit_text.hpp"
#include "tuckwright/savings.hpp"

using namespace tuckwright;
using namespace tuckwright::test;

namespace {

Kit tea()
{
    KitText text(round_bundle(), 0.5);
    text.item("pot", cylinder(110, 90) + ", inside: {wall: 1, base: 2}");
    text.item("lid", cylinder(111, 8) + ", closes: {item: pot, adds: 2, intrudes: 5}");
    text.item("mug", cylinder(78, 82) +
                         ", inside: {wall: 1, base: 2}, parts: [{box: {length: 26, width: 14, height: 54}, "
                         "at: right, up: 14}]");
    text.item("cup", cylinder(70, 40) + ", inside: {wall: 1, base: 1}", 2);
    text.item("matches", box(55, 36, 14) + ", goes-in: pot");
    text.item("towel", "cloth: {volume: 300 ml, thickness: 8}");
    text.item("foil", "sheet: {length: 300, width: 84, thickness: 0.4, roll: 30}");
    return kit_of(text.text());
}

WhatIf smaller(std::size_t item, Dimension side, double mm)
{
    WhatIf ask;
    ask.item = item;
    ask.side = side;
    ask.mm = mm;
    return ask;
}

WhatIf left_out(std::size_t item)
{
    WhatIf ask;
    ask.item = item;
    ask.change = Change::left_out;
    return ask;
}

const Cylinder& round(const Shape& shape) { return std::get<Cylinder>(shape); }

} // namespace

TEST_CASE("a narrower pot keeps its wall, and has a narrower lid; a lower one keeps its bottom")
{
    WhatIf ask = smaller(0, Dimension::diameter, 10);
    const auto narrow = changed(tea(), ask);
    REQUIRE(narrow);
    CHECK(ask.also == 1);
    CHECK(round(narrow->items[0].outside).diameter == 100);
    CHECK(round(narrow->items[0].inside->shape).diameter == 98);
    CHECK(round(narrow->items[1].outside).diameter == 101);
    WhatIf lower = smaller(0, Dimension::height, 10);
    const auto low = changed(tea(), lower);
    REQUIRE(low);
    CHECK_FALSE(lower.also);
    CHECK(round(low->items[0].outside).height == 80);
    CHECK(round(low->items[0].inside->shape).height == 78);
    CHECK(low->items[0].inside->floor == 2);
    CHECK(low->items[1].outside == tea().items[1].outside);
}

TEST_CASE("a narrower lid makes its pot narrower; a lower one gives up what it adds when it is shut")
{
    WhatIf ask = smaller(1, Dimension::diameter, 1);
    const auto narrow = changed(tea(), ask);
    REQUIRE(narrow);
    CHECK(ask.also == 0);
    CHECK(round(narrow->items[0].outside).diameter == 109);
    WhatIf shut = smaller(1, Dimension::height, 1);
    shut.shut = true;
    const auto flat = changed(tea(), shut);
    REQUIRE(flat);
    CHECK(flat->items[1].closes->adds == 1);
    CHECK(flat->items[1].closes->intrudes == 5);
    CHECK(round(flat->items[1].outside).height == 7);
    WhatIf loose = smaller(1, Dimension::height, 1);
    CHECK(changed(tea(), loose)->items[1].closes->intrudes == 4);
}

TEST_CASE("a handle comes in with the side that it is fixed to")
{
    WhatIf ask = smaller(2, Dimension::diameter, 4);
    const auto narrow = changed(tea(), ask);
    REQUIRE(narrow);
    CHECK(narrow->items[2].parts[0].at.x == tea().items[2].parts[0].at.x - 2);
    CHECK(narrow->items[2].parts[0].shape == tea().items[2].parts[0].shape);
    WhatIf lower = smaller(2, Dimension::height, 4);
    CHECK(changed(tea(), lower)->items[2].parts[0].at == tea().items[2].parts[0].at);
}

TEST_CASE("the form in which a thing is carried gets smaller, not the thing itself")
{
    Kit kit = tea();
    kit.items[2].forms.push_back(
        {"handle off", "take the handle off", Cylinder{78, 82}, {}, kit.items[2].inside, false, {}});
    WhatIf ask = smaller(2, Dimension::height, 2);
    ask.form = "handle off";
    const auto low = changed(kit, ask);
    REQUIRE(low);
    CHECK(round(low->items[2].forms[0].outside).height == 80);
    CHECK(round(low->items[2].outside).height == 82);
}

TEST_CASE("what makes no sense is told instead")
{
    const auto refused = [](WhatIf ask) {
        CHECK_FALSE(changed(tea(), ask));
        return ask.why_not;
    };
    CHECK(refused(smaller(5, Dimension::height, 1)).find("cloth") != std::string::npos);
    CHECK(refused(smaller(6, Dimension::height, 1)).find("sheet") != std::string::npos);
    CHECK(refused(smaller(4, Dimension::height, 13.9)).find("hardly anything") != std::string::npos);
    CHECK(refused(smaller(0, Dimension::height, 89)).find("hardly anything") != std::string::npos);
    CHECK(refused(smaller(0, Dimension::height, 84)).find("lid") != std::string::npos);
    CHECK(refused(left_out(0)).find("matches needs it") != std::string::npos);
}

TEST_CASE("left at home: one of several, a vessel with its lid, a lid alone; links and rules follow")
{
    WhatIf cup = left_out(3);
    CHECK(changed(tea(), cup)->items[3].count == 1);
    Kit free = tea();
    free.rules.clear();
    WhatIf pot = left_out(0);
    const auto without_pot = changed(free, pot);
    REQUIRE(without_pot);
    CHECK(pot.also == 1);
    CHECK(without_pot->items.size() == free.items.size() - 2);
    CHECK(without_pot->items[0].id == "mug");
    WhatIf matches = left_out(4);
    const auto without_matches = changed(tea(), matches);
    REQUIRE(without_matches);
    CHECK(without_matches->rules.empty());
    CHECK(without_matches->items[1].closes->item == 0);
    WhatIf lid = left_out(1);
    const auto open = changed(tea(), lid);
    REQUIRE(open);
    CHECK(open->items[1].id == "mug");
    WhatIf only = left_out(0);
    Kit alone = free;
    alone.items.resize(2);
    CHECK_FALSE(changed(alone, only));
    CHECK(only.why_not == "nothing would be left");
}

TEST_CASE("a lid of what is full stays, and so does what a band holds or a ring is pressed into")
{
    Kit kit = tea();
    kit.rules.clear();
    kit.items[0].contents = Contents{"soup", 300};
    WhatIf lid = left_out(1);
    CHECK_FALSE(changed(kit, lid));
    CHECK(lid.why_not.find("full") != std::string::npos);
    kit.items[0].contents.reset();
    kit.bands.push_back({"strap", "Strap", 10, 500, "lid"});
    CHECK_FALSE(changed(kit, lid));
    WhatIf pot = left_out(0);
    CHECK_FALSE(changed(kit, pot));
    CHECK(pot.why_not == "strap holds it shut");
    kit.bands.clear();
    kit.items[2].press = PressFit{0, 3};
    CHECK_FALSE(changed(kit, pot));
    CHECK(pot.why_not == "mug is pressed into it");
}

TEST_CASE("a ring that is pressed into a vessel allows it to be narrower by as much as it gives")
{
    KitText text(round_bundle(), 0.5);
    text.item("pot", cylinder(100, 80) + ", inside: {wall: 1, base: 1}");
    text.item("ring", cylinder(99, 60) + ", inside: {wall: 0.5, opens: both}, press-fit: {into: pot, gives: 4}");
    const Kit kit = kit_of(text.text());
    WhatIf narrow = smaller(0, Dimension::diameter, 3);
    CHECK(changed(kit, narrow));
    narrow.mm = 4;
    CHECK_FALSE(changed(kit, narrow));
    CHECK(narrow.why_not.find("pressed into it") != std::string::npos);
    WhatIf ring = smaller(1, Dimension::diameter, 1);
    CHECK_FALSE(changed(kit, ring));
    WhatIf low = smaller(0, Dimension::height, 20);
    CHECK_FALSE(changed(kit, low));
}
