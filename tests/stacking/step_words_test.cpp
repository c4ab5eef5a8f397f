// SPDX-License-Identifier: GPL-3.0-or-later
#include "stacking/step_words.hpp"

#include <catch2/catch.hpp>

#include "support/handmade_bundles.hpp"
#include "support/stacking_samples.hpp"
#include "tuckwright/stacking.hpp"

using namespace tuckwright;
using namespace handmade;
using Texts = std::vector<std::string>;

namespace {

Texts texts(const Bundle& bundle) { return stacking_samples::of_steps(bundle, &Step::text); }

} // namespace

TEST_CASE("names are cut at the comma, copies are numbered, shared names keep the id")
{
    auto cup = item("cup", cylinder(10, 10, {0, 0, 5}));
    cup.name = "Cup, enamel";
    auto second = cup;
    second.copy = 2;
    auto tea = item("tea-tin", cylinder(10, 10, {20, 0, 5}));
    auto salt = item("salt-tin", cylinder(10, 10, {40, 0, 5}));
    tea.name = "Tin, round";
    salt.name = "Tin, square";
    auto nameless = item("peg", cylinder(10, 10, {60, 0, 5}));
    nameless.name.clear();
    const Bundle all = bundle("", Box{100, 10, 10}, {cup, second, tea, salt, nameless});
    CHECK(stacking::spoken_name(all, 0) == "Cup 1");
    CHECK(stacking::spoken_name(all, 1) == "Cup 2");
    CHECK(stacking::spoken_name(all, 2) == "Tin (tea-tin)");
    CHECK(stacking::spoken_name(all, 3) == "Tin (salt-tin)");
    CHECK(stacking::spoken_name(all, 4) == "peg");
}

TEST_CASE("mug in ring in lidded pot, in words")
{
    CHECK(texts(stacking_samples::mug_in_ring_in_lidded_pot()) ==
          Texts{"Slip Wind ring round Mug; 0.8 mm of air all round.",
                "Put Wind ring, held together with all that is in it, standing into Steel pot, on the floor in the "
                "middle; 13.0 mm of air all round.",
                "Shut Steel pot with Pot lid.", "Put Steel pot, with all that is in it, standing on the table."});
}

TEST_CASE("a board on a block and a tin under it, in words")
{
    CHECK(texts(stacking_samples::tin_under_board()) == Texts{"Put block standing on the table.",
                                                              "Put tin standing on the table beside block.",
                                                              "Put board flat on top of block, in the middle."});
}

TEST_CASE("side by side in a cavity: the wall and the neighbour, with the air rounded down")
{
    const auto pot = hollow(item("pot", cylinder(100, 60, {0, 0, 30})), cylinder(96, 58, {0, 0, 31}), Opening::top);
    const auto left = in(item("left", cylinder(45, 50, {-24.67, 0, 27})), 0); // 0.83 mm from the wall
    const auto right = in(item("right", cylinder(46, 40, {23, 0, 22})), 0);   // 2 mm from the wall, 2.17 mm from left
    const auto top = in(item("top", cylinder(40, 4, {10, 0, 54})), 0);
    auto all = bundle("", Cylinder{100, 60}, {pot, left, right, top});
    all.items[3].solids = {cylinder(80, 4, {5, 0, 54})};
    CHECK(texts(all) ==
          Texts{"Put left standing into pot, on the floor against the wall; 0.8 mm of air to the wall.",
                "Put right standing into pot, on the floor beside left; 2.0 mm of air to the wall, 2.1 mm "
                "of air to left.",
                "Put top flat into pot, on top of left.", "Put pot, with all that is in it, standing on the table."});
    all.items[2].solids[0].pose.center.x = 20.83; // up to left
    CHECK(texts(all)[1] == "Put right standing into pot, on the floor beside left; touching left.");
}

TEST_CASE("a tenth is not lost to rounding, and less than a tenth is no air")
{
    const auto alone = [](double diameter) {
        const auto pot = hollow(item("pot", cylinder(100, 60, {0, 0, 30})), cylinder(96, 58, {0, 0, 31}), Opening::top);
        return texts(bundle("", Cylinder{100, 60}, {pot, in(item("cup", cylinder(diameter, 50, {0, 0, 27})), 0)}))
            .front();
    };
    CHECK(alone(94.2) == "Put cup standing into pot, on the floor in the middle; 0.9 mm of air all round.");
    CHECK(alone(94.202) == "Put cup standing into pot, on the floor in the middle; 0.8 mm of air all round.");
    CHECK(alone(95.9) == "Put cup standing into pot, on the floor in the middle; no air all round.");
}

TEST_CASE("which way up: lying, upside down, flat, on its edge, leaning")
{
    const auto put = [](PlacedItem what) { return texts(bundle("", Box{100, 100, 100}, {std::move(what)})).front(); };
    CHECK(put(item("rod", cylinder(10, 80, {50, 5, 5}, up_to_x))) == "Put rod lying on its side on the table.");
    CHECK(put(item("plate", cylinder(80, 5, {50, 50, 40}, up_to_x))) == "Put plate on its edge on the table.");
    CHECK(put(item("plate", cylinder(80, 5, {50, 50, 2.5}))) == "Put plate flat on the table.");
    const auto cup = [](Quaternion turn) {
        const double inside = turn == upside_down ? 39 : 41;
        return hollow(item("cup", cylinder(60, 80, {50, 50, 40}, turn)), cylinder(58, 78, {50, 50, inside}, turn),
                      Opening::top);
    };
    CHECK(put(cup(as_it_is)) == "Put cup standing on the table.");
    CHECK(put(cup(upside_down)) == "Put cup upside down on the table.");
    // A plain rod has no upside.
    CHECK(put(item("rod", cylinder(10, 80, {50, 50, 40}, upside_down))) == "Put rod standing on the table.");
    CHECK(put(item("rod", cylinder(10, 80, {50, 50, 45}, {6, 1, 0, 0}))) == "Put rod leaning.");
}

TEST_CASE("a vessel that lies or stands on its head in the end is filled while it stands on the table")
{
    const auto lying = texts(stacking_samples::cup_in_yawed_lying_pot());
    CHECK(lying.front() == "Put cup standing into pot, while it still stands on the table, on the floor in the middle; "
                           "8.0 mm of air all round.");
    CHECK(lying.back() == "Put pot, with all that is in it, lying on its side on the table.");
    const auto turned = texts(lidded_pot_upside_down());
    CHECK(turned.front().find("while it still stands on the table") != std::string::npos);
    CHECK(turned.back() == "Put pot, with all that is in it, upside down on the table.");
}

TEST_CASE("what comes in level or at a slant is said so")
{
    const auto hook = texts(stacking_samples::hook_round_seat());
    CHECK(hook == Texts{"Put stool flat on the table.", "Slide hook in from the side, flat on top of stool."});
    Bundle slanted = bundle("", Box{100, 100, 100}, {item("rod", cylinder(10, 80, {50, 50, 40}))});
    const stacking::Replay before(slanted);
    CHECK(stacking::step_text(before, {0, {1, 0, -1}, ""}) ==
          "Slide rod in from above at a slant, standing on the table.");
}

TEST_CASE("what lies on many things names three of them")
{
    std::vector<PlacedItem> items{item("tray", box(100, 100, 4, {50, 50, 12}))};
    for (int k = 0; k < 5; ++k) {
        items.push_back(item("peg", cylinder(8, 10, {10.0 + 20 * k, 20.0 + 10 * k, 5})));
        items.back().copy = k + 1;
    }
    CHECK(texts(bundle("", Box{100, 100, 14}, items)).back() ==
          "Put tray flat on top of peg 1, peg 2, peg 3 and 2 more, in the middle.");
}
