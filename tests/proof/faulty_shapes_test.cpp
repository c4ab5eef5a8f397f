// SPDX-License-Identifier: GPL-3.0-or-later
/// Faults of numbers, of who is in whom, and of where things lie.
#include <catch2/catch.hpp>
#include <cmath>
#include <limits>

#include "faults.hpp"
#include "proof_support.hpp"
#include "support/handmade_bundles.hpp"

using namespace tuckwright;
using namespace tuckwright::handmade;

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
        {"a foot as wide as the rim", cup_in_lidded_pot,
         [](Bundle& b) { std::get<Cylinder>(b.items[1].solids[0].shape).foot = 80; }, "number",
         "\"cup\": solid 1's foot is 80 mm; it must be less than the diameter"},
        {"a foot below nothing", cup_in_lidded_pot,
         [](Bundle& b) { std::get<Cylinder>(b.items[1].solids[0].shape).foot = -1; }, "number", "must not be negative"},
        {"a flat box", yawed_boxes, [](Bundle& b) { std::get<Box>(b.items[1].solids[0].shape).height = 0; }, "number",
         "solid 1's height is 0 mm; it must be positive"},
        {"a cavity without rotation", cup_in_lidded_pot,
         [](Bundle& b) {
             b.items[1].cavities[0].pose.turn = {0, 0, 0, 0};
         },
         "number", "cavity 1's rotation is all zero"},
        {"a cavity off the grid", cup_in_lidded_pot,
         [](Bundle& b) { b.items[0].cavities[0].pose.center.z += 0.4 * nanometre; }, "number", "cavity 1's centre z"},
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
        {"container full", cup_in_lidded_pot, [](Bundle& b) { b.items[0].full = true; }, "forest",
         "\"cup\" is in \"pot\", whose contents fill it"},
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
        {"a sleeve that tapers", sleeve_round_cup_in_pot,
         [](Bundle& b) { std::get<Cylinder>(b.items[1].cavities[0].shape).foot = 97; }, "cavity",
         "tapers, though it is open at both ends"},
        {"a knob in the air over the mouth", rod_out_of_cup,
         [](Bundle& b) {
             b.items[0].solids.push_back(box(10, 10, 10, {-30, 0, 120}));
         },
         "cavity", "solid 2"},
        {"a bar in the lower mouth of a sleeve", sleeve_round_cup_in_pot,
         [](Bundle& b) {
             b.items[1].solids.push_back(box(4, 4, 2, {-30, 0, 2}));
         },
         "cavity", "solid 2"},
        {"a brace from over the mouth outward", rod_out_of_cup,
         [](Bundle& b) {
             b.items[0].solids.push_back(box(100, 4, 4, {-50, 0, 125}, {3, 0, 1, 0}));
         },
         "cavity", "solid 2"},
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
