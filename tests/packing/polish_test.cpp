// SPDX-License-Identifier: GPL-3.0-or-later
/// Compaction and settling keep their promises: true leaves no violation, false leaves the layout as it was.
#include <catch2/catch.hpp>

#include "packing/construct.hpp"
#include "packing/polish.hpp"
#include "packing/scenes.hpp"
#include "packing/separation.hpp"
#include "support/workload.hpp"

using namespace tuckwright;
using namespace tuckwright::packing;
using tuckwright::test::count;

namespace {

constexpr double promised = 2e-8; // mm

Place standing(double x, double y, double z) { return {outermost, Form::standing, x, y, z, 1, 0}; }

/// Sum of the heights of the bodies' centres in a scene in which all lie directly in the bundle.
double heights(const Layout& layout)
{
    double sum = 0;
    for (int k = 0; k < static_cast<int>(layout.size()); ++k) {
        sum += layout.place(k).z;
    }
    return sum;
}

} // namespace

TEST_CASE("compaction brings two loose tins together")
{
    const Scene scene = scene_of({body(Cylinder{40, 30}), body(Cylinder{40, 30})});
    Layout layout(scene, round_envelope(90, 50));
    layout.put(0, standing(-50, 3, 20));
    layout.put(1, standing(40, -20, 15));
    PolishOptions options;
    options.iterations = 60;
    REQUIRE(compact(layout, options));
    CHECK(worst_violation(layout, options) < promised);
    CHECK(layout.envelope().height == Approx(30).margin(1e-6));
    CHECK(layout.envelope().radius == Approx(40 + options.curved_gap / 2).margin(1e-5));
}

TEST_CASE("compaction brings four loose boxes together without a gap")
{
    const Scene scene = scene_of(std::vector<Body>(4, body(Box{30, 20, 10})));
    Layout layout(scene, box_envelope(90, 70, 16));
    layout.put(0, standing(-25, -20, 6));
    layout.put(1, standing(20, -18, 5));
    layout.put(2, standing(-22, 15, 8));
    layout.put(3, standing(24, 19, 7));
    PolishOptions options;
    options.iterations = 60;
    REQUIRE(compact(layout, options));
    CHECK(worst_violation(layout, options) < promised);
    CHECK(volume(layout.envelope()) == Approx(60.0 * 40 * 10).epsilon(1e-6));
}

TEST_CASE("dimensions over their limit come first in compaction")
{
    // Side by side the boxes are wide and low; the limit on the length wants it shorter even if the volume grew.
    const Scene scene = scene_of({body(Box{30, 20, 10}), body(Box{30, 20, 10})});
    Layout layout(scene, box_envelope(70, 24, 12));
    layout.put(0, standing(-18, 0, 6));
    layout.put(1, standing(17, 1, 5));
    PolishOptions options;
    options.iterations = 60;
    options.limits.half_length = 30;
    REQUIRE(compact(layout, options));
    CHECK(layout.envelope().half_length <= 30 + promised);
    CHECK(burden(round_envelope(10, 10), {}) == Approx(std::log(volume(round_envelope(10, 10)))));
    EnvelopeLimits tight;
    tight.radius = 9;
    CHECK(burden(round_envelope(10, 10), tight) > burden(round_envelope(10, 10), {}));
    CHECK(burden(round_envelope(9.9, 11), tight) < burden(round_envelope(10, 10), tight)); // larger, but less over
}

TEST_CASE("settling lets things down onto each other and keeps the envelope")
{
    const Scene scene = scene_of({body(Box{40, 40, 10}), body(Cylinder{30, 20}), body(Box{10, 10, 10})});
    Layout layout(scene, box_envelope(60, 40, 80));
    layout.put(0, standing(-10, 0, 12));
    layout.put(1, standing(-10, 0, 50));
    layout.put(2, standing(25, 0, 60));
    PolishOptions options;
    options.iterations = 60;
    const Envelope before = layout.envelope();
    REQUIRE(settle(layout, options));
    CHECK(worst_violation(layout, options) < promised);
    CHECK(volume(layout.envelope()) == volume(before));
    CHECK(layout.place(0).z == Approx(5).margin(1e-5));
    CHECK(layout.place(1).z == Approx(20).margin(1e-5));
    CHECK(layout.place(2).z == Approx(5).margin(1e-5));
}

TEST_CASE("compaction and settling keep their promises on random layouts")
{
    int compacted = 0, settled = 0;
    const int trials = count(60, 20);
    for (int trial = 0; trial < trials; ++trial) {
        const Scene scene = mixed();
        Random random(500 + static_cast<std::uint64_t>(trial));
        Layout layout(scene, trial % 2 == 0 ? round_envelope(70 + trial % 30, 10) : box_envelope(120, 110, 10));
        construct(layout, random, 0.5, 30);
        PolishOptions options;
        options.turning = trial % 3 != 0;
        CAPTURE(trial);
        const Layout first = layout;
        if (compact(layout, options)) {
            ++compacted;
            CHECK(worst_violation(layout, options) < promised);
            CHECK(layout.total_overlap() < 1e-5);
            CHECK(volume(layout.envelope()) <= volume(first.envelope()) * (1 + 1e-6));
        } else {
            CHECK(same(layout, first));
        }
        const Layout second = layout;
        if (settle(layout, options)) {
            ++settled;
            CHECK(worst_violation(layout, options) < promised);
            CHECK(volume(layout.envelope()) <= volume(second.envelope()) * (1 + 1e-9));
            if (layout.inside(outermost).size() == layout.size()) {
                CHECK(heights(layout) <= heights(second) + 1e-6);
            }
        } else {
            CHECK(same(layout, second));
        }
    }
    CHECK(compacted >= trials * 3 / 4);
    CHECK(settled >= trials * 3 / 4);
}

TEST_CASE("what cannot be mended is left as it was")
{
    // Seven tins in one spot, under limits in which no two fit.
    const Scene scene = scene_of(std::vector<Body>(7, body(Cylinder{40, 30})));
    Layout layout(scene, round_envelope(25, 30));
    for (int k = 0; k < 7; ++k) {
        layout.put(k, standing(0.1 * k, 0.05 * k * k, 15));
    }
    PolishOptions options;
    options.limits = {25, 1e9, 1e9, 30};
    CHECK(worst_violation(layout, options) > 1);
    const Layout before = layout;
    if (compact(layout, options)) {
        CHECK(worst_violation(layout, options) < promised); // then it must have left the limits behind
        CHECK(layout.envelope().radius > 25);
    } else {
        CHECK(same(layout, before));
    }
}

TEST_CASE("up in the world is told in the frame of each cell")
{
    Scene scene = scene_of({cup(80, 60), body(Cylinder{10, 20})});
    scene.bodies[0].forms = {Form::standing, Form::on_end, Form::on_side};
    scene.fits[0][0] = bit(Form::standing) | bit(Form::on_end) | bit(Form::on_side);
    Layout layout(scene, round_envelope(100, 100));
    CHECK(up_in_cell(layout, outermost) == Vec3{0, 0, 1});
    layout.put(0, {outermost, Form::on_end, 0, 0, 40, 0.6, 0.8});
    Vec3 up = up_in_cell(layout, 0); // own z along the cell's x, so own x points down
    CHECK(up.x == Approx(-1));
    CHECK(up.z == Approx(0).margin(1e-12));
    layout.put(0, {outermost, Form::on_side, 0, 0, 40, 0.6, 0.8});
    up = up_in_cell(layout, 0); // own z along the cell's -y, so own y points up
    CHECK(up.y == Approx(1));
    CHECK(up.z == Approx(0).margin(1e-12));
}
