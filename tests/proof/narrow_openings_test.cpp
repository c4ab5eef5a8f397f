// SPDX-License-Identifier: GPL-3.0-or-later
/// Openings narrower than the cavity: what passes them, and the two moves by which it comes to its place.
#include <algorithm>
#include <catch2/catch.hpp>

#include "faults.hpp"
#include "proof/apart.hpp"
#include "proof_support.hpp"
#include "support/handmade_bundles.hpp"

using namespace tuckwright;
using namespace tuckwright::handmade;

namespace {

PlacedCavity& cavity(Bundle& bundle) { return bundle.items[0].cavities[0]; }

/// A lump of sugar on the crock, just over its opening.
Bundle sugar_on_the_shoulder()
{
    auto bundle = tins_under_a_shoulder();
    bundle.items.push_back(item("sugar", box(10, 10, 10, {50, 0, 95})));
    bundle.envelope = Cylinder{120, 100};
    step(bundle, 4);
    lies_on(bundle, 4, 0, {50, 0, 89.995});
    return bundle;
}

} // namespace

TEST_CASE("an opening through which something does not pass is refused")
{
    refuse({
        {"too narrow for the wide tin", tins_under_a_shoulder,
         [](Bundle& b) {
             cavity(b).neck = Cylinder{78, 3};
             b.steps[0].via = Vec3{17.999999, 0, 0};
         },
         "step", "\"wide tin\": it does not pass the opening of \"crock\": it is 0.500001 mm too far out"},
        {"not moved far enough", tins_under_a_shoulder,
         [](Bundle& b) {
             b.steps[1].via = Vec3{-17.499999, 0, 0};
         },
         "step", "\"slim tin\": it does not pass the opening of \"crock\": it is 0.000001 mm too far out"},
        {"moved the other way", tins_under_a_shoulder,
         [](Bundle& b) {
             b.steps[0].via = Vec3{-18, 0, 0};
         },
         "step", "\"wide tin\": it does not pass the opening of \"crock\""},
        {"not moved at all", tins_under_a_shoulder, [](Bundle& b) { b.steps[0].via = std::nullopt; }, "step",
         "\"wide tin\": it does not pass the opening of \"crock\""},
        {"a brick as long as the opening, less its clearance", brick_in_a_chest,
         [](Bundle& b) {
             b.items[1].solids[0] = box(59.000002, 40, 30, {40, 22.5, 17});
             b.steps[0].via = Vec3{10, 17.5, 0};
         },
         "step", "\"brick\": it does not pass the opening of \"chest\""},
        {"a brick turned in its place", brick_in_a_chest,
         [](Bundle& b) {
             b.items[1].solids[0] = box(55, 40, 30, {30, 30, 17}, {1, 0, 0, 1});
             b.steps[0].via = Vec3{20, 10, 0};
         },
         "step", "\"brick\": it does not pass the opening of \"chest\": it is 3 mm too far out"},
    });
    auto tight = tins_under_a_shoulder();
    tight.steps[1].via =
        Vec3{-17.5, 0, 0}; // its edge is 39.5 mm from the axis: the opening's radius less the clearance
    CHECK(objections_of(tight) == "");
}

TEST_CASE("moves under a narrow opening that meet something are refused")
{
    refuse({
        {"down upon the peg", tins_under_a_shoulder, [](Bundle& b) { std::swap(b.steps[0], b.steps[2]); }, "step",
         "\"slim tin\": going into its place, it is not proved to pass \"peg\""},
        {"aside past a thin peg that both ends of the move are clear of", tins_under_a_shoulder,
         [](Bundle& b) {
             b.items[3].solids[0] = cylinder(4, 79, {-9, 24, 46.5});
             b.certificate.planes = {{1, 0, 3, 0, {23, 24, 0}}, {1, 0, 3, 0, {-23, 24, 0}}, {2, 0, 3, 0, {-28, 24, 0}}};
             b.steps[0].via = Vec3{46, 0, 0};
             std::rotate(b.steps.begin(), b.steps.begin() + 2, b.steps.begin() + 3);
         },
         "step", "\"wide tin\": going into its place, it is not proved to pass \"peg\""},
        {"before it is moved aside, in the floor", tins_under_a_shoulder,
         [](Bundle& b) {
             b.steps[0].via = Vec3{18, 0, -nanometre};
         },
         "step", "\"wide tin\": before it is moved aside, it is not inside \"crock\""},
        {"before it is moved aside, in the shoulder", tins_under_a_shoulder,
         [](Bundle& b) {
             b.steps[0].via = Vec3{18, 0, 40.000001};
         },
         "step", "\"wide tin\": before it is moved aside, it is not inside \"crock\""},
        {"aside where nothing is narrow", tins_under_a_shoulder,
         [](Bundle& b) {
             b.steps[3].via = Vec3{0, 0, 0};
         },
         "step", "\"crock\": it would be moved aside, though it goes through no narrow opening"},
        {"in across the axis", tins_under_a_shoulder,
         [](Bundle& b) {
             b.steps[0].direction = {1, 0, -1};
         },
         "step", "\"wide tin\": it would not go straight along the axis of \"crock\""},
        {"off the grid", tins_under_a_shoulder,
         [](Bundle& b) {
             b.steps[0].via = Vec3{18.0000005, 0, 0};
         },
         "number", "step 1: the way aside's x"},
        {"through what the lid has shut", brick_in_a_chest, [](Bundle& b) { std::swap(b.steps[0], b.steps[1]); },
         "step", "\"brick\": it would go into \"chest\", which is already shut"},
    });
}

TEST_CASE("narrow openings that their items cannot have are refused")
{
    refuse({
        {"nothing stands out", tins_under_a_shoulder,
         [](Bundle& b) {
             b.items[3].solids[0] = cylinder(20, 80.000002, {4, 0, 47.000001});
         },
         "inside", "\"peg\" is not inside \"crock\": it stands out 0.000002 mm through the top"},
        {"a neck that ends below the rim", tins_under_a_shoulder,
         [](Bundle& b) {
             cavity(b).neck = Cylinder{80, 2};
         },
         "cavity", "does not reach the top face of its first solid; it ends 1 mm below"},
        {"a neck above the rim", tins_under_a_shoulder,
         [](Bundle& b) {
             cavity(b).neck = Cylinder{80, 4};
         },
         "cavity", "the narrow opening of a cavity of \"crock\" stands out 1 mm through the top"},
        {"a neck wider than the crock", tins_under_a_shoulder,
         [](Bundle& b) {
             cavity(b).neck = Cylinder{121, 3};
         },
         "cavity", "the narrow opening of a cavity of \"crock\" stands out 0.5 mm through the side wall"},
        {"a neck in a sleeve", sleeve_round_cup_in_pot,
         [](Bundle& b) {
             b.items[1].cavities[0].neck = Cylinder{80, 0};
         },
         "cavity", "is open at both ends, so it has no narrow opening"},
        {"a neck of no width", tins_under_a_shoulder,
         [](Bundle& b) {
             cavity(b).neck = Cylinder{0, 3};
         },
         "number", "\"crock\": cavity 1's narrow opening's diameter is 0 mm"},
        {"a lid that does not cover the opening", brick_in_a_chest,
         [](Bundle& b) {
             b.items[2].solids[0].shape = Box{70, 49, 4};
         },
         "lid", "leaves 0.5 mm of the cavity of \"chest\" uncovered"},
    });
}

TEST_CASE("nothing rests on the air of a narrow opening")
{
    refuse({
        {"its point over the opening", sugar_on_the_shoulder,
         [](Bundle& b) {
             center(b, 4).x = 43;
             b.certificate.rests.back().point = {39.9, 0, 89.995};
         },
         "rest", "the point where it rests on \"crock\" is in the empty cavity of \"crock\""},
        {"all of it over the opening", sugar_on_the_shoulder,
         [](Bundle& b) {
             center(b, 4).x = 30;
             b.certificate.rests.back().point = {30, 0, 90};
         },
         "rest", "the point where it rests on \"crock\" is in the empty cavity of \"crock\""},
        {"over a thin rim's opening", sugar_on_the_shoulder,
         [](Bundle& b) {
             cavity(b) = {Cylinder{116, 83}, {{0, 0, 48.5}, as_it_is}, Opening::top, Cylinder{80, 0}};
             center(b, 4).x = 30;
             b.certificate.rests.back().point = {30, 0, 90};
         },
         "rest", "the point where it rests on \"crock\" is in the empty cavity of \"crock\""},
    });
}

TEST_CASE("a plane parts a straight move from what stands beside it")
{
    using namespace tuckwright::proof;
    const Piece mover = piece_of(Box{10, 10, 10}, {{0, 0, 0}, as_it_is});
    const Piece obstacle = piece_of(Box{10, 10, 10}, {{15, 0, 0}, as_it_is});
    const auto from = [](const Vec3& mm) { return nanometres(mm); };
    CHECK(part_moving(mover, from({-50, 0, 0}), obstacle, {}).proved);
    CHECK(part_moving(mover, from({5, 0, 0}), obstacle, {}).proved);
    CHECK_FALSE(part_moving(mover, from({5.000001, 0, 0}), obstacle, {}).proved);
    CHECK_FALSE(part_moving(mover, from({30, 0, 0}), obstacle, {}).proved); // through it, though both ends are apart
    const Vector aslant = from({10, 24, 0}); // past the obstacle's corner, where no axis will do
    CHECK_FALSE(part_moving(mover, aslant, obstacle, {}).proved);
    CHECK_FALSE(part_moving(mover, aslant, obstacle, {{-24, 10, 0}}).proved);
    CHECK(part_moving(mover, aslant, obstacle, {{24, -10, 0}}).proved);
}
