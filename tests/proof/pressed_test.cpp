// SPDX-License-Identifier: GPL-3.0-or-later
/// What is pressed into a vessel: it needs no clearance, and nothing else may do without.
#include <catch2/catch.hpp>

#include "faults.hpp"
#include "proof_support.hpp"
#include "support/handmade_bundles.hpp"
#include "tuckwright/kit_reader.hpp"

using namespace tuckwright;
using namespace tuckwright::handmade;

namespace {

Solid& body(Bundle& bundle, std::size_t item) { return bundle.items[item].solids[0]; }
PlacedCavity& cavity(Bundle& bundle, std::size_t item) { return bundle.items[item].cavities[0]; }

/// The ring and its cavity, moved by so much.
void move_ring(Bundle& bundle, Vec3 by)
{
    for (Vec3* center : {&body(bundle, 1).pose.center, &cavity(bundle, 1).pose.center}) {
        *center = {center->x + by.x, center->y + by.y, center->z + by.z};
    }
}

const char* const kit_text = "kit: Soup at the ford\n"
                             "clearance: 0.5\n"
                             "items:\n"
                             "  - {id: pot, weight: 50, cylinder: {diameter: 112, height: 92},\n"
                             "     inside: {cylinder: {diameter: 110, height: 90}}}\n"
                             "  - {id: ring, weight: 50, cylinder: {diameter: 112, height: 70},\n"
                             "     inside: {cylinder: {diameter: 110}, opens: both}, press-fit: {into: pot, gives: 3}}\n"
                             "  - {id: cup, weight: 50, cylinder: {diameter: 107, height: 69}}\n"
                             "  - {id: plate, weight: 50, cylinder: {diameter: 109, height: 6}}\n";

Kit kit_of(const std::string& text)
{
    const auto kit = read_kit_text(text, "kit.yaml");
    INFO((kit ? "" : to_string(kit.problems().front())));
    REQUIRE(kit.ok());
    return *kit;
}

std::string said_against(const Bundle& bundle, const Kit& kit)
{
    const auto objections = check_against(bundle, kit);
    return objections.empty() ? "" : objections.front().what;
}

} // namespace

TEST_CASE("what is pressed in fills its cavity, on its axis, and below the rim")
{
    refuse({
        {"not told", ring_pressed_into_a_pot, [](Bundle& b) { b.items[1].pressed.reset(); }, "inside",
         "\"ring\" is not inside \"pot\": it stands out 0.5 mm through the side wall"},
        {"not told, lying", ring_pressed_into_a_lying_pot, [](Bundle& b) { b.items[1].pressed.reset(); }, "inside",
         "\"ring\" is not inside \"pot\": it stands out 0.5 mm through the side wall"},
        {"the cup too", ring_pressed_into_a_pot, [](Bundle& b) { b.items[2].pressed = 109; }, "inside",
         "\"cup\" is told to be pressed into what it lies in, but it is not as wide as that is inside"},
        {"the pot too", ring_pressed_into_a_pot, [](Bundle& b) { b.items[0].pressed = 113; }, "inside",
         "\"pot\" is told to be pressed into what it lies in, but it lies in no vessel"},
        {"narrower by a nanometre", ring_pressed_into_a_pot,
         [](Bundle& b) { std::get<Cylinder>(body(b, 1).shape).diameter -= nanometre; }, "inside",
         "it is not as wide as that is inside"},
        {"wider by a nanometre", ring_pressed_into_a_pot,
         [](Bundle& b) { std::get<Cylinder>(body(b, 1).shape).diameter += nanometre; }, "inside",
         "it is not as wide as that is inside"},
        {"not wider by itself", ring_pressed_into_a_pot, [](Bundle& b) { b.items[1].pressed = 110; }, "inside",
         "left to itself it would not be wider"},
        {"aside by a nanometre", ring_pressed_into_a_pot, [](Bundle& b) { move_ring(b, {nanometre, 0, 0}); }, "inside",
         "it does not lie on its axis"},
        {"aside by a nanometre, lying", ring_pressed_into_a_lying_pot,
         [](Bundle& b) { move_ring(b, {0, 0, -nanometre}); }, "inside", "it does not lie on its axis"},
        {"over the rim", ring_pressed_into_a_lying_pot, [](Bundle& b) { move_ring(b, {17.000001, 0, 0}); }, "inside",
         "\"ring\" is not inside \"pot\": it stands out 0.000001 mm through the top"},
        {"through the floor", ring_pressed_into_a_pot, [](Bundle& b) { move_ring(b, {0, 0, -nanometre}); }, "inside",
         "\"ring\" is not inside \"pot\": it stands out 0.000001 mm through the floor"},
        {"two solids", ring_pressed_into_a_pot,
         [](Bundle& b) { b.items[1].solids.push_back(cylinder(1, 1, {54.4, 0, 37})); }, "inside",
         "it is no plain cylinder"},
        {"square", ring_pressed_into_a_lying_pot,
         [](Bundle& b) {
             b.items[1].cavities.clear();
             body(b, 1).shape = Box{60, 60, 70};
         },
         "inside", "it is no plain cylinder"},
        {"into a square inside", ring_pressed_into_a_lying_pot, [](Bundle& b) { cavity(b, 0).shape = Box{78, 78, 90}; },
         "inside", "that has no straight round inside"},
        {"into an inside that tapers", ring_pressed_into_a_lying_pot,
         [](Bundle& b) { cavity(b, 0).shape = Cylinder{110, 90, 109}; }, "inside", "that has no straight round inside"},
        {"below a narrow opening", ring_pressed_into_a_lying_pot,
         [](Bundle& b) {
             cavity(b, 0).neck = Cylinder{100, 0};
         },
         "inside", "that has no straight round inside"},
        {"not on the grid", ring_pressed_into_a_pot, [](Bundle& b) { b.items[1].pressed = 112.0000004; }, "number",
         "\"ring\": its diameter left to itself is 112.0000004 mm"},
        {"of no width by itself", ring_pressed_into_a_pot, [](Bundle& b) { b.items[1].pressed = 0; }, "number",
         "it must be positive"},
        {"in from the side", ring_pressed_into_a_pot, [](Bundle& b) { b.steps[0].direction = {1, 0, -1}; }, "step",
         "\"ring\": it would not go straight along the axis of \"pot\""},
        {"after the plate that lies over it", ring_pressed_into_a_pot,
         [](Bundle& b) { std::rotate(b.steps.begin(), b.steps.begin() + 2, b.steps.begin() + 3); }, "step",
         "\"ring\": going into its place, it is not proved to pass \"plate\""},
        {"told to rest on what is not below it", ring_pressed_into_a_pot,
         [](Bundle& b) { b.certificate.rests[1] = {1, 3, {54.25, 0, 72.005}}; }, "rest",
         "\"ring\": lowered by 0.01 mm, it does not reach the point in \"plate\""},
        {"the cup hovering in it", ring_pressed_into_a_pot,
         [](Bundle& b) {
             b.items.pop_back();
             b.steps.erase(b.steps.begin() + 2);
             b.certificate.rests.pop_back();
             center(b, 2).z += 5;
         },
         "rest", "\"cup\": lowered by 0.01 mm, it is still inside what it is in"},
    });
    Bundle at_the_rim = ring_pressed_into_a_lying_pot();
    move_ring(at_the_rim, {17, 0, 0});
    CHECK(objections_of(at_the_rim) == "");
    Bundle held_up = ring_pressed_into_a_pot(); // by its spring, with nothing below it and nothing in it
    held_up.items.resize(2);
    held_up.steps.erase(held_up.steps.begin() + 1, held_up.steps.begin() + 3);
    held_up.certificate.rests.resize(2);
    move_ring(held_up, {0, 0, 5});
    CHECK(objections_of(held_up) == "");
    held_up.items[1].pressed.reset();
    held_up.clearance = 0;
    CHECK(first_rule(held_up) == "rest");
    Bundle turned_over = ring_pressed_into_a_lying_pot(); // a ring has no top
    body(turned_over, 1).pose.turn = cavity(turned_over, 1).pose.turn = {1, 0, -1, 0};
    CHECK(objections_of(turned_over) == "");
}

TEST_CASE("what is pressed in is so by the kit, into the vessel that it names")
{
    const Kit kit = kit_of(kit_text);
    Bundle sound = ring_pressed_into_a_pot();
    sound.rules = kit.rules;
    REQUIRE(objections_of(sound) == "");
    REQUIRE(said_against(sound, kit) == "");
    const auto no_form = [&](const char* name, void (*spoil)(Bundle&), const Kit& wanted) {
        Bundle bundle = sound;
        bundle.rules = wanted.rules;
        spoil(bundle);
        INFO(name << ": " << said_against(bundle, wanted));
        CHECK(said_against(bundle, wanted).find("ring has not the size and shape of the kit") != std::string::npos);
    };
    no_form("not told", [](Bundle& b) { b.items[1].pressed.reset(); }, kit);
    no_form("of another width by itself", [](Bundle& b) { b.items[1].pressed = 112.5; }, kit);
    no_form("in no vessel", [](Bundle& b) { b.items[1].in.reset(); }, kit);
    no_form("in another vessel", [](Bundle& b) { b.items[1].in = Lodging{2, 0}; }, kit);
    no_form("in another cavity", [](Bundle& b) { b.items[1].in = Lodging{0, 1}; }, kit);
    no_form("narrower", [](Bundle& b) { std::get<Cylinder>(body(b, 1).shape).diameter = 109.9; }, kit);
    no_form("lower", [](Bundle& b) { std::get<Cylinder>(body(b, 1).shape).height = 69.9; }, kit);
    no_form("as wide inside as left to itself",
            [](Bundle& b) { std::get<Cylinder>(cavity(b, 1).shape).diameter = 110; }, kit);
    no_form("solid", [](Bundle& b) { b.items[1].cavities.clear(); }, kit);
    no_form("other words", [](Bundle& b) { b.items[1].stowed = "pressed into the pan"; }, kit);
    no_form("nobody is told to press it", [](Bundle& b) { b.items[1].how = ""; }, kit);
    Kit stiff = kit;
    stiff.items[1].press->gives = 1.9; // 2 mm would be needed
    no_form("it does not give so far", [](Bundle&) {}, stiff);
    stiff.items[1].press->gives = 2;
    CHECK(said_against(sound, stiff) == "");
    Kit plain = kit; // a kit that asks for no press fit
    plain.items[1].press.reset();
    CHECK(said_against(sound, plain).find("ring is told to be pressed into what it lies in") != std::string::npos);
}
