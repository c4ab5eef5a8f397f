// SPDX-License-Identifier: GPL-3.0-or-later
/// Separation by guided local search, the first layouts, and the envelope drawn tight.
#include <catch2/catch.hpp>

#include "packing/construct.hpp"
#include "packing/scenes.hpp"
#include "packing/separation.hpp"
#include "support/workload.hpp"

using namespace tuckwright;
using namespace tuckwright::packing;
using tuckwright::test::count;

namespace {

Scene tins(std::size_t number) { return scene_of(std::vector<Body>(number, body(Cylinder{40, 30}))); }

void scatter(Layout& layout, Random& random)
{
    for (int k = 0; k < static_cast<int>(layout.size()); ++k) {
        const auto open = doors(layout, k);
        const Door door = open[random.below(open.size())];
        layout.put(k, sample_place(layout, k, door, random));
    }
}

/// Whether every body lies where the scene lets it lie.
bool lawful(const Layout& layout)
{
    for (int k = 0; k < static_cast<int>(layout.size()); ++k) {
        const Place& p = layout.place(k);
        if ((layout.scene().fits[static_cast<std::size_t>(k)][static_cast<std::size_t>(p.cell + 1)] & bit(p.form)) ==
                0 ||
            std::abs(p.c * p.c + p.s * p.s - 1) > 1e-9) {
            return false;
        }
    }
    return true;
}

} // namespace

TEST_CASE("the random numbers are those of the published generator, the same everywhere")
{
    // splitmix64 from seed 0 gives e220a8397b1dcdaf, 6e789e6aa1b965f4, 06c45d188009454f, f88bb8a8724c81ec (S. Vigna,
    // reference code of splitmix64; from memory); xoshiro256** then gives rotl(s1 * 5, 7) * 9 at first.
    std::uint64_t second = 0x6e789e6aa1b965f4ULL * 5;
    second = ((second << 7) | (second >> 57)) * 9;
    CHECK(Random(0).next() == second);
    Random random(5);
    double sum = 0;
    for (int k = 0; k < 10000; ++k) {
        const double u = random.unit();
        CHECK((u >= 0 && u < 1));
        CHECK(random.below(7) < 7);
        sum += u;
        const auto d = random.direction();
        CHECK(d[0] * d[0] + d[1] * d[1] == Approx(1));
    }
    CHECK(sum / 10000 == Approx(0.5).margin(0.02));
    CHECK(random.between(3, 3) == 3);
}

TEST_CASE("separation succeeds where there is ample room, and means it")
{
    int freed = 0;
    const int trials = count(40, 6);
    for (int trial = 0; trial < trials; ++trial) {
        const Scene scene = trial % 2 == 0 ? mixed() : tins(7);
        Random random(100 + static_cast<std::uint64_t>(trial));
        Layout layout(scene, trial % 2 == 0 ? box_envelope(150, 130, 110) : round_envelope(68, 31));
        scatter(layout, random);
        const double before = layout.total_overlap();
        const bool free = separate(layout, random, {20, 3, 24});
        CAPTURE(trial, before, layout.total_overlap());
        CHECK(lawful(layout));
        CHECK(layout.total_overlap() <= before);
        CHECK(free == (layout.total_overlap() <= negligible_overlap(scene)));
        freed += free ? 1 : 0;
    }
    CHECK(freed >= trials * 9 / 10);
}

TEST_CASE("separation never claims room that is not there")
{
    for (int trial = 0; trial < count(10, 2); ++trial) {
        const Scene scene = tins(7); // seven need a radius of 60 (ratio 3)
        Random random(200 + static_cast<std::uint64_t>(trial));
        Layout layout(scene, round_envelope(58, 30));
        scatter(layout, random);
        const double before = layout.total_overlap();
        CHECK_FALSE(separate(layout, random, {12, 2, 24}));
        CHECK(layout.total_overlap() > negligible_overlap(scene));
        CHECK(layout.total_overlap() <= before);
        CHECK(lawful(layout));
    }
}

TEST_CASE("descent lowers the cost of a place, and tells it")
{
    const Scene scene = tins(3);
    const Weights weights(3);
    for (std::uint64_t seed = 1; seed <= 50; ++seed) {
        Random random(seed);
        Layout layout(scene, round_envelope(60, 31));
        scatter(layout, random);
        Place place = layout.place(0);
        const double before = layout.cost_at(0, place, weights, 1e300);
        const double after = descend(layout, 0, place, weights, 5, 0.01, random);
        CHECK(after <= before);
        CHECK(layout.cost_at(0, place, weights, 1e300) == Approx(after).margin(1e-12));
        CHECK(place.cell == layout.place(0).cell);
    }
}

TEST_CASE("doors are all the ways in, and no other")
{
    const Scene scene = mixed();
    const Layout layout(scene, box_envelope(150, 130, 110));
    for (int k = 0; k < static_cast<int>(layout.size()); ++k) {
        std::size_t allowed = 0;
        for (int cell = outermost; cell < static_cast<int>(layout.size()); ++cell) {
            for (const Form form : {Form::standing, Form::on_end, Form::on_side}) {
                allowed += layout.may_enter(k, cell, form) ? 1 : 0;
            }
        }
        const auto open = doors(layout, k);
        CHECK(open.size() == allowed);
        for (const Door& door : open) {
            CHECK(layout.may_enter(k, door.cell, door.form));
        }
    }
}

TEST_CASE("a first layout is free of overlap and as high as its highest body")
{
    for (int trial = 0; trial < count(60, 10); ++trial) {
        const Scene scene = trial % 3 == 0 ? tins(9) : mixed();
        Random random(300 + static_cast<std::uint64_t>(trial));
        Layout layout(scene, trial % 2 == 0 ? round_envelope(60 + trial % 40, 10) : box_envelope(110, 105, 10));
        construct(layout, random, 0.25 * (trial % 5), 40);
        CAPTURE(trial);
        CHECK(lawful(layout));
        CHECK(layout.total_overlap() == Approx(0).margin(1e-9));
        double top = 0;
        for (const int k : layout.inside(outermost)) {
            for (const Piece& piece : layout.visible(k)) {
                top = std::max(top, piece.z + piece.half_height);
            }
        }
        CHECK(layout.envelope().height == Approx(top));
    }
}

TEST_CASE("a tight envelope holds all and is no larger than before")
{
    for (int trial = 0; trial < count(60, 10); ++trial) {
        const Scene scene = mixed();
        Random random(400 + static_cast<std::uint64_t>(trial));
        Layout layout(scene, trial % 2 == 0 ? round_envelope(90, 10) : box_envelope(160, 130, 10));
        construct(layout, random, 0.5, 40);
        const double before = volume(layout.envelope());
        tighten(layout);
        CAPTURE(trial);
        CHECK(layout.total_overlap() == Approx(0).margin(1e-9));
        CHECK(volume(layout.envelope()) <= before * (1 + 1e-12));
        const double tight = volume(layout.envelope());
        tighten(layout);
        CHECK(volume(layout.envelope()) == Approx(tight).epsilon(1e-9));
    }
    // Two tins, seen askew: the circle round them has the width of both, wherever they lay.
    const Scene scene = tins(2);
    Layout layout(scene, round_envelope(500, 500));
    layout.put(0, {outermost, Form::standing, 100, 50, 40, 1, 0});
    layout.put(1, {outermost, Form::standing, 100 + 24, 50 + 32, 50, 1, 0});
    tighten(layout);
    CHECK(layout.envelope().radius == Approx(40));
    CHECK(layout.envelope().height == Approx(40)); // 10 mm apart in height
    CHECK(layout.place(0).x == Approx(-12));
    CHECK(layout.place(0).z == Approx(15));
}
