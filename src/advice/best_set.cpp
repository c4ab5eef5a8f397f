// SPDX-License-Identifier: GPL-3.0-or-later
// Outline: items by falling priority for their stuff; of each as many copies as can be first. What is left of the room
// bounds the priorities that can still come in, as if things could be cut; where that cannot beat the best by priority,
// all that is left bounds things and volume.
#include "advice/best_set.hpp"

#include <algorithm>
#include <numeric>

namespace tuckwright::advice {

Worth operator+(const Worth& a, const Worth& b)
{
    return {a.priority + b.priority, a.things + b.things, a.volume + b.volume};
}

Worth operator*(int n, const Worth& worth) { return {n * worth.priority, n * worth.things, n * worth.volume}; }

Worth worth_of(const SetModel& model, const Counts& set)
{
    Worth sum;
    for (std::size_t item = 0; item < set.size(); ++item) {
        sum = sum + set[item] * model.worth[item];
    }
    return sum;
}

namespace {

constexpr double rounding = 1 + 1e-9; ///< of sums of volumes

bool holds(const Counts& set, const Counts& impossible)
{
    for (std::size_t item = 0; item < set.size(); ++item) {
        if (set[item] < impossible[item]) {
            return false;
        }
    }
    return true;
}

bool has_what_it_needs(const SetModel& model, const Counts& set)
{
    for (std::size_t item = 0; item < set.size(); ++item) {
        for (const std::size_t other : model.needs[item]) {
            if (set[item] > 0 && set[other] == 0) {
                return false;
            }
        }
    }
    return true;
}

bool is_known_impossible(const SetModel& model, const Counts& set)
{
    return std::any_of(model.impossible.begin(), model.impossible.end(),
                       [&](const Counts& impossible) { return holds(set, impossible); });
}

double stuff_of(const SetModel& model, const Counts& set)
{
    double sum = 0;
    for (std::size_t item = 0; item < set.size(); ++item) {
        sum += set[item] * model.stuff[item];
    }
    return sum;
}

class Search {
public:
    Search(const SetModel& model, const std::optional<Worth>& above) : model_(model), best_(above), order_(model.most.size())
    {
        std::iota(order_.begin(), order_.end(), std::size_t{0});
        const auto per_room = [&](std::size_t i) {
            return static_cast<double>(model.worth[i].priority) / std::max(model.stuff[i], 1.0);
        };
        std::stable_sort(order_.begin(), order_.end(),
                         [&](std::size_t a, std::size_t b) { return per_room(a) > per_room(b); });
    }

    BestSet run()
    {
        Counts set = model_.least;
        descend(0, set, model_.room * rounding - stuff_of(model_, set));
        return {found_, nodes_ < most_nodes};
    }

private:
    static constexpr long most_nodes = 2'000'000;

    /// Whether what comes from that place of the order on can make a set worth more than the best.
    bool can_win(std::size_t depth, const Counts& set, double room) const
    {
        if (!best_) {
            return true;
        }
        Worth all = worth_of(model_, set);
        double priority = static_cast<double>(all.priority);
        for (std::size_t k = depth; k < order_.size(); ++k) {
            const std::size_t item = order_[k];
            const int more = model_.most[item] - model_.least[item];
            all.things += more * model_.worth[item].things;
            all.volume += more * model_.worth[item].volume;
            const double stuff = more * model_.stuff[item];
            const double share = stuff <= room ? 1 : room <= 0 ? 0 : room / stuff;
            priority += share * more * static_cast<double>(model_.worth[item].priority);
            room -= stuff;
        }
        all.priority = static_cast<long>(priority + 1e-6);
        return all > *best_;
    }

    void descend(std::size_t depth, Counts& set, double room)
    {
        if (++nodes_ >= most_nodes || room < 0 || is_known_impossible(model_, set) || !can_win(depth, set, room)) {
            return;
        }
        if (depth == order_.size()) {
            const Worth worth = worth_of(model_, set);
            if (has_what_it_needs(model_, set) && (!best_ || worth > *best_)) {
                best_ = worth;
                found_ = set;
            }
            return;
        }
        const std::size_t item = order_[depth];
        for (int copies = model_.most[item]; copies >= model_.least[item]; --copies) {
            set[item] = copies;
            descend(depth + 1, set, room - (copies - model_.least[item]) * model_.stuff[item]);
        }
        set[item] = model_.least[item];
    }

    const SetModel& model_;
    std::optional<Worth> best_;
    std::optional<Counts> found_;
    std::vector<std::size_t> order_;
    long nodes_ = 0;
};

} // namespace

bool is_allowed(const SetModel& model, const Counts& set)
{
    for (std::size_t item = 0; item < set.size(); ++item) {
        if (set[item] < model.least[item] || set[item] > model.most[item]) {
            return false;
        }
    }
    return has_what_it_needs(model, set) && !is_known_impossible(model, set) &&
           stuff_of(model, set) <= model.room * rounding;
}

BestSet best_set(const SetModel& model, const std::optional<Worth>& above) { return Search(model, above).run(); }

} // namespace tuckwright::advice
