// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <catch2/catch.hpp>

#include "nesting/kit_scene.hpp"
#include "nesting/rework.hpp"
#include "packing/construct.hpp"
#include "support/kit_text.hpp"

using namespace tuckwright;
using namespace tuckwright::nesting;
using namespace tuckwright::test;

namespace {

Kit pots()
{
    KitText kit(round_bundle(), 0.5);
    kit.item("pot", cylinder(100, 80) + ", inside: {wall: 1, base: 1}");
    kit.item("cup", cylinder(70, 60) + ", inside: {wall: 1, base: 1}", 2);
    kit.item("can", cylinder(50, 40), 2);
    kit.item("rod", cylinder(8, 95));
    return kit_of(kit.text());
}

/// Everything on the table or on one another.
packing::Layout piled(const KitScene& scene, std::uint64_t seed)
{
    packing::Layout layout(scene.scene, {true, 60, 0, 0, 500});
    packing::Random random(seed);
    packing::construct(layout, random, 0, 60);
    return layout;
}

bool is_whole(const packing::Layout& layout)
{
    for (int body = 0; body < static_cast<int>(layout.size()); ++body) {
        const auto& beside = layout.inside(layout.place(body).cell);
        if (std::count(beside.begin(), beside.end(), body) != 1) {
            return false;
        }
    }
    return true;
}

} // namespace

TEST_CASE("what is rebuilt overlaps nothing, and nothing is lost")
{
    const KitScene scene = kit_scene(pots(), {});
    for (std::uint64_t seed = 1; seed <= 20; ++seed) {
        packing::Layout layout = piled(scene, seed);
        packing::Random random(seed);
        REQUIRE(rebuild_some(layout, random));
        CHECK(layout.total_overlap() < 1e-6);
        CHECK(is_whole(layout));
    }
}

TEST_CASE("what has no place in any cell can't be rebuilt")
{
    KitScene scene = kit_scene(pots(), {});
    packing::Layout layout = piled(scene, 1);
    for (auto& row : scene.scene.fits) {
        std::fill(row.begin(), row.end(), 0U);
    }
    packing::Random random(1);
    CHECK_FALSE(rebuild_some(layout, random));
}

TEST_CASE("rework nests a pile, and never makes it larger")
{
    const KitScene scene = kit_scene(pots(), {});
    for (std::uint64_t seed = 1; seed <= 5; ++seed) {
        packing::Layout layout = piled(scene, seed);
        const double before = packing::volume(layout.envelope());
        packing::Random random(seed);
        const packing::Envelope room = layout.envelope();
        ReworkOptions options;
        options.trials = 0;
        rework(layout, room, random, options);
        CHECK(packing::volume(layout.envelope()) == before);
        options.trials = 60;
        rework(layout, room, random, options);
        CHECK(packing::volume(layout.envelope()) < 0.8 * before);
        CHECK(layout.total_overlap() < 1e-6);
        CHECK(is_whole(layout));
    }
}
