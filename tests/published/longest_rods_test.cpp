// SPDX-License-Identifier: GPL-3.0-or-later
// The longest thin rod in a cylinder lies in the plane through the axis, from edge to edge: sqrt(d^2 + h^2); in a box
// along the space diagonal: sqrt(l^2 + w^2 + h^2). Source: Euclid, Elements I.47, once and twice; the thickness takes a
// little off, less than 0.1 % for rods of 0.1 mm.
#include <catch2/catch.hpp>
#include <cmath>
#include <fmt/format.h>

#include "support/kit_text.hpp"
#include "tuckwright/kit_reader.hpp"
#include "tuckwright/proof.hpp"
#include "tuckwright/solve.hpp"

using namespace tuckwright;

namespace {

Bundle packed(const std::string& bundle, double length)
{
    const auto kit = read_kit_text(
        fmt::format("kit: Rod\nbundle: {}\nitems:\n  - {{id: rod, weight: 5, cylinder: {{diameter: 0.1, height: {:.6f}}}}}\n",
                    bundle, length),
        "rod.yaml");
    REQUIRE(kit);
    SolveOptions options;
    options.effort = Effort::quick;
    return solve(*kit, options);
}

} // namespace

TEST_CASE("the longest rod in a cylinder is found to 0.1 %, and a longer one refused", "[published]")
{
    for (const auto& [d, h] : {std::pair{80.0, 100.0}, {120.0, 60.0}, {50.0, 140.0}}) {
        const std::string limits = fmt::format("{{shape: cylinder, diameter: {}, height: {}}}", d, h);
        const double longest = std::hypot(d, h);
        const Bundle bundle = packed(limits, longest * 0.999);
        INFO(limits);
        REQUIRE(has_bundle(bundle.status));
        CHECK(check(bundle).empty());
        CHECK(bundle.items.front().form == "leaning");
        CHECK(packed(limits, longest * 1.0001).status == Status::does_not_fit);
    }
}

TEST_CASE("the longest rod in a box is found to 0.1 %, and a longer one refused", "[published]")
{
    for (const auto& [l, w, h] : {std::array{80.0, 60.0, 100.0}, {150.0, 40.0, 70.0}}) {
        const std::string limits = fmt::format("{{shape: box, length: {}, width: {}, height: {}}}", l, w, h);
        const double longest = std::sqrt(l * l + w * w + h * h);
        const Bundle bundle = packed(limits, longest * 0.999);
        INFO(limits);
        REQUIRE(has_bundle(bundle.status));
        CHECK(check(bundle).empty());
        CHECK(bundle.items.front().form == "leaning");
        CHECK(packed(limits, longest * 1.0001).status == Status::does_not_fit);
    }
}
