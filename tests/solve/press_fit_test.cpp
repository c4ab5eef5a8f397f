// SPDX-License-Identifier: GPL-3.0-or-later
/// A springy ring that lines a pot: what it changes, and what it is held against.
#include <algorithm>
#include <catch2/catch.hpp>
#include <string>

#include "nesting/kit_scene.hpp"
#include "nesting/lower_bound.hpp"
#include "support/kit_text.hpp"
#include "tuckwright/contract.hpp"
#include "tuckwright/stowage.hpp"
#include "tuckwright/worst_case.hpp"

using namespace tuckwright;

namespace {

/// A pot 110 mm wide inside, a ring that lines it, and a cup that fits the ring with a clearance of 0.5 mm.
std::string ring_in_pot(const std::string& press, const std::string& head = "")
{
    return "kit: Soup at the ford\nclearance: 0.5\n" + head +
           "items:\n"
           "  - {id: pot, weight: 120, cylinder: {diameter: 112, height: 92},\n"
           "     inside: {cylinder: {diameter: 110, height: 90}}}\n"
           "  - {id: ring, weight: 30, cylinder: {diameter: 112, height: 80},\n"
           "     inside: {cylinder: {diameter: 111}, opens: both}" +
           press +
           "}\n"
           "  - {id: cup, weight: 60, cylinder: {diameter: 107.5, height: 80}, inside: {wall: 1, base: 1}}\n";
}

const std::string pressed = ", press-fit: {into: pot, gives: 3}";

const PlacedItem& of(const Bundle& bundle, const std::string& id)
{
    return *std::find_if(bundle.items.begin(), bundle.items.end(), [&](const PlacedItem& it) { return it.id == id; });
}

/// mm by which two axes miss each other, where both stand.
double off_axis(const Pose& a, const Pose& b)
{
    return std::max(std::abs(a.center.x - b.center.x), std::abs(a.center.y - b.center.y));
}

} // namespace

TEST_CASE("a ring pressed into its pot makes a smaller bundle than one that has to slide in", "[solve][press]")
{
    const Kit kit = test::kit_of(ring_in_pot(pressed));
    const Bundle lined = test::solved(kit, Effort::quick);
    REQUIRE(has_bundle(lined.status));
    CHECK(check_against(lined, kit).empty());
    CHECK(lined.status == Status::proved_best); // the pot alone: all else lies in it
    CHECK(lined.envelope == Shape{Cylinder{112, 92}});
    const PlacedItem& ring = of(lined, "ring");
    CHECK(ring.pressed == 112);
    CHECK(std::get<Cylinder>(ring.solids[0].shape).diameter == 110);
    CHECK(std::get<Cylinder>(ring.cavities[0].shape).diameter == 109);
    CHECK(off_axis(ring.solids[0].pose, of(lined, "pot").cavities[0].pose) == 0);
    CHECK(ring.stowed == "pressed into the pot");
    CHECK(of(lined, "cup").in->item == 1);

    const Bundle loose = test::solved(test::kit_of(ring_in_pot("")), Effort::quick);
    REQUIRE(has_bundle(loose.status)); // the ring does not go into the pot, nor the pot into the ring
    CHECK(volume_ml(loose.envelope) > 1.5 * volume_ml(lined.envelope));
    const std::string limits = "bundle: {shape: cylinder, limits: {diameter: 112, height: 92}}\n";
    const Kit nowhere = test::kit_of(ring_in_pot("", limits));
    CHECK_FALSE(has_bundle(test::solved(nowhere, Effort::quick).status));
}

TEST_CASE("a bundle with a press fit is held against its kit, and not against another", "[solve][press]")
{
    const Kit kit = test::kit_of(ring_in_pot(pressed));
    const Bundle sound = test::solved(kit, Effort::quick);
    REQUIRE(check_against(sound, kit).empty());
    CHECK_FALSE(check_against(sound, test::kit_of(ring_in_pot(""))).empty());
    CHECK(check_against(sound, test::kit_of(ring_in_pot(", press-fit: {into: pot, gives: 2.5}"))).empty());
    Bundle dropped = sound;
    dropped.items[1].pressed.reset();
    CHECK_FALSE(check(dropped).empty());
    CHECK_FALSE(check_against(dropped, kit).empty());
}

TEST_CASE("a press fit holds in the worst case too", "[solve][press]")
{
    const std::string head = "tolerance: 0.25\nworst-case: yes\n";
    std::string text = ring_in_pot(pressed, head);
    text.replace(text.find("107.5"), 5, "105.5"); // what the tolerances take from the ring's inside
    const Kit kit = test::kit_of(text);
    const Bundle bundle = test::solved(kit, Effort::quick);
    REQUIRE(has_bundle(bundle.status));
    CHECK(check_against(bundle, worst_case(kit)).empty());
    const PlacedItem& ring = of(bundle, "ring");
    CHECK(ring.pressed == 112.25);
    CHECK(std::get<Cylinder>(ring.solids[0].shape).diameter == 109.75);
    CHECK(std::get<Cylinder>(ring.cavities[0].shape).diameter == 108.25); // 110.75 less 2.5
    CHECK(of(bundle, "cup").in->item == 1);
    const auto fit = std::find_if(bundle.fits.begin(), bundle.fits.end(),
                                  [](const Fit& one) { return one.way == FitWay::pressed; });
    REQUIRE(fit != bundle.fits.end());
    CHECK(fit->room == Approx(2));
    CHECK(fit->worst == Approx(1.5));
}

TEST_CASE("rings that line a pot lie on others, beneath lids, and in pots that lie", "[solve][press]")
{
    const Kit kit = test::kit_of(
        "kit: Soup for two\nclearance: 0.4\nbundle: {shape: box, limits: {height: 125}}\nitems:\n"
        "  - {id: pot, weight: 120, cylinder: {diameter: 112, height: 130}, inside: {wall: 1, base: 1}}\n"
        "  - {id: lid, weight: 30, cylinder: {diameter: 113, height: 6}, closes: {item: pot, adds: 2, intrudes: 4}}\n"
        "  - {id: ring, weight: 30, count: 2, cylinder: {diameter: 111.5, height: 50},\n"
        "     inside: {wall: 1, opens: both}, press-fit: {into: pot, gives: 2}}\n"
        "  - {id: tin, weight: 60, count: 2, cylinder: {diameter: 90, height: 45}}\n"
        "  - {id: spoon, weight: 20, box: {length: 150, width: 30, height: 8}}\n");
    const Bundle bundle = test::solved(kit, Effort::quick);
    REQUIRE(has_bundle(bundle.status));
    CHECK(check_against(bundle, kit).empty());
    const Matrix3 pot = rotation_matrix(of(bundle, "pot").solids[0].pose.turn);
    CHECK(std::abs(pot[2][2]) < 0.5); // it lies: it is higher than the limit
    for (const PlacedItem& item : bundle.items) {
        if (item.id == "ring") {
            CHECK(item.pressed == 111.5);
            REQUIRE(item.in.has_value());
            CHECK(bundle.items[item.in->item].id == "pot");
        }
    }
}

TEST_CASE("what is pressed in never stands out of its vessel", "[solve][press]")
{
    // The tin fills the pot's floor, and with the ring on top of it 15 mm would stand out: it lies elsewhere.
    const Kit kit = test::kit_of("kit: A tin too many\nclearance: 0.5\nitems:\n"
                                 "  - {id: pot, weight: 120, cylinder: {diameter: 112, height: 91},\n"
                                 "     inside: {wall: 1, base: 1}}\n"
                                 "  - {id: ring, weight: 30, cylinder: {diameter: 112, height: 60},\n"
                                 "     press-fit: {into: pot, gives: 3}}\n"
                                 "  - {id: tin, weight: 60, cylinder: {diameter: 108, height: 45}}\n");
    const Bundle bundle = test::solved(kit, Effort::quick);
    REQUIRE(has_bundle(bundle.status));
    const Solid& ring = of(bundle, "ring").solids[0];
    const PlacedCavity& inside = of(bundle, "pot").cavities[0];
    const double along = std::abs(ring.pose.center.z - inside.pose.center.z);
    CHECK(along + 60 / 2.0 <= 90 / 2.0 + 1e-9);
}

TEST_CASE("a ring higher than its pot is deep at worst fits nowhere, by proof", "[solve][press]")
{
    const Kit kit = test::kit_of("kit: By a hair\ntolerance: 0.1\nworst-case: yes\nitems:\n"
                                 "  - {id: pot, weight: 120, cylinder: {diameter: 112, height: 91},\n"
                                 "     inside: {wall: 1, base: 1}}\n"
                                 "  - {id: ring, weight: 30, cylinder: {diameter: 112, height: 90},\n"
                                 "     press-fit: {into: pot, gives: 3}}\n");
    const Bundle bundle = test::solved(kit, Effort::quick);
    CHECK(bundle.status == Status::does_not_fit);
    CHECK(bundle.explanation == "the ring is pressed into the pot, but is higher than that is deep");
}

TEST_CASE("lower bounds count a ring as it is pressed in, and its vessel's cavity with the clearance", "[solve][press]")
{
    // The ring fills the pot to its walls, which a cavity less its clearance would not hold.
    const Kit kit = test::kit_of("kit: Full to the wall\nclearance: 2\nitems:\n"
                                 "  - {id: pot, weight: 120, cylinder: {diameter: 102, height: 91},\n"
                                 "     inside: {cylinder: {diameter: 100, height: 90}}}\n"
                                 "  - {id: plug, weight: 30, cylinder: {diameter: 104, height: 90},\n"
                                 "     press-fit: {into: pot, gives: 5}}\n");
    CHECK(nesting::lower_bound_ml(pressed_in(kit)) == Approx(volume_ml(Cylinder{102, 91})).epsilon(1e-6));
    CHECK_THROWS_AS(nesting::lower_bound_ml(kit), ContractBroken);
    const Bundle bundle = test::solved(kit, Effort::quick);
    CHECK(bundle.status == Status::proved_best);
    CHECK(bundle.envelope == Shape{Cylinder{102, 91}});
    CHECK(pressed_in(pressed_in(kit)).items[1].press->relaxed == 104); // pressing twice changes nothing
}

TEST_CASE("a vessel with forms takes a ring in those whose inside is as wide", "[solve][press]")
{
    // Flat, the pot has no inside; with the handle in, the same one.
    const Kit kit = test::kit_of("kit: A pot with a handle\nclearance: 0.5\nitems:\n"
                                 "  - {id: pot, weight: 120, cylinder: {diameter: 112, height: 91},\n"
                                 "     inside: {wall: 1, base: 1},\n"
                                 "     parts: [{box: {length: 60, width: 10, height: 10}, at: right, up: 60}],\n"
                                 "     forms: [{name: handle in, how: fold the handle in, parts: []},\n"
                                 "             {name: flat, how: press it flat, cylinder: {diameter: 112, height: 20}},\n"
                                 "             {name: wide, how: pull it, cylinder: {diameter: 114, height: 80},\n"
                                 "              inside: {wall: 1, base: 1}}]}\n"
                                 "  - {id: ring, weight: 30, cylinder: {diameter: 112, height: 60},\n"
                                 "     inside: {wall: 1, opens: both}, press-fit: {into: pot, gives: 3}}\n");
    const Bundle bundle = test::solved(kit, Effort::quick);
    REQUIRE(has_bundle(bundle.status));
    CHECK(of(bundle, "pot").stowed == "handle in");
    CHECK(of(bundle, "ring").pressed == 112);
    CHECK(bundle.envelope == Shape{Cylinder{112, 91}});
}
