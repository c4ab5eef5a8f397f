// SPDX-License-Identifier: GPL-3.0-or-later
#include "tuckwright/fill.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "support/kit_text.hpp"
#include "tuckwright/report.hpp"

using namespace tuckwright;
using namespace tuckwright::test;

namespace {

const std::string pot = "- {id: pot, weight: 100, cylinder: {diameter: 102, height: 82}, inside: {wall: 1, base: 2}}\n";
const std::string lid = "- {id: lid, weight: 30, cylinder: {diameter: 103, height: 8}, closes: {item: pot, adds: 3, intrudes: 5}}\n";

Filling filled(const std::string& items, const std::string& top = "", SolveOptions options = {})
{
    options.effort = Effort::quick;
    const Kit kit = kit_of("kit: Shelf\n" + top + "items:\n" + items);
    const Filling filling = fill(kit, "pot", options);
    if (filling.choice != Choice::none) {
        const auto objections = check(filling.bundle);
        INFO((objections.empty() ? "" : objections.front().what));
        REQUIRE(objections.empty());
        for (const PlacedItem& item : filling.bundle.items) {
            CHECK((item.id == "pot" || item.in || item.closes)); // all of it is inside
        }
    }
    return filling;
}

const Left& left_of(const Filling& filling, const std::string& id)
{
    const auto found = std::find_if(filling.left.begin(), filling.left.end(), [&](const Left& left) { return left.id == id; });
    REQUIRE(found != filling.left.end());
    return *found;
}

} // namespace

TEST_CASE("all that goes in is chosen, and everything is said to go in")
{
    const Filling filling = filled(pot + lid + "- {id: can, weight: 9, cylinder: {diameter: 60, height: 70}}\n"
                                               "- {id: rod, weight: 9, cylinder: {diameter: 10, height: 74}}\n");
    CHECK(filling.choice == Choice::proved);
    CHECK(filling.things == 2);
    CHECK(filling.candidates == 2);
    CHECK(filling.left.empty());
    CHECK(filling.lid == "lid");
    CHECK(filling.room_ml == Approx(volume_ml(Cylinder{100, 75}))); // 80 mm deep, the lid reaches 5 mm down
    CHECK(filling.filled_ml == Approx(volume_ml(Cylinder{60, 70}) + volume_ml(Cylinder{10, 74})));
}

TEST_CASE("what is too large is told by how much, in each way to lay it down")
{
    const Filling filling = filled(pot + lid + "- {id: can, weight: 9, cylinder: {diameter: 120, height: 90}}\n"
                                               "- {id: board, weight: 9, box: {length: 140, width: 60, height: 6}}\n"
                                               "- {id: jar, weight: 9, cylinder: {diameter: 60, height: 76}, upright: yes}\n");
    CHECK(filling.choice == Choice::proved);
    CHECK(filling.things == 0);
    for (const auto* id : {"can", "board", "jar"}) {
        CHECK(left_of(filling, id).why == LeftOut::too_large);
    }
    // 99 mm across between the clearances, 75 mm high; the lying can covers 90 x 120 mm, corner to corner 150 mm.
    CHECK(left_of(filling, "can").words == "It does not go in, however it is turned: standing it is 21 mm too wide and 15 mm "
                                           "too high; lying 51 mm too long and 45 mm too high.");
    // Flat 140 x 60 mm: sqrt(140^2 + 60^2) = 152.3 mm; on its edge 140 x 6: 140.1 mm; on its end 140 mm high.
    CHECK(left_of(filling, "board").words ==
          "It does not go in, however it is turned: flat it is 53.4 mm too long; on its edge 41.2 mm too long; on its end 65 "
          "mm too high.");
    CHECK(left_of(filling, "jar").words == "It does not go in, however it is turned: standing it is 1 mm too high.");
}

TEST_CASE("without a lid nothing stands out of the rim, and its own lid is shut")
{
    const std::string can = "- {id: can, weight: 9, cylinder: {diameter: 60, height: 81}, upright: yes}\n";
    const Filling open = filled(pot + can);
    CHECK(left_of(open, "can").why == LeftOut::too_large);
    CHECK(fill_text(open).find("it has no lid here") != std::string::npos);
    const Filling tin = filled("- {id: pot, weight: 9, cylinder: {diameter: 102, height: 84}, inside: {cylinder: {diameter: "
                               "100, height: 81}, lid: own}}\n" + can);
    CHECK(tin.things == 1);
    CHECK(tin.own_lid);
    CHECK(filled(pot + can, "", {}).things == 0);
}

TEST_CASE("priority goes before number, number before volume, and what must go in before all")
{
    const auto things = [](const std::string& large, const std::string& small) {
        return pot + lid + "- {id: large, weight: 9, cylinder: {diameter: 98, height: 70}, " + large + "upright: yes}\n" +
               "- {id: small, count: 2, weight: 9, cylinder: {diameter: 45, height: 60}" + small + "}\n";
    };
    CHECK(filled(things("", "")).things == 2);
    const Filling wanted = filled(things("priority: 3, ", ""));
    CHECK(wanted.things == 1);
    CHECK(left_of(wanted, "small").copies == 2);
    CHECK(left_of(wanted, "small").why == LeftOut::too_much);
    CHECK(left_of(wanted, "small").with == std::vector<std::string>{"large"});
    CHECK(wanted.choice == Choice::proved);
    CHECK(left_of(filled(things("priority: 3, ", ", must-have: yes")), "large").why == LeftOut::too_much);
    const Filling both = filled(things("must-have: yes, ", ", must-have: yes"));
    CHECK(both.choice == Choice::none);
    CHECK_FALSE(has_bundle(both.bundle.status));
}

TEST_CASE("rules of carrying hold inside, and are given as the reason")
{
    const Filling filling = filled(pot + lid + "- {id: spirit, weight: 9, cylinder: {diameter: 30, height: 50}, kind: fuel}\n"
                                               "- {id: bread, weight: 9, cylinder: {diameter: 40, height: 50}, kind: food}\n"
                                               "- {id: soap, weight: 9, cylinder: {diameter: 20, height: 50}, not-in: pot}\n"
                                               "- {id: mug, weight: 9, cylinder: {diameter: 110, height: 50}, inside: {wall: 1, base: 1}}\n"
                                               "- {id: salt, weight: 9, cylinder: {diameter: 20, height: 30}, goes-in: mug}\n");
    CHECK(filling.things == 1);
    CHECK(left_of(filling, "spirit").why == LeftOut::by_rule);
    CHECK(left_of(filling, "spirit").words == "It keeps apart from bread, which is in: fuel keeps apart from food.");
    CHECK(left_of(filling, "soap").words == "It keeps out of pot: the kit says so.");
    CHECK(left_of(filling, "salt").words == "It has to go with mug, which stays outside.");
    CHECK(left_of(filling, "mug").why == LeftOut::too_large);
    CHECK(filling.choice == Choice::proved);
}

TEST_CASE("things go into one another, and into another with its own lid")
{
    const Filling filling = filled(pot + lid + "- {id: mug, weight: 9, cylinder: {diameter: 90, height: 70}, inside: {wall: 1, base: 1}}\n"
                                               "- {id: cup, weight: 9, cylinder: {diameter: 80, height: 60}, inside: {wall: 1, base: 1}}\n"
                                               "- {id: ball, weight: 9, cylinder: {diameter: 60, height: 50}}\n");
    CHECK(filling.things == 3);
}

TEST_CASE("a vessel that cannot be filled is told")
{
    const Kit kit = kit_of("kit: Shelf\nitems:\n" + pot + lid +
                           "- {id: ring, weight: 9, cylinder: {diameter: 60, height: 70}, inside: {wall: 1, opens: both}}\n"
                           "- {id: jam, weight: 9, cylinder: {diameter: 60, height: 70}, inside: {wall: 1, base: 1, lid: own}, "
                           "contents: {what: jam, amount: 100}}\n"
                           "- {id: sack, weight: 9, pouch: {girth: 260, length: 130, thickness: 1}}\n");
    CHECK(problems_of_vessel(kit, "pot").empty());
    for (const auto* id : {"ring", "jam", "sack", "lid", "nothing"}) {
        REQUIRE(problems_of_vessel(kit, id).size() == 1);
        CHECK_FALSE(problems_of_vessel(kit, id).front().remedy.empty());
    }
    CHECK(usual_vessel(kit) == "pot");
    CHECK(usual_vessel(kit_of("kit: None\nitems:\n- {id: a, weight: 1, cylinder: {diameter: 9, height: 9}}\n")).empty());
}

TEST_CASE("the answer is one JSON object whose bundle can be verified, the same on one thread and on two")
{
    SolveOptions one, two;
    one.threads = 1;
    two.threads = 2;
    const std::string items = pot + lid + "- {id: can, count: 4, weight: 9, cylinder: {diameter: 48, height: 70}}\n";
    const Filling filling = filled(items, "", one);
    CHECK(fill_json(filling) == fill_json(filled(items, "", two)));
    const auto json = nlohmann::json::parse(fill_json(filling));
    CHECK(json["format"] == "tuckwright-filling");
    CHECK(json["things"] == 2); // a third would want 48 * 2.1547 = 103.4 mm
    CHECK(json["left"][0]["copies"] == 2);
    const auto saved = from_json(json["bundle"].dump(2) + "\n", "bundle");
    REQUIRE(saved.ok());
    CHECK(check(*saved).empty());
}

TEST_CASE("packed for the worst case, less goes in")
{
    const std::string items = pot + lid + "- {id: can, weight: 9, cylinder: {diameter: 98 ±1.2, height: 60}}\n";
    CHECK(filled(items).things == 1);
    CHECK(filled(items, "worst-case: yes\n").things == 0);
}
