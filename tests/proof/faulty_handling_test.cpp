// SPDX-License-Identifier: GPL-3.0-or-later
/// Faults of lids, standing, resting, steps and figures.
#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

#include "faults.hpp"
#include "proof_support.hpp"
#include "support/handmade_bundles.hpp"
#include "tuckwright/contract.hpp"

using namespace tuckwright;
using namespace tuckwright::handmade;

namespace {

/// A lying pot whose mouth looks at a loaf of bread.
Bundle mouth_to_a_wall()
{
    auto bundle = tin_in_lying_pot();
    bundle.items.push_back(item("bread", box(10, 60, 60, {101, 64, 30})));
    bundle.envelope = Box{106, 128, 128};
    step(bundle, 2);
    stands(bundle, 2);
    return bundle;
}

/// A sponge that lies on what stands out of a mug in a pot.
Bundle sponge_on_rod()
{
    auto bundle = rod_out_of_two_lying_levels();
    bundle.items.push_back(item("sponge", box(10, 20, 5, {117, 50, 15.5})));
    step(bundle, 4);
    lies_on(bundle, 4, 2, {117, 50, 12.995});
    return bundle;
}

} // namespace

TEST_CASE("lids that are not shut are refused")
{
    refuse({
        {"raised", cup_in_lidded_pot,
         [](Bundle& b) {
             center(b, 2).z += nanometre;
             b.envelope = Cylinder{129, 100};
         },
         "lid", "\"pot-lid\" is not a lid shut on \"pot\": it stands 0.000001 mm above the rim"},
        {"aside", cup_in_lidded_pot,
         [](Bundle& b) {
             center(b, 2).x = nanometre;
             b.envelope = Cylinder{130, 99};
         },
         "lid", "its axis is not the axis of \"pot\""},
        {"the wrong way up", cup_in_lidded_pot, [](Bundle& b) { b.items[2].solids[0].pose.turn = upside_down; }, "lid",
         "not the same way up"},
        {"too small", cup_in_lidded_pot,
         [](Bundle& b) {
             b.items[2].solids[0].shape = Cylinder{125, 3};
         },
         "lid", "leaves 0.5 mm of the cavity of \"pot\" uncovered"},
        {"on an open cavity", cup_in_lidded_pot,
         [](Bundle& b) {
             b.items[0].cavities[0] = {Cylinder{126, 93}, {{0, 0, 49.5}, as_it_is}, Opening::top};
         },
         "lid", "the cavity of \"pot\" is open"},
        {"on what has no cavity", cup_in_lidded_pot,
         [](Bundle& b) {
             b.items.erase(b.items.begin() + 1);
             b.items[0].cavities.clear();
             b.items[1].closes = 0;
             b.steps = {{1, {0, 0, -1}, ""}, {0, {0, 0, -1}, ""}};
             b.certificate.rests.pop_back();
         },
         "lid", "\"pot\" has no cavity"},
        {"a second lid", cup_in_lidded_pot,
         [](Bundle& b) {
             b.items.push_back(item("plate", cylinder(129, 3, {0, 0, 100.5})));
             b.items.back().closes = 0;
             b.envelope = Cylinder{129, 102};
             step(b, 3);
         },
         "lid", "\"plate\" is not a lid shut on \"pot\": a second lid, after \"pot-lid\""},
        {"in another container", rod_out_of_cup,
         [](Bundle& b) {
             b.items[2].closes = 1;
             b.certificate.rests.pop_back();
         },
         "lid", "not in the container"},
        {"turned cavity", cup_in_lidded_pot, [](Bundle& b) { b.items[0].cavities[0].pose.turn = upside_down; }, "lid",
         "does not open towards a lid"},
    });
}

TEST_CASE("upright items that lie or stand on their heads are refused")
{
    refuse({
        {"lying", tin_in_lying_pot, [](Bundle& b) { b.items[1].upright = true; }, "upright",
         "\"tin\" must stand upright"},
        {"upside down", pot_over_cup, [](Bundle& b) { b.items[0].upright = true; }, "upright", "\"pot\""},
        {"leaning a little", rod_leaning_in_cup, [](Bundle& b) { b.items[1].upright = true; }, "upright", "\"rod\""},
    });
    auto turned = yawed_boxes();
    turned.items[0].upright = turned.items[1].upright = true;
    CHECK(first_rule(turned) == "none"); // turning about the upright axis spills nothing
}

TEST_CASE("items that hang in the air are refused")
{
    refuse({
        {"no word", yawed_boxes, [](Bundle& b) { b.certificate.rests.pop_back(); }, "rest", "does not say"},
        {"two words", yawed_boxes, [](Bundle& b) { b.certificate.rests.push_back(b.certificate.rests.back()); }, "rest",
         "more than once"},
        {"above the floor", yawed_boxes,
         [](Bundle& b) {
             center(b, 0).z += 0.010001;
             center(b, 1).z += 0.010001;
             b.envelope = Cylinder{67.1, 36};
         },
         "rest", "\"tool roll\": lowered by 0.01 mm, it is still inside"},
        {"a point of the upper alone", yawed_boxes, [](Bundle& b) { b.certificate.rests[1].point.z = 20.000001; },
         "rest", "is not in \"tool roll\""},
        {"a point of the lower alone", yawed_boxes, [](Bundle& b) { b.certificate.rests[1].point.z = 19.989999; },
         "rest", "\"pump\": lowered by 0.01 mm, it does not reach"},
        {"on itself", yawed_boxes, [](Bundle& b) { b.certificate.rests[1].on = 1; }, "rest", "on itself"},
        {"on what it holds", tin_in_lying_pot, [](Bundle& b) { b.certificate.rests[0].on = 1; }, "rest", "hangs on it"},
        {"on its own lid", lidded_pot_upside_down, [](Bundle& b) { b.certificate.rests[0].on = 2; }, "rest",
         "\"pot-lid\", which hangs on it"},
        {"on its container by name", rod_out_of_cup, [](Bundle& b) { b.certificate.rests[1].on = 0; }, "rest",
         "a rest on a container names no item"},
        {"on a neighbour's side", touching_boxes,
         [](Bundle& b) {
             b.certificate.rests[5] = {5, 4, {30, 10, 15}};
         },
         "rest", "only slide along \"biscuits 5\""},
        {"a lid on something else", cup_in_lidded_pot, [](Bundle& b) { stands(b, 2); }, "rest", "a shut lid rests"},
        {"held by an open mouth alone", pot_over_cup, [](Bundle& b) { center(b, 1).z += 0.02; }, "rest",
         "\"cup\": lowered"},
        {"in the middle of a lying pot", tin_in_lying_pot, [](Bundle& b) { center(b, 1).z = 64; }, "rest", "\"tin\""},
    });
    auto lid = cup_in_lidded_pot();
    lies_on(lid, 2, 0, {0, 0, 95.995});
    CHECK(first_rule(lid) == "none"); // it may be said again
}

namespace {

/// A plate as wide as the open pot that it lies on.
Bundle plate_on_pot()
{
    auto pot = hollow(item("pot", cylinder(128, 96, {0, 0, 48})), cylinder(126, 93, {0, 0, 49.5}), Opening::top);
    auto result = bundle("Under cover", Cylinder{128, 100}, {pot, item("plate", cylinder(128, 4, {0, 0, 98}))});
    step(result, 0);
    step(result, 1);
    stands(result, 0);
    lies_on(result, 1, 0, {63.5, 0, 95.995});
    return result;
}

/// The same with a plate that is narrower, and a point of its rest.
Bundle plate_at(double width, Vec3 point)
{
    auto result = plate_on_pot();
    result.items[1].solids[0].shape = Cylinder{width, 4};
    result.certificate.rests[1].point = point;
    return result;
}

std::string rule_with_point(std::size_t rest, Vec3 point)
{
    auto bundle = things_on_rims();
    bundle.certificate.rests[rest].point = point;
    return first_rule(bundle);
}

constexpr const char* in_pot = "is in the empty cavity of \"pot\"";

} // namespace

TEST_CASE("what hovers over a mouth is refused")
{
    refuse({
        {"a plate over a pot", plate_on_pot,
         [](Bundle& b) {
             b = plate_at(104, {0, 0, 95.995});
         },
         "rest", "\"plate\": the point where it rests on \"pot\" is in the empty cavity of \"pot\""},
        {"a plate with a point on the rim", plate_on_pot,
         [](Bundle& b) {
             b = plate_at(104, {63.5, 0, 95.995});
         },
         "rest", "\"plate\": lowered by 0.01 mm, it does not reach the point in \"pot\""},
        {"by a hair narrower than the mouth", plate_on_pot,
         [](Bundle& b) {
             b = plate_at(125.999998, {62.999998, 0, 95.995});
         },
         "rest", in_pot},
        {"as wide as the mouth", plate_on_pot,
         [](Bundle& b) {
             b = plate_at(126, {63, 0, 95.995});
         },
         "rest", "only slide along \"pot\""},
        {"a peg over the inside of a pot", things_on_rims,
         [](Bundle& b) {
             center(b, 4).y = 20;
             b.certificate.rests[4].point.y = 20;
         },
         "rest", in_pot},
        {"a tub over a sleeve's bore", things_on_rims,
         [](Bundle& b) {
             b.items[3].solids[0].shape = Cylinder{90, 30};
             b.items[3].cavities[0].shape = Cylinder{88, 28};
             b.certificate.rests[3].point.y = 64;
         },
         "rest", "is in the empty cavity of \"sleeve\""},
        {"a ring whose bore is over the bar", things_on_rims, [](Bundle& b) { b.certificate.rests[7].point.x = 64; },
         "rest", "\"ring\": lowered by 0.01 mm, it has only its own empty cavity"},
    });
    CHECK(first_rule(plate_at(126.000002, {63, 0, 95.995})) == "none"); // a nanometre of it is on the rim
}

TEST_CASE("a point of rest in empty air is refused, though the rim is touched elsewhere")
{
    refuse({
        {"in the mouth", things_on_rims, [](Bundle& b) { b.certificate.rests[4].point.y = 10; }, "rest", in_pot},
        {"in the middle of a bar across", things_on_rims, [](Bundle& b) { b.certificate.rests[2].point.x = 64; },
         "rest", in_pot},
        {"level with the mouth", things_on_rims,
         [](Bundle& b) {
             b.certificate.rests[4].point = {64, 10, 96};
         },
         "rest", in_pot},
        {"above the mouth", things_on_rims,
         [](Bundle& b) {
             b.certificate.rests[4].point = {64, 10, 96.000001};
         },
         "rest", "is not in \"pot\""},
        {"in a shut tin", things_on_rims,
         [](Bundle& b) {
             b.items[5].cavities[0].shape = Box{38, 38, 39.991};
             b.items[5].cavities[0].pose.center.z = 20.0005;
         },
         "rest", "is in the empty cavity of \"tin\""},
        {"on two surfaces", things_on_rims,
         [](Bundle& b) {
             b.certificate.rests[7].point = {93, 64, 106};
         },
         "rest", "only slide along \"bar\""},
    });
    CHECK(rule_with_point(2, {127, 64, 96}) == "none");        // on the edge of the mouth
    CHECK(rule_with_point(2, {126.999999, 64, 96}) == "rest"); // a nanometre further in
    CHECK(rule_with_point(2, {127, 64, 95.995}) == "none");    // on the wall's own surface
    CHECK(rule_with_point(4, {64, 0.000001, 96}) == "none");
    CHECK(rule_with_point(3, {178, 113.5, 96}) == "none");
    CHECK(rule_with_point(7, {93, 64, 105.995}) == "none"); // on the wall of the ring's own bore
}

TEST_CASE("a lid of no thickness is shut all the same")
{
    auto thin = things_on_rims();
    thin.items[5].cavities[0] = {Box{38, 38, 38}, {{248, 64, 21}, as_it_is}, Opening::closed};
    CHECK(first_rule(thin) == "rest");
    thin.certificate.rests[6].point.z = 40;
    CHECK(first_rule(thin) == "none");
}

TEST_CASE("steps that cannot be carried out are refused")
{
    refuse({
        {"one missing", yawed_boxes, [](Bundle& b) { b.steps.pop_back(); }, "step", "\"pump\": no step places it"},
        {"one twice", yawed_boxes, [](Bundle& b) { b.steps.push_back(b.steps.back()); }, "step", "a second time"},
        {"of no item", yawed_boxes, [](Bundle& b) { b.steps[0].item = 2; }, "step", "an item that is not there"},
        {"no direction", yawed_boxes,
         [](Bundle& b) {
             b.steps[0].direction = {0, 0, 0};
         },
         "step", "no direction"},
        {"from below", yawed_boxes,
         [](Bundle& b) {
             b.steps[0].direction = {0, 0, 1};
         },
         "step", "from below"},
        {"the upper one first", yawed_boxes, [](Bundle& b) { std::swap(b.steps[0], b.steps[1]); }, "step",
         "\"tool roll\": going into its place, it is not proved to pass \"pump\""},
        {"into a shut pot", cup_in_lidded_pot, [](Bundle& b) { std::swap(b.steps[0], b.steps[1]); }, "step",
         "\"cup\": it would go into \"pot\", which is already shut"},
        {"through the floor", cup_in_lidded_pot,
         [](Bundle& b) {
             b.steps[0].direction = {0, 0, 1};
         },
         "step", "\"cup\": it would go into \"pot\" through the floor"},
        {"aslant", cup_in_lidded_pot,
         [](Bundle& b) {
             b.steps[0].direction = {1, 0, -1000};
         },
         "step", "\"cup\": it would not go straight along the axis of \"pot\""},
        {"a lid from the wrong side", cup_in_lidded_pot,
         [](Bundle& b) {
             b.steps[1].direction = {0, 0, 1};
         },
         "step", "\"pot-lid\": going into its place, it is not proved to pass \"pot\""},
        {"into a lying pot from above", tin_in_lying_pot,
         [](Bundle& b) {
             b.steps[0].direction = {0, 0, -1};
         },
         "step", "\"tin\""},
        {"past what stands before the mouth", mouth_to_a_wall,
         [](Bundle& b) { std::rotate(b.steps.begin(), b.steps.begin() + 1, b.steps.end()); }, "step",
         "\"tin\": going into its place, it is not proved to pass \"bread\""},
        {"with what it holds through a neighbour", sponge_on_rod, [](Bundle& b) { std::swap(b.steps[3], b.steps[4]); },
         "step", "\"pot\": going into its place, \"rod\" in it is not proved to pass \"sponge\""},
    });
}

TEST_CASE("envelopes beyond the limits and bounds beyond the envelope are refused")
{
    refuse({
        {"too wide", yawed_boxes, [](Bundle& b) { b.rule.diameter = 60; }, "limit", "above the limit of 60 mm"},
        {"too high by a nanometre", yawed_boxes, [](Bundle& b) { b.rule.height = 34.999999; }, "limit", "height"},
        {"too long", touching_boxes, [](Bundle& b) { b.rule.length = 59; }, "limit", "length is 60 mm"},
        {"too broad", touching_boxes, [](Bundle& b) { b.rule.width = 39; }, "limit", "width"},
        {"a box too high", touching_boxes, [](Bundle& b) { b.rule.height = 19; }, "limit", "height"},
        {"no limit at all", touching_boxes, [](Bundle& b) { b.rule.height = std::nan(""); }, "limit", "no limit"},
        {"another shape", touching_boxes, [](Bundle& b) { b.rule.shape = BundleShape::cylinder; }, "limit", "is a box"},
        {"a round one for a box", yawed_boxes, [](Bundle& b) { b.rule.shape = BundleShape::box; }, "limit",
         "a cylinder"},
        {"bound above the volume", touching_boxes, [](Bundle& b) { b.lower_bound_ml = 48.0000001; }, "limit", "above"},
        {"bound below zero", touching_boxes, [](Bundle& b) { b.lower_bound_ml = -1; }, "limit", "not negative"},
        {"no bound", touching_boxes, [](Bundle& b) { b.lower_bound_ml = std::nan(""); }, "limit", "finite"},
        {"the smallest, it says", touching_boxes, [](Bundle& b) { b.status = Status::proved_best; }, "limit",
         "no bundle is smaller"},
        {"the smallest but for a millionth, it says", touching_boxes,
         [](Bundle& b) {
             b.status = Status::proved_best;
             b.lower_bound_ml = 48 * (1 - 1e-6);
         },
         "limit", "no bundle is smaller"},
        {"no bundle, it says", touching_boxes, [](Bundle& b) { b.status = Status::not_found; }, "limit", "no bundle"},
        {"cannot fit, it says", touching_boxes, [](Bundle& b) { b.status = Status::does_not_fit; }, "limit",
         "no bundle"},
    });
    auto exact = touching_boxes();
    exact.rule.length = 60;
    exact.rule.width = 40;
    exact.rule.height = 20;
    exact.lower_bound_ml = 48;
    exact.status = Status::proved_best;
    CHECK(first_rule(exact) == "none");
    exact.lower_bound_ml = 48 * (1 - 0.9e-7); // rounding to the grid
    CHECK(first_rule(exact) == "none");
}

TEST_CASE("objections come in the order of the rules, and no more than asked for")
{
    auto bundle = touching_boxes();
    center(bundle, 0).x -= 1; // out of the bundle
    center(bundle, 3).x -= 1; // into its neighbour
    bundle.steps.pop_back();
    bundle.rule.height = 10;
    const auto all = check(bundle, 100);
    REQUIRE(all.size() >= 4);
    CHECK(all[0].rule == "inside");
    CHECK(all[1].rule == "apart");
    CHECK(all[all.size() - 2].rule == "step");
    CHECK(all.back().rule == "limit");
    CHECK(check(bundle, 2).size() == 2);
    CHECK(check(bundle).size() == 1);
    CHECK_THROWS_AS(check(bundle, 0), ContractBroken);
}
