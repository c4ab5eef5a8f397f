// SPDX-License-Identifier: GPL-3.0-or-later
/// Bundles of the least size that people would rather build.
#include <catch2/catch.hpp>

#include "nesting/bundle_of_layout.hpp"
#include "packing/construct.hpp"
#include "packing/polish.hpp"
#include "solve/comfort.hpp"
#include "support/kit_text.hpp"
#include "tuckwright/footing.hpp"

using namespace tuckwright;
using namespace tuckwright::test;

namespace {

/// A wide block above two thin posts that stand close together at one side: it would topple.
nesting::Proposal block_on_posts(const Kit& kit)
{
    auto scene = std::make_shared<const nesting::KitScene>(nesting::kit_scene(kit, {}));
    packing::Layout layout(scene->scene, {false, 0, 50, 30, 80});
    packing::Place place;
    place.z = 60;
    layout.put(0, place);
    place.x = -40;
    place.y = -20;
    place.z = 20;
    layout.put(1, place);
    place.y = 20;
    layout.put(2, place);
    return {scene, layout, packing::volume(layout.envelope())};
}

Kit block_and_posts()
{
    KitText kit(box_bundle(), 0);
    kit.item("block", box(100, 60, 40) + ", upright: yes");
    kit.item("post", box(10, 10, 40) + ", upright: yes", 2);
    return kit_of(kit.text());
}

} // namespace

TEST_CASE("a pile that topples is rearranged within its size")
{
    const Kit kit = block_and_posts();
    const nesting::Proposal from = block_on_posts(kit);
    const Discomfort before = discomfort(kit, nesting::bundle_of_layout(kit, *from.scene, from.layout));
    REQUIRE(before.toppling == 1);
    ComfortOptions options;
    options.work = 200'000;
    for (const unsigned threads : {1u, 2u}) {
        options.threads = threads;
        const nesting::Proposal to = comfortable(kit, from, options);
        const Discomfort after = discomfort(kit, nesting::bundle_of_layout(kit, *to.scene, to.layout));
        CHECK(after.toppling == 0);
        CHECK(after.dropping == 0);
        CHECK(packing::worst_violation(to.layout, {}) < 1e-7);
        CHECK(to.layout.envelope().height <= 80 + 1e-6);
        CHECK(to.layout.envelope().half_length <= 50 + 1e-6);
        CHECK(to.layout.envelope().half_width <= 30 + 1e-6);
    }
}

TEST_CASE("without work left, an arrangement stays as comfortable as it was")
{
    const Kit kit = block_and_posts();
    const nesting::Proposal from = block_on_posts(kit);
    const nesting::Proposal to = comfortable(kit, from, {});
    CHECK(discomfort(kit, nesting::bundle_of_layout(kit, *to.scene, to.layout)) <=
          discomfort(kit, nesting::bundle_of_layout(kit, *from.scene, from.layout)));
}

TEST_CASE("a lid is shut where that costs nothing, and nothing is left hanging over a mouth")
{
    KitText text(round_bundle(), 0.5);
    text.item("pot", cylinder(110, 90) + ", inside: {wall: 1, base: 1}");
    text.item("lid", cylinder(110, 10) + ", closes: {item: pot, adds: 10, intrudes: 0}"); // as high shut as loose
    text.item("plate", cylinder(100, 12));
    text.item("cup", cylinder(70, 50) + ", inside: {wall: 1, base: 1}");
    for (const std::uint64_t seed : {1, 2, 3}) {
        const Bundle bundle = solved(text, Effort::quick, seed);
        REQUIRE(has_bundle(bundle.status));
        CHECK(bundle.items[1].closes == std::size_t{0});
        for (const Footing& footing : footings(bundle)) {
            CHECK(footing.carried);
        }
    }
}
