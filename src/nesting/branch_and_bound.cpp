// SPDX-License-Identifier: GPL-3.0-or-later
// Outline. A node is a range of plans of the bundle (its diameter, or length and width) together with the choices that
// are left to each body: the cell it lies directly in, and its form. In all plans of the range the bundle is at least as
// high as in the largest, so at least as large as the smallest plan times that height. The height comes from
// height_program, or from the orders of levels in choice_order. The node with the least volume is taken up next: first
// its height is worked out by its own orders and program, then it is parted, either its range at a length where something begins to
// fit beside something else, or one body's choices. Plans are left out that are too small for what is left to some body, or with that height too large for the
// incumbent. Nodes that reach the incumbent are closed.
// Guarantee: every bundle along the axes that is smaller than the incumbent is in an open node, so its volume is at least
// the least bound of these. When the work is used up, that is the answer.
// Source: branch and bound, A. H. Land and A. G. Doig, Econometrica 28 (1960).
#include "nesting/branch_and_bound.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <memory>
#include <numbers>
#include <numeric>
#include <optional>
#include <queue>

#include "nesting/choice_order.hpp"
#include "nesting/height_program.hpp"
#include "nesting/tiny.hpp"
#include "tuckwright/contract.hpp"

namespace tuckwright::nesting {

namespace {

constexpr double same_volume = 5e-8; // relative: a bound so near to the incumbent closes a node
constexpr double just_below = 1 - 1e-9, hardly_below = 1 - 1e-12;

/// Plans of the bundle from the smallest to the largest, and what is left to each body.
struct Node {
    Plan low, high;
    ChoicesLeft left;
    double bound = 0;       ///< mm^3
    bool strengthened = false;
    std::uint64_t number = 0;
    SharedRules rules; ///< of the largest plan
    std::shared_ptr<const HeightBound> found;
};

struct LaterNode {
    bool operator()(const Node& a, const Node& b) const
    {
        return a.bound != b.bound ? a.bound > b.bound : a.number < b.number;
    }
};

class BranchAndBound {
public:
    BranchAndBound(const Kit& kit, double incumbent, std::uint64_t work)
        : kit_(kit), model_(level_model(kit)), incumbent_(incumbent), most_work_(work),
          wall_(kit.bag ? kit.bag->thickness : 0)
    {
        critical_ = critical_lengths(model_);
        order_.resize(model_.choices.size());
        std::iota(order_.begin(), order_.end(), std::size_t{0});
        std::stable_sort(order_.begin(), order_.end(),
                         [&](std::size_t a, std::size_t b) { return model_.volume[a] > model_.volume[b]; });
    }

    bool is_too_large() const
    {
        constexpr std::size_t bits = 64;
        return model_.slabs.size() > most_slabs || model_.cells.size() > bits ||
               std::any_of(model_.choices.begin(), model_.choices.end(),
                           [](const auto& choices) { return choices.size() > bits; });
    }

    double run()
    {
        if (!push_root()) {
            return 0;
        }
        while (!open_.empty() && work_ < most_work_) {
            Node node = open_.top();
            if (node.bound >= goal()) {
                break;
            }
            open_.pop();
            if (!node.strengthened) {
                strengthen(node);
                push(std::move(node));
            } else if (!branch(node)) {
                push(std::move(node));
                break;
            }
        }
        return open_.empty() ? goal() : std::min(goal(), open_.top().bound);
    }

private:
    double goal() const { return incumbent_ * (1 - same_volume); }

    /// Of a bundle of that plan and height, in its bag.
    double volume(const Plan& plan, double height) const
    {
        return Plan{plan.round, plan.half_length + wall_, plan.half_width + wall_}.area() * (height + 2 * wall_);
    }

    /// The rules of all cells, made anew where the plan of the bundle or the turns in a box are others than before.
    void find_rules(Node& node)
    {
        node.rules.resize(model_.cells.size());
        for (std::size_t cell = 0; cell < model_.cells.size(); ++cell) {
            const Plan& plan = cell == 0 ? node.high : model_.cells[cell].plan;
            auto& rules = node.rules[cell];
            std::vector<Turned> turned = turned_in(model_, cell, node.left);
            const bool is_same_plan =
                rules && plan.half_length == rules->plan.half_length && plan.half_width == rules->plan.half_width;
            if (!is_same_plan || (!plan.round && turned != rules->turned)) {
                work_ += model_.slabs.size() * model_.slabs.size() / 8;
                rules = std::make_shared<const LevelRules>(rules_of_plan(model_.slabs, std::move(turned), plan));
            }
        }
    }

    /// Least radius, or half side, of a plan in which each thing fits in some form, and the least height of the highest.
    struct Least {
        double half = 0, other_half = 0, height = 0;
    };
    Least least() const
    {
        Least found;
        for (std::size_t body = 0; body < model_.choices.size(); ++body) {
            double longer = 1e300, shorter = 1e300, height = 1e300;
            for (const Choice& choice : model_.choices[body]) {
                const Stance& stance = model_.stances[static_cast<std::size_t>(choice.stance)];
                if (stance.slabs == 0) {
                    longer = shorter = height = 0;
                    continue;
                }
                double high = 0, reach = 0, wide = 0;
                for (int s = stance.first; s < stance.first + stance.slabs; ++s) {
                    const Slab& slab = model_.slabs[static_cast<std::size_t>(s)];
                    const Footprint& f = slab.whole;
                    const bool circle = f.disc || !model_.round;
                    high += slab.height;
                    reach = std::max(reach, circle ? std::max(f.half_length, f.half_width)
                                                   : std::hypot(f.half_length, f.half_width));
                    wide = std::max(wide, f.inner());
                }
                if (stance.nested) { // in a vessel that lies any of its sides may be up
                    wide = reach = std::min(wide, high / 2);
                    high = 2 * wide;
                }
                longer = std::min(longer, reach);
                shorter = std::min(shorter, wide);
                height = std::min(height, high);
            }
            if (!model_.choices[body].empty()) {
                found.half = std::max(found.half, longer);
                found.other_half = std::max(found.other_half, shorter);
                found.height = std::max(found.height, height);
            }
        }
        return found;
    }

    /// The whole range of plans; false where nothing is known to bound it.
    bool push_root()
    {
        const Least smallest = least();
        if (smallest.half <= 0 || smallest.other_half <= 0 || smallest.height <= 0) {
            return false;
        }
        Node root;
        const double room = incumbent_ / smallest.height;
        if (model_.round) {
            const double most = std::sqrt(room / std::numbers::pi) * (1 + 1e-9);
            const double limit = kit_.bundle.diameter ? *kit_.bundle.diameter / 2 - wall_ : most;
            root.low = {true, smallest.half * just_below, smallest.half * just_below};
            root.high = {true, std::min(most, limit), std::min(most, limit)};
        } else {
            // The longer side is the length, unless limits tell the sides apart.
            const double shorter = smallest.other_half * just_below, longer = smallest.half * just_below;
            root.low = {false, longer, shorter};
            const double most = room / 4 / shorter * (1 + 1e-9);
            root.high = {false, most, std::min(most, std::sqrt(room / 4) * (1 + 1e-9))};
        }
        for (const auto& choices : model_.choices) {
            root.left.push_back(choices.size() == 64 ? ~std::uint64_t{0} : (std::uint64_t{1} << choices.size()) - 1);
        }
        if (root.high.half_length < root.low.half_length || root.high.half_width < root.low.half_width) {
            return true; // nothing but the incumbent
        }
        find_rules(root);
        root.bound = volume(root.low, smallest.height);
        push(std::move(root));
        return true;
    }

    void push(Node&& node)
    {
        if (node.bound >= goal()) {
            return;
        }
        node.number = ++numbers_;
        open_.push(std::move(node));
    }

    void strengthen(Node& node)
    {
        node.strengthened = true;
        if (raise_by_order(node)) {
            return;
        }
        const LevelState state(model_, node.rules, node.left);
        // What closes the node.
        const double enough = goal() / volume(node.low, 1) * (wall_ > 0 ? 2 : 1 + 1e-12);
        auto found = std::make_shared<HeightBound>(
            height_by_program(model_, state, node.found ? node.found->columns : std::vector<LevelColumn>{}, enough, work_));
        node.bound = std::max(node.bound, volume(node.low, found->height));
        keep_small_plans(node, found->height);
        node.found = std::move(found);
    }

    /// By the order of levels, as long as that takes no more than three quarters of all work; not where there are too many
    /// things to decide. True if it closes the node.
    bool raise_by_order(Node& node)
    {
        constexpr std::uint64_t at_first = 450'000;
        constexpr std::size_t few = 20;
        if (model_.choices.size() > few || work_by_order_ > work_ / 4 * 3 + at_first) {
            return false;
        }
        const double area = volume(node.low, 1 - 2 * wall_);
        const double enough = goal() / area - 2 * wall_;
        constexpr int most_ways = 1500;
        constexpr double worth_it = 1.0001;
        const std::uint64_t before = work_;
        const double height = height_by_choices(model_, node.rules, node.left,
                                                {(node.bound / area - 2 * wall_) * worth_it, enough}, most_ways, work_);
        work_by_order_ += work_ - before;
        if (height >= enough) {
            node.bound = goal();
            return true;
        }
        node.bound = std::max(node.bound, volume(node.low, height) * just_below);
        keep_small_plans(node, height);
        return false;
    }

    using Nodes = std::vector<Node>;

    /// Leaves out what fits none of a node's plans, and the plans that are too small for what is left. False if there
    /// are none.
    bool keep_what_fits(Node& node) const
    {
        for (std::size_t body = 0; body < node.left.size(); ++body) {
            double longer = infinite, shorter = infinite;
            for (std::size_t k = 0; k < model_.choices[body].size(); ++k) {
                const Sides needs = needs_of_plan(model_.choices[body][k]);
                if (needs.longer * hardly_below > node.high.half_length || needs.shorter * hardly_below > node.high.half_width) {
                    node.left[body] &= ~(std::uint64_t{1} << k);
                } else if (is_left(node, body, k)) {
                    longer = std::min(longer, needs.longer);
                    shorter = std::min(shorter, needs.shorter);
                }
            }
            if (!model_.choices[body].empty() && node.left[body] == 0) {
                return false;
            }
            if (!model_.choices[body].empty()) {
                node.low.half_length = std::max(node.low.half_length, longer * hardly_below);
                node.low.half_width = std::max(node.low.half_width, shorter * hardly_below);
            }
        }
        node.low.half_length = std::max(node.low.half_length, node.low.half_width); // the length is the longer side
        return true;
    }

    /// Half sides, or radius, of the smallest plan for a choice.
    struct Sides {
        double longer = 0, shorter = 0;
    };
    Sides needs_of_plan(const Choice& choice) const
    {
        const Stance& stance = model_.stances[static_cast<std::size_t>(choice.stance)];
        Sides needs;
        for (int s = stance.first; choice.cell == 0 && s < stance.first + stance.slabs; ++s) {
            const Footprint& f = model_.slabs[static_cast<std::size_t>(s)].whole;
            const double reach = f.disc ? f.half_length : std::hypot(f.half_length, f.half_width);
            needs.longer = std::max(needs.longer, model_.round ? reach : std::max(f.half_length, f.half_width));
            needs.shorter = std::max(needs.shorter, model_.round ? reach : f.inner());
        }
        return needs;
    }

    /// Leaves out plans that are too large for the incumbent: in all of them the bundle is that high.
    void keep_small_plans(Node& node, double height) const
    {
        const double area = goal() / (height + 2 * wall_) * (1 + 1e-9); // with the bag
        if (model_.round) {
            const double radius = std::sqrt(area / std::numbers::pi) - wall_;
            node.high.half_length = node.high.half_width = std::min(node.high.half_length, radius);
        } else {
            const Plan low = node.low;
            node.high.half_length = std::min(node.high.half_length, area / 4 / (low.half_width + wall_) - wall_);
            node.high.half_width = std::min(node.high.half_width, area / 4 / (low.half_length + wall_) - wall_);
        }
    }

    /// By the weights of the node that it comes from. False if nothing is left of it.
    bool bound_by_weights(Node& child)
    {
        child.strengthened = false;
        if (!keep_what_fits(child)) {
            return false;
        }
        find_rules(child);
        const LevelState state(model_, child.rules, child.left);
        const double height = height_by_weights(model_, state, child.found->weights, work_);
        child.bound = std::max(child.bound, volume(child.low, height));
        keep_small_plans(child, height);
        return true;
    }

    /// How much a parting wins: the logarithms of the bounds, each no more than closes its node; the least and the mean.
    double worth(const Node& node, const Nodes& parts) const
    {
        const double most = std::log(goal() / node.bound);
        double sum = 0, least = most;
        for (const Node& part : parts) {
            const double gain = std::min(most, std::log(part.bound / node.bound));
            sum += gain;
            least = std::min(least, gain);
        }
        return parts.empty() ? 2 * most : (least + sum / static_cast<double>(parts.size())) / 2;
    }

    /// Parts a node in the way that wins most, of a few. False if nothing is left to part.
    bool branch(const Node& node)
    {
        Nodes best;
        double best_worth = -1;
        const auto offer = [&](Nodes&& parts) {
            parts.erase(std::remove_if(parts.begin(), parts.end(), [&](Node& part) { return !bound_by_weights(part); }),
                        parts.end());
            const double its = worth(node, parts);
            if (its > best_worth) {
                best_worth = its;
                best = std::move(parts);
            }
        };
        const double gap = goal() / node.bound - 1, spread = node.high.area() / node.low.area() - 1;
        constexpr double share_of_gap = 0.5, narrow = 0.002;
        const bool is_wide = spread > std::max(share_of_gap * gap, narrow);
        if (is_wide) {
            offer(parts_of_range(node));
        }
        for (const bool by_cell : {true, false}) {
            for (const std::size_t body : bodies_to_part(node, by_cell, is_wide ? 0 : by_cell ? 3 : 2)) {
                offer(parts_of_choices(node, body, by_cell));
            }
        }
        constexpr double least_spread = 2e-9, least_share_of_gap = 1e-4;
        if (best_worth < 0 && spread > std::max(least_spread, least_share_of_gap * gap)) {
            offer(parts_of_range(node));
        }
        for (Node& part : best) {
            push(std::move(part));
        }
        return best_worth >= 0;
    }

    static bool is_left(const Node& node, std::size_t body, std::size_t choice)
    {
        return (node.left[body] >> choice & 1) != 0;
    }
    /// By what choices are parted.
    int kind(std::size_t body, std::size_t choice, bool by_cell) const
    {
        return by_cell ? model_.choices[body][choice].cell : model_.choices[body][choice].stance;
    }

    /// The largest few bodies that may lie in several cells, or in several stances.
    std::vector<std::size_t> bodies_to_part(const Node& node, bool by_cell, std::size_t few) const
    {
        std::vector<std::size_t> found;
        for (std::size_t k = 0; k < order_.size() && found.size() < few; ++k) {
            const std::size_t body = order_[k];
            std::optional<int> first;
            bool several = false;
            for (std::size_t choice = 0; choice < model_.choices[body].size(); ++choice) {
                if (is_left(node, body, choice)) {
                    several = several || (first && *first != kind(body, choice, by_cell));
                    first = kind(body, choice, by_cell);
                }
            }
            if (several) {
                found.push_back(body);
            }
        }
        return found;
    }

    Nodes parts_of_choices(const Node& node, std::size_t body, bool by_cell) const
    {
        Nodes parts;
        std::uint64_t done = 0;
        for (std::size_t k = 0; k < model_.choices[body].size(); ++k) {
            if (!is_left(node, body, k) || (done >> k & 1) != 0) {
                continue;
            }
            std::uint64_t part = 0;
            for (std::size_t j = k; j < model_.choices[body].size(); ++j) {
                const bool same = is_left(node, body, j) && kind(body, j, by_cell) == kind(body, k, by_cell);
                part |= same ? std::uint64_t{1} << j : 0;
            }
            done |= part;
            if (!by_cell || !lies_in_itself(model_, node.left, body, model_.choices[body][k].cell)) {
                parts.push_back(node);
                parts.back().left[body] = part;
            }
        }
        return parts;
    }

    Nodes parts_of_range(const Node& node) const
    {
        const bool by_length = node.high.half_length / node.low.half_length >= node.high.half_width / node.low.half_width;
        const double low = by_length ? node.low.half_length : node.low.half_width;
        const double high = by_length ? node.high.half_length : node.high.half_width;
        const double at = critical(low, high);
        Nodes parts{node, node};
        Plan &lower = parts.front().high, &upper = parts.back().low;
        (by_length || model_.round ? lower.half_length : lower.half_width) = at;
        (by_length || model_.round ? upper.half_length : upper.half_width) = at;
        if (model_.round) {
            lower.half_width = upper.half_width = at;
        } else if (lower.half_length < node.low.half_width) { // the length would be the shorter side
            parts.erase(parts.begin());
        }
        return parts;
    }

    /// Where to part a range: a hair below a length at which something begins to fit, near the middle; else the middle.
    double critical(double low, double high) const
    {
        const double middle = std::sqrt(low * high);
        double best = middle, distance = 0.35 * std::log(high / low);
        for (const double sum : critical_) {
            const double at = sum * just_below;
            if (at > low * (1 + 1e-9) && at < high * (1 - 2e-9) && std::abs(std::log(at / middle)) < distance) {
                distance = std::abs(std::log(at / middle));
                best = at;
            }
        }
        return best;
    }

    const Kit& kit_;
    LevelModel model_;
    double incumbent_;
    std::uint64_t most_work_, work_ = 0, work_by_order_ = 0, numbers_ = 0;
    double wall_;
    std::vector<std::size_t> order_;
    std::vector<double> critical_;
    std::priority_queue<Node, std::vector<Node>, LaterNode> open_;
};

} // namespace

double bound_along_axes_ml(const Kit& kit, double incumbent_ml, std::uint64_t work)
{
    require(incumbent_ml > 0, "an incumbent has a volume");
    BranchAndBound search(kit, incumbent_ml * 1000, work);
    return search.is_too_large() ? 0 : search.run() / 1000;
}

} // namespace tuckwright::nesting
