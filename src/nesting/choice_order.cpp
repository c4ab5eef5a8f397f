// SPDX-License-Identifier: GPL-3.0-or-later
// Outline. Depth first: of the things that are not decided the one with the fewest choices left takes each of them in
// turn, as long as those that are decided can be in some order that is lower than the lowest that was found.
// Guarantee: every bundle is in a way that was looked at or left out with reason, so none is lower than the lowest. Where
// the search ends early, what holds for all ways together is the answer.
// Source: fewest choices first, R. M. Haralick and G. L. Elliott, Artificial Intelligence 14 (1980), from memory.
#include "nesting/choice_order.hpp"

#include <algorithm>
#include <bit>

#include "nesting/level_order.hpp"

namespace tuckwright::nesting {

namespace {

constexpr int most_orders = 200; // looked at for one way

class Ways {
public:
    Ways(const LevelModel& model, const SharedRules& rules, double little, int most, std::uint64_t& work)
        : model_(model), rules_(rules), little_(little), most_(most), work_(work),
          work_of_state_(40 + model.slabs.size() * model.slabs.size() * model.cells.size() / 2000)
    {
    }

    double least(const ChoicesLeft& left, double enough)
    {
        if (--most_ < 0) {
            return 0;
        }
        work_ += work_of_state_;
        const LevelState state(model_, rules_, left);
        const double of_all = height_by_order(model_, state, left, enough, most_orders, work_);
        const std::size_t body = undecided(left);
        if (of_all >= enough || body == left.size()) {
            return of_all;
        }
        double lowest = enough;
        for (std::size_t k = 0; k < model_.choices[body].size(); ++k) {
            if ((left[body] >> k & 1) == 0 || lies_in_itself(model_, left, body, model_.choices[body][k].cell)) {
                continue;
            }
            ChoicesLeft next = left;
            next[body] = std::uint64_t{1} << k;
            lowest = std::min(lowest, least(next, lowest));
            if (lowest <= std::max(of_all, little_)) {
                return of_all; // of the other choices nothing is known
            }
        }
        return std::max(of_all, lowest);
    }

private:
    /// With the fewest choices left; of equals the largest.
    std::size_t undecided(const ChoicesLeft& left) const
    {
        std::size_t found = left.size();
        for (std::size_t body = 0; body < left.size(); ++body) {
            const int count = std::popcount(left[body]);
            if (count > 1 && (found == left.size() || count < std::popcount(left[found]) ||
                              (count == std::popcount(left[found]) && model_.volume[body] > model_.volume[found]))) {
                found = body;
            }
        }
        return found;
    }

    const LevelModel& model_;
    const SharedRules& rules_;
    double little_;
    int most_;
    std::uint64_t& work_;
    std::uint64_t work_of_state_; ///< about what LevelState costs, in sets
};

} // namespace

bool lies_in_itself(const LevelModel& model, const ChoicesLeft& left, std::size_t body, int cell)
{
    for (std::size_t step = 0; cell > 0 && step <= left.size(); ++step) {
        const auto vessel = static_cast<std::size_t>(model.cells[static_cast<std::size_t>(cell)].body);
        if (vessel == body) {
            return true;
        }
        int next = -2;
        for (std::size_t k = 0; k < model.choices[vessel].size(); ++k) {
            if ((left[vessel] >> k & 1) != 0) {
                next = next == -2 || next == model.choices[vessel][k].cell ? model.choices[vessel][k].cell : 0;
            }
        }
        cell = next;
    }
    return false;
}

double height_by_choices(const LevelModel& model, const SharedRules& rules, const ChoicesLeft& left,
                         const HeightsAsked& asked, int most, std::uint64_t& work)
{
    Ways ways(model, rules, std::min(asked.little, asked.enough * (1 - 1e-9)), most, work);
    return ways.least(left, asked.enough);
}

} // namespace tuckwright::nesting
