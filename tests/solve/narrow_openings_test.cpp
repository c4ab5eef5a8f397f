// SPDX-License-Identifier: GPL-3.0-or-later
/// Openings narrower than the cavity, from the order to the proof.
#include <catch2/catch.hpp>
#include <cmath>

#include "support/handmade_bundles.hpp"
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
            in(item("tin", cylinder(35, 40, {snap(out * std::cos(angle)), snap(out * std::sin(angle)), 27})), 0));
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
