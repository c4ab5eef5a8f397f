// SPDX-License-Identifier: GPL-3.0-or-later
/// Falling, lying on something, and large layouts freed of their last overlap.
#include <catch2/catch.hpp>

#include "packing/construct.hpp"
#include "packing/drop.hpp"
#include "packing/loosening.hpp"
#include "packing/pile.hpp"
#include "packing/scenes.hpp"
#include "packing/steadying.hpp"
#include "support/workload.hpp"

using namespace tuckwright;
using namespace tuckwright::packing;
using tuckwright::test::count;

namespace {

const Air air{1.2e-3, 0, 0};
const Vec3 down{0, 0, -1};

Place standing_at(double x, double y, double z, int cell = outermost) { return {cell, Form::standing, x, y, z, 1, 0}; }

/// Boxes, tins, rods and cups, many of them; all but cups may lie in the cups.
Scene many(std::size_t number)
{
    Random random(7);
    std::vector<Body> bodies;
    for (std::size_t k = 0; k < number; ++k) {
        const double a = std::round(random.between(20, 70)), b = std::round(random.between(10, 40));
        switch (k % 4) {
        case 0: bodies.push_back(body(Box{a, b, 15}, {Form::standing, Form::on_end, Form::on_side})); break;
        case 1: bodies.push_back(body(Cylinder{b, 25}, {Form::standing, Form::on_end})); break;
        case 2: bodies.push_back(body(Cylinder{8, a}, {Form::standing, Form::on_end})); break;
        default: bodies.push_back(cup(a + 30, b + 20));
        }
    }
    Scene scene = scene_of(bodies);
    for (std::size_t k = 0; k < number; ++k) {
        for (std::size_t vessel = 3; k % 4 != 3 && vessel < number; vessel += 4) {
            if (plan_reach(scene.bodies[k], Form::standing) < scene.bodies[vessel].hollow->floor + 1e3 &&
                scene.bodies[k].volume < 0.1 * scene.bodies[vessel].volume) {
                let_in(scene, k, vessel);
            }
        }
    }
    return scene;
}

Layout built(const Scene& scene, std::uint64_t seed)
{
    Random random(seed);
    Layout layout(scene, box_envelope(220, 200, 1e4));
    construct(layout, random, 0.8, 20);
    tighten(layout);
    return layout;
}

} // namespace

TEST_CASE("a box falls flat on what is below it, exactly, and past what is beside it")
{
    const Scene scene = scene_of({body(Box{40, 40, 20}), body(Box{40, 40, 30}), body(Cylinder{20, 10})});
    Layout layout(scene, box_envelope(200, 200, 200));
    layout.put(0, standing_at(0, 0, 10));
    layout.put(1, standing_at(10, 5, 150));
    layout.put(2, standing_at(60, 0, 5));
    CHECK(free_way(layout, 1, layout.place(1), down, 1e3, air, Seeing::everything) == Approx(115).margin(1e-9));
    layout.put(1, standing_at(40, 0, 150)); // flush with the side of the one, over the other
    CHECK(free_way(layout, 1, layout.place(1), down, 1e3, air, Seeing::everything) == Approx(125).margin(1e-9));
    CHECK(free_way(layout, 1, layout.place(1), down, 7, air, Seeing::everything) == 7);
    CHECK(free_way(layout, 2, layout.place(2), {1, 0, 0}, 1e3, air, Seeing::everything) == Approx(30).margin(1e-9));
}

TEST_CASE("a rod that lies falls beside another as far as their round sides let it, with air")
{
    const Scene scene = scene_of({body(Cylinder{20, 60}, {Form::on_end}), body(Cylinder{20, 60}, {Form::on_end})});
    Layout layout(scene, box_envelope(200, 200, 200));
    layout.put(0, {outermost, Form::on_end, 0, 0, 10, 1, 0});
    layout.put(1, {outermost, Form::on_end, 0, 12, 100, 1, 0});
    const double way = free_way(layout, 1, layout.place(1), down, 1e3, air, Seeing::everything);
    CHECK(std::hypot(12, 90 - way) == Approx(20 + air.curved).margin(1e-8));
}

TEST_CASE("what lies over a mouth alone is not carried, on the rim it is, and so is what lies in the cup")
{
    const Scene scene = [] {
        Scene made = scene_of({cup(60, 40), body(Box{20, 20, 10}), cup(60, 40)});
        let_in(made, 1, 0);
        return made;
    }();
    Layout layout(scene, box_envelope(200, 200, 200));
    layout.put(0, standing_at(0, 0, 20));
    layout.put(2, standing_at(80, 0, 20));
    CHECK(is_carried(layout, 0, layout.place(0)));
    CHECK_FALSE(is_carried(layout, 1, standing_at(0, 0, 45)));     // over the mouth
    CHECK(is_carried(layout, 1, standing_at(22, 0, 45)));          // across the rim
    CHECK(is_carried(layout, 1, standing_at(0, 0, 5, 0)));         // on the cup's floor
    CHECK_FALSE(is_carried(layout, 1, standing_at(0, 0, 5.1, 0))); // above it
    CHECK(is_carried(layout, 1, standing_at(0, 60, 5)));           // on the bundle's floor
    CHECK_FALSE(is_carried(layout, 1, standing_at(0, 60, 30)));
}

TEST_CASE("keeping air is told from touching and from overlap")
{
    const Scene scene = scene_of({body(Cylinder{20, 20}), body(Cylinder{20, 20})});
    Layout layout(scene, box_envelope(100, 100, 100));
    layout.put(0, standing_at(0, 0, 10));
    CHECK(keeps_air(layout, 1, standing_at(20 + 1.3e-3, 0, 10), air));
    CHECK_FALSE(keeps_air(layout, 1, standing_at(20, 0, 10), air)); // round sides need air
    CHECK(keeps_air(layout, 1, standing_at(5, 0, 30), air));        // level faces do not
    CHECK_FALSE(keeps_air(layout, 1, standing_at(5, 0, 29.9), air));
    CHECK_FALSE(keeps_air(layout, 1, standing_at(41, 0, 10), air)); // through the wall
}

TEST_CASE("a large scene is built without overlap, and everything in it lies on something")
{
    const Scene scene = many(60);
    REQUIRE(is_large(scene));
    for (std::uint64_t seed = 1; seed <= static_cast<std::uint64_t>(count(4, 1)); ++seed) {
        const Layout layout = built(scene, seed);
        CHECK(layout.total_overlap() == Approx(0).margin(1e-9));
        int hanging = 0;
        for (int k = 0; k < static_cast<int>(layout.size()); ++k) {
            hanging += is_carried(layout, k, layout.place(k)) ? 0 : 1;
        }
        CHECK(hanging == 0);
    }
}

TEST_CASE("dropping all keeps the air, and nothing ends higher than it was or could fall farther")
{
    const Scene scene = many(60);
    Layout layout = built(scene, 3);
    for (int k = 0; k < static_cast<int>(layout.size()); ++k) { // everything a little apart, and higher
        Place place = layout.place(k);
        if (place.cell == outermost) {
            place.x *= 1.1, place.y *= 1.1, place.z *= 1.2;
            layout.put(k, place);
        }
    }
    tighten(layout);
    const PolishOptions options;
    REQUIRE(worst_violation(layout, options) < 2e-8);
    const Layout before = layout;
    drop_all(layout, air_of(options));
    CHECK(worst_violation(layout, options) < 2e-8);
    double fallen = 0;
    for (int k = 0; k < static_cast<int>(layout.size()); ++k) {
        if (layout.place(k).cell != outermost) {
            continue;
        }
        CHECK(layout.place(k).z <= before.place(k).z + 1e-9);
        fallen += before.place(k).z - layout.place(k).z;
        CHECK(free_way(layout, k, layout.place(k), down, 1e3, air_of(options), Seeing::everything) < 1e-6);
    }
    CHECK(fallen > 1);
}

TEST_CASE("the last overlap of a large layout is removed, and what overlaps by far is refused and left as it was")
{
    const Scene scene = many(60);
    const Layout clean = built(scene, 2);
    Random random(5);
    Layout layout = clean;
    for (int k = 0; k < static_cast<int>(layout.size()); ++k) {
        Place place = layout.place(k);
        place.x += random.between(-0.02, 0.02), place.y += random.between(-0.02, 0.02);
        place.z += random.between(-0.02, 0.02);
        layout.put(k, place);
    }
    const PolishOptions options;
    REQUIRE(worst_violation(layout, options) > 1e-3);
    REQUIRE(loosen(layout, options));
    CHECK(worst_violation(layout, options) <= 2e-8);
    CHECK(volume(layout.envelope()) < 1.01 * volume(clean.envelope()));

    Layout heap = clean;
    for (const int k : std::vector<int>(heap.inside(outermost))) {
        Place place = heap.place(k);
        place.x = place.y = 0, place.z = 40;
        heap.put(k, place);
    }
    const Layout as_it_was = heap;
    CHECK_FALSE(loosen(heap, options));
    CHECK(same(heap, as_it_was));
}

TEST_CASE("steadying puts what hangs over a mouth elsewhere, within the limits or not at all")
{
    std::vector<Body> bodies(many_bodies, body(Box{30, 30, 20}));
    bodies.front() = cup(80, 40);
    bodies[1] = body(Box{30, 30, 60}); // too high for the cup
    const Scene scene = scene_of(bodies);
    Layout layout(scene, box_envelope(300, 300, 100));
    layout.put(0, standing_at(0, 0, 20));
    layout.put(1, standing_at(0, 0, 70));
    int next = 2;
    for (int x = -4; x <= 4; ++x) {
        for (int y = -4; y <= 4 && next < static_cast<int>(layout.size()); ++y) {
            if (std::abs(x) > 2 || std::abs(y) > 2) {
                layout.put(next++, standing_at(32 * x, 32 * y, 10));
            }
        }
    }
    REQUIRE(next == static_cast<int>(layout.size()));
    REQUIRE_FALSE(is_carried(layout, 1, layout.place(1)));
    Random random(1);
    Layout cramped = layout;
    EnvelopeLimits low;
    low.height = 55;
    CHECK_FALSE(steady(cramped, random, low));
    CHECK(same(cramped, layout));
    REQUIRE(steady(layout, random, EnvelopeLimits{}));
    CHECK(is_carried(layout, 1, layout.place(1)));
    CHECK(worst_violation(layout, PolishOptions{}) <= 2e-8);
}

TEST_CASE("what has to leave its vessel goes anywhere else, and what is in none anywhere")
{
    std::vector<Body> bodies(many_bodies, body(Box{30, 30, 20}));
    bodies.front() = cup(80, 40);
    Scene scene = scene_of(bodies);
    scene.fits[1][1] |= bit(Form::standing);
    Layout layout(scene, box_envelope(300, 300, 100));
    layout.put(0, standing_at(0, 0, 20));
    Place held = standing_at(0, 0, 10);
    held.cell = 0;
    REQUIRE(layout.may_enter(1, 0, Form::standing));
    layout.put(1, held);
    int next = 2;
    for (int x = -4; x <= 4; ++x) {
        for (int y = -4; y <= 4 && next < static_cast<int>(layout.size()); ++y) {
            if (std::abs(x) > 2 || std::abs(y) > 2) {
                layout.put(next++, standing_at(32 * x, 32 * y, 10));
            }
        }
    }
    Random random(3);
    for (int trial = 0; trial < 5; ++trial) {
        Layout moved = layout;
        REQUIRE(place_anew(moved, 1, random, 60, Going::out_of_its_vessel));
        CHECK(moved.place(1).cell == outermost);
        CHECK(is_carried(moved, 1, moved.place(1)));
        CHECK(moved.total_overlap() == 0);
    }
    REQUIRE(place_anew(layout, 2, random, 60, Going::out_of_its_vessel));
    CHECK(is_carried(layout, 2, layout.place(2)));
}
