// SPDX-License-Identifier: GPL-3.0-or-later
/// Bands that go over a shut lid and under its vessel.
#include <algorithm>
#include <catch2/catch.hpp>
#include <string>

#include "solve/lid_bands.hpp"
#include "support/kit_text.hpp"

using namespace tuckwright;
using namespace tuckwright::test;

namespace {

/// A pot of 120 x 80 with a lid of which 3 mm stand above the rim and 9 in all, with more fields of either, and a band.
Kit banded(double girth, const std::string& pot = "", const std::string& lid = "122, height: 12")
{
    return kit_of("kit: Banded\nbundle: {}\nitems:\n"
                  "  - {id: pot, weight: 200, cylinder: {diameter: 120, height: 80}, inside: {wall: 1, base: 1}" +
                  pot +
                  "}\n"
                  "  - {id: lid, weight: 60, cylinder: {diameter: " +
                  lid +
                  "}, closes: {item: pot, adds: 3, intrudes: 6}}\n"
                  "  - {id: cup, weight: 60, cylinder: {diameter: 80, height: 70}, inside: {wall: 1, base: 1}}\n"
                  "  - {id: strap, name: 'Strap, red', weight: 8, band: {girth: " +
                  mm(girth) + ", over: lid}}\n");
}

double way(const Kit& kit) { return way_over(kit.items[1], kit.items[0]); }

} // namespace

TEST_CASE("the way over a lid and under its vessel counts what stands above the rim, a wide lid, and parts",
          "[solve][covers]")
{
    CHECK(way(banded(900)) == Approx(2 * (122 + 83))); // the lid is wider than the pot
    CHECK(way(banded(900, "", "118.5, height: 9")) == Approx(2 * (120 + 83)));
    // A handle at the right makes it wider only along x, feet make it higher; on both sides it is wider either way.
    CHECK(way(banded(900, ", parts: [{box: {length: 30, width: 12, height: 40}, at: right, up: 9}]")) ==
          Approx(2 * (122 + 83)));
    CHECK(way(banded(900, ", parts: [{box: {length: 30, width: 12, height: 40}, at: right, up: 9}, "
                          "{box: {length: 12, width: 25, height: 40}, at: back, up: 9}]")) ==
          Approx(2 * (61 + 60 + 25 + 83)));
    CHECK(way(banded(900, ", parts: [{cylinder: {diameter: 90, height: 5}, at: under}]")) == Approx(2 * (122 + 88)));
    Item box, lid; // the shorter side of a box
    box.outside = Box{100, 60, 40};
    lid.outside = Box{100, 60, 8};
    lid.closes = Closure{0, 2, 6};
    CHECK(way_over(lid, box) == Approx(2 * (60 + 42)));
}

TEST_CASE("a band too short for its lid is told before any search", "[solve][covers]")
{
    CHECK(lid_band_misfit(banded(410)) == std::nullopt);
    CHECK(lid_band_misfit(banded(409.9)) ==
          "it is 410.0 mm round over the shut lid and under the pot, and the strap is only 409.9 mm round");
    const Bundle bundle = solved(banded(409.9), Effort::quick);
    CHECK(bundle.status == Status::does_not_fit);
    CHECK(bundle.explanation.find("over the shut lid") != std::string::npos);
    // With a form that it does go round, nothing is proved.
    const std::string low =
        ", forms: [{name: pressed flat, cylinder: {diameter: 120, height: 40}, inside: {wall: 1, base: 1}}]";
    CHECK(lid_band_misfit(banded(409.9, low)) == std::nullopt);
    CHECK(lid_band_misfit(banded(329.9, low)).has_value());
}

TEST_CASE("a lid that a band holds is shut, though it would pack smaller loose", "[solve][covers]")
{
    // A flask that stands out of the pot, so that the lid packs better loose.
    const std::string flask = "  - {id: flask, weight: 90, upright: yes, cylinder: {diameter: 70, height: 125}}\n";
    const auto kit = [&](const std::string& over) {
        return kit_of("kit: Banded\nclearance: 0.5\nbundle: {}\nitems:\n"
                      "  - {id: pot, weight: 200, cylinder: {diameter: 120, height: 80}, inside: {wall: 1, base: 1}}\n"
                      "  - {id: lid, weight: 60, cylinder: {diameter: 121, height: 9}, closes: {item: pot, adds: 3, "
                      "intrudes: 6}}\n" +
                      flask + "  - {id: strap, weight: 8, band: {girth: 640" + over + "}}\n");
    };
    const Bundle free = solved(kit(""), Effort::quick), held = solved(kit(", over: lid"), Effort::quick);
    REQUIRE(has_bundle(free.status));
    REQUIRE(has_bundle(held.status));
    CHECK_FALSE(free.items[1].closes);
    CHECK(held.items[1].closes == std::optional<std::size_t>(0));
    CHECK(volume_ml(held.envelope) > volume_ml(free.envelope));

    CHECK(std::any_of(held.steps.begin(), held.steps.end(), [](const Step& step) {
        return step.item == 1 && step.text == "Shut pot with lid. Put strap over lid and under pot.";
    }));
    CHECK(total_weight_g(held) == Approx(358));

    Bundle loose = free; // the band told to hold a lid that is carried loose
    loose.bands = held.bands;
    const auto objections = check(loose);
    REQUIRE_FALSE(objections.empty());
    CHECK(objections.front().what.find("that is carried loose") != std::string::npos);
    CHECK_FALSE(check_against(free, kit(", over: lid")).empty());
    CHECK_FALSE(check_against(held, kit("")).empty());
}
