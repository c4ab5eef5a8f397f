// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>
#include <string>

#include "tuckwright/kit_reader.hpp"
#include "tuckwright/stowage.hpp"

using namespace tuckwright;

namespace {

Kit read(const std::string& text)
{
    const auto kit = read_kit_text(text, "kit.yaml");
    if (!kit) {
        for (const auto& problem : kit.problems()) {
            UNSCOPED_INFO(to_string(problem));
        }
        REQUIRE(kit.ok());
    }
    return *kit;
}

template <class Plain> bool same(const Shape& shape, const Plain& expected)
{
    const auto* plain = std::get_if<Plain>(&shape);
    return plain != nullptr && *plain == expected;
}

/// A kit of one item with these entries.
Item item(const std::string& entries)
{
    return read("kit: One item\nitems:\n  - {id: it, weight: 10, " + entries + "}\n").items.at(0);
}

Cavity cavity(const std::string& entries)
{
    const Item read_item = item(entries);
    REQUIRE(read_item.inside);
    return *read_item.inside;
}

template <class Plain> void check_cavity(const std::string& entries, const Plain& shape, Opening opens, double floor)
{
    const Cavity inside = cavity(entries);
    CHECK(same(inside.shape, shape));
    CHECK(inside.opens == opens);
    CHECK(inside.floor == floor);
}

} // namespace

TEST_CASE("the least kit takes every default")
{
    const Kit kit =
        read("kit: Soup\nitems:\n  - id: spoon\n    weight: 9\n    box: {length: 160, width: 35, height: 20}\n");
    CHECK(kit.name == "Soup");
    CHECK(kit.clearance == 0.5);
    CHECK(kit.bundle.shape == BundleShape::cylinder);
    CHECK_FALSE(kit.bundle.diameter);
    CHECK_FALSE(kit.bundle.height);
    REQUIRE(kit.items.size() == 1);
    const Item& spoon = kit.items[0];
    CHECK(spoon.id == "spoon");
    CHECK(spoon.name == "spoon");
    CHECK(spoon.count == 1);
    CHECK(spoon.weight_g == 9);
    CHECK(same(spoon.outside, Box{160, 35, 20}));
    CHECK_FALSE(spoon.inside);
    CHECK_FALSE(spoon.closes);
    CHECK_FALSE(spoon.contents);
    CHECK_FALSE(spoon.upright);
}

TEST_CASE("a pot with its lid and a filled bag are read whole")
{
    const Kit kit = read(R"(version: 1
kit: Porridge for two, canal weekend
clearance: 0.5 mm
bundle: {shape: cylinder}
items:
  - id: pot
    name: Steel pot, 1.1 l
    weight: 212 g
    cylinder: {diameter: 128, height: 96}
    inside: {cylinder: {diameter: 126, height: 93}, opens: top}
  - id: pot-lid
    weight: 48
    cylinder: {diameter: 129, height: 9}
    closes: {item: pot, adds: 3, intrudes: 6}
  - id: oats
    count: 2
    weight: 20
    box: {length: 80, width: 60, height: 45}
    contents: {what: rolled oats, amount: 150 g}
)");
    REQUIRE(kit.items.size() == 3);
    const Item& pot = kit.items[0];
    CHECK(pot.name == "Steel pot, 1.1 l");
    REQUIRE(pot.inside);
    CHECK(same(pot.inside->shape, Cylinder{126, 93}));
    CHECK(pot.inside->opens == Opening::top);
    CHECK(pot.inside->floor == 3);
    const Item& lid = kit.items[1];
    REQUIRE(lid.closes);
    CHECK(lid.closes->item == 0);
    CHECK(lid.closes->adds == 3);
    CHECK(lid.closes->intrudes == 6);
    const Item& oats = kit.items[2];
    CHECK(oats.count == 2);
    REQUIRE(oats.contents);
    CHECK(oats.contents->what == "rolled oats");
    CHECK(oats.contents->weight_g == 150);
    CHECK(oats.upright);
}

TEST_CASE("a lid may come before its vessel, and many vessels have a lid each")
{
    const Kit kit = read(R"(kit: Cups
items:
  - {id: cap, count: 3, weight: 8, cylinder: {diameter: 82, height: 6}, closes: {item: cup, adds: 6, intrudes: 0}}
  - {id: cup, count: 3, weight: 70, cylinder: {diameter: 80, height: 70}, inside: {wall: 1, base: 1}}
)");
    REQUIRE(kit.items[0].closes);
    CHECK(kit.items[0].closes->item == 1);
}

TEST_CASE("units for the file hold for plain numbers only")
{
    const Kit kit = read(R"(kit: Inches
items:
  - {id: tin, weight: 2, box: {length: 4, width: 2.5, height: 30 mm}, contents: {what: salt, amount: 1}}
units: {length: in, weight: oz, volume: fl oz}
bundle: {shape: box, limits: {length: 10, width: 6, height: 20 cm}}
clearance: 0.02
)");
    CHECK(same(kit.items[0].outside, Box{101.6, 63.5, 30}));
    CHECK(kit.items[0].weight_g == 56.69904625);
    CHECK(kit.items[0].contents->weight_g == 28.349523125);
    CHECK(kit.bundle.length == 254.0);
    CHECK(kit.bundle.width == 152.4);
    CHECK(kit.bundle.height == 200.0);
    CHECK(kit.clearance == 0.508);
    CHECK(read("units: {length: in}\nkit: k\nitems: [{id: a, weight: 1, cylinder: {diameter: 1, height: 1}}]")
              .clearance == 0.5);
}

TEST_CASE("rounding never turns a misfit into a fit")
{
    const Kit kit = read(R"(kit: A hair's breadth
clearance: 0.5000001
bundle: {shape: cylinder, limits: {diameter: 150.0000009, height: 170.0000009}}
items:
  - id: pot
    weight: 212
    cylinder: {diameter: 128.0000001, height: 96.0000001}
    inside: {cylinder: {diameter: 126.0000009, height: 93.0000009}, opens: top}
  - id: lid
    weight: 48
    cylinder: {diameter: 129, height: 10}
    closes: {item: pot, adds: 3.0000001, intrudes: 6.0000001}
)");
    CHECK(kit.clearance == 0.500001);
    CHECK(kit.bundle.diameter == 150.0);
    CHECK(kit.bundle.height == 170.0);
    CHECK(same(kit.items[0].outside, Cylinder{128.000001, 96.000001}));
    CHECK(same(kit.items[0].inside->shape, Cylinder{126, 93}));
    CHECK(kit.items[0].inside->floor == 3.000001);
    CHECK(kit.items[1].closes->adds == 3.000001);
    CHECK(kit.items[1].closes->intrudes == 6.000001);
}

TEST_CASE("wall and base give the inside")
{
    SECTION("open at the top, which is the default")
    {
        check_cavity("cylinder: {diameter: 100, height: 80}, inside: {wall: 1.5, base: 2}", Cylinder{97, 78},
                     Opening::top, 2);
    }
    SECTION("a box")
    {
        check_cavity("box: {length: 100, width: 60, height: 40}, inside: {wall: 1, base: 2, opens: top}",
                     Box{98, 58, 38}, Opening::top, 2);
    }
    SECTION("with a lid of its own, as thick as the base")
    {
        check_cavity("cylinder: {diameter: 60, height: 40}, inside: {wall: 1, base: 2, lid: own}", Cylinder{58, 36},
                     Opening::closed, 2);
    }
    SECTION("a sleeve has no base")
    {
        check_cavity("cylinder: {diameter: 60, height: 40}, inside: {wall: 1, opens: both}", Cylinder{58, 40},
                     Opening::both, 0);
    }
    SECTION("exactly, not from what is rounded already")
    {
        const Cavity inside =
            cavity("cylinder: {diameter: 100.0000006, height: 80}, inside: {wall: 1.0000003, base: 0.001}");
        CAPTURE(std::get<Cylinder>(inside.shape).diameter);
        CHECK(same(inside.shape, Cylinder{98, 79.999}));
    }
}

TEST_CASE("inner dimensions place the cavity")
{
    SECTION("a sleeve is as high inside as outside, said or not")
    {
        for (const std::string height : {"", ", height: 80", ", height: 8 cm"}) {
            const Cavity inside = cavity("cylinder: {diameter: 100, height: 80.0}, inside: {cylinder: {diameter: 98" +
                                         height + "}, opens: both}");
            CHECK(same(inside.shape, Cylinder{98, 80}));
            CHECK(inside.floor == 0);
        }
    }
    SECTION("a sleeve whose height is between grid points is rounded like its outside")
    {
        const Cavity inside =
            cavity("cylinder: {diameter: 100, height: 80.0000001}, inside: {cylinder: {diameter: 98}, opens: both}");
        CHECK(same(inside.shape, Cylinder{98, 80.000001}));
    }
    SECTION("what its own lid shuts lies in the middle, and on the grid")
    {
        check_cavity("box: {length: 60, width: 40, height: 20.000001}, "
                     "inside: {box: {length: 58, width: 38, height: 18}, lid: own, opens: top}",
                     Box{58, 38, 18}, Opening::closed, 1);
    }
    SECTION("a box in a cylinder, a cylinder in a box")
    {
        CHECK(cavity("cylinder: {diameter: 100.1, height: 60}, inside: {box: {length: 80, width: 60, height: 55}}")
                  .floor == 5);
        CHECK(
            cavity("box: {length: 80, width: 70, height: 60}, inside: {cylinder: {diameter: 69, height: 59}}").floor ==
            1);
    }
}

TEST_CASE("what is filled stands upright, unless the file says otherwise")
{
    const std::string bag = "box: {length: 80, width: 60, height: 45}";
    const std::string rice = ", contents: {what: rice, amount: 90}";
    CHECK_FALSE(item(bag).upright);
    CHECK(item(bag + rice).upright);
    CHECK_FALSE(item(bag + rice + ", upright: no").upright);
    CHECK(item(bag + ", upright: yes").upright);
    CHECK(item(bag + ", upright: true").upright);
    CHECK_FALSE(item(bag + ", upright: false").upright);
}

TEST_CASE("contents fill a vessel, unless the file says otherwise")
{
    const std::string tin = "cylinder: {diameter: 60, height: 30}, inside: {wall: 1, base: 1}";
    const auto rice = [](const std::string& fills) { return ", contents: {what: rice, amount: 90" + fills + "}"; };
    CHECK_FALSE(item(tin).is_full());
    CHECK(item(tin + rice("")).is_full());
    CHECK(item(tin + rice(", fills: yes")).is_full());
    CHECK(item(tin + rice(", fills: true")).is_full());
    CHECK_FALSE(item(tin + rice(", fills: no")).is_full());
    CHECK_FALSE(item(tin + rice(", fills: false")).is_full());
    CHECK(item(tin + rice(", fills: no")).contents->weight_g == 90);
    CHECK(item(tin + rice(", fills: no")).upright);
    CHECK_FALSE(item("box: {length: 80, width: 60, height: 45}" + rice("")).is_full()); // it has no cavity
}

TEST_CASE("a bundle's limits stand in the rule or under limits")
{
    const std::string items = "\nkit: k\nitems: [{id: a, weight: 0, cylinder: {diameter: 1, height: 1}}]\n";
    CHECK(read("bundle: {diameter: 130}" + items).bundle.diameter == 130.0);
    CHECK(read("bundle: {shape: cylinder, height: 17 cm}" + items).bundle.height == 170.0);
    const auto both = read("bundle: {shape: box, length: 300, limits: {width: 200}}" + items).bundle;
    CHECK(both.shape == BundleShape::box);
    CHECK(both.length == 300.0);
    CHECK(both.width == 200.0);
    CHECK_FALSE(both.height);
    CHECK(read("bundle: {shape: box}" + items).bundle.shape == BundleShape::box);
}

TEST_CASE("the ways of YAML are taken as they are meant")
{
    SECTION("quotes, comments, markers and a version of YAML")
    {
        const Kit kit =
            read("%YAML 1.2\n---\n# a kit\nkit: 'It''s \"soup\"'\nitems:\n- \"id\": \"a-1_B\"\n  weight: \"48\"\n"
                 "  cylinder:\n    diameter: '12.5 mm'   # measured\n    height: \"3\"\n...\n");
        CHECK(kit.name == "It's \"soup\"");
        CHECK(kit.items[0].id == "a-1_B");
        CHECK(same(kit.items[0].outside, Cylinder{12.5, 3}));
    }
    SECTION("a mark at the start and line ends of other systems")
    {
        const Kit kit = read("\xEF\xBB\xBFkit: Soup\r\nitems:\r\n- id: a\r\n  name: Théière\r\n  weight: 1\r\n"
                             "  cylinder: {diameter: 1, height: 1}\r\n");
        CHECK(kit.name == "Soup");
        CHECK(kit.items[0].name == "Théière");
    }
    SECTION("an id that looks like a number is a word")
    {
        CHECK(read("kit: 7\nitems: [{id: 007, weight: 0, cylinder: {diameter: 1, height: 1}}]").items[0].id == "007");
    }
    SECTION("quotes that hold what would end them")
    {
        CHECK(item("name: \"a \\\" in it\\\\\", cylinder: {diameter: 1, height: 1}").name == "a \" in it\\");
    }
}

TEST_CASE("the largest numbers that are allowed are allowed")
{
    const std::string box = "box: {length: 10 m, width: 10000, height: 0.001}";
    CHECK(same(item(box).outside, Box{10000, 10000, 0.001}));
    CHECK(item("count: 200, " + box).count == 200);
    CHECK(read("kit: k\nclearance: 5 cm\nitems: [{id: a, weight: 100 kg, " + box + "}]").clearance == 50);
    const std::string rows = "{id: a, count: 200, weight: 0, " + box + "}, {id: b, count: 200, weight: 0, " + box +
                             "}, {id: c, count: 100, weight: 0, " + box + "}";
    CHECK(read("kit: k\nclearance: 0\nitems: [" + rows + "]").items.size() == 3);
}

TEST_CASE("openings narrower than the cavity are read, and the cavity lies below them")
{
    const auto neck = [](const std::string& entries) {
        const Cavity inside = cavity(entries);
        REQUIRE(inside.neck);
        return *inside.neck;
    };
    const std::string crock = "cylinder: {diameter: 120, height: 90}, inside: {cylinder: {diameter: 116, height: 80}, ";
    check_cavity(crock + "opening: {diameter: 80, depth: 3}}", Cylinder{116, 80}, Opening::top, 7);
    CHECK(same(neck(crock + "opening: {diameter: 80, depth: 3}}"), Cylinder{80, 3}));
    check_cavity(crock + "opening: {diameter: 80}}", Cylinder{116, 80}, Opening::top, 10); // a rim as thin as can be
    CHECK(same(neck(crock + "opening: {diameter: 80}}"), Cylinder{80, 0}));
    check_cavity(crock + "lid: own, opening: {diameter: 80, depth: 2}}", Cylinder{116, 80}, Opening::closed, 4);
    const std::string chest = "box: {length: 100, width: 80, height: 50}, inside: {wall: 2, base: 2, ";
    check_cavity(chest + "opening: {length: 60, width: 50, depth: 1 cm}}", Box{96, 76, 38}, Opening::top, 2);
    CHECK(same(neck(chest + "opening: {length: 60, width: 50, depth: 1 cm}}"), Box{60, 50, 10}));
    CHECK(same(neck(chest + "opening: {length: 96, width: 50}}"), Box{96, 50, 0})); // narrower one way is enough
    check_cavity(chest + "lid: own, opening: {diameter: 50, depth: 2}}", Box{96, 76, 44}, Opening::closed, 2);
    CHECK_FALSE(cavity(crock + "opens: top}").neck);
}

TEST_CASE("a lid need only cover the narrow opening")
{
    const Kit kit = read(R"(kit: Pears in the orchard
items:
  - id: crock
    weight: 500
    cylinder: {diameter: 120, height: 90}
    inside: {wall: 2, base: 2, opening: {diameter: 80, depth: 8}}
  - id: stopper
    weight: 30
    cylinder: {diameter: 90, height: 14}
    closes: {item: crock, adds: 2, intrudes: 10}
)");
    REQUIRE(kit.items[1].closes);
    CHECK(kit.items[1].closes->intrudes == 10);
}

TEST_CASE("what is pressed into a vessel names it, goes in it, and keeps its own width until it is pressed in")
{
    const Kit kit = read("kit: Rings\ntolerance: 0.2\nitems:\n"
                         "  - {id: strap, weight: 9, band: {girth: 900}}\n" // counts in the file, not in the kit
                         "  - {id: ring, weight: 30, cylinder: {diameter: 112, height: 40},\n"
                         "     inside: {wall: 0.5, opens: both}, press-fit: {into: pot, gives: 0.3 cm}}\n"
                         "  - {id: pot, weight: 120, cylinder: {diameter: 112, height: 92},\n"
                         "     inside: {cylinder: {diameter: 110, height: 90}}}\n"
                         "  - {id: tin, weight: 20, cylinder: {diameter: 30, height: 40}}\n");
    REQUIRE(kit.items.size() == 3);
    const Item& ring = kit.items[0];
    REQUIRE(ring.press.has_value());
    CHECK(ring.press->item == 1);
    CHECK(ring.press->gives == 3);
    CHECK_FALSE(ring.press->relaxed);
    CHECK(same(ring.outside, Cylinder{112, 40}));
    CHECK_FALSE(kit.items[1].press);
    CHECK(kit.rules == std::vector<CarryRule>{{Keep::within, "ring", "pot", "it is pressed into the pot"}});

    const Item in = pressed_in(kit).items[0];
    CHECK(same(in.outside, Cylinder{110, 40}));
    CHECK(in.press->relaxed == 112);
    REQUIRE(in.inside.has_value());
    CHECK(same(in.inside->shape, Cylinder{109, 40})); // 111 less the 2 mm by which it is pressed together
    CHECK(in.inside->off.mm[0] == Approx(0.6)); // its own, which is the outside's, once more that, and the bore's
    CHECK(same(pressed_in(pressed_in(kit)).items[0].outside, Cylinder{110, 40}));
}
