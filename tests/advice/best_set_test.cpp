// SPDX-License-Identifier: GPL-3.0-or-later
#include "advice/best_set.hpp"

#include <catch2/catch.hpp>
#include <random>

#include "support/workload.hpp"

using namespace tuckwright::advice;

namespace {

/// A model without dependencies, of one item for each (priority, stuff, copies).
SetModel model_of(const std::vector<std::array<int, 3>>& items, double room)
{
    SetModel model;
    for (const auto& [priority, stuff, copies] : items) {
        model.worth.push_back({priority, 1, static_cast<double>(stuff)});
        model.stuff.push_back(stuff);
        model.least.push_back(0);
        model.most.push_back(copies);
        model.needs.emplace_back();
    }
    model.room = room;
    return model;
}

/// All sets, one after the other.
Counts by_hand(const SetModel& model)
{
    Counts set = model.least, best;
    for (bool more = true; more;) {
        if (is_allowed(model, set) && (best.empty() || worth_of(model, set) > worth_of(model, best))) {
            best = set;
        }
        more = false;
        for (std::size_t i = 0; i < set.size() && !more; ++i) {
            more = set[i] < model.most[i];
            set[i] = more ? set[i] + 1 : model.least[i];
        }
    }
    return best;
}

} // namespace

TEST_CASE("the best set of a knapsack whose answer is known")
{
    // Ten things of two sizes: Martello and Toth 1990, Knapsack Problems, chapter 2, example 2.3 (from memory): profits
    // 70 20 39 37 7 5 10, weights 31 10 20 19 4 3 6, capacity 50; the best is the first and the fourth, 107.
    const auto model = model_of({{70, 31, 1}, {20, 10, 1}, {39, 20, 1}, {37, 19, 1}, {7, 4, 1}, {5, 3, 1}, {10, 6, 1}}, 50);
    const BestSet best = best_set(model, std::nullopt);
    REQUIRE(best.set.has_value());
    CHECK(best.complete);
    CHECK(*best.set == Counts{1, 0, 0, 1, 0, 0, 0});
    CHECK(worth_of(model, *best.set).priority == 107);
}

TEST_CASE("priorities come first, then the number of things, then their volume")
{
    CHECK(*best_set(model_of({{3, 9, 1}, {1, 2, 2}}, 10), std::nullopt).set == Counts{1, 0});
    CHECK(*best_set(model_of({{2, 9, 1}, {1, 2, 2}}, 10), std::nullopt).set == Counts{0, 2});
    CHECK(*best_set(model_of({{1, 9, 1}, {1, 2, 1}}, 10), std::nullopt).set == Counts{1, 0});
    CHECK(!best_set(model_of({{1, 9, 1}}, 10), Worth{1, 1, 9}).set.has_value()); // only what is worth more
    CHECK(*best_set(model_of({{1, 11, 1}}, 10), std::nullopt).set == Counts{0});
}

TEST_CASE("the best set is that of looking at all of them")
{
    std::mt19937 random(7);
    const auto below = [&](int n) { return static_cast<int>(random() % static_cast<unsigned>(n)); };
    for (int trial = 0; trial < tuckwright::test::count(300, 60); ++trial) {
        std::vector<std::array<int, 3>> items;
        const int n = 2 + below(6);
        for (int i = 0; i < n; ++i) {
            items.push_back({1 + below(4), below(9), 1 + below(3)});
        }
        SetModel model = model_of(items, 4 + below(40));
        for (int k = 0; k < below(4); ++k) {
            Counts impossible(items.size(), 0);
            impossible[static_cast<std::size_t>(below(n))] = 1;
            ++impossible[static_cast<std::size_t>(below(n))];
            model.impossible.push_back(impossible);
        }
        if (below(2) == 0) {
            model.needs[0] = {1};
        }
        const Counts expected = by_hand(model);
        const BestSet best = best_set(model, std::nullopt);
        REQUIRE(best.complete);
        REQUIRE(best.set.has_value() == !expected.empty());
        if (best.set) {
            CHECK(worth_of(model, *best.set) == worth_of(model, expected));
            CHECK(is_allowed(model, *best.set));
        }
    }
}

TEST_CASE("what the model knows against a set counts")
{
    SetModel model = model_of({{1, 1, 2}, {1, 1, 1}}, 3);
    CHECK(is_allowed(model, {2, 1}));
    CHECK_FALSE(is_allowed(model, {3, 0})); // more than there are
    model.impossible = {{2, 0}};
    CHECK_FALSE(is_allowed(model, {2, 1}));
    model.needs[1] = {0};
    CHECK_FALSE(is_allowed(model, {0, 1}));
    model.room = 1;
    CHECK_FALSE(is_allowed(model, {1, 1}));
    model.least = {1, 0};
    CHECK_FALSE(is_allowed(model, {0, 0}));
}
