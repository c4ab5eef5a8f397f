// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <boost/graph/adjacency_list.hpp>
#include <optional>
#include <queue>

#include "stacking/direction.hpp"
#include "stacking/replay.hpp"
#include "stacking/siblings.hpp"
#include "stacking/step_words.hpp"
#include "tuckwright/contract.hpp"
#include "tuckwright/stacking.hpp"

namespace tuckwright {

namespace {

using stacking::Replay;
using stacking::Siblings;
using stacking::Way;

/// For each sibling, which of its ways it takes.
using Chosen = std::vector<std::size_t>;

/// An edge from i to j: i must go in before j, since j in its place would bar the way of i.
using Precedence = boost::adjacency_list<boost::vecS, boost::vecS, boost::bidirectionalS>;

Precedence precedence(Siblings& siblings, const Chosen& ways)
{
    Precedence graph(siblings.count());
    for (std::size_t i = 0; i < siblings.count(); ++i) {
        for (std::size_t j = 0; j < siblings.count(); ++j) {
            if (i != j && siblings.barred(i, ways[i], j)) {
                boost::add_edge(i, j, graph);
            }
        }
    }
    return graph;
}

/// Picks the next of those that are ready: by rank, but what lies in a sleeve comes right after the sleeve.
class Ready {
public:
    explicit Ready(const Siblings& siblings) : siblings_(siblings) {}

    bool empty() const { return ready_.empty(); }
    void add(std::size_t k) { ready_.push_back(k); }

    std::size_t take()
    {
        auto next = ready_.end();
        while (!around_.empty() && (next = first_in(around_.back())) == ready_.end()) {
            around_.pop_back();
        }
        if (around_.empty()) {
            next = first_in(std::nullopt);
        }
        const std::size_t k = *next;
        ready_.erase(next);
        around_.push_back(k);
        return k;
    }

private:
    std::vector<std::size_t>::iterator first_in(std::optional<std::size_t> sleeve)
    {
        auto first = ready_.end();
        for (auto it = ready_.begin(); it != ready_.end(); ++it) {
            const bool counts = !sleeve || siblings_.lies_in(*it, *sleeve);
            if (counts && (first == ready_.end() || siblings_.rank(*it) < siblings_.rank(*first))) {
                first = it;
            }
        }
        return first;
    }

    const Siblings& siblings_;
    std::vector<std::size_t> ready_, around_;
};

/// Each after all that must go before it; shorter than the siblings where they bar each other.
std::vector<std::size_t> sorted(const Siblings& siblings, const Precedence& graph)
{
    Ready ready(siblings);
    std::vector<std::size_t> waiting(siblings.count());
    for (std::size_t k = 0; k < siblings.count(); ++k) {
        waiting[k] = boost::in_degree(k, graph);
        if (waiting[k] == 0) {
            ready.add(k);
        }
    }
    std::vector<std::size_t> order;
    while (!ready.empty()) {
        const std::size_t k = ready.take();
        order.push_back(k);
        for (auto [edge, end] = boost::out_edges(k, graph); edge != end; ++edge) {
            const std::size_t next = boost::target(*edge, graph);
            if (--waiting[next] == 0) {
                ready.add(next);
            }
        }
    }
    return order;
}

/// The shortest circle of items among those given that bar each other's ways, found by breadth.
std::vector<std::size_t> shortest_circle(const Precedence& graph, const std::vector<bool>& among)
{
    std::vector<std::size_t> best;
    for (std::size_t start = 0; start < among.size(); ++start) {
        if (!among[start]) {
            continue;
        }
        std::vector<std::optional<std::size_t>> from(among.size());
        std::queue<std::size_t> open;
        open.push(start);
        while (!open.empty() && !from[start]) {
            const std::size_t k = open.front();
            open.pop();
            for (auto [edge, end] = boost::out_edges(k, graph); edge != end; ++edge) {
                const std::size_t next = boost::target(*edge, graph);
                if (among[next] && !from[next]) {
                    from[next] = k;
                    open.push(next);
                }
            }
        }
        if (!from[start]) {
            continue;
        }
        std::vector<std::size_t> circle{start};
        for (std::size_t k = *from[start]; k != start; k = *from[k]) {
            circle.push_back(k);
        }
        std::reverse(circle.begin() + 1, circle.end());
        if (best.empty() || circle.size() < best.size()) {
            best = circle;
        }
    }
    return best;
}

/// Takes the siblings apart again, each along any of its ways that is free. What can be taken out stays so when others
/// have gone, so that this finds ways for all whenever there are any. Those that stay are marked.
std::vector<bool> take_apart(Siblings& siblings, Chosen& chosen)
{
    std::vector<std::size_t> by_rank(siblings.count());
    for (std::size_t k = 0; k < by_rank.size(); ++k) {
        by_rank[k] = k;
    }
    std::sort(by_rank.begin(), by_rank.end(),
              [&](std::size_t a, std::size_t b) { return siblings.rank(a) > siblings.rank(b); });
    std::vector<bool> inside(siblings.count(), true);
    const auto is_free = [&](std::size_t k, std::size_t way) {
        for (std::size_t other = 0; other < siblings.count(); ++other) {
            if (other != k && inside[other] && siblings.barred(k, way, other)) {
                return false;
            }
        }
        return true;
    };
    const auto take_one = [&](std::size_t ways_allowed) {
        for (const std::size_t k : by_rank) {
            for (std::size_t w = 0; inside[k] && w < std::min(ways_allowed, siblings.ways(k).size()); ++w) {
                if (is_free(k, w)) {
                    inside[k] = false;
                    chosen[k] = w;
                    return true;
                }
            }
        }
        return false;
    };
    constexpr std::size_t plainest = 1, all = 1000;
    while (take_one(plainest) || take_one(all)) {
    }
    return inside;
}

/// In what order the siblings go in and along which ways, or those that bar each other.
struct Sequence {
    std::vector<std::size_t> order;
    Chosen ways;
    std::vector<std::size_t> circle;
};

Sequence sequence_of(Siblings& siblings)
{
    Sequence found;
    found.ways.assign(siblings.count(), 0); // the plainest
    const Precedence plain = precedence(siblings, found.ways);
    found.order = sorted(siblings, plain);
    if (found.order.size() == siblings.count()) {
        return found;
    }
    const std::vector<bool> stuck = take_apart(siblings, found.ways);
    if (std::find(stuck.begin(), stuck.end(), true) != stuck.end()) {
        found.circle = shortest_circle(plain, stuck);
        return found;
    }
    found.order = sorted(siblings, precedence(siblings, found.ways));
    return found;
}

/// Builds the steps from the innermost containers outwards.
class Builder {
public:
    explicit Builder(const Bundle& bundle)
        : bundle_(bundle), complete_(bundle), replay_(bundle), opened_(bundle.items.size())
    {
        for (std::size_t i = 0; i < bundle.items.size(); ++i) {
            complete_.place(i);
        }
    }

    StackingOrder build()
    {
        fill(std::nullopt);
        require(!result_.cycle.empty() || result_.steps.size() == bundle_.items.size(), "each item has one step");
        if (!result_.cycle.empty()) {
            result_.steps.clear();
        }
        return result_;
    }

private:
    /// Everything that lies in the holder, each after what it holds itself. False when there is no order.
    bool fill(std::optional<std::size_t> holder)
    {
        open_sleeves(holder);
        Siblings siblings(complete_, holder, opened_);
        const Sequence sequence = sequence_of(siblings);
        for (const std::size_t k : sequence.circle) {
            result_.cycle.push_back(siblings.item(k));
        }
        if (!sequence.circle.empty()) {
            return false;
        }
        for (const std::size_t k : sequence.order) {
            if (!bring(siblings.item(k), siblings.ways(k)[sequence.ways[k]])) {
                return false;
            }
        }
        return true;
    }

    /// What a sleeve holds would fall out when it is moved: sleeves go in empty wherever there is an order for it,
    /// all of them, or as many as go when they are opened one by one.
    void open_sleeves(std::optional<std::size_t> holder)
    {
        const std::vector<std::size_t> sleeves = sleeves_in(holder);
        const auto in_order = [&] {
            Siblings siblings(complete_, holder, opened_);
            return sequence_of(siblings).circle.empty();
        };
        const auto set_all = [&](bool opened) {
            for (const std::size_t sleeve : sleeves) {
                opened_[sleeve] = opened;
            }
        };
        set_all(true);
        constexpr std::size_t many = 12; // trying them one by one would take long
        if (sleeves.empty() || in_order()) {
            return;
        }
        set_all(false);
        for (const std::size_t sleeve :
             sleeves.size() > 1 && sleeves.size() <= many ? sleeves : std::vector<std::size_t>{}) {
            opened_[sleeve] = true;
            opened_[sleeve] = in_order();
        }
    }

    /// The sleeves that can stand in the holder before they are filled, those in others last.
    std::vector<std::size_t> sleeves_in(std::optional<std::size_t> holder) const
    {
        std::vector<std::size_t> sleeves;
        std::vector<std::size_t> open = complete_.contents(holder);
        for (std::size_t k = 0; k < open.size(); ++k) {
            if (stacking::can_stand_empty(complete_, open[k])) {
                sleeves.push_back(open[k]);
                const auto& inside = complete_.contents(open[k]);
                open.insert(open.end(), inside.begin(), inside.end());
            }
        }
        return sleeves;
    }

    /// Fills the item, shuts it, and puts it into its container.
    bool bring(std::size_t item, const Way& way)
    {
        if (!opened_[item] && !fill(item)) {
            return false;
        }
        if (const auto lid = replay_.lid(item)) {
            if (!bring(*lid, {stacking::ways_in(bundle_, *lid, false).front(), std::nullopt})) {
                return false;
            }
        }
        Step step{item, way.direction, "", way.via};
        step.text = stacking::step_text(replay_, step);
        replay_.place(item);
        result_.steps.push_back(std::move(step));
        return true;
    }

    const Bundle& bundle_;
    Replay complete_, replay_;
    std::vector<bool> opened_; ///< sleeves that are filled where they stand in the end
    StackingOrder result_;
};

} // namespace

StackingOrder stacking_order(const Bundle& bundle) { return Builder(bundle).build(); }

} // namespace tuckwright
