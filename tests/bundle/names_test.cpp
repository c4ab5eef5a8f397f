// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "support/handmade_bundles.hpp"
#include "tuckwright/bundle.hpp"
#include "tuckwright/contract.hpp"

using namespace tuckwright;

TEST_CASE("names are cut at the comma, copies are numbered, shared names keep the id")
{
    auto cup = handmade::item("cup", handmade::cylinder(10, 10, {0, 0, 5}));
    cup.name = "Cup, enamel";
    auto second = cup;
    second.copy = 2;
    auto tea = handmade::item("tea-tin", handmade::cylinder(10, 10, {20, 0, 5}));
    auto salt = handmade::item("salt-tin", handmade::cylinder(10, 10, {40, 0, 5}));
    tea.name = "Tin, round";
    salt.name = "Tin, square";
    auto nameless = handmade::item("peg", handmade::cylinder(10, 10, {60, 0, 5}));
    nameless.name.clear();
    const Bundle all = handmade::bundle("", Box{100, 10, 10}, {cup, second, tea, salt, nameless});
    CHECK(spoken_name(all, 0) == "Cup 1");
    CHECK(spoken_name(all, 1) == "Cup 2");
    CHECK(spoken_name(all, 2) == "Tin (tea-tin)");
    CHECK(spoken_name(all, 3) == "Tin (salt-tin)");
    CHECK(spoken_name(all, 4) == "peg");
    CHECK(common_name(all, "cup") == "Cup");
    CHECK(common_name(all, "salt-tin") == "Tin (salt-tin)");
    CHECK(common_name(all, "peg") == "peg");
    CHECK(common_name(all, "bread") == "bread"); // not there
    auto twins = all;
    twins.items[1].id = "tea-tin"; // two tea tins and one for salt, all called tins
    twins.items[1].name = "Tin, round";
    CHECK(spoken_name(twins, 1) == "Tin 2 (tea-tin)");
    CHECK(common_name(twins, "tea-tin") == "Tin (tea-tin)");
}

TEST_CASE("in lists the whole name comes first, and the id only where it is another word")
{
    const auto named = [](const std::string& id, const std::string& name, int copies = 1) {
        std::vector<PlacedItem> items;
        for (int k = 0; k < copies; ++k) {
            items.push_back(handmade::item(id, handmade::cylinder(10, 10, {20.0 * k, 0, 5})));
            items.back().name = name;
            items.back().copy = k + 1;
        }
        return full_name(handmade::bundle("", Box{100, 10, 10}, items), items.size() - 1);
    };
    CHECK(named("pot", "Steel pot, 1.1 l") == "Steel pot, 1.1 l (pot)");
    CHECK(named("fire-steel", "Fire steel") == "Fire steel");
    CHECK(named("pot", "Pot") == "Pot");
    CHECK(named("pot", "pot") == "pot");
    CHECK(named("pot", "") == "pot");
    CHECK(named("mug", "Mug", 2) == "Mug 2");
    CHECK(named("mug", "Cup, enamel", 2) == "Cup 2, enamel (mug)");
}

TEST_CASE("a box is flat, on its edge or on its end, in whatever order its edges are given")
{
    const Quaternion x_up{1, 0, 1, 0}, y_up{1, 1, 0, 0}, z_up{1, 0, 0, 0};
    const auto lies = [](double length, double width, double height, const Quaternion& turn) {
        return posture(handmade::bundle("", Box{200, 200, 200},
                                        {handmade::item("spoon", handmade::box(length, width, height, {}, turn))}),
                       0);
    };
    CHECK(lies(158, 37, 19, z_up) == "flat");
    CHECK(lies(158, 37, 19, y_up) == "on its edge");
    CHECK(lies(158, 37, 19, x_up) == "on its end");
    CHECK(lies(19, 37, 158, x_up) == "flat");
    CHECK(lies(19, 158, 37, z_up) == "on its edge");
    CHECK(lies(37, 158, 19, y_up) == "on its end");
    CHECK(lies(100, 100, 10, x_up) == "on its edge"); // a square board
    CHECK(lies(10, 10, 100, x_up) == "flat");
    CHECK(lies(10, 10, 100, z_up) == "on its end");
    CHECK(lies(30, 30, 30, x_up) == "standing");
    CHECK(lies(158, 37, 19, {6, 1, 0, 0}) == "leaning");
    CHECK(lies(158, 37, 19, {3, 0, 0, 1}) == "flat"); // turned about the upright axis
}

TEST_CASE("what has a top stands, or is upside down")
{
    const auto lies = [](const Solid& solid, bool upright, bool open) {
        auto tin = handmade::item("tin", solid);
        tin.upright = upright;
        if (open) {
            tin = handmade::hollow(tin, solid, Opening::top);
        }
        return posture(handmade::bundle("", Box{200, 200, 200}, {tin}), 0);
    };
    const Quaternion x_up{1, 0, 1, 0}, y_up{1, 1, 0, 0};
    CHECK(lies(handmade::box(89, 66, 74, {}), true, false) == "standing");
    CHECK(lies(handmade::box(89, 66, 60, {}), true, false) == "flat");
    CHECK(lies(handmade::box(89, 66, 74, {}, handmade::upside_down), false, true) == "upside down");
    CHECK(lies(handmade::box(89, 66, 74, {}, y_up), false, true) == "lying");
    CHECK(lies(handmade::box(89, 66, 74, {}, x_up), false, true) == "on its end");
    CHECK(lies(handmade::box(180, 120, 55, {}, y_up), false, true) == "on its edge");
    CHECK(lies(handmade::cylinder(60, 80, {}, handmade::upside_down), false, true) == "upside down");
    CHECK(lies(handmade::cylinder(60, 80, {}, handmade::upside_down), false, false) == "standing");
}

TEST_CASE("a cylinder stands or lies, a thin disc is flat or on its edge")
{
    const auto lies = [](double diameter, double height, const Quaternion& turn) {
        return posture(handmade::bundle("", Box{200, 200, 200},
                                        {handmade::item("lid", handmade::cylinder(diameter, height, {}, turn))}),
                       0);
    };
    CHECK(lies(111, 8, handmade::as_it_is) == "flat");
    CHECK(lies(111, 8, handmade::up_to_x) == "on its edge");
    CHECK(lies(62, 25, handmade::as_it_is) == "flat"); // a roll of tape
    CHECK(lies(100, 45, handmade::as_it_is) == "standing");
    CHECK(lies(100, 45, handmade::up_to_x) == "lying");
    const auto ring = [](double height) {
        return handmade::hollow(handmade::item("ring", handmade::cylinder(150, height, {})),
                                handmade::cylinder(147, height, {}), Opening::both);
    };
    CHECK(posture(handmade::bundle("", Box{200, 200, 200}, {ring(64)}), 0) == "standing");
    CHECK(posture(handmade::bundle("", Box{200, 200, 200}, {ring(30)}), 0) == "flat");
    CHECK(lies(10, 80, {6, 1, 0, 0}) == "leaning");
    // 62 mm across and 25 mm high: a roll of tape and a tin that is shut by itself lie flat, a bowl stands.
    const auto hollowed = [](double bore, double height, Opening opens) {
        return posture(handmade::bundle("", Box{200, 200, 200},
                                        {handmade::hollow(handmade::item("it", handmade::cylinder(62, 25, {})),
                                                          handmade::cylinder(bore, height, {}), opens)}),
                       0);
    };
    CHECK(hollowed(30, 25, Opening::both) == "flat");
    CHECK(hollowed(60, 23, Opening::closed) == "flat");
    CHECK(hollowed(60, 24, Opening::top) == "standing");
    CHECK(hollowed(60, 25, Opening::both) == "standing"); // a ring with a thin wall
}

TEST_CASE("in a vessel that lies, its own upright counts; a sleeve stands either way up")
{
    const Bundle lying = handmade::tin_in_lying_pot();
    CHECK(posture(lying, 0) == "lying");
    CHECK(posture(lying, 1) == "standing");
    Bundle sleeve = handmade::sleeve_round_cup_in_pot();
    CHECK(posture(sleeve, 1) == "standing");
    sleeve.items[1].solids[0].pose.turn = sleeve.items[1].cavities[0].pose.turn = handmade::upside_down;
    sleeve.items[2].upright = true;
    CHECK(posture(sleeve, 1) == "standing");
    CHECK(posture(sleeve, 2) == "standing");
    CHECK(posture(handmade::lidded_pot_upside_down(), 0) == "upside down");
    CHECK_THROWS_AS(posture(lying, 2), ContractBroken);
}
