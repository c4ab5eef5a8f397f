// SPDX-License-Identifier: GPL-3.0-or-later
/// Tiny kits against a brute-force twin: solve never ends above it, and no bound does.
#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <numbers>

#include "nesting/branch_and_bound.hpp"
#include "solve/coaxial_twin.hpp"
#include "support/kit_text.hpp"
#include "support/random_solids.hpp"
#include "support/workload.hpp"

using namespace tuckwright;
using namespace tuckwright::test;
using twin::Tin;

namespace {

constexpr double clearance = 0.5;

double round_ml(double diameter, double height) { return std::numbers::pi / 4 * diameter * diameter * height / 1000; }

Tin cup(double diameter, double height) { return {diameter, height, diameter - 2, 1, false, 0}; }
Tin box_with_lid(double diameter, double height) { return {diameter, height, diameter - 2, 1, true, height - 2}; }
Tin solid(double diameter, double height) { return {diameter, height, 0, 0, false, 0}; }

KitText text_of(const std::vector<Tin>& tins, bool upright)
{
    KitText kit(round_bundle(), clearance);
    for (std::size_t k = 0; k < tins.size(); ++k) {
        std::string fields = cylinder(tins[k].diameter, tins[k].height);
        if (tins[k].cavity > 0) {
            const double depth = tins[k].shut ? tins[k].depth : tins[k].height - tins[k].floor;
            fields += ", inside: {" + cylinder(tins[k].cavity, depth) + (tins[k].shut ? ", lid: own}" : ", opens: top}");
        }
        kit.item("tin-" + std::to_string(k), fields + (upright ? ", upright: yes" : ""));
    }
    return kit;
}

/// A few tins, each likely to go into another: sizes fall from one to the next.
std::vector<Tin> random_tins(Dice& dice)
{
    std::vector<Tin> tins;
    double diameter = dice.between(90, 140), height = dice.between(50, 140);
    for (int k = 2 + dice.below(3); k > 0; --k) {
        const double d = std::round(diameter * 10) / 10, h = std::round(height * 10) / 10;
        switch (dice.below(4)) {
        case 0: tins.push_back(solid(d, h)); break;
        case 1: tins.push_back(box_with_lid(d, h)); break;
        default: tins.push_back(cup(d, h));
        }
        diameter = std::max(20.0, diameter - dice.between(0, 30));
        height = std::max(15.0, height + dice.between(-40, 15));
    }
    return tins;
}

} // namespace

TEST_CASE("the twin itself finds what can be seen by hand")
{
    // A cup in a cup: 100 wide, as high as the outer one, or a little more where the inner stands out.
    CHECK(twin::least_volume_ml({cup(100, 80), cup(90, 70)}, clearance) == Approx(round_ml(100, 80)));
    CHECK(twin::least_volume_ml({cup(100, 80), cup(90, 100)}, clearance) == Approx(round_ml(100, 101)));
    // Too wide by a hair: 97.1 of 98 - 2 * 0.5. Side by side would be twice as wide.
    CHECK(twin::least_volume_ml({cup(100, 80), solid(97, 70)}, clearance) == Approx(round_ml(100, 80)));
    CHECK(twin::least_volume_ml({cup(100, 80), solid(97.1, 70)}, clearance) == Approx(round_ml(100, 150)));
    // A lid that is shut lets nothing stand out: the rod of 79 stays beside, 100 + 10 wide.
    CHECK(twin::least_volume_ml({box_with_lid(100, 80), solid(10, 78)}, clearance) == Approx(round_ml(100, 80)));
    CHECK(twin::least_volume_ml({box_with_lid(100, 80), solid(10, 79)}, clearance) == Approx(round_ml(110, 80)));
    // Three in one another.
    CHECK(twin::least_volume_ml({solid(60, 60), cup(80, 70), cup(100, 80)}, clearance) == Approx(round_ml(100, 80)));
    // Two in one: 30 + 40 on a floor of 1.
    CHECK(twin::least_volume_ml({cup(100, 80), solid(90, 30), solid(80, 40)}, clearance) == Approx(round_ml(100, 80)));
    CHECK(twin::least_volume_ml({cup(100, 80), solid(90, 30), solid(80, 60)}, clearance) == Approx(round_ml(100, 91)));
}

TEST_CASE("solve never ends above the twin, nor the bound above either")
{
    Dice dice(71);
    for (int trial = 0; trial < count(50, 8); ++trial) {
        const auto tins = random_tins(dice);
        const KitText kit = text_of(tins, trial % 3 != 0); // lying down may be better still
        const double least = twin::least_volume_ml(tins, clearance);
        const Bundle bundle = solved(kit, Effort::quick);
        INFO(trial << "\n" << kit.text());
        if (!has_bundle(bundle.status)) {
            FAIL_CHECK("no bundle, though there are no limits");
            continue;
        }
        CHECK(volume_ml(bundle.envelope) <= least * 1.001);
        CHECK(bundle.lower_bound_ml <= least * (1 + 1e-9));
        CHECK(bundle.lower_bound_ml <= volume_ml(bundle.envelope));
    }
}

TEST_CASE("no bound along the axes is above the twin, whatever the incumbent")
{
    Dice dice(72);
    constexpr std::uint64_t work = 200'000;
    double sum = 0;
    const int trials = count(300, 30);
    for (int trial = 0; trial < trials; ++trial) {
        const auto tins = random_tins(dice);
        const Kit kit = kit_of(text_of(tins, trial % 3 != 0).text());
        const double least = twin::least_volume_ml(tins, clearance);
        INFO(trial << "\n" << text_of(tins, trial % 3 != 0).text());
        for (const double incumbent : {least, 1.01 * least, 1.3 * least}) {
            CHECK(nesting::bound_along_axes_ml(kit, incumbent, work) <= least * (1 + 1e-9));
        }
        sum += nesting::bound_along_axes_ml(kit, least, work) / least;
    }
    CHECK(sum / trials > 0.85); // and most are near to it
}

TEST_CASE("dimensions of an odd number of nanometres pack as well as others")
{
    // Half of such a height is not on the grid: a tin's centre can't lie exactly half its height above a floor.
    const std::vector<Tin> tins{cup(100.000001, 80.000003), box_with_lid(90.000003, 70.000001), solid(80.000001, 60.000003)};
    const double least = twin::least_volume_ml(tins, clearance);
    const Bundle bundle = solved(text_of(tins, true), Effort::quick);
    REQUIRE(has_bundle(bundle.status));
    CHECK(volume_ml(bundle.envelope) <= least * 1.001);
    const Bundle alone = solved(KitText(round_bundle()).item("tin", cylinder(80.000001, 60.000003)), Effort::quick);
    REQUIRE(has_bundle(alone.status));
    CHECK(alone.status == Status::proved_best);
}
