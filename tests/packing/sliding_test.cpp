// SPDX-License-Identifier: GPL-3.0-or-later
/// Sliding down tapering walls.
#include <catch2/catch.hpp>

#include "packing/drop.hpp"
#include "packing/scenes.hpp"
#include "packing/sliding.hpp"

using namespace tuckwright;
using namespace tuckwright::packing;

namespace {

constexpr Air air{1.2e-3, 0, 0};

/// A mug that is 60 mm across inside at its floor and 80 at its rim, 80 mm higher: an eighth of a mm wider for each mm.
Body mug()
{
    Body made = cup(82, 81);
    made.hollow->shape = Cylinder{80, 80, 60};
    return made;
}

/// The mug, standing on the floor of a wide envelope, with others that may be in it.
struct MugScene {
    Scene scene;
    Layout layout;

    explicit MugScene(std::vector<Body> others)
        : scene(with_mug(std::move(others))), layout(scene, round_envelope(60, 300))
    {
        layout.put(0, {outermost, Form::standing, 0, 0, 40.5, 1, 0});
    }

    static Scene with_mug(std::vector<Body> others)
    {
        others.insert(others.begin(), mug());
        Scene made = scene_of(others);
        for (std::size_t k = 1; k < others.size(); ++k) {
            let_in(made, k, 0);
        }
        return made;
    }

    void put(int k, double x, double y, double z) { layout.put(k, {0, Form::standing, x, y, z, 1, 0}); }
};

} // namespace

TEST_CASE("a tin that hangs on one side of a tapering wall slides down until it stands")
{
    MugScene all({body(Cylinder{40, 50})});
    all.put(1, 16, 0, 73); // at 48 mm the radius is 36: 16 off the axis, the tin touches the wall
    REQUIRE(keeps_air(all.layout, 1, all.layout.place(1), air));
    REQUIRE(free_way(all.layout, 1, all.layout.place(1), {0, 0, -1}, 1e3, air, Seeing::everything) < 1e-6);
    CHECK(slide_down_walls(all.layout, air));
    CHECK(all.layout.place(1).z == Approx(25).margin(1e-9));
    CHECK(keeps_air(all.layout, 1, all.layout.place(1), air));
    CHECK_FALSE(slide_down_walls(all.layout, air)); // what stands stays
}

TEST_CASE("a tin that is wider than the floor slides until the wall holds it all round")
{
    MugScene all({body(Cylinder{66, 50})});
    all.put(1, 0, -4, 81); // at 56 mm the radius is 37
    REQUIRE(keeps_air(all.layout, 1, all.layout.place(1), air));
    CHECK(slide_down_walls(all.layout, air));
    const Place& seated = all.layout.place(1);
    CHECK(seated.z - 25 == Approx(24).margin(0.01)); // where the radius is 33
    CHECK(std::hypot(seated.x, seated.y) < 0.01);
    CHECK(keeps_air(all.layout, 1, seated, air));
}

TEST_CASE("what slides down goes round what is in its way, or stays above it")
{
    MugScene all({body(Cylinder{30, 40}), body(Cylinder{14, 30})});
    all.put(1, 0, 0, 20);
    all.put(2, 25.125, 0, 32); // at 17 mm the radius is 32.125: beside the tin, with 3 mm of air
    REQUIRE(keeps_air(all.layout, 2, all.layout.place(2), air));
    CHECK(slide_down_walls(all.layout, air));
    CHECK(all.layout.place(2).z == Approx(15).margin(1e-9)); // 23 off the axis, 1 mm from the tin
    CHECK(keeps_air(all.layout, 2, all.layout.place(2), air));

    MugScene wide({body(Cylinder{50, 40}), body(Cylinder{14, 30})});
    wide.put(1, 0, 0, 20);
    wide.put(2, 28, 0, 55); // at 40 mm the radius is 35: over the edge of the tin
    REQUIRE(keeps_air(wide.layout, 2, wide.layout.place(2), air));
    slide_down_walls(wide.layout, air);
    CHECK(wide.layout.place(2).z == Approx(55).margin(1e-9)); // it stands on the tin
}

TEST_CASE("a box goes down a tapering wall too, however it is turned")
{
    MugScene all({body(Box{30, 24, 40})});
    for (int k = 0; k < 12; ++k) {
        const double angle = 0.3 * k;
        all.layout.put(1, {0, Form::standing, 17 * std::cos(1.7 * k), 17 * std::sin(1.7 * k), 79.9, std::cos(angle),
                           std::sin(angle)});
        REQUIRE(keeps_air(all.layout, 1, all.layout.place(1), air));
        slide_down_walls(all.layout, air);
        drop_all(all.layout, air);
        CHECK(all.layout.place(1).z ==
              Approx(20).margin(1e-6)); // half its diagonal, 19.2, is less than the floor's radius
        CHECK(keeps_air(all.layout, 1, all.layout.place(1), air));
    }
}

TEST_CASE("straight vessels, what is pressed in, and vessels that do not stand let nothing slide")
{
    Scene scene = scene_of({cup(82, 81), body(Cylinder{40, 50})});
    let_in(scene, 1, 0);
    Layout straight(scene, round_envelope(60, 300));
    straight.put(0, {outermost, Form::standing, 0, 0, 40.5, 1, 0});
    straight.put(1, {0, Form::standing, 19, 0, 60, 1, 0});
    CHECK_FALSE(slide_down_walls(straight, air));

    MugScene over({body(Cylinder{40, 50})});
    over.layout.put(0, {outermost, Form::upside_down, 0, 0, 40.5, 1, 0});
    over.put(1, 16, 0, 54);
    CHECK_FALSE(slide_down_walls(over.layout, air));
}
