// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "nesting/hopping.hpp"
#include "nesting/kit_scene.hpp"
#include "packing/relaxation.hpp"
#include "packing/separation.hpp"
#include "support/kit_text.hpp"

using namespace tuckwright;
using namespace tuckwright::nesting;
using namespace tuckwright::test;

namespace {

/// Seven equal discs as high as a round bundle, thrown in anywhere.
packing::Layout seven_discs(const KitScene& kit, double radius, packing::Random& random)
{
    packing::Layout layout(kit.scene, {true, radius, 0, 0, 20});
    for (int body = 0; body < 7; ++body) {
        packing::Place place;
        place.x = random.between(-15, 15);
        place.y = random.between(-15, 15);
        place.z = 10;
        layout.put(body, place);
    }
    return layout;
}

KitScene scene_of_seven()
{
    KitText kit(round_bundle(60.2, 20), 0);
    kit.item("disc", cylinder(20, 20), 7);
    return kit_scene(kit_of(kit.text()), {});
}

} // namespace

// Seven discs of radius 10 lie in a circle of radius 30: one in the middle, six round it (common knowledge).
TEST_CASE("hops lead to a layout without overlap where pushing apart alone jams")
{
    const KitScene kit = scene_of_seven();
    const double none = packing::negligible_overlap(kit.scene);
    int jammed = 0;
    for (std::uint64_t seed = 1; seed <= 12; ++seed) {
        packing::Random random(seed);
        packing::Layout layout = seven_discs(kit, 30.05, random);
        packing::Layout pushed = layout;
        packing::relax(pushed, packing::Weights(7), 200);
        jammed += pushed.total_overlap() > none ? 1 : 0;
        HopEffort effort;
        effort.patience = 200;
        CHECK(hop(layout, random, effort));
        CHECK(layout.total_overlap() <= none);
    }
    CHECK(jammed > 0);
}

TEST_CASE("hops that lead nowhere end, with no more overlap than at first")
{
    const KitScene kit = scene_of_seven();
    packing::Random random(3);
    packing::Layout layout = seven_discs(kit, 28, random);
    const double before = layout.total_overlap();
    CHECK_FALSE(hop(layout, random, HopEffort{}));
    CHECK(layout.total_overlap() < before);
    CHECK(layout.total_overlap() > packing::negligible_overlap(kit.scene));
}

TEST_CASE("hops end when they are stopped")
{
    const KitScene kit = scene_of_seven();
    packing::Random random(3);
    packing::Layout layout = seven_discs(kit, 28, random);
    int asked = 0;
    HopEffort effort;
    effort.stop = [&asked] { return ++asked == 3; };
    CHECK_FALSE(hop(layout, random, effort));
    CHECK(asked == 3);
}
