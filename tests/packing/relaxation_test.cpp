// SPDX-License-Identifier: GPL-3.0-or-later
/// All bodies pushed apart at once.
#include <catch2/catch.hpp>

#include "packing/relaxation.hpp"
#include "packing/scenes.hpp"
#include "packing/separation.hpp"
#include "support/workload.hpp"

using namespace tuckwright;
using namespace tuckwright::packing;
using tuckwright::test::count;

namespace {

/// What relax() lowers, worked out pair by pair; all bodies are of one piece and lie in the bundle.
double energy(const Layout& layout, const Weights& weights)
{
    double sum = 0;
    for (int i = 0; i < static_cast<int>(layout.size()); ++i) {
        sum += weights.wall(i) * std::pow(layout.excess_of(i), 2);
        for (int j = i + 1; j < static_cast<int>(layout.size()); ++j) {
            sum += weights.of(i, j) * std::pow(layout.overlap_of(i, j), 2);
        }
    }
    return sum;
}

} // namespace

TEST_CASE("two discs that overlap are pushed apart along their middles, by the same way each")
{
    Scene scene = scene_of({body(Cylinder{40, 30}), body(Cylinder{40, 30})});
    scene.size = 40;
    Layout layout(scene, round_envelope(60, 30));
    layout.put(0, {outermost, Form::standing, -10, 0, 15, 1, 0});
    layout.put(1, {outermost, Form::standing, 10, 0, 15, 1, 0});
    relax(layout, Weights(2), 50);
    CHECK(layout.total_overlap() < 1e-2);
    CHECK(layout.place(1).x - layout.place(0).x == Approx(40).margin(0.01));
    CHECK(layout.place(0).x == Approx(-layout.place(1).x).margin(1e-6));
    CHECK(layout.place(0).y == Approx(0).margin(1e-9));
}

TEST_CASE("weights tell who gives way to a wall: what is out of the room comes in, the other goes along")
{
    Scene scene = scene_of({body(Box{20, 20, 20}), body(Box{20, 20, 20})});
    scene.size = 40;
    Layout layout(scene, box_envelope(40, 30, 30));
    layout.put(0, {outermost, Form::standing, -13, 0, 15, 1, 0}); // 3 mm through the wall
    layout.put(1, {outermost, Form::standing, 6, 0, 15, 1, 0});
    relax(layout, Weights(2), 100);
    CHECK(layout.total_overlap() < 0.02);
    CHECK(layout.place(0).x == Approx(-10).margin(0.02));
    CHECK(layout.place(1).x == Approx(10).margin(0.02));
}

TEST_CASE("a box turns where that is what frees it")
{
    Body bar = body(Box{78, 4, 10});
    Body block = body(Box{20, 20, 10});
    Scene scene = scene_of({bar, block});
    scene.size = 40;
    Layout layout(scene, round_envelope(40, 10));
    layout.put(0, {outermost, Form::standing, 0, 0, 5, std::cos(0.3), std::sin(0.3)});
    layout.put(1, {outermost, Form::standing, 17, -7, 5, 1, 0});
    const double before = energy(layout, Weights(2));
    relax(layout, Weights(2), 60);
    CHECK(before > 0);
    CHECK(energy(layout, Weights(2)) < 0.01 * before + 1e-3);
    CHECK(layout.place(0).c * layout.place(0).c + layout.place(0).s * layout.place(0).s == Approx(1));
}

TEST_CASE("what lies in a cup moves with it and stays in it")
{
    Scene scene = scene_of({cup(60, 80), body(Cylinder{20, 20}), body(Cylinder{60, 80})});
    scene.size = 50;
    let_in(scene, 1, 0);
    Layout layout(scene, round_envelope(100, 80));
    layout.put(0, {outermost, Form::standing, -10, 0, 40, 1, 0});
    layout.put(1, {0, Form::standing, 5, 0, 10, 1, 0});
    layout.put(2, {outermost, Form::standing, 10, 0, 40, 1, 0});
    relax(layout, Weights(3), 60);
    CHECK(layout.total_overlap() < 0.02);
    CHECK(layout.place(1).cell == 0);
    CHECK(layout.place(1).x == Approx(5)); // in the frame of the cup nothing has pushed it
}

TEST_CASE("relaxing never raises the energy, and finds most of what can be had nearby")
{
    Random random(7);
    int fell = 0;
    const int trials = count(60, 10);
    for (int trial = 0; trial < trials; ++trial) {
        Scene scene = scene_of({body(Cylinder{40, 30}), body(Cylinder{30, 50}, {Form::standing, Form::on_end}),
                                body(Box{50, 20, 30}), body(Box{15, 70, 20}), body(Cylinder{25, 60})});
        scene.size = 40;
        Layout layout(scene, trial % 2 == 0 ? round_envelope(60, 80) : box_envelope(110, 100, 80));
        for (int k = 0; k < static_cast<int>(layout.size()); ++k) {
            const auto open = doors(layout, k);
            layout.put(k, sample_place(layout, k, open[random.below(open.size())], random));
        }
        Weights weights(layout.size());
        weights.of(0, 1) = weights.of(1, 0) = random.between(1, 5);
        const double before = energy(layout, weights);
        relax(layout, weights, 40);
        const double after = energy(layout, weights);
        INFO("trial " << trial);
        CHECK(after <= before * (1 + 1e-9) + 1e-9);
        fell += before > 1 && after < 0.5 * before ? 1 : before > 1 ? 0 : 1;
    }
    CHECK(fell >= trials * 8 / 10);
}
