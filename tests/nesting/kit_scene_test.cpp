// SPDX-License-Identifier: GPL-3.0-or-later
/// Kits as bodies and cells, lids shut or loose, and who fits in whom.
#include <catch2/catch.hpp>

#include "nesting/containment_graph.hpp"
#include "nesting/kit_scene.hpp"
#include "support/kit_text.hpp"

using namespace tuckwright;
using namespace tuckwright::nesting;
using namespace tuckwright::packing;
using namespace tuckwright::test;

namespace {

constexpr unsigned none = 0, up = 1, end = 2, side = 4;

KitScene scene_of(const KitText& text, const std::vector<bool>& shut = {}) { return kit_scene(kit_of(text.text()), shut); }

/// A pot 100 wide and 90 high inside, a tin in it or not.
unsigned forms_in_pot(const std::string& item, double clearance, const std::string& closed = "opens: top")
{
    KitText kit(round_bundle(), clearance);
    kit.item("pot", cylinder(102, 92) + ", inside: {" + cylinder(100, 90) + ", " + closed + "}");
    kit.item("thing", item);
    return scene_of(kit).scene.fits[1][1];
}

} // namespace

TEST_CASE("a cylinder fits a round cavity with the clearance on both sides, to the last nanometre")
{
    CHECK(forms_in_pot(cylinder(99, 200), 0.5) == up);
    CHECK(forms_in_pot(cylinder(99.000001, 200), 0.5) == none);
    CHECK(forms_in_pot(cylinder(100, 200), 0) == up);
    CHECK(forms_in_pot(cylinder(60, 80), 0) == (up | end)); // lying: corners at hypot(30, 40) = 50
    CHECK(forms_in_pot(cylinder(60, 80.01), 0) == up);
    CHECK(forms_in_pot(cylinder(60, 80) + ", upright: yes", 0) == up);
    CHECK(forms_in_pot(cylinder(101, 5), 0) == none); // on its edge, still as wide
}

TEST_CASE("a shut lid limits the height as well")
{
    CHECK(forms_in_pot(cylinder(60, 90), 0, "lid: own") == up);
    CHECK(forms_in_pot(cylinder(60, 90.001), 0, "lid: own") == none);
    CHECK(forms_in_pot(cylinder(20, 92), 0, "lid: own") == end);
    CHECK(forms_in_pot(cylinder(60, 90), 0.5, "lid: own") == up); // floors and closed tops take no clearance
}

TEST_CASE("a box fits by its diagonal in a round cavity, by its sides in a box")
{
    CHECK(forms_in_pot(box(80, 60, 20), 0) == (up | end | side)); // corners at 50; on end 60 x 20, on its side 80 x 20
    CHECK(forms_in_pot(box(80, 60.1, 20), 0) == (end | side));
    CHECK(forms_in_pot(box(200, 60, 20), 0) == end); // long ones stand
    KitText kit(box_bundle(), 1);
    kit.item("tin", box(102, 62, 42) + ", inside: {" + box(100, 60, 40) + ", lid: own}");
    kit.item("flat", box(98, 58, 40)).item("turned", box(58, 98, 40)).item("long", box(40, 10, 98.5));
    kit.item("too-long", box(40, 10, 101)).item("round", cylinder(40, 98)).item("wide", cylinder(59, 10));
    const FitTable fits = scene_of(kit).scene.fits;
    CHECK(fits[1][1] == up);
    CHECK(fits[2][1] == up); // turned a quarter
    CHECK(fits[3][1] == none);
    CHECK(fits[4][1] == none);
    CHECK(fits[5][1] == end);
    CHECK(fits[6][1] == none); // neither flat (59 of 58) nor on its edge (59 of 40)
    for (std::size_t k = 0; k < fits.size(); ++k) {
        CHECK(fits[k][0] != none); // the bundle has no limits
        CHECK(fits[k][k + 1] == none);
    }
}

TEST_CASE("the bundle's limits are the outermost cell's walls")
{
    KitText round(round_bundle(100, 50));
    round.item("flat", cylinder(100, 50)).item("high", cylinder(40, 60)).item("wide", cylinder(101, 10));
    round.item("rod", cylinder(50, 86));
    const FitTable fits = scene_of(round).scene.fits;
    CHECK(fits[0][0] == up);
    CHECK(fits[1][0] == end);
    CHECK(fits[2][0] == none);
    CHECK(fits[3][0] == end); // hypot(25, 43) = 49.7
    KitText flat(box_bundle(100, 60, 20));
    flat.item("book", box(60, 100, 20)).item("plate", cylinder(60, 20)).item("high", box(20, 20, 60));
    const FitTable boxed = scene_of(flat).scene.fits;
    CHECK(boxed[0][0] == up);
    CHECK(boxed[1][0] == up);
    CHECK((boxed[2][0] & up) == none);
    CHECK(boxed[2][0] != none);
}

TEST_CASE("nothing holds what holds it: edges follow size")
{
    KitText kit(round_bundle(), 0.5);
    for (const double width : {100.0, 90.0, 80.0, 70.0}) {
        kit.item("cup-" + std::to_string(static_cast<int>(width)),
                 cylinder(width, 50) + ", inside: {wall: 1, base: 1, opens: top}");
    }
    const KitScene made = scene_of(kit);
    const ContainmentGraph graph = containment_graph(made.scene, kit_of(kit.text()));
    CHECK(graph.bundle() == 4);
    CHECK(boost::num_edges(graph.graph()) == 6 + 4 + 0u); // each pair one way, and all in the bundle
    const FitTable table = graph.fit_table();
    CHECK(table == made.scene.fits);
    for (std::size_t body = 0; body < 4; ++body) {
        for (std::size_t cell = 0; cell < 4; ++cell) {
            CHECK((table[body][cell + 1] & up) == (body > cell ? up : none));
        }
    }
}

TEST_CASE("a lid that is shut moves with its vessel and shortens the cavity")
{
    KitText text(round_bundle(), 0.5);
    text.item("pot", cylinder(102, 92) + ", inside: {" + cylinder(100, 90) + ", opens: top}", 2);
    text.item("lid", cylinder(103, 20) + ", closes: {item: pot, adds: 3, intrudes: 6}", 2);
    text.item("tin", cylinder(40, 86));
    const Kit kit = kit_of(text.text());
    const auto all = lids(kit);
    REQUIRE(all.size() == 2);
    CHECK((all[0].item == 1 && all[0].copy == 1 && all[1].copy == 2));

    const KitScene made = kit_scene(kit, {true, false});
    REQUIRE(made.origins.size() == 4); // pot 1 with its lid, pot 2, lid 2, tin
    REQUIRE(made.origins[0].lid.has_value());
    CHECK(made.origins[0].lid->copy == 1);
    CHECK_FALSE(made.origins[1].lid.has_value());
    CHECK((made.origins[2].self.item == 1 && made.origins[2].self.copy == 2));
    const Body& shut = made.scene.bodies[0];
    REQUIRE(shut.pieces.size() == 3); // pot, plate, skirt: 20 - 3 - 6 would hang into the pot, but the lid is wider
    CHECK(std::get<Cylinder>(shut.pieces[1].shape) == Cylinder{103, 3});
    CHECK(shut.pieces[1].offset == Approx(46 + 1.5));
    CHECK(std::get<Cylinder>(shut.pieces[2].shape) == Cylinder{103, 17});
    CHECK(shut.pieces[2].offset == Approx(46 - 8.5));
    REQUIRE(shut.hollow.has_value());
    CHECK_FALSE(shut.hollow->open_top);
    CHECK(std::get<Cylinder>(shut.hollow->shape) == Cylinder{99, 84});
    CHECK(shut.hollow->floor == Approx(-44));
    CHECK(made.scene.bodies[1].hollow->open_top);
    CHECK(made.scene.fits[3][1] == end);        // 86 high under a lid that leaves 84
    CHECK(made.scene.fits[3][2] == (up | end)); // hypot(20, 43) = 47.4
    CHECK(made.scene.fits[2][2] == none);       // the lid is wider than the pot
    CHECK_THROWS_AS(kit_scene(kit, {true}), ContractBroken);
}

TEST_CASE("plates and skirts of lids are as deep as the file says")
{
    KitText text(round_bundle());
    text.item("pot", cylinder(100, 90) + ", inside: {wall: 1, base: 1, opens: top}");
    text.item("flat", cylinder(100, 9) + ", closes: {item: pot, adds: 3, intrudes: 6}");
    const Kit kit = kit_of(text.text());
    CHECK(std::get<Cylinder>(lid_plate(kit.items[1], kit.items[0]).shape) == Cylinder{100, 3});
    CHECK_FALSE(lid_skirt(kit.items[1], kit.items[0]).has_value()); // all that is not on top hangs inside
    CHECK(envelope_limits(kit).radius > 1e8);
}

TEST_CASE("nothing fits a vessel that its contents fill, and its lid is never loose")
{
    const auto kit_with = [](const std::string& contents) {
        KitText text(round_bundle(), 0.5);
        text.item("pot", cylinder(102, 92) + ", inside: {" + cylinder(100, 90) + ", opens: top}" + contents, 2);
        text.item("lid", cylinder(103, 9) + ", closes: {item: pot, adds: 3, intrudes: 6}", 2);
        text.item("jar", cylinder(82, 70) + ", inside: {wall: 1, base: 1, opens: top}");
        text.item("cap", cylinder(83, 9) + ", closes: {item: jar, adds: 3, intrudes: 6}");
        text.item("tin", cylinder(40, 30));
        return kit_of(text.text());
    };
    const auto row = [](const Kit& kit) { return kit_scene(kit, {true, true, true}).scene.fits[3]; }; // of the tin
    const Kit empty = kit_with(""), full = kit_with(", contents: {what: rice, amount: 300 g}");
    const Kit part = kit_with(", contents: {what: rice, amount: 300 g, fills: no}");
    CHECK(row(empty) == std::vector<unsigned>{up | end, up | end, up | end, up | end, none});
    CHECK(row(part) == row(empty));
    CHECK(row(full) == std::vector<unsigned>{up | end, none, none, up | end, none});
    const KitScene loose = kit_scene(full, {false, true, true}); // also when a lid is said to be loose
    for (const auto& fits : loose.scene.fits) {
        CHECK(fits[1] == none);
    }
    using Choices = std::vector<std::vector<bool>>;
    CHECK(
        lid_choices(empty) ==
        Choices{
            {true, true, true}, {false, true, true}, {true, false, true}, {true, true, false}, {false, false, false}});
    CHECK(lid_choices(part) == lid_choices(empty));
    CHECK(lid_choices(full) == Choices{{true, true, true}, {true, true, false}});
    KitText none_text(round_bundle());
    none_text.item("tin", cylinder(40, 30));
    CHECK(lid_choices(kit_of(none_text.text())) == Choices{{}});
}

TEST_CASE("what goes below a narrow opening must pass it, with the clearance, and stay below it")
{
    const auto forms = [](const std::string& item, const std::string& opening, double clearance = 0) {
        return forms_in_pot(item, clearance, "opening: {" + opening + "}");
    };
    CHECK(forms(cylinder(70, 90), "diameter: 70") == up);
    CHECK(forms(cylinder(70, 90), "diameter: 71", 0.5) == up);
    CHECK(forms(cylinder(70.000001, 90), "diameter: 71", 0.5) == none);
    CHECK(forms(cylinder(70, 90.001), "diameter: 70") == none); // nothing stands out
    CHECK(forms(cylinder(42, 56), "diameter: 70") == (up | end)); // lying: hypot(21, 28) = 35
    CHECK(forms(cylinder(42, 56.01), "diameter: 70") == up);
    CHECK(forms(box(10, 40, 80), "length: 45, width: 12") == up); // on its side it would be 80 long
    CHECK(forms(box(10, 50, 40), "length: 45, width: 12") == side);
    CHECK(forms(cylinder(12, 44), "length: 45, width: 12") == (up | end));
    CHECK(forms(cylinder(12.001, 44), "length: 45, width: 12") == none);
}

TEST_CASE("a lid takes from a cavity only what hangs below the neck")
{
    const auto height = [](const std::string& intrudes) {
        KitText kit(round_bundle());
        kit.item("crock", cylinder(120, 90) + ", inside: {" + cylinder(116, 80) +
                              ", opening: {diameter: 80, depth: 4}}");
        kit.item("stopper", cylinder(90, 12) + ", closes: {item: crock, adds: 2, intrudes: " + intrudes + "}");
        return height_of(scene_of(kit, {true}).scene.bodies[0].hollow->shape);
    };
    CHECK(height("0") == 80);
    CHECK(height("4") == 80);
    CHECK(height("10") == 74);
}

TEST_CASE("each form of an item is a way to stow its body, with cells of its own")
{
    KitText text(round_bundle());
    text.item("pot", cylinder(102, 92) + ", inside: {" + cylinder(100, 90) + "}");
    text.item("pan", cylinder(90, 40) + ", inside: {wall: 1, base: 1}, parts: [{" + box(60, 12, 10) +
                         ", at: right, up: 20}], forms: [{name: handle off, parts: []}, {name: flat, " +
                         cylinder(98, 9) + "}]");
    text.item("tin", cylinder(80, 30));
    const Scene scene = scene_of(text).scene;
    REQUIRE(scene.bodies.size() == 3);
    REQUIRE(scene.others.size() == 2);
    CHECK(scene.ways(0) == 1);
    CHECK(scene.ways(1) == 3);
    CHECK(scene.row(1, 2) == 4);
    CHECK(scene.stowed(1, 0).pieces.size() == 2);
    CHECK(scene.stowed(1, 0).forms.size() == 6); // a handle makes it lopsided
    CHECK(scene.stowed(1, 1).pieces.size() == 1);
    CHECK(scene.stowed(1, 1).hollow.has_value());
    CHECK_FALSE(scene.stowed(1, 2).hollow.has_value()); // an own outside drops the inside
    REQUIRE(scene.fits.size() == 5);
    REQUIRE(scene.fits[0].size() == 6);
    CHECK((scene.fits[1][1] & up) != 0); // its handle lies on the pot's rim
    CHECK((scene.fits[3][1] & up) != 0);
    CHECK((scene.fits[4][1] & up) != 0);
    CHECK((scene.fits[2][1 + 3] & up) != 0); // the tin in the pan without handle
    CHECK(scene.fits[2][1 + 4] == none);     // flat, it holds nothing
    CHECK(scene.fits[3][1 + 4] == none);     // and no form holds another of the same thing
    CHECK(scene.fits[4][1 + 1] == none);
}
