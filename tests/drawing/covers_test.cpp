// SPDX-License-Identifier: GPL-3.0-or-later
// Where bands are drawn, and the bag.
#include <catch2/catch.hpp>

#include <numbers>

#include "drawing/covers.hpp"
#include "drawing/random_pictures.hpp"
#include "drawing/shown.hpp"
#include "drawing/stage.hpp"
#include "support/handmade_bundles.hpp"
#include "support/svg.hpp"
#include "tuckwright/drawing.hpp"

using namespace tuckwright;
using namespace tuckwright::drawing;

namespace {

double length_of(const std::vector<Vec3>& loop)
{
    double length = 0;
    for (std::size_t k = 0; k < loop.size(); ++k) {
        length += norm(loop[(k + 1) % loop.size()] - loop[k]);
    }
    return length;
}

Bundle pot_with_band()
{
    Bundle bundle = handmade::cup_in_lidded_pot();
    bundle.bands = {Band{"strap", "Strap, red", 10, 500, "pot-lid"}};
    return bundle;
}

} // namespace

TEST_CASE("a band round two tins is as long as an open belt round two pulleys")
{
    // L = 2 C + pi d, from memory: any handbook of machine elements. A corner for every 3.75 degrees cuts off 0.05 %.
    const Bundle bundle = handmade::tins_in_a_bag();
    const auto loop = loop_of(bundle, bundle.bands[0]);
    CHECK(length_of(loop) == Approx(handmade::round_two_tins).epsilon(6e-4));
    CHECK(length_of(loop) <= bundle.bands[0].girth);
    for (const Vec3& corner : loop) {
        CHECK(corner.z == Approx(30));
    }
}

TEST_CASE("a band round everything is where most things are")
{
    using namespace handmade;
    Bundle bundle =
        handmade::bundle("", Cylinder{120, 200},
                         {item("drum", cylinder(120, 140, {0, 0, 70})), item("left", cylinder(40, 60, {-30, 0, 170})),
                          item("right", cylinder(40, 50, {30, 0, 165}))});
    bundle.bands = {Band{"strap", "strap", 10, 500}};
    const auto loop = loop_of(bundle, bundle.bands[0]);
    REQUIRE_FALSE(loop.empty());
    CHECK(loop.front().z == Approx(165)); // the level half way up the lower of the two, nearer to the middle
    CHECK(length_of(loop) == Approx(2 * 60 + std::numbers::pi * 40).epsilon(6e-4));
}

TEST_CASE("a band over a lid goes up and down the vessel through its middle")
{
    const Bundle bundle = pot_with_band();
    const auto lid = held_lid(bundle, bundle.bands[0]);
    REQUIRE(lid == std::size_t{2});
    const auto loop = loop_of(bundle, bundle.bands[0]);
    // Round the rectangle of pot and lid: 128 or 129 mm wide, 99 mm high.
    CHECK(length_of(loop) > 2 * (128 + 99) - 1);
    CHECK(length_of(loop) < 2 * (129 + 99) + 1e-6);
    for (const Vec3& corner : loop) {
        CHECK(corner.x == Approx(0).margin(1e-9));
    }
    Bundle open = bundle;
    open.items[2].closes.reset();
    CHECK(loop_of(open, open.bands[0]).empty());
}

TEST_CASE("covers come one after the other, a lid's band with its lid")
{
    const Bundle tins = handmade::tins_in_a_bag();
    const std::size_t done = tins.steps.size();
    CHECK(shown_at(tins, done, 0).bands.empty());
    CHECK_FALSE(shown_at(tins, done, 1).bag);
    CHECK(shown_at(tins, done, 1).bands == std::vector<std::size_t>{0});
    CHECK(shown_at(tins, done, 2).bag);
    CHECK(shown_at(tins, done).bag);
    CHECK_FALSE(shown_at(tins, 0).bag);
    CHECK(shown_at(tins, 0).bands.empty());
    const Bundle pot = pot_with_band();
    for (std::size_t step = 0; step <= pot.steps.size(); ++step) {
        const Shown shown = shown_at(pot, step);
        CHECK(shown.bands.empty() == !shown.there[2]);
    }
}

TEST_CASE("what is in its bag is drawn as large as the bag, and nothing leaves its frame")
{
    const Bundle tins = handmade::tins_in_a_bag();
    const std::size_t done = tins.steps.size();
    const auto shown = shown_at(tins, done);
    const Frame content = content_of(tins, shown, from_the_side(0, 0));
    CHECK(content.width == Approx(104)); // 100 mm and a wall of 2 mm on either side
    CHECK(content.height == Approx(64));
    CHECK(content_of(tins, shown_at(tins, done, 1), from_the_side(0, 0)).width == Approx(100));
    constexpr Frame frame{12, 15, 90, 70};
    for (const Bundle& bundle : {tins, pot_with_band()}) {
        for (std::size_t step = 0; step <= bundle.steps.size(); ++step) {
            for (const View view : {View::cutaway, View::above, View::slanted}) {
                Canvas with({120, 100}), without({120, 100});
                const double scale = fitting_scale(bundle, view, {frame.width, frame.height}, step);
                draw_view(with, frame, bundle, step, view, {.scale = scale});
                Bundle bare = bundle;
                bare.bands.clear();
                bare.bag.reset();
                draw_view(without, frame, bare, step, view, {.scale = scale});
                const auto picture = svg::read(with.svg());
                const auto faults = drawing_test::faults_of(picture, frame);
                INFO(bundle.kit << ", step " << step << ", view " << static_cast<int>(view) << ": "
                                << (faults.empty() ? "" : faults.front()));
                CHECK(faults.empty());
                const Shown there = shown_at(bundle, step);
                const bool is_covered = there.bag || !there.bands.empty();
                CHECK((picture.paths.size() > svg::read(without.svg()).paths.size()) == is_covered);
            }
        }
    }
}
