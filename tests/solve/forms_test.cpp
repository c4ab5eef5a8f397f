// SPDX-License-Identifier: GPL-3.0-or-later
/// Kits with parts, forms, sheets, cloth, tapers, skirts and narrow openings, from the file to a bundle that holds what
/// the kit asks for.
#include <algorithm>
#include <catch2/catch.hpp>

#include "support/kit_text.hpp"
#include "tuckwright/proof.hpp"
#include "tuckwright/worst_case.hpp"

using namespace tuckwright;
using namespace tuckwright::test;

namespace {

struct Sort {
    const char* name;
    KitText kit;
};

KitText in_a_pot() { return KitText(round_bundle(), 0.5).item("pot", cylinder(122, 100) + ", inside: {wall: 1, base: 1}"); }

std::vector<Sort> sorts()
{
    const std::string screen = "sheet: {length: 330, width: 80, thickness: 0.7, roll: 50";
    return {
        {"parts", in_a_pot().item("mug", cylinder(70, 60) + ", inside: {wall: 1, base: 1}, parts: [{" + box(24, 12, 40) +
                                             ", at: right, up: 9}, {cylinder: {diameter: 6, height: 31}, axis: y, at: left}]")},
        {"a handle that folds in, and odd sizes",
         in_a_pot().item("mug", "cylinder: {diameter: 70.000001, height: 60.000001}, inside: {wall: 1.000001, base: 1}, "
                                "parts: [{box: {length: 24.000001, width: 12, height: 40.000003}, at: back, up: 9.000001}], "
                                "forms: [{name: folded, how: fold it, parts: []}]")},
        {"folds", in_a_pot().item("foil", screen + ", folds: yes}").item("tin", cylinder(60, 50))},
        {"rolls", in_a_pot().item("screen", screen + "}").item("tin", cylinder(60, 70))},
        {"springy rolls", in_a_pot().item("screen", screen + ", springy: yes}").item("tin", cylinder(60, 70), 2)},
        {"cloth", in_a_pot().item("towel", "cloth: {volume: 201.7 ml, thickness: 7}").item("tin", cylinder(60, 50))},
        {"tapers", KitText(round_bundle(), 0.5).item("beaker",
                                                     "cylinder: {diameter: 80.000001, height: 90, foot: 60.000003}, "
                                                     "inside: {wall: 1, base: 2}",
                                                     3)},
        {"a skirt", in_a_pot().item("lid", cylinder(125, 20) + ", closes: {item: pot, adds: 3, intrudes: 5}")},
        {"a skirt as deep as what hangs in",
         in_a_pot().item("lid", "cylinder: {diameter: 125, height: 8.000001}, closes: {item: pot, adds: 3.000001, "
                                "intrudes: 5}")},
        {"a lid on a pot with a handle",
         KitText(round_bundle(), 0.5)
             .item("pot", cylinder(122, 100) + ", inside: {wall: 1, base: 1}, parts: [{" + box(24, 12, 40) +
                              ", at: left, up: 9}]")
             .item("lid", cylinder(125, 20) + ", closes: {item: pot, adds: 3, intrudes: 5}")},
        {"a neck", KitText(round_bundle(), 0.5)
                       .item("crock", cylinder(120, 90) + ", inside: {" + cylinder(116, 80) +
                                          ", opening: {diameter: 80, depth: 4}}")
                       .item("tin", cylinder(50, 50), 2)},
        {"a lid on a neck", KitText(round_bundle(), 0.5)
                                .item("crock", cylinder(120, 90) + ", inside: {" + cylinder(116, 80) +
                                                   ", opening: {diameter: 80, depth: 4}}")
                                .item("stopper", cylinder(90, 12) + ", closes: {item: crock, adds: 2, intrudes: 10}")},
    };
}

} // namespace

TEST_CASE("what is solved holds what its kit asks for, and no longer when it is spoilt")
{
    for (const Sort& sort : sorts()) {
        INFO(sort.name);
        const Kit kit = kit_of(sort.kit.text());
        const Bundle bundle = solved(kit, Effort::quick);
        REQUIRE(has_bundle(bundle.status));
        const auto objections = check_against(bundle, kit);
        INFO((objections.empty() ? "" : objections.front().what));
        CHECK(objections.empty());
        for (std::size_t i = 0; i < bundle.items.size(); ++i) {
            Bundle spoilt = bundle;
            std::visit([](auto& shape) { shape.height -= 0.01; }, spoilt.items[i].solids.back().shape);
            INFO(label(bundle, i));
            CHECK_FALSE(check_against(spoilt, kit).empty());
            spoilt = bundle;
            spoilt.items[i].solids.push_back(spoilt.items[i].solids.front());
            CHECK_FALSE(check_against(spoilt, kit).empty());
        }
    }
}

TEST_CASE("what is solved for the worst case is held against the kit at its worst")
{
    const Kit kit = kit_of("tolerance: 0.5\nworst-case: yes\n" +
                           in_a_pot()
                               .item("mug", cylinder(70, 60) + ", parts: [{" + box(24, 12, 40) + ", at: right, up: 9}]")
                               .text());
    const Bundle bundle = solved(kit, Effort::quick);
    REQUIRE(has_bundle(bundle.status));
    CHECK(check_against(bundle, worst_case(kit)).empty());
    CHECK_FALSE(check_against(bundle, kit).empty());
}

TEST_CASE("the form that was chosen is told with what to do for it")
{
    const Bundle bundle = solved(in_a_pot().item("pan", cylinder(110, 60) + ", parts: [{" + box(80, 12, 10) +
                                                            ", at: right, up: 40}], forms: [{name: handle off, how: "
                                                            "unscrew the handle, parts: []}]"),
                                 Effort::quick);
    REQUIRE(has_bundle(bundle.status));
    CHECK(bundle.items[1].stowed == "handle off");
    CHECK(bundle.items[1].solids.size() == 1);
    CHECK(std::any_of(bundle.steps.begin(), bundle.steps.end(), [](const Step& step) {
        return step.text.starts_with("pan: unscrew the handle. Put pan standing into pot");
    }));
}
