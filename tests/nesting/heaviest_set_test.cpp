// SPDX-License-Identifier: GPL-3.0-or-later
/// The heaviest set of slabs against a look at all sets.
#include <catch2/catch.hpp>

#include "nesting/heaviest_set.hpp"
#include "packing/random.hpp"
#include "support/workload.hpp"

using namespace tuckwright::nesting;
using tuckwright::packing::Random;
using tuckwright::test::count;

namespace {

std::vector<Slab> random_slabs(Random& random, int bodies)
{
    std::vector<Slab> slabs;
    for (int body = 0; body < bodies; ++body) {
        for (int k = random.chance(0.3) ? 2 : 1; k > 0; --k) {
            const bool disc = random.chance(0.5);
            const double length = random.between(5, 45), width = disc ? length : random.between(2, length);
            const Footprint f{disc, length, width};
            slabs.push_back({body, false, f, 10, f});
        }
    }
    return slabs;
}

} // namespace

TEST_CASE("no set that may share a level weighs more than the heaviest")
{
    Random random(3);
    for (int trial = 0; trial < count(300, 40); ++trial) {
        const std::vector<Slab> slabs = random_slabs(random, 6);
        const Plan plan{random.chance(0.5), 60, 50};
        const LevelRules rules = rules_of_plan(slabs, std::vector<Turned>(slabs.size(), Turned::square),
                                               plan.round ? Plan{true, 55, 55} : plan);
        std::vector<double> weight;
        for (const Slab& slab : slabs) {
            weight.push_back(random.chance(0.2) ? 0 : random.unit() * slab.footprint.area());
        }
        const double fluid = trial % 3 == 0 ? 0 : 0.2 * random.unit();
        double most = 0;
        for (unsigned set = 0; set < 1u << slabs.size(); ++set) {
            if (may_share_level(slabs, rules, SlabSet(set))) {
                double sum = fluid * rules.plan.area();
                for (std::size_t k = 0; k < slabs.size(); ++k) {
                    sum += (set >> k & 1) != 0 ? weight[k] - fluid * slabs[k].footprint.area() : 0;
                }
                most = std::max(most, sum);
            }
        }
        std::uint64_t work = 0;
        const Heaviest found = heaviest_set(slabs, rules, weight, fluid, 100000, work);
        CHECK(found.weight >= most * (1 - 1e-9));
        // The order in which conditions of numbers are asked may let a set pass that another order refuses.
        CHECK(found.weight <= most * 1.2);
        CHECK(work > 0);
        const Heaviest hurried = heaviest_set(slabs, rules, weight, fluid, 3, work);
        CHECK(hurried.weight >= most * (1 - 1e-9)); // given up, it says more
    }
}

TEST_CASE("slabs of one body are never at one level, and what does not fit is at none")
{
    const Footprint small{true, 5, 5}, large{true, 40, 40};
    const std::vector<Slab> slabs{{0, false, small, 10, small}, {0, false, small, 10, small}, {1, false, large, 10, large}};
    const LevelRules rules = rules_of_plan(slabs, std::vector<Turned>(3, Turned::square), {true, 30, 30});
    std::uint64_t work = 0;
    CHECK(heaviest_set(slabs, rules, {1, 2, 100}, 0, 1000, work).weight == 2);
    CHECK_FALSE(may_share_level(slabs, rules, SlabSet(0b11)));
    CHECK_FALSE(may_share_level(slabs, rules, SlabSet(0b100)));
}
