// SPDX-License-Identifier: GPL-3.0-or-later
/// Layouts without waste: the envelopes they are looked for in, the forms they keep to, and what has none.
#include <catch2/catch.hpp>

#include "packing/exact_fill.hpp"
#include "packing/scenes.hpp"

using namespace tuckwright;
using namespace tuckwright::packing;

namespace {

const std::vector<Form> any_way{Form::standing, Form::on_end, Form::on_side};

Scene blocks_of_three()
{
    std::vector<Body> bodies(6, body(Box{20, 20, 10}, {Form::standing, Form::on_end}));
    bodies.insert(bodies.end(), 3, body(Box{10, 10, 10}));
    return scene_of(bodies);
}

EnvelopeLimits within(double length, double width, double height)
{
    EnvelopeLimits limits;
    limits.half_length = length / 2;
    limits.half_width = width / 2;
    limits.height = height;
    return limits;
}

std::optional<Layout> filled(const Scene& scene, const EnvelopeLimits& limits = {}, std::uint64_t work = 10'000'000)
{
    return exact_fill(scene, limits, {work});
}

void check_filling(const Layout& layout)
{
    double total = 0;
    for (const Body& one : layout.scene().bodies) {
        total += one.volume;
    }
    CHECK(volume(layout.envelope()) == Approx(total).epsilon(1e-12));
    CHECK(worst_violation(layout, PolishOptions{}) <= 2e-8);
}

} // namespace

TEST_CASE("nine blocks fill a cube within its limits, with or without room to spare")
{
    const Scene scene = blocks_of_three();
    for (const auto& limits : {within(30, 30, 30), within(30.02, 30.9, 39.9), EnvelopeLimits{}}) {
        const auto layout = filled(scene, limits);
        REQUIRE(layout);
        check_filling(*layout);
        CHECK(layout->envelope().height == 30);
        CHECK(layout->envelope().half_length == 15);
    }
    CHECK_FALSE(filled(scene, within(29.9, 40, 40)));
    CHECK_FALSE(filled(scene, within(30, 30, 30), 10)); // too little work
    const FillEffort stopped{10'000'000, [] { return true; }};
    CHECK_FALSE(exact_fill(scene, within(30, 30, 30), stopped));
}

TEST_CASE("boxes that may not be turned over stay as they are")
{
    const Scene lying = scene_of({body(Box{60, 20, 10}), body(Box{60, 20, 10})});
    const auto layout = filled(lying);
    REQUIRE(layout);
    check_filling(*layout);
    CHECK(filled(lying, within(60, 20, 20)));
    CHECK(filled(lying, within(20, 60, 20)));       // turned by a quarter in the plan
    CHECK_FALSE(filled(lying, within(20, 20, 60))); // they would have to stand on their ends
    CHECK(filled(scene_of({body(Box{60, 20, 10}, any_way), body(Box{60, 20, 10}, any_way)}), within(20, 20, 60)));
    Scene barred = scene_of({body(Box{60, 20, 10}, any_way), body(Box{60, 20, 10}, any_way)});
    barred.fits[0][0] = barred.fits[1][0] = bit(Form::standing) | bit(Form::on_side);
    CHECK_FALSE(filled(barred, within(20, 20, 60)));
}

TEST_CASE("lengths that are no whole number of millimetres have a common measure all the same")
{
    const Scene scene = scene_of({body(Box{12.345, 6.172, 4.938}), body(Box{12.345, 6.172, 2.469})});
    const auto layout = filled(scene, within(12.345, 6.172, 7.407));
    CHECK_FALSE(layout); // the measure is a micrometre
    const Scene coarse = scene_of({body(Box{12.5, 7.5, 5}), body(Box{12.5, 7.5, 2.5}), body(Box{2.5, 7.5, 7.5})});
    const auto found = filled(coarse, within(15, 7.5, 7.5));
    REQUIRE(found);
    check_filling(*found);
}

TEST_CASE("only plain boxes without rules of company are filled in")
{
    const auto two = [](const Body& other) { return scene_of({body(Box{20, 20, 10}), other}); };
    CHECK(filled(two(body(Box{20, 20, 10}))));
    CHECK_FALSE(filled(two(body(Cylinder{20, 10}))));
    Body hollow = body(Box{20, 20, 10});
    hollow.hollow = Hollow{Box{18, 18, 9}, -4, true, false, 0};
    CHECK_FALSE(filled(two(hollow)));
    Body handled = body(Box{20, 20, 10});
    handled.pieces.push_back({Box{2, 2, 2}, 0, 11, 0});
    CHECK_FALSE(filled(two(handled)));
    Body held = body(Box{20, 20, 10});
    held.held = true;
    CHECK_FALSE(filled(two(held)));
    Scene shut_out = two(body(Box{20, 20, 10}));
    shut_out.fits[1][0] = 0;
    CHECK_FALSE(filled(shut_out));
    Scene at_odds = two(body(Box{20, 20, 10}));
    at_odds.company.apart = {{false, true}, {true, false}};
    CHECK_FALSE(filled(at_odds));
}

TEST_CASE("envelopes without waste have the volume, take each block, and come with the least walls first")
{
    const std::vector<Block> rods{{4, {{3, 1, 1}, {1, 3, 1}}}};
    CHECK(envelopes_without_waste(rods, {20, 20, 20}) ==
          std::vector<Cells>{{3, 2, 2}, {3, 1, 4}, {4, 1, 3}, {4, 3, 1}, {6, 1, 2}, {6, 2, 1}, {12, 1, 1}});
    CHECK(envelopes_without_waste(rods, {2, 4, 2}) == std::vector<Cells>{{2, 3, 2}});
    CHECK(envelopes_without_waste(rods, {2, 2, 20}).empty());
}

TEST_CASE("equal boxes lie in straight rows where these fill an envelope, with next to no work")
{
    const Scene scene = scene_of(std::vector<Body>(300, body(Box{40, 30, 20}, any_way)));
    const auto layout = filled(scene, {}, 1);
    REQUIRE(layout);
    check_filling(*layout);
    const Place& first = layout->place(0);
    for (int k = 1; k < 300; ++k) {
        CHECK(layout->place(k).form == first.form);
    }
    const auto low = filled(scene, within(1200, 1000, 20), 1); // one layer
    REQUIRE(low);
    check_filling(*low);
    CHECK(low->envelope().height == 20);
}
