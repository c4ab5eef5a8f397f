// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "support/kit_text.hpp"

using namespace tuckwright;

namespace {

/// A stick under the lid of a pot that is neither wide nor high enough for it, unless it leans.
Bundle stick_of(int length)
{
    const std::string text = "kit: Stick\n"
                             "bundle: {shape: cylinder, height: 106}\n"
                             "items:\n"
                             "  - {id: pot, weight: 200, cylinder: {diameter: 120, height: 100}, inside: {wall: 1, base: 1}}\n"
                             "  - {id: lid, weight: 50, cylinder: {diameter: 121, height: 9}, closes: {item: pot, adds: 3, intrudes: 5}}\n"
                             "  - {id: stick, weight: 5, cylinder: {diameter: 4, height: " +
                             std::to_string(length) + "}}\n";
    return test::solved(test::kit_of(text), Effort::quick);
}

} // namespace

TEST_CASE("a stick that leans makes the bundle smaller, and what lies otherwise is refused", "[solve][leaning]")
{
    Bundle leaning = stick_of(140); // sqrt(117^2 + 94^2) = 150
    REQUIRE(has_bundle(leaning.status));
    const PlacedItem& stick = leaning.items.back();
    CHECK(stick.form == "leaning");
    REQUIRE(stick.in.has_value());
    CHECK(std::get<Cylinder>(leaning.envelope).diameter < 121.1);
    const Bundle beside = stick_of(160); // too long for the pot at any slant
    REQUIRE(has_bundle(beside.status));
    CHECK(volume_ml(beside.envelope) > 1.1 * volume_ml(leaning.envelope));

    Bundle upright = leaning; // it stands through the lid
    upright.items.back().solids.front().pose.turn = {1, 0, 0, 0};
    CHECK_FALSE(check(upright).empty());
    Bundle flatter = leaning; // a little flatter than it lies: through the wall
    Quaternion& turn = flatter.items.back().solids.front().pose.turn;
    turn = compose(turn, {1000, 0, 60, 0});
    CHECK_FALSE(check(flatter).empty());
}
