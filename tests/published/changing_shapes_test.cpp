// SPDX-License-Identifier: GPL-3.0-or-later
/// What is rolled, folded, tapers or has parts, held against formulas from outside; and kits that each of these changes.
#include <catch2/catch.hpp>
#include <cmath>
#include <numbers>

#include "support/kit_text.hpp"
#include "support/workload.hpp"
#include "tuckwright/stowage.hpp"

using namespace tuckwright;
using namespace tuckwright::test;

namespace {

/// Length of the spiral r = r0 + t phi / (2 pi) over the angle phi: the integral of sqrt(r^2 + (dr/dphi)^2), in closed
/// form. The arc length of the Archimedean spiral, from memory; the handbooks' formula for what is on a roll,
/// L = pi (r1^2 - r0^2) / t, is its limit for thin t, also from memory.
double spiral_length(double r0, double t, double phi)
{
    const double b = t / (2 * std::numbers::pi);
    const auto primitive = [b](double r) {
        const double s = std::sqrt(r * r + b * b);
        return (r * s + b * b * std::log(r + s)) / (2 * b);
    };
    return primitive(r0 + b * phi) - primitive(r0);
}

double roll_length(double r0, double r1, double t) { return std::numbers::pi * (r1 * r1 - r0 * r0) / t; }

double ml_of(const Bundle& bundle)
{
    REQUIRE(has_bundle(bundle.status));
    return volume_ml(bundle.envelope);
}

double packed(KitText kit, Effort effort = Effort::quick) { return ml_of(solved(kit, effort)); }

} // namespace

TEST_CASE("a roll has room for all turns of the spiral that its sheet makes")
{
    for (const double thickness : {0.02, 0.1, 0.3, 1.0, 3.0}) {
        for (const double length : {40.0, 140.0, 400.0, 520.0, 2000.0}) {
            for (const double inner : {12.0, 30.0, 60.0, 127.0, 128.0, 300.0}) {
                CAPTURE(thickness, length, inner);
                const int layers = roll_layers(length, inner);
                // The middle of the sheet begins half its thickness outside of the bore; a turn later it is one further.
                const double r0 = (inner + thickness) / 2;
                CHECK(spiral_length(r0, thickness, 2 * std::numbers::pi * layers) >= length);
                // The sheet's outermost face, by the handbooks' formula: not wider than the tube.
                const double r1 = std::sqrt(length * thickness / std::numbers::pi + inner * inner / 4);
                CHECK(inner + 2 * layers * thickness >= 2 * r1 - 1e-9);
                CHECK(roll_length(inner / 2, inner / 2 + layers * thickness, thickness) >= length * (1 - 1e-12));
                // No layer more than turns begun round the bore: the formula that the proof uses is not wasteful.
                CHECK((layers - 1) * std::numbers::pi * inner < length);
            }
        }
    }
    CHECK(roll_layers(100 * std::numbers::pi - 1e-6, 100) == 1);
    CHECK(roll_layers(100 * std::numbers::pi + 1e-6, 100) == 2);
    CHECK_THROWS(roll_layers(0, 10));
}

TEST_CASE("the rolls that are written out for a sheet are as wide as its layers ask for")
{
    const Kit kit = with_stowages(kit_of(KitText(round_bundle(), 0.5)
                                             .item("pot", cylinder(142, 90) + ", inside: {wall: 1, base: 1}")
                                             .item("tin", cylinder(70, 60))
                                             .item("screen", "sheet: {length: 520, width: 84, thickness: 0.4, roll: 60, "
                                                             "folds: yes}")
                                             .text()));
    int rolls = 0, linings = 0, wraps = 0;
    for (const Stowage& form : kit.items[2].forms) {
        const auto* tube = std::get_if<Cylinder>(&form.outside);
        if (tube == nullptr) {
            CHECK(volume_ml(form.outside) >= 520 * 84 * 0.4 / 1000 * (1 - 1e-12)); // folds keep the volume
            continue;
        }
        ++rolls;
        REQUIRE(form.inside.has_value());
        const double inner = std::get<Cylinder>(form.inside->shape).diameter;
        const double length = tube->height == 84 ? 520 : 84;
        CAPTURE(form.name, inner, tube->diameter);
        CHECK(inner >= 60);
        CHECK(spiral_length((inner + 0.4) / 2, 0.4, std::numbers::pi * (tube->diameter - inner) / 0.4) >= length);
        wraps += inner == 71 ? 1 : 0;                                         // round the tin, with the clearance
        linings += tube->diameter <= 139 && tube->diameter > 138.99 ? 1 : 0; // in the pot, less the clearance
    }
    CHECK(rolls >= 4);
    CHECK(wraps >= 1);
    CHECK(linings >= 1);
}

TEST_CASE("equal beakers that taper stack by the rise that their wall asks for")
{
    // From geometry: a wall of horizontal thickness w on a side that widens by s = (D - d) / (2 h) for each mm of height
    // lets the next beaker down until its outside meets the inside w further out: it sits w / s above the one below.
    const double wide = 84, foot = 60, high = 96, wall = 1.2;
    const double slope = (wide - foot) / 2 / high;
    for (const int n : {2, 3, 5}) {
        KitText kit(round_bundle());
        kit.item("beaker",
                 "cylinder: {diameter: " + mm(wide) + ", height: " + mm(high) + ", foot: " + mm(foot) +
                     "}, inside: {wall: " + mm(wall) + ", base: 1.2}",
                 n);
        const Bundle bundle = solved(kit, Effort::quick);
        REQUIRE(has_bundle(bundle.status));
        const double height = high + (n - 1) * wall / slope;
        CAPTURE(n, height);
        CHECK(ml_of(bundle) == Approx(std::numbers::pi / 4 * wide * wide * height / 1000).epsilon(0.001));
        CHECK(ml_of(bundle) >= std::numbers::pi / 4 * wide * wide * height / 1000 * (1 - 1e-6)); // never less
    }
}

TEST_CASE("a handle makes the bundle larger, and folded in less so")
{
    const auto mug = [](const std::string& more) {
        return KitText(box_bundle()).item("mug", cylinder(80, 70) + more);
    };
    const std::string handle = ", parts: [{box: {length: 30, width: 10, height: 40}, at: right, up: 15}]";
    const std::string folds = ", forms: [{name: folded in, parts: [{box: {length: 5, width: 40, height: 40}, at: right, "
                              "up: 15}]}]";
    const double plain = packed(mug("")), with_handle = packed(mug(handle)), folded = packed(mug(handle + folds));
    CHECK(plain == Approx(80 * 80 * 70 / 1000.0));
    CHECK(with_handle == Approx(110 * 80 * 70 / 1000.0));
    CHECK(folded == Approx(85 * 80 * 70 / 1000.0));
}

TEST_CASE("a sheet that may be folded or rolled makes a smaller bundle than one that stays flat")
{
    const auto with_sheet = [](const std::string& more) {
        return KitText(round_bundle())
            .item("pot", cylinder(102, 90) + ", inside: {wall: 1, base: 1}")
            .item("tin", cylinder(90, 80))
            .item("screen", "sheet: {length: 280, width: 80, thickness: 0.5" + more + "}");
    };
    const double pot = std::numbers::pi / 4 * 102 * 102 * 90 / 1000;
    CHECK(packed(with_sheet(", roll: 80")) == Approx(pot).epsilon(1e-6)); // round the tin, in the pot
    CHECK(packed(with_sheet(", roll: 80, springy: yes")) == Approx(pot).epsilon(1e-6));
    CHECK(packed(with_sheet(", folds: yes")) == Approx(pot).epsilon(1e-6)); // beside the tin, in the pot
    CHECK(packed(with_sheet("")) > 1.01 * pot);
}

TEST_CASE("what springs open outside of any vessel is not rolled there")
{
    const auto screen = [](const std::string& more) {
        return solved(KitText(round_bundle(100, 100))
                          .item("screen", "sheet: {length: 280, width: 80, thickness: 0.5, roll: 30" + more + "}"),
                      Effort::quick);
    };
    CHECK(has_bundle(screen("").status));
    CHECK_FALSE(has_bundle(screen(", springy: yes").status)); // flat it is longer than the bundle is wide
}

TEST_CASE("a cloth fills what is left, where a stiff pad of the same volume does not")
{
    const auto with_pad = [](const std::string& pad) {
        return KitText(box_bundle()).item("block", box(100, 60, 40)).item("tin", box(60, 40, 30)).item("pad", pad);
    };
    // 100 x 100 x 40: beside the block and the tin there are 40 x 40 x 40 and 60 x 40 x 10 left; 64 ml are the former.
    const double soft = packed(with_pad("cloth: {volume: 64 ml, thickness: 8}"));
    const double stiff = packed(with_pad(box(80, 80, 10)));
    CHECK(soft < stiff);
    CHECK(soft <= 400 * 1.02);
    CHECK(soft >= 240 + 72 + 64); // what they take, all three
}

TEST_CASE("tapering beakers nest, straight ones stand beside or on one another")
{
    const auto beakers = [](const std::string& foot) {
        return KitText(round_bundle())
            .item("beaker", "cylinder: {diameter: 84, height: 96" + foot + "}, inside: {wall: 1.2, base: 1.2}", 3);
    };
    CHECK(packed(beakers(", foot: 60")) < 0.6 * packed(beakers("")));
}
