// SPDX-License-Identifier: GPL-3.0-or-later
/// How many equal tins a round pot takes, and whether the best set is that of packing every set.
#include <catch2/catch.hpp>
#include <random>

#include "advice/best_set.hpp"
#include "advice/vessel_kit.hpp"
#include "support/kit_text.hpp"
#include "support/workload.hpp"
#include "tuckwright/fill.hpp"

using namespace tuckwright;
using namespace tuckwright::test;
using advice::Counts;

namespace {

// Least radius of the circle round n discs of radius 1. E. Specht, "The best known packings of equal circles in a circle",
// table of radii; E. G. Birgin and J. M. Gentil, Computers & Operations Research 37 (2010), Table 1. Proved for n <= 13;
// that of 14 is the best known.
constexpr double ratios[] = {0,
                             1,
                             2,
                             2.1547005383792515,
                             2.4142135623730950,
                             2.7013016167040798,
                             3.0,
                             3.0,
                             3.3047648709624865,
                             3.6131259297527530,
                             3.8130256313981243,
                             3.9238044001630872,
                             4.0296019301161834,
                             4.2360679774997897,
                             4.3284285548608370};

/// Tins 20 mm in radius in a pot just as deep as they are high, so that they stand side by side.
int tins_in(double radius)
{
    const double inside = 40 * radius + 1; // and 0.5 mm of clearance on each side
    const Kit kit = kit_of("kit: Tins\nitems:\n"
                           "- {id: pot, weight: 1, cylinder: {diameter: " + mm(inside + 2) + ", height: 32}, inside: {cylinder: {diameter: " +
                           mm(inside) + ", height: 30}, lid: own}}\n"
                           "- {id: tin, weight: 1, count: 16, cylinder: {diameter: 40, height: 30}}\n");
    SolveOptions options;
    const Filling filling = fill(kit, "pot", options);
    REQUIRE(check(filling.bundle).empty());
    return filling.things;
}

} // namespace

TEST_CASE("a round pot takes the published number of equal tins")
{
    for (int n = slow_build ? 12 : 1; n <= 13; ++n) {
        const double tight = ratios[n] * 1.001, next = ratios[n + 1];
        if (next > tight) { // seven need no more room than six
            CAPTURE(n);
            CHECK(tins_in(tight) == n);
            CHECK(tins_in((tight + next) / 2) == n);
        }
    }
}
