// SPDX-License-Identifier: GPL-3.0-or-later
#include "nesting/heaviest_set.hpp"

#include <algorithm>
#include <cmath>
#include <functional>

#include "nesting/tiny.hpp"

namespace tuckwright::nesting {

namespace {

/// Slabs at one level, one after the other, with what all conditions but pairs need.
class Level {
public:
    Level(const std::vector<Slab>& slabs, const LevelRules& rules)
        : slabs_(slabs), rules_(rules), plan_(rules.plan), free_(rules.plan.area())
    {
    }

    double free_area() const { return free_; }

    /// Requires: it is apart from each that is there, by pairs.
    bool takes(int slab) const
    {
        const Footprint& f = slabs_[static_cast<std::size_t>(slab)].footprint;
        if (f.area() > free_ * (1 + hair) + hair) {
            return false;
        }
        return plan_.round ? takes_by_number(f.inner()) && takes_by_threes(f.inner()) : takes_by_threes_in_box(slab);
    }

    void add(int slab)
    {
        const Footprint& f = slabs_[static_cast<std::size_t>(slab)].footprint;
        free_ -= f.area();
        radii_.push_back(f.inner());
        there_.push_back(slab);
    }
    void remove_last(int slab)
    {
        free_ += slabs_[static_cast<std::size_t>(slab)].footprint.area();
        radii_.pop_back();
        there_.pop_back();
    }

private:
    /// The discs in the k thickest are as thick as the last of them at least.
    bool takes_by_number(double radius) const
    {
        int no_thinner = 1, all = 1;
        double least = radius;
        for (const double other : radii_) {
            no_thinner += other >= radius ? 1 : 0;
            ++all;
            least = std::min(least, other);
        }
        return radius * least_circle_round(no_thinner) <= plan_.half_length + hair &&
               least * least_circle_round(all) <= plan_.half_length + hair;
    }

    bool takes_by_threes(double radius) const
    {
        for (std::size_t i = 0; i < radii_.size(); ++i) {
            for (std::size_t j = i + 1; j < radii_.size(); ++j) {
                const bool tight = radius > 0 && radii_[i] > 0 && radii_[j] > 0 &&
                                   radius + radii_[i] + radii_[j] > plan_.half_length;
                if (tight && !three_discs_fit(radius, radii_[i], radii_[j], plan_.half_length)) {
                    return false;
                }
            }
        }
        return true;
    }

    Lying lying(int slab) const
    {
        const auto k = static_cast<std::size_t>(slab);
        return {slabs_[k].footprint, slabs_[k].whole, rules_.turned[k]};
    }

    bool takes_by_threes_in_box(int slab) const
    {
        for (std::size_t i = 0; i < there_.size(); ++i) {
            for (std::size_t j = i + 1; j < there_.size(); ++j) {
                if (!three_fit_rectangle(lying(slab), lying(there_[i]), lying(there_[j]), plan_)) {
                    return false;
                }
            }
        }
        return true;
    }

    const std::vector<Slab>& slabs_;
    const LevelRules& rules_;
    const Plan& plan_;
    double free_;
    std::vector<double> radii_;
    std::vector<int> there_;
};

class Search {
public:
    Search(const std::vector<Slab>& slabs, const LevelRules& rules, int most)
        : slabs_(slabs), rules_(rules), level_(slabs, rules), most_(most)
    {
    }

    /// A slab and what it weighs more than the area that it takes.
    struct Candidate {
        int slab;
        double gain, area;
    };

    void look(const std::vector<Candidate>& candidates, double gain)
    {
        if (gain > best_) {
            best_ = gain;
            best_set_ = chosen_;
        }
        double rest = most_gain(candidates, 0);
        for (std::size_t k = 0; k < candidates.size(); ++k) {
            if (gain + rest <= best_ * (1 + 1e-12)) {
                return;
            }
            if (++looked_ > most_) { // nothing more is known of what comes after
                beyond_ = std::max(beyond_, gain + rest);
                return;
            }
            const Candidate& next = candidates[k];
            if (level_.takes(next.slab)) {
                std::vector<Candidate> left;
                const SlabSet& together = rules_.together[static_cast<std::size_t>(next.slab)];
                std::copy_if(candidates.begin() + static_cast<std::ptrdiff_t>(k) + 1, candidates.end(),
                             std::back_inserter(left),
                             [&](const Candidate& c) { return together.test(static_cast<std::size_t>(c.slab)); });
                passed_on_ += left.size();
                level_.add(next.slab);
                chosen_.set(static_cast<std::size_t>(next.slab));
                look(left, gain + next.gain);
                chosen_.reset(static_cast<std::size_t>(next.slab));
                level_.remove_last(next.slab);
            }
            rest = most_gain(candidates, k + 1);
        }
    }

    double best() const { return std::max(best_, beyond_); }
    const SlabSet& best_set() const { return best_set_; }
    /// Sets looked at, and what it costs to pass on what may still join them.
    std::uint64_t work() const { return static_cast<std::uint64_t>(looked_) + passed_on_ / 8; }

private:
    /// By area alone, with a share of the last; one slab of each body at most.
    double most_gain(const std::vector<Candidate>& candidates, std::size_t from) const
    {
        double gain = 0, area = level_.free_area() * (1 + hair) + hair;
        for (std::size_t k = from; k < candidates.size(); ++k) {
            if (candidates[k].area >= area) {
                return gain + candidates[k].gain * area / candidates[k].area;
            }
            gain += candidates[k].gain;
            area -= candidates[k].area;
        }
        return gain;
    }

    const std::vector<Slab>& slabs_;
    const LevelRules& rules_;
    Level level_;
    int most_, looked_ = 0;
    std::uint64_t passed_on_ = 0;
    double best_ = 0, beyond_ = 0;
    SlabSet chosen_, best_set_;
};

} // namespace

LevelRules rules_of_plan(const std::vector<Slab>& slabs, std::vector<Turned> lying, const Plan& plan)
{
    LevelRules rules{plan, std::move(lying), {}, std::vector<SlabSet>(slabs.size())};
    const std::vector<Turned>& turned = rules.turned;
    for (std::size_t i = 0; i < slabs.size(); ++i) {
        const Lying one{slabs[i].footprint, slabs[i].whole, turned[i]};
        if (!fits_alone(one, plan)) {
            continue;
        }
        rules.allowed.set(i);
        for (std::size_t j = 0; j < i; ++j) {
            if (slabs[i].body != slabs[j].body && rules.allowed.test(j) &&
                fit_side_by_side(one, {slabs[j].footprint, slabs[j].whole, turned[j]}, plan)) {
                rules.together[i].set(j);
                rules.together[j].set(i);
            }
        }
    }
    return rules;
}

bool may_share_level(const std::vector<Slab>& slabs, const LevelRules& rules, const SlabSet& set)
{
    if ((set & ~rules.allowed).any()) {
        return false;
    }
    Level level(slabs, rules);
    SlabSet before;
    for (std::size_t k = set._Find_first(); k < slabs.size(); k = set._Find_next(k)) {
        if ((before & ~rules.together[k]).any() || !level.takes(static_cast<int>(k))) {
            return false;
        }
        level.add(static_cast<int>(k));
        before.set(k);
    }
    return true;
}

Heaviest heaviest_set(const std::vector<Slab>& slabs, const LevelRules& rules, const std::vector<double>& weight,
                      double fluid, int most, std::uint64_t& work)
{
    std::vector<Search::Candidate> candidates;
    for (std::size_t k = 0; k < slabs.size(); ++k) {
        const double area = slabs[k].footprint.area(), gain = weight[k] - fluid * area;
        if (rules.allowed.test(k) && gain > 0) {
            candidates.push_back({static_cast<int>(k), gain, area});
        }
    }
    std::stable_sort(candidates.begin(), candidates.end(),
                     [](const auto& a, const auto& b) { return a.gain * b.area > b.gain * a.area; });
    Search search(slabs, rules, most);
    search.look(candidates, 0);
    work += search.work() + candidates.size();
    return {search.best() + fluid * rules.plan.area(), search.best_set()};
}

} // namespace tuckwright::nesting
