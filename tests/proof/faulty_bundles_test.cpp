// SPDX-License-Identifier: GPL-3.0-or-later
/// For every rule, bundles with one fault: the check must refuse them, with the right rule and in words.
#include <algorithm>
#include <catch2/catch.hpp>
#include <limits>

#include "proof_support.hpp"
#include "support/handmade_bundles.hpp"
#include "tuckwright/contract.hpp"

using namespace tuckwright;
using namespace tuckwright::handmade;

namespace
{

constexpr double nanometre = 1e-6;

/// A sound bundle, what is done to it, the rule that it then breaks, and a part of what is said.
struct Fault {
    const char* name;
    Bundle (*make)();
    void (*spoil)(Bundle&);
    const char* rule;
    const char* words;
};

void refuse(const std::vector<Fault>& faults)
{
    for (const auto& fault : faults) {
        Bundle bundle = fault.make();
        REQUIRE(first_rule(bundle) == "none");
        fault.spoil(bundle);
        INFO(fault.name << objections_of(bundle));
        CHECK(first_rule(bundle) == fault.rule);
        CHECK(said(bundle, fault.rule).find(fault.words) != std::string::npos);
    }
}

Vec3& center(Bundle& bundle, std::size_t item) { return bundle.items[item].solids[0].pose.center; }

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

TEST_CASE("numbers that cannot be proved with are refused")
{
    refuse({
        {"not finite", cup_in_lidded_pot, [](Bundle& b) { center(b, 1).x = std::numeric_limits<double>::quiet_NaN(); },
         "number", "\"cup\": solid 1's centre x is not a finite number"},
        {"infinite", cup_in_lidded_pot, [](Bundle& b) { b.clearance = std::numeric_limits<double>::infinity(); },
         "number", "the clearance is not a finite number"},
        {"off the grid", cup_in_lidded_pot, [](Bundle& b) { center(b, 1).y = 0.4 * nanometre; }, "number",
         "not a whole number of nanometres"},
        {"a hair off the grid", cup_in_lidded_pot, [](Bundle& b) { center(b, 1).y = 2e-9; }, "number", "nanometres"},
        {"beyond range", touching_boxes, [](Bundle& b) { center(b, 7).z = 20000; }, "number", "beyond 10000 mm"},
        {"nothing high", cup_in_lidded_pot,
         [](Bundle& b) { std::get<Cylinder>(b.items[2].solids[0].shape).height = 0; }, "number", "must be positive"},
        {"less than nothing wide", yawed_boxes,
         [](Bundle& b) { std::get<Box>(b.items[0].solids[0].shape).width = -30; }, "number",
         "solid 1's width is -30 mm"},
        {"cavity of no width", cup_in_lidded_pot,
         [](Bundle& b) { std::get<Cylinder>(b.items[0].cavities[0].shape).diameter = 0; }, "number",
         "cavity 1's diameter"},
        {"no envelope", yawed_boxes,
         [](Bundle& b) {
             b.envelope = Cylinder{0, 35};
         },
         "number", "envelope's diameter"},
        {"clearance below zero", yawed_boxes, [](Bundle& b) { b.clearance = -0.5; }, "number", "must not be negative"},
        {"no rotation", cup_in_lidded_pot,
         [](Bundle& b) {
             b.items[1].solids[0].pose.turn = {0, 0, 0, 0};
         },
         "number", "rotation is all zero"},
        {"no solid", cup_in_lidded_pot, [](Bundle& b) { b.items[2].solids.clear(); }, "number",
         "\"pot-lid\" has no solid"},
        {"weight", cup_in_lidded_pot, [](Bundle& b) { b.items[2].weight_g = -1; }, "number", "weight is -1 g"},
        {"contents", cup_in_lidded_pot, [](Bundle& b) { b.items[2].contents_g = std::nan(""); }, "number", "contents"},
        {"plane of nothing", tangent_cylinders,
         [](Bundle& b) {
             b.certificate.planes[0].normal = {0, 0, 0};
         },
         "number", "plane 1 of the certificate has no normal"},
        {"plane of no item", tangent_cylinders, [](Bundle& b) { b.certificate.planes[1].second = 3; }, "number",
         "plane 2 of the certificate is for a solid that is not there"},
        {"plane of no solid", tangent_cylinders, [](Bundle& b) { b.certificate.planes[1].first_solid = 1; }, "number",
         "plane 2"},
        {"rest of no item", yawed_boxes, [](Bundle& b) { b.certificate.rests[1].item = 2; }, "number", "rest 2"},
        {"rest on no item", yawed_boxes, [](Bundle& b) { b.certificate.rests[1].on = 2; }, "number", "rest 2"},
        {"rest off the grid", yawed_boxes, [](Bundle& b) { b.certificate.rests[1].point.x = 1e-7; }, "number",
         "point's x"},
    });
}

TEST_CASE("a double next to a grid point counts as the grid point")
{
    auto bundle = touching_boxes();
    center(bundle, 7).z = std::nextafter(center(bundle, 7).z, 100);
    center(bundle, 6).x = std::nextafter(center(bundle, 6).x, -100);
    INFO(objections_of(bundle));
    CHECK(first_rule(bundle) == "none");
}

TEST_CASE("forests with items that are not there, or within themselves, are refused")
{
    refuse({
        {"nothing", yawed_boxes, [](Bundle& b) { b.items.clear(); }, "forest", "no items"},
        {"container not there", cup_in_lidded_pot,
         [](Bundle& b) {
             b.items[1].in = Lodging{7, 0};
         },
         "forest", "\"cup\" is in an item that is not there"},
        {"cavity not there", cup_in_lidded_pot,
         [](Bundle& b) {
             b.items[1].in = Lodging{0, 1};
         },
         "forest", "cavity 1 of \"pot\""},
        {"in itself", cup_in_lidded_pot,
         [](Bundle& b) {
             b.items[1].in = Lodging{1, 0};
         },
         "forest", "in itself"},
        {"in what it holds", cup_in_lidded_pot,
         [](Bundle& b) {
             b.items[0].in = Lodging{1, 0};
         },
         "forest", "\"pot\" is within itself"},
        {"vessel not there", cup_in_lidded_pot, [](Bundle& b) { b.items[2].closes = 3; }, "forest",
         "\"pot-lid\" is shut on an item that is not there"},
        {"lid of itself", cup_in_lidded_pot, [](Bundle& b) { b.items[2].closes = 2; }, "forest", "hangs on itself"},
        {"lid and vessel in a ring", cup_in_lidded_pot, [](Bundle& b) { b.items[0].closes = 2; }, "forest",
         "hangs on itself"},
        {"twice the same copy", tangent_cylinders, [](Bundle& b) { b.items[2].copy = 2; }, "forest", "there twice"},
        {"copy nought", tangent_cylinders, [](Bundle& b) { b.items[0].copy = 0; }, "forest", "copies count from 1"},
    });
}

TEST_CASE("cavities that are not where they are said to be are refused")
{
    refuse({
        {"through the side", sleeve_round_cup_in_pot,
         [](Bundle& b) { b.items[0].cavities[0].pose.center.x = 1 + nanometre; }, "cavity", "side wall"},
        {"through the bottom", cup_in_lidded_pot, [](Bundle& b) { b.items[0].cavities[0].pose.center.z = 43; },
         "cavity", "0.5 mm through its bottom"},
        {"through the top", rod_out_of_cup, [](Bundle& b) { b.items[0].cavities[0].pose.center.z += 0.25; }, "cavity",
         "a cavity of \"cup\" stands out 0.25 mm through its top"},
        {"mouth below the rim", rod_out_of_cup, [](Bundle& b) { b.items[0].cavities[0].pose.center.z -= nanometre; },
         "cavity", "it ends 0.000001 mm below"},
        {"mouth at the wrong end", rod_out_of_cup, [](Bundle& b) { b.items[0].cavities[0].pose.turn = upside_down; },
         "cavity", "not the same way up"},
        {"sleeve with a bottom", sleeve_round_cup_in_pot,
         [](Bundle& b) {
             std::get<Cylinder>(b.items[1].cavities[0].shape).height = 60;
             b.items[1].cavities[0].pose.center.z = 43;
         },
         "cavity", "does not reach the bottom"},
        {"a bail across the mouth", rod_out_of_cup,
         [](Bundle& b) {
             b.items[0].solids.push_back(box(90, 4, 4, {-10, 0, 100}));
         },
         "cavity", "solid 2"},
    });
}

TEST_CASE("what stands out of a cavity or of the bundle is refused")
{
    refuse({
        {"through the clearance", sleeve_round_cup_in_pot, [](Bundle& b) { b.clearance = 0.500001; }, "inside",
         "\"cup\" is not inside \"windscreen\""},
        {"through the side wall", sleeve_round_cup_in_pot, [](Bundle& b) { center(b, 2).y = 0.3; }, "inside",
         "\"cup\" is not inside \"windscreen\": it stands out 0.3 mm through the side wall"},
        {"through the floor", rod_out_of_cup, [](Bundle& b) { center(b, 1).z -= nanometre; }, "inside",
         "\"rod\" is not inside \"cup\": it stands out 0.000001 mm through the floor"},
        {"through the shut lid", cup_in_lidded_pot,
         [](Bundle& b) {
             std::get<Cylinder>(b.items[1].solids[0].shape).height = 87.002;
             center(b, 1).z = 46.501;
             b.items[1].cavities.clear();
         },
         "inside", "0.002 mm through the top"},
        {"above the rim", rod_out_of_cup,
         [](Bundle& b) {
             center(b, 1).z = 170;
             b.envelope = Cylinder{100, 300};
         },
         "inside", "all of it lies beyond the rim"},
        {"below the sleeve", sleeve_round_cup_in_pot,
         [](Bundle& b) {
             std::get<Cylinder>(b.items[2].solids[0].shape) = {97, 6};
             center(b, 2).z = 6;
             center(b, 1).z = b.items[1].cavities[0].pose.center.z = 45;
         },
         "inside", "beyond the rim"},
        {"out of the envelope's top", rod_out_of_cup,
         [](Bundle& b) {
             b.envelope = Cylinder{100, 161.999999};
         },
         "inside", "\"rod\" is not inside the bundle: it stands out 0.000001 mm through the top"},
        {"out of the envelope's side", yawed_boxes,
         [](Bundle& b) { std::get<Cylinder>(b.envelope).diameter -= 2 * nanometre; }, "inside", "side wall"},
        {"out of a box", tin_in_lying_pot,
         [](Bundle& b) {
             b.envelope = Box{96, 127.999999, 128};
         },
         "inside", "0.000001 mm through the side wall"},
        {"below the ground", yawed_boxes, [](Bundle& b) { center(b, 0).z -= nanometre; }, "inside", "floor"},
        {"leaning too far", rod_leaning_in_cup,
         [](Bundle& b) {
             b.items[1].solids[0].pose.turn = {4, 1, 0, 0};
         },
         "inside", "side wall"},
    });
}

TEST_CASE("what stands out through two levels is still held against the outer containers and neighbours")
{
    refuse({
        {"out of the envelope", rod_out_of_two_lying_levels,
         [](Bundle& b) {
             b.envelope = Box{122.9, 100, 100};
         },
         "inside", "\"rod\" is not inside the bundle: it stands out 0.1 mm"},
        {"through a block beside the pot", rod_out_of_two_lying_levels,
         [](Bundle& b) {
             center(b, 3) = {109.5, 50, 4};
         },
         "apart", "\"rod\" and \"block\" are not proved apart"},
        {"through the prism of the pot, though inside that of the mug", rod_out_of_two_lying_levels,
         [](Bundle& b) {
             // The mug alone stands out of the pot: sunk by a millimetre, only the pot's wall is in the way.
             for (std::size_t i : {1, 2}) {
                 center(b, i).z -= 1;
             }
             b.items[1].cavities[0].pose.center.z -= 1;
         },
         "inside", "\"mug\" is not inside \"pot\": it stands out 1 mm through the side wall"},
    });
}

TEST_CASE("items that overlap are refused")
{
    refuse({
        {"by a nanometre", touching_boxes, [](Bundle& b) { center(b, 0).x += nanometre; }, "apart",
         "\"biscuits 1\" and \"biscuits 2\" are not proved apart: the best plane misses by 0.000001 mm"},
        {"one in another", touching_boxes, [](Bundle& b) { center(b, 7) = center(b, 6); }, "apart", "biscuits 7"},
        {"no plane given", tangent_cylinders, [](Bundle& b) { b.certificate.planes.clear(); }, "apart", "\"tin 1\""},
        {"the plane reversed", tangent_cylinders,
         [](Bundle& b) {
             b.certificate.planes[0].normal = {-1, -2, 0};
         },
         "apart", "\"tin 2\""},
        {"a poor plane", tangent_cylinders,
         [](Bundle& b) {
             b.certificate.planes[0].normal = {10, 21, 0};
         },
         "apart", "\"tin 2\""},
        {"a lid through what the pot holds", cup_in_lidded_pot,
         [](Bundle& b) {
             b.items[0].cavities[0] = {Cylinder{126, 93}, {{0, 0, 49.5}, as_it_is}, Opening::top};
             std::get<Cylinder>(b.items[1].solids[0].shape).height = 93.5;
             center(b, 1).z = 49.75;
             b.items[1].cavities.clear();
         },
         "apart", "\"cup\" and \"pot-lid\""},
        {"through a skirt", cup_in_pot_with_skirted_lid,
         [](Bundle& b) {
             b.envelope = Cylinder{200, 99};
             b.items.push_back(item("peg", cylinder(10, 90, {69.2, 0, 45})));
             step(b, 3);
             stands(b, 3);
         },
         "apart", "\"pot\" and \"peg\""},
    });
}

TEST_CASE("planes may be given in either order, and each for its own pair only")
{
    auto bundle = tangent_cylinders();
    bundle.certificate.planes[0] = {1, 0, 0, 0, {-1, -2, 0}};
    CHECK(first_rule(bundle) == "none");
    bundle.certificate.planes[0] = {0, 0, 2, 0, {1, 2, 0}};
    CHECK(first_rule(bundle) == "apart");
}

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
