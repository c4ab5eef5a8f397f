// SPDX-License-Identifier: GPL-3.0-or-later
/// What stands out of its vessel and is wider there: beakers in beakers, lids and handles beyond a rim; and what rests on
/// the air of a mouth.
#include <catch2/catch.hpp>

#include "faults.hpp"
#include "proof/findings.hpp"
#include "proof_support.hpp"
#include "support/handmade_bundles.hpp"

using namespace tuckwright;
using namespace tuckwright::handmade;

namespace {

/// A tall beaker in a low one; beyond the low one's rim it is wider than that. Both widen by a millimetre every three.
Bundle tall_beaker_in_a_low_one()
{
    auto low = hollow(item("low", {Cylinder{40, 30, 20}, {{0, 0, 15}, {}}}), {Cylinder{38, 28, 19}, {{0, 0, 16}, {}}},
                      Opening::top);
    auto tall = in(item("tall", {Cylinder{56, 60, 16}, {{0, 0, 32}, {}}}), 0);
    auto result = bundle("Blackberries", Cylinder{90, 62}, {low, tall});
    step_and_stand(result, {1, 0});
    return result;
}

/// The same; the low one has a handle that stands above its rim, so far out that the tall one clears it.
Bundle beakers_and_a_handle()
{
    auto result = tall_beaker_in_a_low_one();
    result.items[0].solids.push_back(box(4, 4, 20, {32, 0, 35}));
    return result;
}

/// A jar in an open pot; the jar's lid is wider than the pot, above its rim.
Bundle wide_lid_above_a_pot()
{
    auto pot = hollow(item("pot", cylinder(100, 50, {0, 0, 25})), cylinder(98, 48, {0, 0, 26}), Opening::top);
    auto jar = in(hollow(item("jar", cylinder(60, 80, {0, 0, 42})), cylinder(58, 76, {0, 0, 43}), Opening::closed), 0);
    auto lid = in(item("jar-lid", cylinder(110, 4, {0, 0, 84}), "shut"), 0);
    lid.closes = 1;
    auto result = bundle("Plums", Cylinder{110, 90}, {pot, jar, lid});
    step(result, 2);
    step(result, 1);
    step(result, 0);
    stands(result, 0);
    stands(result, 1);
    return result;
}

/// A rectangular sleeve with a board across its upper mouth, which lies on the rim.
Bundle board_on_a_sleeve()
{
    auto sleeve = hollow(item("sleeve", box(64, 24, 70, {40, 20, 35})), box(60, 20, 70, {40, 20, 35}), Opening::both);
    auto board = item("board", box(30, 24, 2, {40, 20, 71}));
    auto result = bundle("Plank", Box{80, 40, 72}, {sleeve, board});
    step(result, 0);
    step(result, 1);
    stands(result, 0);
    lies_on(result, 1, 0, {40, 31, 69.995});
    return result;
}

} // namespace

TEST_CASE("beyond the rim of what tapers, a thing may be wider, but not where its vessel has more")
{
    for (const auto make : {tall_beaker_in_a_low_one, beakers_and_a_handle, wide_lid_above_a_pot, board_on_a_sleeve}) {
        INFO(make().kit << objections_of(make()));
        CHECK(check(make(), 100).empty());
        INFO("the other way round" << objections_of(reversed(make())));
        CHECK(check(reversed(make()), 100).empty());
    }
    refuse({
        {"handle in the way", beakers_and_a_handle, [](Bundle& b) { b.items[0].solids[1].pose.center.x = 24; }, "apart",
         "\"tall\" and \"low\", which it is in, are not proved apart beyond the rim"},
        {"handle by a nanometre in the way", beakers_and_a_handle,
         [](Bundle& b) { b.items[0].solids[1].pose.center.x = 30 - nanometre; }, "apart", "beyond the rim"},
        {"too low", tall_beaker_in_a_low_one, [](Bundle& b) { center(b, 1).z -= nanometre; }, "inside", "floor"},
        {"a foot too wide", tall_beaker_in_a_low_one,
         [](Bundle& b) { std::get<Cylinder>(b.items[1].solids[0].shape).foot = 19.000002; }, "inside", "side wall"},
        {"too wide at the rim", tall_beaker_in_a_low_one,
         [](Bundle& b) { std::get<Cylinder>(b.items[1].solids[0].shape).diameter = 90; }, "inside", "side wall"},
    });
}

TEST_CASE("a lid beyond a rim holds nothing up, and must keep off the vessel")
{
    refuse({
        {"jar in the air", wide_lid_above_a_pot,
         [](Bundle& b) {
             center(b, 1).z += 1;
             b.items[1].cavities[0].pose.center.z += 1;
             center(b, 2).z += 1;
         },
         "rest", "\"jar\": lowered by 0.01 mm, it is still inside what it is in"},
        {"the lid in the pot's wall", wide_lid_above_a_pot,
         [](Bundle& b) {
             std::get<Cylinder>(b.items[0].solids[0].shape).height = 83;
             std::get<Cylinder>(b.items[0].cavities[0].shape).height = 81;
             center(b, 0).z = 41.5;
             b.items[0].cavities[0].pose.center.z = 42.5;
         },
         "inside", "\"jar-lid\" is not inside \"pot\""},
    });
}

TEST_CASE("nothing rests on the air of a mouth, above or below")
{
    refuse({
        {"in the middle of the mouth", board_on_a_sleeve,
         [](Bundle& b) { b.certificate.rests[1].point = {40, 20, 69.995}; }, "rest", "is in the empty cavity of \"sleeve\""},
        {"in the very plane of the mouth", board_on_a_sleeve,
         [](Bundle& b) { b.certificate.rests[1].point = {40, 20, 70}; }, "rest", "is in the empty cavity of \"sleeve\""},
        {"beside the board", board_on_a_sleeve, [](Bundle& b) { b.certificate.rests[1].point = {56, 31, 69.995}; }, "rest",
         "lowered by 0.01 mm, it does not reach the point"},
    });
}

TEST_CASE("what is moved aside under a narrow opening comes out after all that was put in later")
{
    auto bundle = tins_under_a_shoulder();
    bundle.items[1].reach = Wanted::early;
    bundle.items[1].out_after = 3; // the slim tin, the peg, the crock
    INFO(objections_of(bundle));
    CHECK(first_rule(bundle) == "none");
    for (const std::size_t wrong : {2U, 4U}) {
        bundle.items[1].out_after = wrong;
        CHECK(said(bundle, "reach").find("but it comes out after 3") != std::string::npos);
    }
}

TEST_CASE("bounds may be low, but not above the volume, be it by a thousandth")
{
    auto bundle = cup_in_lidded_pot();
    bundle.lower_bound_ml = 0.5;
    CHECK(first_rule(bundle) == "none");
    bundle.lower_bound_ml = volume_ml(bundle.envelope) * 1.001;
    CHECK(first_rule(bundle) == "limit");
    bundle.lower_bound_ml = volume_ml(bundle.envelope) * 0.999;
    CHECK(first_rule(bundle) == "none");
}

TEST_CASE("the bag's wall counts on every side of a box")
{
    auto bundle = touching_boxes(); // 60 by 40 by 20
    bundle.bag = tins_in_a_bag().bag;
    bundle.bag->thickness = 2;
    bundle.rule.length = 64;
    bundle.rule.width = 44;
    bundle.rule.height = 24;
    INFO(objections_of(bundle));
    CHECK(first_rule(bundle) == "none");
    for (auto limit : {&BundleRule::length, &BundleRule::width, &BundleRule::height}) {
        auto tight = bundle;
        *(tight.rule.*limit) -= nanometre;
        CHECK(first_rule(tight) == "limit");
    }
}

TEST_CASE("lengths in objections are told without zeros at their end")
{
    CHECK(proof::in_mm(0.4) == "less than 0.000001 mm");
    CHECK(proof::in_mm(1) == "0.000001 mm");
    CHECK(proof::in_mm(1.5e6) == "1.5 mm");
    CHECK(proof::in_mm(2e7) == "20 mm");
    CHECK(proof::in_mm(-3e6) == "-3 mm");
}
