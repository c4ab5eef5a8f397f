// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include <algorithm>

#include "drawing/ray_judge.hpp"
#include "support/handmade_bundles.hpp"
#include "support/stacking_samples.hpp"
#include "support/workload.hpp"

using namespace tuckwright;
using drawing::Camera;
using drawing::Layer;
using drawing_test::judge;

namespace {

std::string told(const std::vector<std::string>& faults)
{
    std::string text;
    for (const auto& fault : faults) {
        text += fault + "\n";
    }
    return text;
}

std::vector<Camera> cameras()
{
    return {drawing::from_above(), drawing::from_the_side(25, 32), drawing::from_the_side(0, 0),
            drawing::from_the_side(-60, 0)};
}

} // namespace

TEST_CASE("what hides another thing is painted after it, by rays through towers thrown at random")
{
    int judged = 0, circles = 0;
    for (int seed = 1; seed <= test::count(60, 8); ++seed) {
        const Bundle bundle = stacking_samples::random_tower(static_cast<std::uint64_t>(seed), 4 + seed % 20);
        for (const Camera& camera : cameras()) {
            const auto order = drawing::painting_order(bundle, camera);
            auto result = judge(bundle, camera, order, 40);
            if (!result.faults.empty()) { // whether a circle excuses it shows only when looked at closely
                result = judge(bundle, camera, order, 400);
            }
            INFO("seed " << seed << ":\n" << told(result.faults));
            CHECK(result.faults.empty());
            judged += result.rays_that_met;
            circles += result.excused > 0 ? 1 : 0;
        }
    }
    CHECK(judged > 1000);
    CHECK(circles < 8); // boards that hide one another all round are rare
}

TEST_CASE("the judge of orders rejects faulty ones")
{
    int swapped = 0;
    for (int seed = 1; seed <= 10; ++seed) {
        const Bundle bundle = stacking_samples::random_tower(static_cast<std::uint64_t>(seed), 8);
        const Camera camera = drawing::from_the_side(25, 32);
        auto order = drawing::painting_order(bundle, camera);
        std::reverse(order.begin(), order.end());
        CHECK_FALSE(judge(bundle, camera, order, 40).faults.empty());
        // One pair that lies over one another, the wrong way round.
        const auto right = drawing::painting_order(bundle, camera);
        for (std::size_t k = 0; k < right.size(); ++k) {
            if (right[k].part == Layer::Part::far) {
                auto wrong = right;
                wrong.erase(wrong.begin() + static_cast<std::ptrdiff_t>(k));
                wrong.push_back(right[k]); // the inside of a vessel over all that is in it
                const auto faults = judge(bundle, camera, wrong, 60).faults;
                CHECK_FALSE(faults.empty());
                swapped += faults.empty() ? 0 : 1;
            }
        }
    }
    CHECK(swapped > 5);
}

TEST_CASE("what stands out of a cup in a cup in a pot, wholly above the outer cup's rim, is not painted over")
{
    using namespace handmade;
    auto pot = hollow(item("pot", cylinder(130, 100, {0, 0, 50})), cylinder(128, 99, {0, 0, 50.5}), Opening::top);
    auto outer = hollow(item("outer", cylinder(80, 60, {0, 0, 31})), cylinder(76, 58, {0, 0, 32}), Opening::top);
    auto inner = hollow(item("inner", cylinder(74, 60, {0, 0, 43})), cylinder(70, 58, {0, 0, 44}), Opening::top);
    const Bundle all = bundle("", Cylinder{130, 110}, {pot, in(outer, 0), in(inner, 1), in(item("tea", cylinder(60, 50, {0, 0, 40})), 2),
                                                       in(item("burner", cylinder(64, 40, {1, 0, 85})), 2)});
    for (const Camera& camera : cameras()) {
        const auto order = drawing::painting_order(all, camera);
        const auto result = judge(all, camera, order, 200);
        INFO(told(result.faults));
        CHECK(result.faults.empty());
        CHECK(result.excused == 0); // no circle that no order could satisfy
    }
}

TEST_CASE("things that hide one another in a circle are all painted, once each")
{
    const Bundle pinwheel = stacking_samples::pinwheel_on_table();
    for (const Camera& camera : cameras()) {
        const auto order = drawing::painting_order(pinwheel, camera);
        CHECK(order.size() == 3);
        CHECK(drawing::painting_order(pinwheel, camera) == order);
    }
    const auto seen_from_above = drawing::painting_order(pinwheel, drawing::from_above());
    CHECK(judge(pinwheel, drawing::from_above(), seen_from_above, 80).excused > 0); // no order is right
}
