// SPDX-License-Identifier: GPL-3.0-or-later
/// Bounds along the axes: bundles that are the smallest, worked out by hand, and never above what is known to exist.
#include <catch2/catch.hpp>
#include <cmath>
#include <numbers>

#include "nesting/branch_and_bound.hpp"
#include "support/kit_text.hpp"

using namespace tuckwright;
using namespace tuckwright::nesting;
using namespace tuckwright::test;

namespace {

constexpr std::uint64_t work = 2'000'000;

double round_ml(double diameter, double height) { return std::numbers::pi / 4 * diameter * diameter * height / 1000; }

double bound(const KitText& text, double incumbent_ml) { return bound_along_axes_ml(kit_of(text.text()), incumbent_ml, work); }

/// The least bundle is proved as such, and an incumbent that is larger is not.
void check_smallest(const KitText& text, double least_ml)
{
    INFO(text.text());
    const double proved = bound(text, least_ml);
    CHECK(proved <= least_ml);
    CHECK(proved >= least_ml * (1 - 1e-7));
    for (const double larger : {1.0000004, 1.00001, 1.001, 1.1, 1.5}) {
        const double of_larger = bound(text, larger * least_ml);
        CHECK(of_larger <= least_ml * (1 + 1e-9));
        CHECK(of_larger >= least_ml * 0.5);
    }
}

std::string inside(double diameter, double height, const std::string& closed = "opens: top")
{
    return ", inside: {" + cylinder(diameter, height) + ", " + closed + "}";
}

} // namespace

TEST_CASE("what can't lie side by side stands one above the other")
{
    KitText pans(round_bundle());
    pans.item("pan", cylinder(200, 40)).item("lid", cylinder(190, 20)).item("plate", cylinder(180, 10));
    check_smallest(pans, round_ml(200, 70));
    KitText bricks(box_bundle());
    bricks.item("brick", box(90, 80, 70), 2);
    check_smallest(bricks, 2 * 90 * 80 * 70 / 1000.0);
}

TEST_CASE("two posts side by side, or one on the other")
{
    KitText posts(round_bundle());
    posts.item("post", cylinder(40, 60) + ", upright: yes", 2);
    check_smallest(posts, round_ml(40, 120)); // side by side it is twice as large
}

TEST_CASE("what does not fit the pot beside the rest goes on top")
{
    KitText kit(round_bundle(), 0.5);
    kit.item("pot", cylinder(120, 100) + inside(118, 99) + ", upright: yes");
    kit.item("tin", cylinder(100, 98) + ", upright: yes").item("can", cylinder(110, 30) + ", upright: yes");
    // The tin in the pot, 98 of 99; the can on top would stand 1 mm in: its floor is the tin's top.
    check_smallest(kit, round_ml(120, 129));
}

TEST_CASE("what stands out of a vessel within a vessel stands out of both")
{
    KitText kit(round_bundle(), 0.5);
    kit.item("pot", cylinder(120, 100) + inside(118, 99) + ", upright: yes");
    kit.item("mug", cylinder(110, 60) + inside(108, 59) + ", upright: yes");
    kit.item("can", cylinder(106, 150) + ", upright: yes");
    check_smallest(kit, round_ml(120, 152)); // on both floors, each 1 mm
}

TEST_CASE("nothing is half above and half below a lying drum")
{
    // The brick, 48 high, is beside the drum down to 3 above its middle.
    KitText kit(box_bundle());
    kit.item("drum", cylinder(102, 90)).item("brick", box(88, 48, 41));
    check_smallest(kit, (41 + 51 + std::sqrt(51.0 * 51 - 3 * 3)) * 102 * 90 / 1000.0);
}

TEST_CASE("a rod does not lean where something wide stands beside it")
{
    KitText kit(box_bundle(), 0.5);
    kit.item("pot", cylinder(109, 80) + inside(107, 79) + ", upright: yes");
    kit.item("tin", cylinder(88, 81) + ", upright: yes").item("rod", cylinder(12, 149));
    check_smallest(kit, 149 * 121 * 82 / 1000.0); // the rod lies beside the pot, in which it would lean 122 high
}

TEST_CASE("a rod leans as far as its pot is wide")
{
    KitText kit(round_bundle(), 0.5);
    kit.item("pot", cylinder(120, 100) + inside(118, 99) + ", upright: yes").item("rod", cylinder(10, 200));
    const double loose = bound(kit, 3000);
    // 117 wide inside: 200 sin t + 10 cos t = sqrt(117^2 - 10^2) at t = 32.7 degrees, then 200 cos t + 10 sin t = 173.7.
    const double whole = std::hypot(200, 10), half = std::sqrt(117.0 * 117 - 10 * 10);
    const double tilt = std::asin(half / whole) - std::atan2(10, 200);
    const double high = 1 + 200 * std::cos(tilt) + 10 * std::sin(tilt);
    CHECK(loose <= round_ml(120, high) * (1 + 1e-9));
    CHECK(bound(kit, round_ml(120, high)) >= round_ml(120, high) * 0.9);
    CHECK(loose > round_ml(120, 100));
}

TEST_CASE("no bound denies the best known equal discs in a circle")
{
    // Radii of circles round discs of radius 1: R. L. Graham (1968) up to 7, U. Pirl (1969) for 10.
    for (const auto& [count, ratio] : {std::pair{3, 2.1547005383792515}, {4, 2.414213562373095}, {5, 2.701301616704080},
                                       {7, 3.0}, {10, 3.813025631398123}}) {
        KitText kit("{shape: cylinder, limits: {height: 30.000000}}");
        kit.item("tin", cylinder(40, 30) + ", upright: yes", count);
        const double least = round_ml(40 * ratio, 30);
        CHECK(bound(kit, least * 1.05) <= least * (1 + 1e-9));
    }
}

TEST_CASE("things in several forms, cloth, lids and pouches count less, never more")
{
    KitText kit(round_bundle(), 0.5);
    kit.item("pot", cylinder(120, 100) + inside(118, 99));
    kit.item("lid", cylinder(122, 9) + ", closes: {item: pot, adds: 3, intrudes: 6}");
    kit.item("cup", cylinder(80, 60) + inside(78, 59));
    const double shut = round_ml(122, 103);
    CHECK(bound(kit, shut * 1.2) <= shut * (1 + 1e-9));
    CHECK(bound(kit, shut * 1.2) >= round_ml(120, 100) * (1 - 1e-6));
}

TEST_CASE("the bound scales with the cube of lengths and knows its limits")
{
    const auto scaled = [](double k) {
        KitText kit(box_bundle(), 0.5 * k);
        kit.item("pot", cylinder(120 * k, 100 * k) + inside(118 * k, 98 * k)).item("book", box(130 * k, 80 * k, 20 * k));
        kit.item("cup", cylinder(90 * k, 80 * k) + inside(88 * k, 78 * k)).item("box", box(60 * k, 50 * k, 40 * k));
        return bound(kit, 3000 * k * k * k);
    };
    CHECK(scaled(2) == Approx(8 * scaled(1)).epsilon(1e-5));
    KitText many(round_bundle());
    many.item("peg", cylinder(5, 50), 200);
    CHECK(bound(many, 1000) == 0); // too many for it
}
