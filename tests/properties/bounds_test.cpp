// SPDX-License-Identifier: GPL-3.0-or-later
/// Lower bounds and proofs of misfit, over random kits: never above what was found, never against what fits.
#include <catch2/catch.hpp>

#include "nesting/branch_and_bound.hpp"
#include "properties/random_kits.hpp"
#include "support/workload.hpp"

using namespace tuckwright;
using namespace tuckwright::test;
using namespace properties;

namespace {

/// What is known without a search: the bound, and a proof of misfit where there is one.
Bundle unsearched(const KitText& text)
{
    const std::atomic<bool> stop{true};
    SolveOptions options;
    options.effort = Effort::quick;
    options.stop = &stop;
    return solve(kit_of(text.text()), options);
}

std::string shape_of(int trial) { return trial % 2 == 0 ? round_bundle() : box_bundle(); }

/// The bundle's own dimensions as limits.
std::string limits_of(const Bundle& bundle)
{
    if (const auto* c = std::get_if<Cylinder>(&bundle.envelope)) {
        return round_bundle(c->diameter, c->height);
    }
    const auto& b = std::get<Box>(bundle.envelope);
    return box_bundle(b.length, b.width, b.height);
}

} // namespace

TEST_CASE("the bound is never above a bundle, and no bundle is denied as a limit")
{
    Dice dice(91);
    int found = 0;
    const int trials = count(60, 10);
    for (int trial = 0; trial < trials; ++trial) {
        const auto items = random_items(dice);
        const KitText kit = text_of(items, shape_of(trial));
        INFO(trial << "\n" << kit.text());
        const Bundle bundle = solved(kit, Effort::quick);
        CHECK(bundle.status != Status::does_not_fit); // there are no limits
        if (!has_bundle(bundle.status)) {
            continue;
        }
        ++found;
        const double volume = volume_ml(bundle.envelope);
        CHECK(bundle.lower_bound_ml > 0);
        CHECK(bundle.lower_bound_ml <= volume);
        const Bundle limited = unsearched(text_of(items, limits_of(bundle)));
        INFO(limited.explanation);
        CHECK(limited.status != Status::does_not_fit);
        CHECK(limited.lower_bound_ml <= volume * (1 + 1e-9));
    }
    CHECK(found >= trials * 9 / 10);
}

TEST_CASE("with any incumbent the bound along the axes is below every bundle that was found")
{
    Dice dice(95);
    constexpr std::uint64_t work = 300'000;
    for (int trial = 0; trial < count(30, 5); ++trial) {
        const KitText text = text_of(random_items(dice), shape_of(trial));
        INFO(trial << "\n" << text.text());
        const Bundle bundle = solved(text, Effort::quick);
        if (has_bundle(bundle.status)) {
            const double volume = volume_ml(bundle.envelope);
            for (const double incumbent : {1.0000004 * volume, 1.0001 * volume, 1.05 * volume, 1.5 * volume}) {
                CHECK(nesting::bound_along_axes_ml(kit_of(text.text()), incumbent, work) <= volume * (1 + 1e-9));
            }
        }
    }
}

TEST_CASE("a bundle as small as one that is proved still holds the search's own answer")
{
    // With its own dimensions as limits, a second search may fail to find it again, but must not be led astray.
    Dice dice(92);
    for (int trial = 0; trial < count(10, 2); ++trial) {
        const auto items = random_items(dice);
        const Bundle bundle = solved(text_of(items, shape_of(trial)), Effort::quick);
        if (!has_bundle(bundle.status)) {
            continue;
        }
        const Bundle again = solved(text_of(items, limits_of(bundle)), Effort::quick);
        CHECK((has_bundle(again.status) || again.status == Status::not_found));
        if (has_bundle(again.status)) {
            CHECK(volume_ml(again.envelope) <= volume_ml(bundle.envelope) * (1 + 1e-9));
        }
    }
}

TEST_CASE("twice the lengths are eight times the bound")
{
    Dice dice(93);
    for (int trial = 0; trial < count(200, 40); ++trial) {
        const auto items = random_items(dice);
        const double once = unsearched(text_of(items, shape_of(trial))).lower_bound_ml;
        const double twice = unsearched(text_of(items, shape_of(trial), 2)).lower_bound_ml;
        INFO(trial << "\n" << text_of(items, shape_of(trial)).text());
        CHECK(twice == Approx(8 * once).epsilon(1e-6));
    }
}

TEST_CASE("one item more never lowers the bound")
{
    Dice dice(94);
    for (int trial = 0; trial < count(300, 60); ++trial) {
        auto items = random_items(dice);
        const double before = unsearched(text_of(items, shape_of(trial))).lower_bound_ml;
        const std::string text = text_of(items, shape_of(trial)).text();
        items.push_back(random_item(dice, 99));
        const double after = unsearched(text_of(items, shape_of(trial))).lower_bound_ml;
        INFO(trial << "\n" << text << "\nand\n" << text_of(items, shape_of(trial)).text());
        CHECK(after >= before * (1 - 1e-8)); // volumes are rounded to a thousandth of a cubic millimetre
    }
}

TEST_CASE("a vessel that offers a way round does not lower the bound")
{
    // The flask is too high for the tin with its lid shut. A cup that would fit the tin, and hold the flask, must not
    // count as a way in: the flask would stand out of it, through the lid.
    const auto bound = [](bool with_cup) {
        KitText kit(round_bundle(), 0.5);
        kit.item("tin", cylinder(120, 60) + ", inside: {wall: 1, base: 1, lid: own}, upright: yes");
        kit.item("flask", cylinder(80, 90) + ", upright: yes");
        if (with_cup) {
            kit.item("cup", cylinder(100, 50) + ", inside: {wall: 1, base: 1, opens: top}, upright: yes");
        }
        return unsearched(kit).lower_bound_ml;
    };
    CHECK(bound(true) >= bound(false) * (1 - 1e-9));
}

TEST_CASE("limits that are too small are answered by a proof in words where there is one")
{
    const auto answer = [](const KitText& text) {
        const Bundle bundle = unsearched(text);
        CHECK(bundle.status == Status::does_not_fit);
        CHECK_FALSE(has_bundle(bundle.status));
        CHECK(bundle.items.empty());
        return bundle.explanation;
    };
    const auto says = [](const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; };
    const std::string pot = cylinder(128, 96) + ", inside: {wall: 1, base: 1, opens: top}";
    CHECK(says(answer(KitText(round_bundle(120, 200)).item("pot", pot)),
               "the pot alone is 128 mm across, the limit is 120 mm"));
    CHECK(says(answer(KitText(round_bundle(200, 90)).item("jar", cylinder(40, 100) + ", upright: yes")),
               "the jar must stand upright and is 100 mm high, the limit is 90 mm"));
    CHECK(says(answer(KitText(round_bundle(300, 90)).item("pot", pot)), "the limit is 90 mm"));
    CHECK(says(answer(KitText(round_bundle(100, 100)).item("rod", cylinder(8, 150))), "corner to corner"));
    CHECK(says(answer(KitText(box_bundle(200, 120, 40)).item("loaf", box(180, 60, 50))), "50 mm"));
    CHECK(says(answer(KitText(box_bundle(300, 300, 90)).item("jar", cylinder(40, 100) + ", upright: yes")), "100 mm high"));
    CHECK(says(answer(KitText(box_bundle(100, 100, 20)).item("plate", cylinder(130, 8))), "130 mm across"));
    CHECK(says(answer(KitText(box_bundle(100, 100, 100)).item("rod", cylinder(8, 190))), "corner to corner"));
    CHECK(says(answer(KitText(box_bundle(100, 100, 40)).item("brick", box(90, 90, 30), 2)), "the items need at least 486 ml"));
    CHECK(says(answer(KitText(round_bundle(100, 50)).item("tin", cylinder(90, 32), 2)), "ml"));
}

TEST_CASE("limits that are too small without a simple proof are answered honestly")
{
    // Two discs of 60 in a round bundle of 110 and their own height: their volumes fit, the two do not.
    KitText discs(round_bundle(110, 30));
    discs.item("tin", cylinder(60, 30) + ", upright: yes", 2);
    const Bundle two = solved(discs, Effort::quick);
    CHECK_FALSE(has_bundle(two.status));
    CHECK_FALSE(two.explanation.empty());
    if (two.status == Status::not_found) {
        CHECK(two.explanation.find("no proof") != std::string::npos);
    }
    KitText cubes(box_bundle(50, 50, 30));
    cubes.item("cube", box(30, 30, 30), 2);
    CHECK_FALSE(has_bundle(solved(cubes, Effort::quick).status));
}
