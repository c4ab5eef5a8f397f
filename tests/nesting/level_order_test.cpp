// SPDX-License-Identifier: GPL-3.0-or-later
/// Heights by orders of levels against a look at all orders in which things are let down.
#include <algorithm>
#include <catch2/catch.hpp>
#include <limits>
#include <numeric>

#include "nesting/choice_order.hpp"
#include "nesting/level_order.hpp"
#include "packing/random.hpp"
#include "support/kit_text.hpp"
#include "support/workload.hpp"

using namespace tuckwright;
using namespace tuckwright::nesting;
using namespace tuckwright::test;
using tuckwright::packing::Random;

namespace {

constexpr double much = 1e6;

SharedRules rules_of(const LevelModel& model, const ChoicesLeft& left, const Plan& plan)
{
    SharedRules rules;
    for (std::size_t cell = 0; cell < model.cells.size(); ++cell) {
        rules.push_back(std::make_shared<const LevelRules>(
            rules_of_plan(model.slabs, turned_in(model, cell, left), cell == 0 ? plan : model.cells[cell].plan)));
    }
    return rules;
}

ChoicesLeft all_left(const LevelModel& model)
{
    ChoicesLeft left;
    for (const auto& choices : model.choices) {
        left.push_back((std::uint64_t{1} << choices.size()) - 1);
    }
    return left;
}

/// The first choice of each body in that cell; of the forms the first, which is standing.
std::uint64_t in_cell(const LevelModel& model, std::size_t body, int cell)
{
    for (std::size_t k = 0; k < model.choices[body].size(); ++k) {
        if (model.choices[body][k].cell == cell) {
            return std::uint64_t{1} << k;
        }
    }
    return 0;
}

double height(const LevelModel& model, const ChoicesLeft& left, const Plan& plan, double enough = much)
{
    std::uint64_t work = 0;
    const LevelState state(model, rules_of(model, left, plan), left);
    return height_by_order(model, state, left, enough, 100'000, work);
}

/// Each thing in turn as low as those let it that were let down before, in all orders: the lowest of all heights.
double lowest_let_down(const LevelModel& model, const LevelRules& rules, const ChoicesLeft& left)
{
    std::vector<std::size_t> slabs, order(left.size());
    for (std::size_t body = 0; body < left.size(); ++body) {
        for (std::size_t k = 0; k < model.choices[body].size(); ++k) {
            if ((left[body] >> k & 1) != 0) {
                slabs.push_back(static_cast<std::size_t>(
                    model.stances[static_cast<std::size_t>(model.choices[body][k].stance)].first));
            }
        }
    }
    std::iota(order.begin(), order.end(), std::size_t{0});
    double lowest = std::numeric_limits<double>::infinity();
    do {
        std::vector<double> from(order.size(), -1);
        double high = 0;
        for (const std::size_t body : order) {
            std::vector<double> starts{0};
            for (std::size_t k = 0; k < order.size(); ++k) {
                starts.push_back(from[k] < 0 ? 0 : from[k] + model.slabs[slabs[k]].height);
            }
            std::sort(starts.begin(), starts.end());
            const double its = model.slabs[slabs[body]].height;
            from[body] = *std::find_if(starts.begin(), starts.end(), [&](double start) {
                // Sets grow where something begins: there, or at the start itself.
                for (std::size_t at = 0; at <= order.size(); ++at) {
                    const double level = (at == order.size() ? start : from[at]) + 1e-6;
                    SlabSet set;
                    for (std::size_t k = 0; k < order.size(); ++k) {
                        set.set(slabs[k], from[k] >= 0 && k != body && level > from[k] &&
                                              level < from[k] + model.slabs[slabs[k]].height);
                    }
                    if (level > start && level < start + its &&
                        !may_share_level(model.slabs, rules, set.set(slabs[body]))) {
                        return false;
                    }
                }
                return true;
            });
            high = std::max(high, from[body] + its);
        }
        lowest = std::min(lowest, high);
    } while (std::next_permutation(order.begin(), order.end()));
    return lowest;
}

std::string inside(double diameter, double height) { return ", inside: {" + cylinder(diameter, height) + ", opens: top}"; }

} // namespace

TEST_CASE("the lowest order is the lowest of all in which things can be let down")
{
    Random random(11);
    int higher_than_highest = 0;
    for (int trial = 0; trial < count(200, 20); ++trial) {
        KitText kit(random.chance(0.5) ? round_bundle() : box_bundle());
        const int things = 3 + static_cast<int>(random.below(3));
        double highest = 0;
        for (int k = 0; k < things; ++k) {
            const double high = 10 + static_cast<double>(random.below(60));
            highest = std::max(highest, high);
            const bool is_round = random.chance(0.5);
            kit.item("thing-" + std::to_string(k),
                     (is_round ? cylinder(20 + static_cast<double>(random.below(60)), high)
                               : box(30 + static_cast<double>(random.below(40)), 10 + static_cast<double>(random.below(30)), high)) +
                         ", upright: yes");
        }
        const LevelModel model = level_model(kit_of(kit.text()));
        ChoicesLeft left = all_left(model);
        for (std::size_t body = 0; body < left.size(); ++body) {
            left[body] = in_cell(model, body, 0);
        }
        const Plan plan = model.round ? Plan{true, 50, 50} : Plan{false, 48, 42};
        const double lowest = lowest_let_down(model, *rules_of(model, left, plan).front(), left);
        CHECK(height(model, left, plan) == Approx(lowest).epsilon(1e-9));
        CHECK(height(model, left, plan, lowest * 0.9) == Approx(lowest * 0.9).epsilon(1e-9)); // no more than is asked for
        higher_than_highest += lowest > highest + 1 ? 1 : 0;
    }
    CHECK(higher_than_highest > count(200, 20) / 4);
}

TEST_CASE("what is in a vessel is above its floor, and stands out of it")
{
    KitText kit(round_bundle(), 0.5);
    kit.item("pot", cylinder(120, 100) + inside(118, 98) + ", upright: yes").item("can", cylinder(90, 150) + ", upright: yes");
    kit.item("tin", cylinder(100, 30) + ", upright: yes");
    const LevelModel model = level_model(kit_of(kit.text()));
    ChoicesLeft left = all_left(model);
    const Plan plan{true, 60, 60};
    CHECK(height(model, left, plan) == 100); // nothing but the pot has one place only
    left[1] = in_cell(model, 1, 1);
    CHECK(height(model, left, plan) == Approx(152));
    left[2] = in_cell(model, 2, 1);
    CHECK(height(model, left, plan) == Approx(182));
    left[2] = in_cell(model, 2, 0);
    CHECK(height(model, left, plan) == Approx(182)); // beside what stands out of the pot there is no room, either
}

TEST_CASE("the height over all choices is that of the lowest, and never more")
{
    KitText kit(round_bundle(), 0.5);
    kit.item("pot", cylinder(120, 100) + inside(118, 98) + ", upright: yes").item("can", cylinder(90, 50) + ", upright: yes");
    kit.item("tin", cylinder(100, 30) + ", upright: yes");
    const LevelModel model = level_model(kit_of(kit.text()));
    const ChoicesLeft left = all_left(model);
    const SharedRules rules = rules_of(model, left, {true, 60, 60});
    std::uint64_t work = 0;
    CHECK(height_by_choices(model, rules, left, {0, much}, 1000, work) == Approx(100)); // both in the pot
    CHECK(height_by_choices(model, rules, left, {0, 90}, 1000, work) == Approx(90));
    CHECK(height_by_choices(model, rules, left, {99, 101}, 1, work) <= 100);
    CHECK(height_by_choices(model, rules, left, {200, 101}, 1000, work) <= 100); // little of it asked for
    CHECK(work > 0);
}

TEST_CASE("nothing lies in itself")
{
    KitText kit(round_bundle(), 0.5);
    kit.item("pot", cylinder(120, 100) + inside(118, 98)).item("cup", cylinder(110, 90) + inside(108, 88));
    const LevelModel model = level_model(kit_of(kit.text()));
    ChoicesLeft left = all_left(model);
    CHECK(lies_in_itself(model, left, 0, 1));
    left[1] = in_cell(model, 1, 1);
    CHECK(lies_in_itself(model, left, 0, 2));
    CHECK_FALSE(lies_in_itself(model, left, 1, 1));
    CHECK_FALSE(lies_in_itself(model, left, 0, 0));
}
