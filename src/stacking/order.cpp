// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <boost/graph/adjacency_list.hpp>
#include <map>
#include <queue>
#include <tuple>

#include "stacking/direction.hpp"
#include "stacking/replay.hpp"
#include "stacking/step_words.hpp"
#include "tuckwright/contract.hpp"
#include "tuckwright/stacking.hpp"
#include "tuckwright/units.hpp"

namespace tuckwright
{

namespace
{

using stacking::Direction;
using stacking::Replay;

constexpr double meets = -1e-7; ///< mm: a way that overlaps an obstacle by more than this is barred

/// An edge from i to j: i must go in before j, since j in its place would bar the way of i.
using Precedence = boost::adjacency_list<boost::vecS, boost::vecS, boost::bidirectionalS>;

bool apart(const Extent& a, const Extent& b)
{
    return a.high.x < b.low.x || b.high.x < a.low.x || a.high.y < b.low.y || b.high.y < a.low.y || a.high.z < b.low.z ||
           b.high.z < a.low.z;
}

/// The items of one container, each with all that moves with it, and who bars whose way.
class Siblings
{
public:
    Siblings(const Replay& complete, const std::vector<std::size_t>& items)
        : bundle_(complete.bundle()), items_(items), size_(stacking::size_of(bundle_))
    {
        for (const std::size_t item : items) {
            ranks_.push_back(work_out_rank(item));
            auto& solids = solids_.emplace_back();
            for (const std::size_t member : complete.group(item)) {
                const auto& own = bundle_.items[member].solids;
                solids.insert(solids.end(), own.begin(), own.end());
            }
            auto& extents = extents_.emplace_back();
            for (const Solid& solid : solids) {
                extents.push_back(extent(hull_of(solid)));
            }
        }
    }

    std::size_t count() const { return items_.size(); }
    std::size_t item(std::size_t k) const { return items_[k]; }

    /// Whether the way of one along the direction meets the other in its place.
    bool barred(std::size_t mover, const Direction& direction, std::size_t other)
    {
        const auto [known, fresh] = barred_.try_emplace({mover, direction, other}, false);
        if (fresh) {
            known->second = work_out(mover, direction, other);
        }
        return known->second;
    }

    using Rank = std::tuple<std::int64_t, double, std::size_t>;
    /// Who goes first among those that may: the lower, then the larger, then the earlier.
    const Rank& rank(std::size_t k) const { return ranks_[k]; }

private:
    Rank work_out_rank(std::size_t item) const
    {
        const PlacedItem& it = bundle_.items[item];
        const Vec3 down = -1.0 * stacking::upright_of_container(bundle_, item);
        double lowest = 1e6;
        for (const Solid& solid : it.solids) {
            lowest = std::min(lowest, -support(hull_of(solid), down));
        }
        return {to_nanometres(lowest), it.solids.empty() ? 0 : -volume_ml(it.solids.front().shape), item};
    }

    bool work_out(std::size_t mover, const Direction& direction, std::size_t other) const
    {
        for (const Solid& solid : solids_[mover]) {
            const Hull way = stacking::drawn_in(solid, direction, size_);
            const Extent reach = extent(way);
            for (std::size_t k = 0; k < solids_[other].size(); ++k) {
                if (!apart(reach, extents_[other][k]) && separation(way, hull_of(solids_[other][k])).distance < meets) {
                    return true;
                }
            }
        }
        return false;
    }

    const Bundle& bundle_;
    const std::vector<std::size_t>& items_;
    double size_;
    std::vector<Rank> ranks_;
    std::vector<std::vector<Solid>> solids_;
    std::vector<std::vector<Extent>> extents_;
    std::map<std::tuple<std::size_t, Direction, std::size_t>, bool> barred_;
};

Precedence precedence(Siblings& siblings, const std::vector<Direction>& ways)
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

/// Each after all that must go before it; shorter than the siblings where they bar each other.
std::vector<std::size_t> sorted(const Siblings& siblings, const Precedence& graph)
{
    using Entry = std::pair<Siblings::Rank, std::size_t>;
    std::priority_queue<Entry, std::vector<Entry>, std::greater<>> ready;
    std::vector<std::size_t> waiting(siblings.count());
    for (std::size_t k = 0; k < siblings.count(); ++k) {
        waiting[k] = boost::in_degree(k, graph);
        if (waiting[k] == 0) {
            ready.emplace(siblings.rank(k), k);
        }
    }
    std::vector<std::size_t> order;
    while (!ready.empty()) {
        const std::size_t k = ready.top().second;
        ready.pop();
        order.push_back(k);
        for (auto [edge, end] = boost::out_edges(k, graph); edge != end; ++edge) {
            const std::size_t next = boost::target(*edge, graph);
            if (--waiting[next] == 0) {
                ready.emplace(siblings.rank(next), next);
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
std::vector<bool> take_apart(Siblings& siblings, const std::vector<std::vector<Direction>>& ways,
                             std::vector<Direction>& chosen)
{
    std::vector<std::size_t> by_rank(siblings.count());
    for (std::size_t k = 0; k < by_rank.size(); ++k) {
        by_rank[k] = k;
    }
    std::sort(by_rank.begin(), by_rank.end(),
              [&](std::size_t a, std::size_t b) { return siblings.rank(a) > siblings.rank(b); });
    std::vector<bool> inside(siblings.count(), true);
    const auto is_free = [&](std::size_t k, const Direction& way) {
        for (std::size_t other = 0; other < siblings.count(); ++other) {
            if (other != k && inside[other] && siblings.barred(k, way, other)) {
                return false;
            }
        }
        return true;
    };
    const auto take_one = [&](std::size_t ways_allowed) {
        for (const std::size_t k : by_rank) {
            for (std::size_t w = 0; inside[k] && w < std::min(ways_allowed, ways[k].size()); ++w) {
                if (is_free(k, ways[k][w])) {
                    inside[k] = false;
                    chosen[k] = ways[k][w];
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

/// Builds the steps from the innermost containers outwards.
class Builder
{
public:
    explicit Builder(const Bundle& bundle) : bundle_(bundle), complete_(bundle), replay_(bundle)
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
        const std::vector<std::size_t>& items = replay_.contents(holder);
        Siblings siblings(complete_, items);
        std::vector<std::vector<Direction>> ways(items.size());
        std::vector<Direction> chosen(items.size());
        for (std::size_t k = 0; k < items.size(); ++k) {
            ways[k] = stacking::ways_in(bundle_, items[k], true);
            chosen[k] = ways[k].front();
        }
        const Precedence plain = precedence(siblings, chosen);
        std::vector<std::size_t> order = sorted(siblings, plain);
        if (order.size() < items.size()) {
            const std::vector<bool> stuck = take_apart(siblings, ways, chosen);
            if (std::find(stuck.begin(), stuck.end(), true) != stuck.end()) {
                for (const std::size_t k : shortest_circle(plain, stuck)) {
                    result_.cycle.push_back(items[k]);
                }
                return false;
            }
            order = sorted(siblings, precedence(siblings, chosen));
        }
        for (const std::size_t k : order) {
            if (!bring(items[k], chosen[k])) {
                return false;
            }
        }
        return true;
    }

    /// Fills the item, shuts it, and puts it into its container.
    bool bring(std::size_t item, const Direction& direction)
    {
        if (!fill(item)) {
            return false;
        }
        if (const auto lid = replay_.lid(item)) {
            if (!bring(*lid, stacking::ways_in(bundle_, *lid, false).front())) {
                return false;
            }
        }
        Step step{item, direction, ""};
        step.text = stacking::step_text(replay_, step);
        replay_.place(item);
        result_.steps.push_back(std::move(step));
        return true;
    }

    const Bundle& bundle_;
    Replay complete_, replay_;
    StackingOrder result_;
};

} // namespace

StackingOrder stacking_order(const Bundle& bundle) { return Builder(bundle).build(); }

} // namespace tuckwright
