// SPDX-License-Identifier: GPL-3.0-or-later
// The longest thin rod in a cylinder lies in the plane through the axis, from edge to edge: sqrt(d^2 + h^2); in a box
// along the space diagonal: sqrt(l^2 + w^2 + h^2). Source: Euclid, Elements I.47, once and twice; the thickness takes a
// little off, less than 0.1 % for rods of 0.1 mm.
#include <array>
#include <catch2/catch.hpp>
#include <cmath>
#include <fmt/format.h>

#include "support/kit_text.hpp"

using namespace tuckwright;

namespace {

/// A rod of 0.1 mm, nearly as long as can be within limits: leaning. A hair longer than can be: refused with a proof.
void check_longest(const std::string& limits, double longest)
{
    INFO(limits);
    const auto packed = [&](double length) {
        return test::solved(test::KitText(limits).item("rod", fmt::format("cylinder: {{diameter: 0.1, height: {:.6f}}}", length)),
                            Effort::quick);
    };
    const Bundle bundle = packed(longest * 0.999);
    REQUIRE(has_bundle(bundle.status));
    CHECK(bundle.items.front().form == "leaning");
    CHECK(packed(longest * 1.0001).status == Status::does_not_fit);
}

} // namespace

TEST_CASE("the longest rod in a cylinder is found to 0.1 %, and a longer one refused", "[published]")
{
    for (const auto& [d, h] : {std::pair{80.0, 100.0}, {120.0, 60.0}, {50.0, 140.0}}) {
        check_longest(test::round_bundle(d, h), std::hypot(d, h));
    }
}

TEST_CASE("the longest rod in a box is found to 0.1 %, and a longer one refused", "[published]")
{
    for (const auto& [l, w, h] : {std::array{80.0, 60.0, 100.0}, {150.0, 40.0, 70.0}}) {
        check_longest(test::box_bundle(l, w, h), std::sqrt(l * l + w * w + h * h));
    }
}
