// SPDX-License-Identifier: GPL-3.0-or-later
/// Lower bounds worked out by hand, proofs that a kit cannot fit, and bundles that no bound may deny.
#include <catch2/catch.hpp>
#include <numbers>

#include "nesting/lower_bound.hpp"
#include "packing/random.hpp"
#include "support/kit_text.hpp"

using namespace tuckwright;
using namespace tuckwright::nesting;
using namespace tuckwright::test;

namespace {

double bound(const KitText& text) { return lower_bound_ml(kit_of(text.text())); }

double round_ml(double diameter, double height) { return std::numbers::pi / 4 * diameter * diameter * height / 1000; }

std::string inside(double diameter, double height, const std::string& closed = "opens: top")
{
    return ", inside: {" + cylinder(diameter, height) + ", " + closed + "}";
}

} // namespace

TEST_CASE("an item alone needs the smallest envelope round any of its forms")
{
    CHECK(bound(KitText(round_bundle()).item("tin", cylinder(80, 50))) == Approx(round_ml(80, 50)));
    // Of 60 x 40 x 20 the flat form is best: pi (30^2 + 20^2) 20, against pi 500 60 and pi 1000 40.
    CHECK(bound(KitText(round_bundle()).item("book", box(60, 40, 20))) == Approx(std::numbers::pi * 26));
    CHECK(bound(KitText(box_bundle()).item("book", box(60, 40, 20))) == Approx(48));
    CHECK(bound(KitText(box_bundle()).item("tin", cylinder(80, 50))) == Approx(80 * 80 * 50 / 1000.0));
    // Upright, the long way up: pi 500 60.
    CHECK(bound(KitText(round_bundle()).item("jar", box(40, 20, 60) + ", upright: yes")) == Approx(std::numbers::pi * 30));
}

TEST_CASE("however a thing is turned, no bundle of it alone is smaller than the bound")
{
    packing::Random random(7);
    const auto direction = [&] {
        const auto level = random.direction();
        const double z = random.between(-1, 1), r = std::sqrt(1 - z * z);
        return Vec3{r * level[0], r * level[1], z};
    };
    for (int k = 0; k < 200; ++k) {
        const auto size = [&] { return std::round(20 * std::exp(random.between(-1.5, 1.5))); };
        const double l = size(), w = size(), h = size();
        const double of_box = bound(KitText(round_bundle()).item("box", box(l, w, h)));
        const double of_tin = bound(KitText(round_bundle()).item("tin", cylinder(l, h)));
        const double tin_in_box = bound(KitText(box_bundle()).item("tin", cylinder(l, h)));
        for (int turn = 0; turn < 100; ++turn) {
            const Vec3 up = direction(); // the bundle's axis, seen from the thing
            const double x = std::abs(up.x) * l, y = std::abs(up.y) * w, z = std::abs(up.z) * h;
            // A box is the same seen from both sides, so that the farthest corner tells the circle round its shadow.
            const double near = std::min({std::abs(x - y - z), std::abs(x + y - z), std::abs(x - y + z), x + y + z});
            const double across = std::sqrt(l * l + w * w + h * h - near * near);
            CHECK(round_ml(across, x + y + z) >= of_box * (1 - 1e-12));
            // A tin leans in one plane: its shadow is at least l wide across that, and as long as its outline there.
            const double s = std::hypot(up.x, up.y), c = std::abs(up.z);
            const double along = h * s + l * c, high = h * c + l * s;
            CHECK(round_ml(std::max(l, along), high) >= of_tin * (1 - 1e-12));
            CHECK(l * along * high / 1000 >= tin_in_box * (1 - 1e-12));
        }
    }
}

TEST_CASE("the widest and the highest need their product")
{
    KitText kit(round_bundle());
    kit.item("pan", cylinder(200, 40)).item("flask", cylinder(60, 250) + ", upright: yes");
    CHECK(bound(kit) == Approx(round_ml(200, 250)));
    KitText lying(round_bundle()); // a flask that may lie is only 60 high: then the volumes count
    lying.item("pan", cylinder(200, 40)).item("flask", cylinder(60, 250));
    CHECK(bound(lying) == Approx(round_ml(200, 40) + round_ml(60, 250))); // 1963.5 ml; 200 wide, 60 high is 1885
}

TEST_CASE("what nests costs nothing, what cannot adds its volume")
{
    const auto pot_and = [](double width, double height, const std::string& closed) {
        KitText kit(round_bundle(), 0.5);
        kit.item("pot", cylinder(102, 92) + inside(100, 90, closed)).item("tin", cylinder(width, height));
        return bound(kit);
    };
    const double pot = round_ml(102, 92);
    CHECK(pot_and(99, 90, "opens: top") == Approx(pot));
    CHECK(pot_and(99.1, 90, "opens: top") == Approx(pot + round_ml(99.1, 90)));
    CHECK(pot_and(99, 90, "lid: own") == Approx(pot));
    CHECK(pot_and(99, 91, "lid: own") == Approx(pot + round_ml(99, 91)));
    // Standing out, it fills the cavity less the clearance at most.
    CHECK(pot_and(98, 140, "opens: top") >= pot + round_ml(98, 140) - round_ml(99, 90) - 1e-5);
}

TEST_CASE("a cavity takes no more than its volume less the clearance")
{
    // Two tins of 508.9 ml and a cavity of pi/4 96^2 98 = 709.3 ml: pot 785.4 + 1017.9 - 709.3 = 1094.0.
    KitText kit(round_bundle(), 1);
    kit.item("pot", cylinder(100, 100) + inside(98, 98)).item("tin", cylinder(90, 80), 2);
    CHECK(bound(kit) >= round_ml(100, 100) + 2 * round_ml(90, 80) - round_ml(96, 98) - 1e-5);
    CHECK(bound(kit) <= round_ml(100, 180)); // one tin in the pot, the other upon it
}

TEST_CASE("a chain of vessels passes on what it holds")
{
    KitText kit(round_bundle(), 0.5);
    kit.item("pot", cylinder(120, 100) + inside(118, 98)).item("cup", cylinder(90, 80) + inside(88, 78));
    kit.item("tin", cylinder(80, 70));
    CHECK(bound(kit) == Approx(round_ml(120, 100)));
    kit.item("can", cylinder(130, 40)); // wider than all: beside or upon
    CHECK(bound(kit) == Approx(round_ml(120, 100) + round_ml(130, 40)));
}

TEST_CASE("what contents fill takes in nothing else")
{
    const auto pot_with = [](const std::string& contents) {
        KitText kit(round_bundle(), 0.5);
        kit.item("pot", cylinder(102, 92) + inside(100, 90) + contents).item("tin", cylinder(99, 90));
        return bound(kit);
    };
    const double pot = round_ml(102, 92), tin = round_ml(99, 90);
    CHECK(pot_with(", contents: {what: rice, amount: 300, fills: no}") == Approx(pot));
    CHECK(pot_with(", contents: {what: rice, amount: 300}") == Approx(pot + tin));
    CHECK(pot_with(", contents: {what: rice, amount: 300}, upright: no") == Approx(pot + tin));
}

TEST_CASE("a lid counts with its plate, shut or not")
{
    KitText kit(round_bundle());
    kit.item("pot", cylinder(100, 90) + inside(98, 88));
    kit.item("lid", cylinder(102, 9) + ", closes: {item: pot, adds: 3, intrudes: 6}");
    const double least = bound(kit);
    CHECK(least >= round_ml(100, 90) + round_ml(102, 3) - 1e-5);
    CHECK(least <= round_ml(102, 93)); // shut: as wide as the lid, 93 high
}

TEST_CASE("the bound scales with the cube of lengths and grows with each item")
{
    const auto build = [](double k, int things) {
        KitText kit(round_bundle(), 0.5 * k);
        kit.item("pot", cylinder(120 * k, 100 * k) + inside(118 * k, 98 * k));
        if (things > 0) {
            kit.item("cup", cylinder(90 * k, 80 * k) + inside(88 * k, 78 * k));
        }
        if (things > 1) {
            kit.item("book", box(130 * k, 80 * k, 20 * k));
        }
        if (things > 2) {
            kit.item("rod", cylinder(12 * k, 160 * k));
        }
        return bound(kit);
    };
    for (int things = 0; things < 4; ++things) {
        CHECK(build(2, things) == Approx(8 * build(1, things)).epsilon(1e-7));
        CHECK(build(1, things) >= build(1, std::max(0, things - 1)));
    }
}

TEST_CASE("no bound denies a bundle in which things lie aslant")
{
    // A stick across the corners of a flat tin: 100 x 5 in 90 x 60, at about 30 degrees. Turning about the container's
    // axis is free, so this is a bundle of the kit, as large as the tin.
    KitText stick(box_bundle());
    stick.item("tin", box(92, 62, 14) + ", inside: {" + box(90, 60, 12) + ", lid: own}").item("stick", box(100, 5, 8));
    CHECK(bound(stick) <= 92 * 62 * 14 / 1000.0 * (1 + 1e-9));
    KitText limited(box_bundle(92, 62, 14));
    limited.item("tin", box(92, 62, 14) + ", inside: {" + box(90, 60, 12) + ", lid: own}").item("stick", box(100, 5, 8));
    CHECK_FALSE(misfit_proof(kit_of(limited.text())).has_value());

    // A long thin rod leaning in a closed tin, longer than this is wide and high: 140 of 153 from rim to rim.
    KitText rod(round_bundle());
    rod.item("tin", cylinder(128, 89) + inside(126, 87, "lid: own")).item("rod", cylinder(6, 140));
    CHECK(bound(rod) <= round_ml(128, 89) * (1 + 1e-9));
    KitText tight(round_bundle(128, 89));
    tight.item("tin", cylinder(128, 89) + inside(126, 87, "lid: own")).item("rod", cylinder(6, 140));
    CHECK_FALSE(misfit_proof(kit_of(tight.text())).has_value());
}

namespace {

std::string proof_of(const KitText& text) { return misfit_proof(kit_of(text.text())).value_or("none"); }

} // namespace

TEST_CASE("a kit that cannot fit a round bundle is refused in words with figures")
{
    CHECK(proof_of(KitText(round_bundle(120, 200)).item("pot", cylinder(128, 96))) ==
          "the pot alone is 128 mm across, the limit is 120 mm");
    CHECK(proof_of(KitText(round_bundle(120, 60)).item("jar", cylinder(50, 70) + ", upright: yes")) ==
          "the jar must stand upright and is 70 mm high, the limit is 60 mm");
    CHECK(proof_of(KitText(round_bundle(300, 40)).item("loaf", box(200, 60, 50))).find("50 mm high however it lies") !=
          std::string::npos);
    CHECK(proof_of(KitText(round_bundle(100, 100)).item("rod", cylinder(5, 150))).find("corner to corner") !=
          std::string::npos);
    CHECK(proof_of(KitText(round_bundle(100, 100)).item("rod", cylinder(5, 137))).find("in no turn, even aslant") !=
          std::string::npos); // 142 / sqrt 2
    CHECK(proof_of(KitText(round_bundle(100, 50)).item("tin", cylinder(90, 32), 2)).find("ml even if every cavity") !=
          std::string::npos);
}

TEST_CASE("a kit that cannot fit a box is refused in words with figures")
{
    CHECK(proof_of(KitText(box_bundle(200, 100, 30)).item("loaf", box(80, 60, 50))).find("50 mm thick however it lies") !=
          std::string::npos);
    CHECK(proof_of(KitText(box_bundle(200, 200, 60)).item("jar", cylinder(50, 70) + ", upright: yes"))
              .find("must stand upright") != std::string::npos);
    CHECK(proof_of(KitText(box_bundle(100, 100, 10)).item("plate", cylinder(120, 5))).find("120 mm across") !=
          std::string::npos);
    CHECK(proof_of(KitText(box_bundle(170, 90, 70)).item("pump", cylinder(29, 186))) ==
          "the pump, 186 mm long, fits the limits in no turn, even aslant");
    CHECK(proof_of(KitText(box_bundle(100, 100, 100)).item("rod", cylinder(5, 180))).find("corner to corner") !=
          std::string::npos);
}

TEST_CASE("nothing is proved where things just fit, or might")
{
    CHECK(proof_of(KitText(round_bundle(128, 96)).item("pot", cylinder(128, 96))) == "none");
    CHECK(proof_of(KitText(box_bundle(128, 128, 96)).item("pot", cylinder(128, 96))) == "none");
    CHECK(proof_of(KitText(round_bundle(96, 128)).item("pot", cylinder(96, 128))) == "none");
    CHECK(proof_of(KitText(box_bundle(96, 128, 200)).item("book", box(96, 200, 128))) == "none");
    // A plate 120 across that leans in a cube of 100: the cube's hexagonal cut is wide enough (its circle has 122.5).
    CHECK(proof_of(KitText(box_bundle(100, 100, 100)).item("plate", cylinder(120, 0.1))) == "none");
    CHECK(proof_of(KitText(round_bundle(100, 100)).item("rod", cylinder(5, 136))) == "none"); // leans: 141 / sqrt 2
    CHECK(proof_of(KitText(round_bundle(102, 93)).item("pot", cylinder(100, 90) + inside(98, 88))
                       .item("lid", cylinder(102, 9) + ", closes: {item: pot, adds: 3, intrudes: 6}")) == "none");
}

TEST_CASE("what passes a narrow opening in no turn takes its room outside; what might stand out of it does not")
{
    const auto crock_and = [](const std::string& thing, const std::string& opening) {
        return bound(KitText(round_bundle())
                         .item("crock", cylinder(120, 90) + inside(116, 80, opening))
                         .item("thing", thing));
    };
    const double crock = round_ml(120, 90);
    CHECK(crock_and(cylinder(90, 60), "opens: top") == Approx(crock));
    CHECK(crock_and(cylinder(90, 60), "opening: {diameter: 90}") == Approx(crock));
    CHECK(crock_and(cylinder(90, 92), "opening: {diameter: 89}") == Approx(crock + round_ml(90, 92)));
    CHECK(crock_and(cylinder(90, 20), "opening: {diameter: 93}") == Approx(crock)); // on its edge it passes
    CHECK(crock_and(cylinder(10, 130), "opening: {diameter: 60}") == crock_and(cylinder(10, 130), "opens: top"));
}
