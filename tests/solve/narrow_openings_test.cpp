// SPDX-License-Identifier: GPL-3.0-or-later
/// Openings narrower than the cavity, from the order to the proof.
#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

#include "support/handmade_bundles.hpp"
#include "support/kit_text.hpp"
#include "tuckwright/proof.hpp"
#include "tuckwright/stacking.hpp"

using namespace tuckwright;
using namespace tuckwright::handmade;

namespace {

/// The first objection to the bundle with the steps and planes that stacking finds for it.
std::string objection(Bundle bundle)
{
    StackingOrder order = stacking_order(bundle);
    if (!order.cycle.empty()) {
        return "no order";
    }
    bundle.steps = std::move(order.steps);
    bundle.certificate.planes = pair_planes(bundle);
    for (const SeparatingPlane& plane : step_planes(bundle, bundle.steps)) {
        bundle.certificate.planes.push_back(plane);
    }
    const auto found = check(bundle);
    return found.empty() ? "" : found.front().rule + ": " + found.front().what;
}

/// Seven tins round a crock, the middle one last.
Bundle ring_of_tins()
{
    auto crock =
        narrowed(hollow(item("crock", cylinder(120, 90, {0, 0, 45})), cylinder(116, 80, {0, 0, 47}), Opening::top),
                 Cylinder{80, 3});
    std::vector<PlacedItem> items{crock};
    for (int k = 0; k < 7; ++k) {
        const double angle = 1.0471975511965976 * k, out = k < 6 ? 39.9 : 0;
        items.push_back(
            in(item("tin", cylinder(34, 40, {snap(out * std::cos(angle)), snap(out * std::sin(angle)), 27})), 0));
        items.back().copy = k + 1;
    }
    auto result = bundle("Seven tins", Cylinder{120, 90}, items);
    for (std::size_t i = 0; i < 8; ++i) {
        stands(result, i);
    }
    return result;
}

} // namespace

TEST_CASE("steps through narrow openings are found and proved")
{
    CHECK(objection(tins_under_a_shoulder()) == "");
    CHECK(objection(brick_in_a_chest()) == "");
    CHECK(objection(ring_of_tins()) == "");
    const auto order = stacking_order(ring_of_tins());
    REQUIRE(order.steps.size() == 8);
    CHECK(order.steps[6].item == 7); // the one in the middle leaves no room to let another down
    CHECK_FALSE(order.steps[6].via.has_value());
}

TEST_CASE("a brick that does not pass its opening as it is turned has no way in")
{
    Bundle chest = brick_in_a_chest();
    chest.items[1].solids[0] = box(55, 40, 30, {30, 30, 17}, {1, 0, 0, 1});
    CHECK(objection(chest).starts_with("step: "));
}

namespace {

/// A crock with these in it, if they go in; 116 mm across inside and 80 mm high.
Bundle crock_with(const std::string& opening, const std::vector<std::string>& things, const std::string& more = "")
{
    test::KitText kit(test::round_bundle(), 0.5);
    kit.item("crock", test::cylinder(120, 90) + ", inside: {" + test::cylinder(116, 80) + opening + "}" + more);
    for (std::size_t k = 0; k < things.size(); ++k) {
        kit.item("thing-" + std::to_string(k), things[k]);
    }
    return test::solved(kit, Effort::quick);
}

int in_crock(const Bundle& bundle)
{
    return static_cast<int>(
        std::count_if(bundle.items.begin(), bundle.items.end(), [](const PlacedItem& item) { return item.in; }));
}

} // namespace

TEST_CASE("a narrow opening changes the best bundle")
{
    const std::vector<std::string> tin{test::cylinder(90, 60)};
    const Bundle open = crock_with("", tin), wide = crock_with(", opening: {diameter: 91}", tin),
                 narrow = crock_with(", opening: {diameter: 90.9}", tin);
    CHECK(open.status == Status::proved_best);
    CHECK(wide.status == Status::proved_best);
    CHECK(volume_ml(open.envelope) == volume_ml(wide.envelope));
    CHECK(narrow.status == Status::proved_best); // one upon the other
    CHECK(volume_ml(narrow.envelope) > 1.6 * volume_ml(wide.envelope));
    CHECK(in_crock(narrow) == 0);
}

TEST_CASE("two tins come to the walls of a crock through an opening between them")
{
    // The play under the opening and the room beside the wider one leave 102 mm between their axes' farthest places.
    const Bundle both =
        crock_with(", opening: {diameter: 80, depth: 3}", {test::cylinder(50, 70), test::cylinder(40, 70)});
    CHECK(both.status == Status::proved_best);
    REQUIRE(in_crock(both) == 2);
    CHECK(std::count_if(both.steps.begin(), both.steps.end(), [](const Step& step) { return step.via; }) >= 1);
    // Each of these passes the opening, and both have room side by side, but there is no way in for the second.
    const Bundle one =
        crock_with(", opening: {diameter: 66, depth: 3}", {test::cylinder(56, 70), test::cylinder(56, 70)});
    REQUIRE(has_bundle(one.status));
    CHECK(in_crock(one) == 1);
    CHECK(in_crock(crock_with("", {test::cylinder(56, 70), test::cylinder(56, 70)})) == 2);
}

TEST_CASE("a plank passes a rectangular opening along it")
{
    const Bundle chest = crock_with(", opening: {length: 90, width: 14}", {test::box(10, 86, 78)});
    CHECK(chest.status == Status::proved_best);
    CHECK(in_crock(chest) == 1);
    CHECK(in_crock(crock_with(", opening: {length: 84, width: 14}", {test::box(10, 86, 81)})) == 0);
}

TEST_CASE("what must lie in a crock whose opening it passes in no turn is named")
{
    const Bundle bundle = crock_with(", opening: {diameter: 60}", {test::cylinder(70, 70) + ", goes-in: crock"});
    CHECK(bundle.status == Status::does_not_fit);
    CHECK(bundle.explanation.find("thing-0 must lie in the crock") != std::string::npos);
}
