// SPDX-License-Identifier: GPL-3.0-or-later
/// Two bodies under a narrow opening, and a layout that knows of it.
#include "packing/neck.hpp"

#include <catch2/catch.hpp>
#include <numbers>

#include "packing/scenes.hpp"

using namespace tuckwright;
using namespace tuckwright::packing;

namespace {

/// 100 mm across and 80 high inside.
Hollow crock(const Shape& neck)
{
    Hollow hollow{Cylinder{100, 80}, -40, false, false, 0};
    hollow.neck = neck;
    return hollow;
}

std::vector<Piece> tin(double diameter, double height, double x, double y, double z = 0)
{
    return {piece_at(body(Cylinder{diameter, height}), 0, {0, Form::standing, x, y, z + height / 2}, 0)};
}

} // namespace

TEST_CASE("two tins jam where neither can be let down beside the other")
{
    const Hollow wide = crock(Cylinder{94, 0}), narrow = crock(Cylinder{60, 0});
    const auto left = tin(48, 40, -26, 0), right = tin(48, 40, 26, 0);
    CHECK(jam(wide, left, right) == 0);   // 23 mm of play: it comes down at 23, 49 from the other
    CHECK(jam(narrow, left, right) > 10); // 6 mm of play: at 6, 32 from the other
    CHECK(jam(narrow, right, left) > 10);
    CHECK(jam(narrow, tin(30, 40, -34, 0), tin(30, 40, 34, 0)) == 0); // 15 mm of play: at 15, 49 from the other
}

TEST_CASE("what lies lower goes in first")
{
    const Hollow narrow = crock(Cylinder{60, 0});
    const auto low = tin(58, 30, -20, 0), high = tin(58, 30, 20, 0, 30);
    CHECK(jam(narrow, low, high) == 0);
    CHECK(jam(narrow, high, low) == 0);
}

TEST_CASE("a tin cannot be pushed through another to the wall behind that")
{
    const Hollow narrow = crock(Cylinder{40, 0});
    const auto behind = tin(30, 40, -35, 0), before = tin(30, 40, -4, 0);
    CHECK(jam(narrow, behind, before) == 0); // the one behind first, then the other straight down
    const auto post = tin(8, 80, -14, 0);    // it stands in the way of both, but can come last itself
    CHECK(jam(narrow, behind, post) == 0);
}

TEST_CASE("a layout counts what a rectangular opening does not let through as turned, and what jams")
{
    Scene scene = scene_of({cup(102, 81), body(Box{60, 20, 30}), body(Cylinder{50, 40}), body(Cylinder{50, 40})});
    scene.bodies[0].hollow = crock(Box{64, 30, 0});
    for (std::size_t k = 1; k < 4; ++k) {
        let_in(scene, k, 0);
    }
    Layout layout(scene, round_envelope(300, 400));
    layout.put(0, {outermost, Form::standing, 0, 0, 40.5});
    layout.put(2, {outermost, Form::standing, 150, 0, 20});
    layout.put(3, {outermost, Form::standing, -150, 0, 20});
    const auto excess_turned = [&](double degrees) {
        const double angle = degrees * std::numbers::pi / 180;
        layout.put(1, {0, Form::standing, 0, 0, 15, std::cos(angle), std::sin(angle)});
        return layout.excess_of(1);
    };
    CHECK(excess_turned(0) == 0);
    CHECK(excess_turned(4) == 0);
    CHECK(excess_turned(90) == Approx(15)); // 60 across an opening of 30
    CHECK(excess_turned(30) > 5);
    layout.put(1, {outermost, Form::standing, 0, 150, 15});
    scene.bodies[0].hollow = crock(Cylinder{60, 0});
    layout.put(2, {0, Form::standing, -25, 0, 20});
    CHECK(layout.total_overlap() == 0);
    layout.put(3, {0, Form::standing, 25, 0, 20});
    CHECK(layout.total_overlap() > 5); // beside each other they have room, but no way in
    CHECK(layout.overlap_of(2, 3) == Approx(layout.total_overlap()));
    const Weights weights(4);
    CHECK(layout.cost_at(3, layout.place(3), weights, 1e300) == Approx(layout.total_overlap()));
}
