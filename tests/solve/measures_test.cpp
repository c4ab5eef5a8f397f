// SPDX-License-Identifier: GPL-3.0-or-later
/// Tolerances and play from the kit's text to the proved bundle.
#include <catch2/catch.hpp>

#include "nesting/bundle_of_layout.hpp"
#include "packing/construct.hpp"
#include "solve/comfort.hpp"
#include "support/kit_text.hpp"
#include "tuckwright/fits.hpp"
#include "tuckwright/play.hpp"

using namespace tuckwright;
using namespace tuckwright::test;

namespace {

/// A cup that slides into the pot as measured, with 1 mm to spare all round.
Kit cup_and_pot()
{
    KitText text(round_bundle(), 0.5);
    text.item("pot", "cylinder: {diameter: 64, height: 60}, inside: {cylinder: {diameter: 62 ±0.5, height: 58}}");
    text.item("cup", "cylinder: {diameter: 60 ±1, height: 40}");
    return kit_of(text.text());
}

/// A post that may stand in a wide tray or in a narrow one; the trays fill the bundle.
Kit post_and_trays()
{
    KitText text(box_bundle(136, 62, 50), 0);
    text.item("wide", box(102, 62, 50) + ", inside: {wall: 1, base: 2}, upright: yes");
    text.item("narrow", box(34, 62, 50) + ", inside: {wall: 1, base: 2}, upright: yes");
    text.item("post", box(30, 30, 40) + ", upright: yes");
    return kit_of(text.text());
}

} // namespace

TEST_CASE("what slides in as measured, but not for sure, stays outside in the worst case")
{
    Kit kit = cup_and_pot();
    const Bundle measured = solved(kit, Effort::quick);
    REQUIRE(has_bundle(measured.status));
    CHECK_FALSE(measured.worst_case);
    CHECK(measured.items[1].in == Lodging{0, 0});
    REQUIRE(measured.fits.size() == 1);
    CHECK(measured.fits[0].room == Approx(1));
    CHECK(measured.fits[0].worst == Approx(0.25)); // less than the clearance of 0.5
    CHECK(measured.fits == fits(measured));
    kit.worst_case = true;
    const Bundle worst = solved(kit, Effort::quick);
    REQUIRE(has_bundle(worst.status));
    CHECK(worst.worst_case);
    CHECK_FALSE(worst.items[1].in);
    CHECK(worst.items[1].solids[0].shape == Shape(Cylinder{61, 40}));
    CHECK(worst.items[1].solids_off[0] == Spread{{1, 0, 0}});
    CHECK(volume_ml(worst.envelope) > 1.5 * volume_ml(measured.envelope));
}

TEST_CASE("a kit that can't meet its limits for sure says so in the worst case alone")
{
    KitText text("{shape: cylinder, limits: {diameter: 64, height: 60}}", 0.5);
    text.item("pot", "cylinder: {diameter: 63.5, height: 60}, inside: {cylinder: {diameter: 62 ±0.5, height: 58}}");
    text.item("cup", "cylinder: {diameter: 60 ±1, height: 40}");
    Kit kit = kit_of(text.text());
    CHECK(has_bundle(solved(kit, Effort::quick).status));
    kit.worst_case = true;
    const Bundle worst = solved(kit, Effort::quick);
    CHECK_FALSE(has_bundle(worst.status));
    CHECK(worst.worst_case);
}

TEST_CASE("in the same room, a thing stands where it has less play")
{
    const Kit kit = post_and_trays();
    auto scene = std::make_shared<const nesting::KitScene>(nesting::kit_scene(kit, {}));
    packing::Layout layout(scene->scene, {false, 0, 68, 31, 50});
    packing::Place place;
    place.z = 25;
    place.x = -17;
    layout.put(0, place);
    place.x = 51;
    layout.put(1, place);
    place.cell = 0;
    place.x = 0;
    place.z = 20;
    layout.put(2, place);
    const nesting::Proposal from{scene, layout, packing::volume(layout.envelope())};
    const auto judged = [&](const nesting::Proposal& proposal) {
        return discomfort(kit, nesting::bundle_of_layout(kit, *proposal.scene, proposal.layout));
    };
    const Discomfort before = judged(from);
    REQUIRE(at_ease(before));
    CHECK(before.play == Approx(70 + 30 + 8).margin(1));
    ComfortOptions options;
    options.work = 400'000;
    CHECK(judged(comfortable(kit, from, options)).play == before.play); // at ease, and no work for play
    options.calm = options.work;
    const Discomfort after = judged(comfortable(kit, from, options));
    CHECK(at_ease(after));
    CHECK(after.play == Approx(2 + 30 + 8).margin(1));
}

TEST_CASE("of bundles of the same size the one with less play comes out")
{
    for (const std::uint64_t seed : {1, 2, 3}) {
        const Bundle bundle = solved(post_and_trays(), Effort::quick, seed);
        REQUIRE(has_bundle(bundle.status));
        CHECK(volume_ml(bundle.envelope) == Approx(136 * 62 * 50 / 1000.0));
        CHECK(bundle.items[2].in == Lodging{1, 0});
        CHECK(bundle.plays == plays(bundle));
        CHECK(total_play(bundle.plays) == Approx(40).margin(1));
    }
}
