// SPDX-License-Identifier: GPL-3.0-or-later
// Vessels that end on their side or on their heads, as they are filled: their mouths up, and what is in them at the bottom.
#include <catch2/catch.hpp>

#include <algorithm>
#include <filesystem>
#include <fstream>

#include "drawing/camera.hpp"
#include "drawing/handled.hpp"
#include "drawing/shown.hpp"
#include "support/handmade_bundles.hpp"
#include "support/random_solids.hpp"
#include "support/stacking_samples.hpp"
#include "support/tools.hpp"
#include "support/workload.hpp"
#include "tuckwright/contract.hpp"
#include "tuckwright/drawing.hpp"

using namespace tuckwright;
using namespace tuckwright::drawing;

namespace {

double low_of(const Solid& solid) { return -support(hull_of(solid), {0, 0, -1}); }

double floor_of(const PlacedItem& vessel)
{
    const PlacedCavity& cavity = vessel.cavities.front();
    return cavity.pose.center.z - height_of(cavity.shape) / 2;
}

Vec3 mouth(const PlacedItem& vessel) { return own_axis(vessel.cavities.front().pose, 2); }

/// What is wrong with a vessel (the first item) that stands with things in it: one in another, through the wall, in the air.
std::vector<std::string> faults_of_filling(const Bundle& bundle)
{
    constexpr double near = 0.01, rounding = 1e-3; // mm
    std::vector<std::string> faults;
    const PlacedCavity& cavity = bundle.items[0].cavities.front();
    const double radius = std::get<Cylinder>(cavity.shape).diameter / 2;
    for (std::size_t i = 1; i < bundle.items.size(); ++i) {
        const Solid& body = bundle.items[i].solids.front();
        bool rests = std::abs(low_of(body) - floor_of(bundle.items[0])) < near;
        for (std::size_t j = 1; j < bundle.items.size(); ++j) {
            const Hull one = hull_of(body), other = hull_of(bundle.items[j].solids.front());
            if (i != j && separation(one, other).distance < -rounding) {
                faults.push_back(bundle.items[i].id + " overlaps " + bundle.items[j].id);
            }
            Hull lowered = one;
            lowered.center.z -= near;
            rests = rests || (i != j && separation(lowered, other).distance < 0);
        }
        const Vec3 off = body.pose.center - cavity.pose.center;
        const auto& c = std::get<Cylinder>(body.shape);
        if (std::hypot(off.x, off.y) + c.diameter / 2 > radius + rounding ||
            low_of(body) < floor_of(bundle.items[0]) - rounding) {
            faults.push_back(bundle.items[i].id + " is through the wall");
        }
        if (!rests) {
            faults.push_back(bundle.items[i].id + " hangs in the air");
        }
    }
    return faults;
}

/// A pot in which things hang one above another, turned as it will be in the bundle.
Bundle turned_pot(std::uint64_t seed, const Quaternion& turn)
{
    using namespace handmade;
    test::Dice dice(seed);
    std::vector<PlacedItem> items{
        hollow(item("pot", cylinder(100, 200, {0, 0, 100})), cylinder(96, 198, {0, 0, 101}), Opening::top)};
    double top = 2;
    for (int k = 0; k < 5; ++k) {
        const double diameter = dice.between(10, 60), height = dice.between(5, 30), gap = dice.between(0, 8);
        const double off = dice.between(0, 48 - diameter / 2), angle = dice.between(0, 6.28);
        items.push_back(
            in(item("thing " + std::to_string(k),
                    cylinder(diameter, height, {off * std::cos(angle), off * std::sin(angle), top + gap + height / 2})),
               0));
        top += height + gap;
    }
    Bundle made = bundle("Turned", Cylinder{400, 400}, items);
    const Matrix3 m = rotation_matrix(turn);
    const auto put = [&](Pose& pose) {
        const Vec3 c = pose.center;
        pose.center = {m[0][0] * c.x + m[0][1] * c.y + m[0][2] * c.z, m[1][0] * c.x + m[1][1] * c.y + m[1][2] * c.z,
                       m[2][0] * c.x + m[2][1] * c.y + m[2][2] * c.z};
        pose.turn = compose(turn, pose.turn);
    };
    for (PlacedItem& it : made.items) {
        put(it.solids.front().pose);
        for (PlacedCavity& cavity : it.cavities) {
            put(cavity.pose);
        }
    }
    const Vec3 down{-m[0][2], -m[1][2], -m[2][2]};
    for (std::size_t k = 1; k < made.items.size(); ++k) {
        step(made, k, {std::llround(1e6 * down.x), std::llround(1e6 * down.y), std::llround(1e6 * down.z)});
    }
    step(made, 0);
    return made;
}

} // namespace

TEST_CASE("a pot that ends over a cup is filled with its mouth up, and the cup goes down to its bottom")
{
    const Bundle bundle = handmade::pot_over_cup();
    const Bundle now = as_handled(bundle, 0);
    CHECK(filled_at(bundle, 0) == std::size_t{0});
    CHECK(mouth(now.items[0]).z == Approx(1));
    CHECK(now.steps[0].direction[2] < 0);
    CHECK(low_of(now.items[1].solids[0]) == Approx(floor_of(now.items[0])).margin(2e-3));
    CHECK(tip_at(now, 0) == Tip::none);
    // In its place it is 3 mm below what is then the pot's ceiling: so far it slides.
    CHECK(floor_of(now.items[0]) == Approx(3)); // the pot is turned about its own middle: 48 mm less 45
    CHECK(filled_at(bundle, 1) == std::nullopt);
    CHECK(as_handled(bundle, 1).items[1].solids == bundle.items[1].solids);
    CHECK(tip_at(as_handled(bundle, 1), 1) == Tip::over);
    CHECK(tip_at(as_handled(bundle, 2), 2) == Tip::none);
    CHECK(tip_at(as_handled(bundle, 3), 3) == Tip::none);
    CHECK_THROWS_AS(as_handled(bundle, 4), ContractBroken);
}

TEST_CASE("a lid is shut on what stands, and a pot that lies is tipped over")
{
    const Bundle turned = handmade::lidded_pot_upside_down();
    const Bundle shutting = as_handled(turned, 1);
    CHECK(low_of(shutting.items[2].solids[0]) > low_of(shutting.items[0].solids[0]) + 70); // the lid is above
    CHECK(low_of(shutting.items[1].solids[0]) == Approx(floor_of(shutting.items[0])).margin(2e-3));
    CHECK(tip_at(as_handled(turned, 2), 2) == Tip::over);
    for (const Bundle& lying : {handmade::tin_in_lying_pot(), stacking_samples::cup_in_yawed_lying_pot()}) {
        Bundle bundle = lying;
        bundle.steps = stacking_order(bundle).steps;
        const Bundle filling = as_handled(bundle, 0);
        CHECK(mouth(filling.items[0]).z == Approx(1));
        CHECK(faults_of_filling(filling).empty());
        CHECK(tip_at(as_handled(bundle, 1), 1) == Tip::onto_its_side);
    }
}

TEST_CASE("what stands is drawn where it will be")
{
    for (const auto& sample : handmade::all()) {
        const Bundle bundle = sample.make();
        for (std::size_t step = 0; step <= bundle.steps.size(); ++step) {
            const auto root = filled_at(bundle, step);
            const Bundle handled = as_handled(bundle, step);
            CAPTURE(sample.name, step);
            REQUIRE(handled.items.size() == bundle.items.size());
            const bool stands = !root || bundle.items[*root].cavities.empty() || mouth(bundle.items[*root]).z > 0.999 ||
                                bundle.items[*root].cavities.front().opens == Opening::both;
            for (std::size_t i = 0; i < bundle.items.size() && stands && !root; ++i) {
                CHECK(handled.items[i].solids == bundle.items[i].solids);
            }
            if (root && !handled.items[*root].cavities.empty() &&
                handled.items[*root].cavities.front().opens != Opening::both) {
                CHECK(mouth(handled.items[*root]).z > 0.99);
            }
        }
    }
}

TEST_CASE("whatever way a pot is turned in the end, its things lie on one another while it is filled")
{
    const std::vector<Quaternion> turns{{0, 1, 0, 0}, {0, 0, 1, 0},  {1, 0, 1, 0},
                                        {1, 1, 0, 0}, {1, 0, -1, 0}, {7, 5, 3, 0}};
    for (int seed = 1; seed <= test::count(40, 6); ++seed) {
        const Bundle bundle =
            turned_pot(static_cast<std::uint64_t>(seed), turns[static_cast<std::size_t>(seed) % turns.size()]);
        const auto faults = faults_of_filling(as_handled(bundle, 4));
        INFO("seed " << seed << ": " << (faults.empty() ? "" : faults.front()));
        CHECK(faults.empty());
    }
}

TEST_CASE("what looks at a filled pot finds what is wrong")
{
    using namespace handmade;
    const auto with = [](std::vector<Solid> things) {
        std::vector<PlacedItem> items{
            hollow(item("pot", cylinder(100, 80, {0, 0, 40})), cylinder(96, 78, {0, 0, 41}), Opening::top)};
        for (const Solid& thing : things) {
            items.push_back(in(item("thing", thing), 0));
        }
        return faults_of_filling(bundle("", Cylinder{100, 80}, items));
    };
    CHECK(with({cylinder(30, 20, {0, 0, 12}), cylinder(30, 20, {0, 0, 32})}).empty());
    CHECK(with({cylinder(30, 20, {0, 0, 12.1})}) == std::vector<std::string>{"thing hangs in the air"});
    CHECK(with({cylinder(30, 20, {34, 0, 12})}) == std::vector<std::string>{"thing is through the wall"});
    CHECK(with({cylinder(30, 20, {0, 0, 12}), cylinder(30, 20, {0, 0, 31})}).size() == 2); // each in the other
}

TEST_CASE("the step that turns a pot over says so")
{
    if (!test::has_tool("pdftotext")) {
        WARN("NOT TESTED: pdftotext (poppler-utils) is not installed");
        return;
    }
    namespace fs = std::filesystem;
    const auto text = [](const Bundle& bundle, std::size_t step, View view) {
        Canvas canvas({120, 120});
        draw_view(canvas, {5, 5, 110, 110}, bundle, step, view, {.scale = 3});
        const fs::path path = fs::temp_directory_path() / "tuckwright-handled-test.pdf";
        std::ofstream(path, std::ios::binary) << canvas.pdf();
        const std::string found = test::printed_by("pdftotext '" + path.string() + "' -");
        fs::remove(path);
        return found;
    };
    for (const View view : {View::cutaway, View::above, View::slanted}) {
        CHECK(text(handmade::pot_over_cup(), 1, view).find("turned over") != std::string::npos);
        CHECK(text(handmade::pot_over_cup(), 0, view).find("turned over") == std::string::npos);
        CHECK(text(handmade::tin_in_lying_pot(), 1, view).find("tipped over") != std::string::npos);
    }
}
