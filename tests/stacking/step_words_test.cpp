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

TEST_CASE("mug in ring in lidded pot, in words")
{
    CHECK(
        texts(stacking_samples::mug_in_ring_in_lidded_pot()) ==
        Texts{
            "Put Wind ring standing into Steel pot, at the bottom, in the middle; 13.0 mm of air all round.",
            "Put Mug standing into Wind ring, down to the floor of Steel pot, in the middle; 0.8 mm of air all round.",
            "Shut Steel pot with Pot lid.", "Put Steel pot, with all that is in it, standing on the table."});
}

TEST_CASE("a board on a block and a tin under it, in words")
{
    CHECK(texts(stacking_samples::tin_under_board()) ==
          Texts{"Put block on its edge, 50 mm high, on the table over the whole width, against the left side.",
                "Put tin standing on the table in the middle of the width, 10 mm from the right.",
                "Put board flat on top of block."});
}

TEST_CASE("side by side in a cavity: the wall and the neighbour, with the air rounded down")
{
    const auto pot = hollow(item("pot", cylinder(100, 60, {0, 0, 30})), cylinder(96, 58, {0, 0, 31}), Opening::top);
    const auto left = in(item("left", cylinder(45, 50, {-24.67, 0, 27})), 0); // 0.83 mm from the wall
    const auto right = in(item("right", cylinder(46, 40, {23, 0, 22})), 0);   // 2 mm from the wall, 2.17 mm from left
    const auto top = in(item("top", cylinder(40, 4, {10, 0, 54})), 0);
    auto all = bundle("", Cylinder{100, 60}, {pot, left, right, top});
    all.items[3].solids = {cylinder(80, 4, {5, 0, 54})};
    CHECK(texts(all) == Texts{"Put left standing into pot, at the bottom, against the wall at 9 o'clock.",
                              "Put right standing into pot, at the bottom, at 3 o'clock, beside left with 2.1 mm of "
                              "air; 2.0 mm of air to "
                              "the wall.",
                              "Put top flat into pot, on top of left, at 3 o'clock, 3 mm from the wall.",
                              "Put pot, with all that is in it, standing on the table."});
    all.items[2].solids[0].pose.center.x = 20.83; // up to left
    CHECK(texts(all)[1] ==
          "Put right standing into pot, at the bottom, at 3 o'clock, 4 mm from the wall, touching left.");
    all.items[2].solids[0] = cylinder(20, 40, {2, 37.4, 22}); // at the wall
    CHECK(texts(all)[1] ==
          "Put right standing into pot, at the bottom, against the wall at 12 o'clock, 13 mm from left.");
}

TEST_CASE("what the walls of a tapering vessel hold hangs all round or by one side, and that is told")
{
    auto mug = hollow(item("mug", cylinder(82, 90, {0, 0, 45})), cylinder(78, 88, {0, 0, 46}), Opening::top);
    std::get<Cylinder>(mug.solids[0].shape).foot = 66;
    std::get<Cylinder>(mug.cavities[0].shape).foot = 62; // 62 mm across at the floor and 1 mm more each 5.5 mm
    const auto first_text = [&](const Solid& tin) {
        return texts(bundle("", Cylinder{82, 90}, {mug, in(item("tin", tin), 0)})).front();
    };
    CHECK(first_text(cylinder(70, 20, {0, 0, 56})) == "Put tin flat into mug, as far down as it goes.");
    CHECK(first_text(cylinder(60, 20, {6.9, 0, 76.9})) ==
          "Put tin flat into mug, held by one side of the wall at 3 o'clock, 65 mm above the bottom.");
    const Bundle jammed = bundle("", Cylinder{82, 90},
                                 {mug, in(item("tin", cylinder(40, 20, {16.9, 0, 76.9})), 0),
                                  in(item("jar", cylinder(30, 84, {-18.1, 0, 44})), 0)});
    CHECK(texts(jammed)[1] ==
          "Put tin standing into mug, held between the wall at 3 o'clock and jar, 65 mm above the bottom.");
}

TEST_CASE("a large clearance is told at the wall, and where there is only one place, none is told")
{
    const auto pot = hollow(item("pot", cylinder(100, 60, {0, 0, 30})), cylinder(96, 58, {0, 0, 31}), Opening::top);
    Bundle all = bundle("", Cylinder{100, 60}, {pot, in(item("cup", cylinder(70, 50, {-8, 0, 27})), 0)});
    all.clearance = 5;
    CHECK(texts(all).front() == "Put cup standing into pot, at the bottom, at 9 o'clock, 5.0 mm from the wall.");
    all.items[1].solids = {cylinder(92, 50, {1.5, 0, 27})};
    all.clearance = 0.5;
    CHECK(texts(all).front() == "Put cup standing into pot, at the bottom, snugly.");
}

TEST_CASE("a tenth is not lost to rounding, and less than a tenth is no air")
{
    const auto alone = [](double diameter) {
        const auto pot = hollow(item("pot", cylinder(100, 60, {0, 0, 30})), cylinder(96, 58, {0, 0, 31}), Opening::top);
        return texts(bundle("", Cylinder{100, 60}, {pot, in(item("cup", cylinder(diameter, 50, {0, 0, 27})), 0)}))
            .front();
    };
    CHECK(alone(94.2) == "Put cup standing into pot, at the bottom, in the middle; 0.9 mm of air all round.");
    CHECK(alone(94.202) == "Put cup standing into pot, at the bottom, in the middle; 0.8 mm of air all round.");
    CHECK(alone(95.9) == "Put cup standing into pot, at the bottom, in the middle; no air all round.");
}

TEST_CASE("which way up: lying, upside down, flat, on its edge, leaning")
{
    const auto put = [](PlacedItem what) { return texts(bundle("", Cylinder{100, 100}, {std::move(what)})).front(); };
    CHECK(put(item("rod", cylinder(10, 80, {0, 0, 5}, up_to_x))) ==
          "Put rod lying on the table, long side from 3 to 9 o'clock.");
    CHECK(put(item("plate", cylinder(80, 5, {0, 0, 40}, up_to_x))) ==
          "Put plate on its edge on the table, axis from 3 to 9 o'clock.");
    CHECK(put(item("plate", cylinder(80, 5, {0, 0, 2.5}))) == "Put plate flat on the table.");
    CHECK(put(item("spoon", box(90, 30, 10, {0, 0, 5}))) ==
          "Put spoon flat on the table, long side from 3 to 9 o'clock.");
    CHECK(put(item("spoon", box(10, 30, 90, {0, 0, 5}, {1, 0, 1, 0}))) ==
          "Put spoon flat on the table, long side from 3 to 9 o'clock.");
    const auto cup = [](Quaternion turn) {
        const double inside = turn == upside_down ? 39 : 41;
        return hollow(item("cup", cylinder(60, 80, {0, 0, 40}, turn)), cylinder(58, 78, {0, 0, inside}, turn),
                      Opening::top);
    };
    CHECK(put(cup(as_it_is)) == "Put cup standing on the table.");
    CHECK(put(cup(upside_down)) == "Put cup upside down on the table.");
    // A plain rod has no upside.
    CHECK(put(item("rod", cylinder(10, 80, {0, 0, 40}, upside_down))) == "Put rod standing on the table.");
    CHECK(put(item("rod", cylinder(10, 80, {0, 0, 45}, {6, 1, 0, 0}))) ==
          "Put rod leaning, foot at 12 o'clock, head at 6 o'clock, 84 mm above the floor, 19 degrees from upright.");
}

TEST_CASE("in a box, things have their place by its sides, and long ones a direction")
{
    const auto put = [](Solid what) {
        return texts(bundle("", Box{200, 100, 100}, {item("tin", std::move(what))})).front();
    };
    CHECK(put(box(60, 20, 10, {30, 90, 5})) ==
          "Put tin flat on the table in the left back corner, long side from left to right.");
    CHECK(put(box(60, 20, 10, {190, 30, 5}, {1, 0, 0, 1})) ==
          "Put tin flat on the table in the right front corner, long side from front to back.");
    CHECK(put(cylinder(30, 40, {47, 15, 20})) ==
          "Put tin standing on the table against the front, 32 mm from the left.");
    CHECK(put(cylinder(30, 40, {185, 60, 20})) ==
          "Put tin standing on the table against the right side, 25 mm from the back.");
    CHECK(put(cylinder(30, 40, {100, 84, 20})) ==
          "Put tin standing on the table against the back, in the middle of the length.");
    CHECK(put(cylinder(30, 40, {100, 50, 20})) == "Put tin standing on the table in the middle.");
    CHECK(put(cylinder(30, 40, {30, 40, 20})) ==
          "Put tin standing on the table 15 mm from the left, 25 mm from the front.");
    CHECK(put(cylinder(30, 40, {30, 50, 20})) ==
          "Put tin standing on the table in the middle of the width, 15 mm from the left.");
    CHECK(put(box(200, 20, 10, {100, 40, 5})) ==
          "Put tin flat on the table over the whole length, 30 mm from the front.");
    CHECK(put(box(20, 100, 10, {10, 50, 5})) ==
          "Put tin flat on the table over the whole width, against the left side.");
    CHECK(put(box(200, 100, 10, {100, 50, 5})) == "Put tin flat on the table.");
    CHECK(put(cylinder(10, 70, {35, 5, 5}, up_to_x)) ==
          "Put tin lying on the table in the left front corner, long side from left to right.");
    CHECK(put(box(60, 20, 10, {100, 50, 5}, {3, 0, 0, 1})) ==
          "Put tin flat on the table in the middle, long side aslant from left front to right back.");
    CHECK(put(box(60, 20, 10, {100, 50, 5}, {3, 0, 0, -1})) ==
          "Put tin flat on the table in the middle, long side aslant from left back to right front.");
}

TEST_CASE("a box that stands square in a box is filled by the same sides; a vessel that lies shows where it is open")
{
    const auto tin = hollow(item("tin", box(100, 80, 40, {50, 50, 20})), box(98, 78, 39, {50, 50, 20.5}), Opening::top);
    const auto bar = in(item("bar", box(60, 10, 10, {31.5, 16.5, 6})), 0);
    const Bundle all = bundle("", Box{200, 90, 100}, {tin, bar});
    CHECK(texts(all) == Texts{"Put bar flat into tin, at the bottom, in the left front corner, long side from left to "
                              "right.",
                              "Put tin, with all that is in it, flat on the table in the left back corner, long side "
                              "from left to right."});
    Bundle round = all;
    round.envelope = Cylinder{200, 100};
    CHECK(texts(round).front() == "Put bar flat into tin, at the bottom, against the wall at 7 o'clock, long "
                                  "side from 3 to 9 o'clock.");
    const auto lying = texts(tin_in_lying_pot());
    CHECK(lying ==
          Texts{"Put tin standing into pot, which stands mouth up for now, at the bottom, against the wall.",
                "Hold the mouth of pot shut, tip it over with all that is in it, and put it lying on the table, "
                "open end to the right."});
}

TEST_CASE("in a round bundle, things have their place by the clock and by one another")
{
    const auto at = [](const std::string& id, double diameter, double x, double y, double z = 20) {
        return item(id, cylinder(diameter, 40, {x, y, z}));
    };
    const Bundle all = bundle("", Cylinder{200, 100},
                              {at("pot", 80, -60, 0), at("mug", 60, 70, 0), at("tin", 50, -50, 67),
                               at("rod", 10, 20, 80), at("cup", 40, 2, 0, 60)});
    CHECK(texts(all) == Texts{"Put pot standing on the table at 9 o'clock, 60 mm off the middle.",
                              "Put mug standing on the table at 3 o'clock, 70 mm off the middle, opposite pot.",
                              "Put tin standing on the table at 11 o'clock, 84 mm off the middle, beside pot.",
                              "Put rod standing on the table at half past 12, 82 mm off the middle, 41 mm from tin.",
                              "Put cup standing, in the middle."});
    const auto on_a_plate = bundle(
        "", Cylinder{100, 100}, {item("plate", cylinder(98, 4, {0, 0, 2})), item("bar", box(20, 20, 40, {2, 0, 24}))});
    CHECK(texts(on_a_plate) == Texts{"Put plate flat on the table in the middle.",
                                     "Put bar on its end, 40 mm high, on top of plate, in the middle."});
}

TEST_CASE("a vessel that lies or stands on its head in the end is filled while it still stands apart")
{
    const auto lying = texts(stacking_samples::cup_in_yawed_lying_pot());
    CHECK(lying.front() == "Put cup standing into pot, which stands mouth up for now, at the bottom, in the middle; "
                           "8.0 mm of air all round.");
    CHECK(lying.back() ==
          "Hold the mouth of pot shut, tip it over with all that is in it, and put it lying on the table, "
          "open end to 1 o'clock.");
    const auto turned = texts(lidded_pot_upside_down());
    CHECK(turned.front() ==
          "Put tin standing into pot, which stands mouth up for now, in the middle; 19.0 mm of air all "
          "round.");
    CHECK(turned.back() == "Turn pot over with all that is in it, and put it upside down on the table.");
}

TEST_CASE("a sleeve that cannot stand empty is slipped round what it holds, and held together")
{
    const auto pot = hollow(item("pot", cylinder(130, 96, {0, 0, 48})), cylinder(126, 94, {0, 0, 49}), Opening::top);
    const auto ring = in(hollow(item("ring", cylinder(60, 80, {0, 0, 32}, up_to_x)),
                                cylinder(58, 80, {0, 0, 32}, up_to_x), Opening::both),
                         0);
    const auto rod = in(item("rod", cylinder(56.4, 70, {0, 0, 32}, up_to_x)), 1);
    CHECK(texts(bundle("", Cylinder{130, 96}, {pot, ring, rod})) ==
          Texts{"Slip ring round rod; 0.8 mm of air all round.",
                "Put ring, held together with all that is in it, lying into pot, at the bottom, in the middle, long "
                "side from "
                "3 to 9 o'clock.",
                "Put pot, with all that is in it, standing on the table."});
}

TEST_CASE("what comes in level or at a slant is said so")
{
    const auto hook = texts(stacking_samples::hook_round_seat());
    CHECK(hook == Texts{"Put stool flat on the table over the whole width, against the left side.",
                        "Slide hook in from the right, flat on top of stool, against the right side, in the middle of "
                        "the width, long side from left to right."});
    const auto way = [](const Bundle& all, std::array<std::int64_t, 3> direction) {
        const std::string text = stacking::step_text(stacking::Replay(all), {0, direction, ""});
        return text.substr(0, text.find(','));
    };
    Bundle alone = bundle("", Box{100, 100, 100}, {item("rod", cylinder(10, 80, {50, 50, 40}))});
    CHECK(way(alone, {1, 0, -1}) == "Slide rod in from above at a slant");
    CHECK(way(alone, {2, 0, 0}) == "Slide rod in from the left");
    CHECK(way(alone, {0, 1, 0}) == "Slide rod in from the front");
    CHECK(way(alone, {0, -1, 0}) == "Slide rod in from the back");
    CHECK(way(alone, {1, -1, 0}) == "Slide rod in from the side");
    alone.envelope = Cylinder{100, 100};
    CHECK(way(alone, {1, 0, 0}) == "Slide rod in from the side");
}

TEST_CASE("what lies on many things names three of them")
{
    std::vector<PlacedItem> items{item("tray", box(100, 100, 4, {50, 50, 12}))};
    for (int k = 0; k < 5; ++k) {
        items.push_back(item("peg", cylinder(8, 10, {10.0 + 20 * k, 20.0 + 10 * k, 5})));
        items.back().copy = k + 1;
    }
    CHECK(texts(bundle("", Box{100, 100, 14}, items)).back() ==
          "Put tray flat on top of peg 1, peg 2, peg 3 and 2 more.");
}

TEST_CASE("what leans has its foot and its head told: by the clock in a round pot, by the sides in a box")
{
    const auto pot = hollow(item("pot", cylinder(100, 90, {0, 0, 45})), cylinder(98, 89, {0, 0, 45.5}), Opening::top);
    const auto stick = in(item("stick", cylinder(6, 110, {0, 0, 46}, {3, 0, 1, 0})), 0); // 37 degrees, up towards x
    CHECK(texts(bundle("", Cylinder{100, 92}, {pot, stick})).front() ==
          "Put stick leaning into pot, at the bottom, foot at 9 o'clock, head at 3 o'clock, 91 mm above the floor, 37 "
          "degrees from upright.");
    CHECK(
        texts(bundle("", Box{200, 100, 100}, {item("stick", cylinder(6, 110, {60, 30, 46}, {3, 0, 1, 0}))})).front() ==
        "Put stick leaning, foot at the left front, head at the left front, 92 mm above the floor, 37 degrees from "
        "upright.");
}

TEST_CASE("what stands on an open vessel stands on its rim, and a handle has its direction")
{
    auto mug = hollow(item("mug", cylinder(80, 60, {0, 0, 30})), cylinder(78, 58, {0, 0, 31}), Opening::top);
    mug.solids.push_back(box(20, 10, 40, {0, -50, 30}));
    const auto plate = item("plate", cylinder(84, 4, {0, 0, 62}));
    CHECK(texts(bundle("", Cylinder{140, 64}, {mug, plate})) ==
          Texts{"Put mug standing on the table in the middle, the part at its side to 6 o'clock.",
                "Put plate flat on the rim of mug, in the middle."});
    Bundle square = bundle("", Box{140, 140, 64}, {mug, plate});
    for (PlacedItem& item : square.items) {
        for (Solid& solid : item.solids) {
            solid.pose.center = solid.pose.center + Vec3{70, 70, 0};
        }
    }
    square.items[0].cavities[0].pose.center = {70, 70, 31};
    CHECK(texts(square).front() ==
          "Put mug standing on the table in the middle of the length, 15 mm from the front, the part "
          "at its side to the front.");
}

TEST_CASE("what is pressed into a vessel, in words")
{
    Bundle bundle = ring_pressed_into_a_pot();
    CHECK(texts(bundle) ==
          Texts{"Press ring together and into pot, at the bottom.",
                "Put cup standing into ring, down to the floor of pot, in the middle; 0.5 mm of air all round.",
                "Put plate flat into pot, on the rim of ring, in the middle; 0.5 mm of air all round.",
                "Put pot, with all that is in it, standing on the table."});
    CHECK(texts(ring_pressed_into_a_lying_pot()).front() ==
          "Press ring together and into pot, which stands mouth up for now, 17 mm below the rim.");
    const auto moved = [](double by) {
        Bundle lying = ring_pressed_into_a_lying_pot();
        lying.items[1].solids[0].pose.center.x += by;
        lying.items[1].cavities[0].pose.center.x += by;
        return texts(lying).front();
    };
    CHECK(moved(17) == "Press ring together and into pot, which stands mouth up for now, flush with the rim.");
    CHECK(moved(-3) == "Press ring together and into pot, which stands mouth up for now, at the bottom.");
}

TEST_CASE("a long thing that lies as a chord has its ends at the wall, not its middle")
{
    const auto pot = hollow(item("pot", cylinder(130, 60, {0, 0, 30})), cylinder(126, 58, {0, 0, 31}), Opening::top);
    const auto put = [&](const Solid& solid) {
        return texts(bundle("", Cylinder{130, 60}, {pot, in(item("spoon", solid), 0)})).front();
    };
    // A chord of 100 mm in a circle of 126 mm is sqrt(63^2 - 50^2) = 38.3 mm off the middle.
    CHECK(put(box(100, 4, 20, {0, 35.9, 12})) == "Put spoon on its edge, 20 mm high, into pot, at the bottom, from "
                                                 "wall to wall, one end at 2 o'clock, the other at "
                                                 "10 o'clock.");
    CHECK(put(box(60, 4, 20, {27, 25, 12})) == "Put spoon on its edge, 20 mm high, into pot, at the bottom, one end "
                                               "against the wall at 2 o'clock, long side from 3 to "
                                               "9 o'clock.");
    // Short things touch the wall with their side, as far as anybody sees.
    CHECK(put(box(20, 6, 5, {0, 58.5, 4.5})).find("against the wall at 12 o'clock") != std::string::npos);
    CHECK(put(box(80, 4, 20, {0, 0, 12})).find("wall to wall") == std::string::npos);
    CHECK(put(cylinder(10, 124, {0, 3, 7}, up_to_x)).find("from wall to wall, one end at 3 o'clock") !=
          std::string::npos);
}

TEST_CASE("what has been filled or shut is turned over before it goes in; what is empty is just put there")
{
    const Bundle over = pot_over_cup();
    CHECK(texts(over)[1] == "Hold the mouth of pot shut, turn it over with all that is in it, and put it upside down "
                            "on the table in the middle.");
    Bundle empty = over;
    empty.items.erase(empty.items.begin() + 1);
    CHECK(texts(empty).front() == "Put pot upside down on the table in the middle.");
}
