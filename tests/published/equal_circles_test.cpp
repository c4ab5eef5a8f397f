// SPDX-License-Identifier: GPL-3.0-or-later
/// Equal discs in the smallest circle, as cylinders of one height in a round bundle of that height.
#include <catch2/catch.hpp>

#include "support/kit_text.hpp"
#include "support/workload.hpp"

using namespace tuckwright;
using namespace tuckwright::test;

namespace {

struct Circles {
    int n;
    double ratio; ///< least radius of the circle round n discs of radius 1
};

// E. Specht, "The best known packings of equal circles in a circle", tables of radii; the same in E. G. Birgin and
// J. M. Gentil, "New and improved results for packing identical unitary radius circles within triangles, rectangles and
// strips", Computers & Operations Research 37 (2010), Table 1. Proved for n <= 13 and n = 19.
constexpr Circles best_known[] = {{2, 2.0},
                                  {3, 2.1547005383792515},
                                  {4, 2.4142135623730950},
                                  {5, 2.7013016167040798},
                                  {6, 3.0},
                                  {7, 3.0},
                                  {8, 3.3047648709624865},
                                  {9, 3.6131259297527530},
                                  {10, 3.8130256313981243},
                                  {11, 3.9238044001630872},
                                  {12, 4.0296019301161834},
                                  {13, 4.2360679774997897},
                                  {19, 4.8637033051562731}};

/// Lower than wide, so that in a bundle as low as they are all must stand: only the plan counts.
constexpr double diameter = 40, height = 30;

void compare(const Circles& circles)
{
    KitText kit("{shape: cylinder, limits: {height: " + mm(height) + "}}");
    kit.item("tin", cylinder(diameter, height), circles.n);
    const Bundle bundle = solved(kit, Effort::normal);
    INFO(circles.n << " discs");
    REQUIRE(has_bundle(bundle.status));
    const auto& envelope = std::get<Cylinder>(bundle.envelope);
    CHECK(envelope.height == height);
    const double ratio = envelope.diameter / diameter;
    CHECK(ratio <= circles.ratio * (1 + 1e-3));
    CHECK(ratio >= circles.ratio * (1 - 1e-9)); // proved: no circle is smaller
    CHECK(bundle.lower_bound_ml <= volume_ml(Cylinder{circles.ratio * diameter, height}) * (1 + 1e-9));
}

} // namespace

TEST_CASE("two to seven equal discs in a circle come within a thousandth of the best")
{
    for (const auto& circles : best_known) {
        if (circles.n <= 7 && (!slow_build || circles.n % 2 == 1)) {
            compare(circles);
        }
    }
}

TEST_CASE("eight to thirteen and nineteen equal discs in a circle come within a thousandth of the best", "[heavy]")
{
    for (const auto& circles : best_known) {
        if (circles.n > 7 && (!slow_build || circles.n == 8)) {
            compare(circles);
        }
    }
}
