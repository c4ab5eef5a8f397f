// SPDX-License-Identifier: GPL-3.0-or-later
// Outline. Each thing begins at some level and goes on from there without a gap, so the levels that it crosses are an
// interval. Intervals that meet two by two have a level in common (E. Helly, 1923). So where a set of things can't share
// a level, one of them is above another of them. The search starts with no order but that contents are above their
// vessel's floor, puts everything as low as that lets it, looks for a level whose set can't share it, and tries each
// "this above that" within the set in turn. An order of two that can't be is left out, and if one is left, it is taken.
// Guarantee: every arrangement obeys one of the orders that are tried, so none is lower than the lowest of these.
// Source: branching on minimal forbidden sets, G. Igelmund and F. J. Radermacher, Networks 13 (1983); for boxes it is the
// graph of one axis of S. P. Fekete and J. Schepers, Mathematics of Operations Research 29 (2004); from memory.
#include "nesting/level_order.hpp"

#include <algorithm>
#include <limits>
#include <vector>

#include "nesting/level_frame.hpp"
#include "nesting/tiny.hpp"

namespace tuckwright::nesting {

namespace {

/// Least distances from where one thing begins to where another does, in all ways from one to the next.
class Distances {
public:
    explicit Distances(std::size_t things) : things_(things), least_((things + 1) * (things + 1), -infinite)
    {
        for (std::size_t i = 0; i <= things; ++i) {
            least_[i * (things + 1) + i] = 0;
            least_[things * (things + 1) + i] = 0; // above the floor
        }
    }

    double from(std::size_t i, std::size_t j) const { return least_[i * (things_ + 1) + j]; }
    double from_floor(std::size_t j) const { return from(things_, j); }

    void add(std::size_t i, std::size_t j, double distance)
    {
        if (from(i, j) >= distance) {
            return;
        }
        for (std::size_t a = 0; a <= things_; ++a) {
            const double to_i = from(a, i);
            for (std::size_t b = 0; to_i > -infinite && b <= things_; ++b) {
                double& its = least_[a * (things_ + 1) + b];
                its = std::max(its, to_i + distance + from(j, b));
            }
        }
    }
    bool is_circular() const
    {
        for (std::size_t i = 0; i <= things_; ++i) {
            if (from(i, i) > hair) {
                return true;
            }
        }
        return false;
    }

private:
    std::size_t things_;
    std::vector<double> least_; ///< of things_ + 1 places, of which the last is the floor
};

/// The orders of a frame's things.
class Orders {
public:
    Orders(const LevelModel& model, const LevelState& state, const LevelFrame& frame, double enough, int most)
        : model_(model), state_(state), frame_(frame), jobs_(frame.jobs()), best_(enough), most_(most),
          beyond_(jobs_.size() * jobs_.size(), -infinite)
    {
        for (std::size_t i = 0; i < jobs_.size(); ++i) {
            for (std::size_t j = 0; j < jobs_.size(); ++j) {
                beyond_[i * jobs_.size() + j] = i == j ? -infinite : frame.distance_apart(i, j, enough);
            }
        }
        for (std::size_t cell = 0; cell < model.cells.size(); ++cell) {
            if (std::count_if(jobs_.begin(), jobs_.end(), [&](const LevelJob& job) { return LevelFrame::is_in(job, cell); }) > 2) {
                cells_.push_back(cell);
            }
        }
    }

    /// The height of the lowest order, or what is known of it when it has looked at too many.
    double run()
    {
        Distances start(jobs_.size());
        for (std::size_t j = 0; j < jobs_.size(); ++j) {
            hold_in(start, j);
        }
        const bool is_possible = propagate(start);
        const double at_once = is_possible ? height(start) : best_;
        if (is_possible) {
            look(std::move(start));
        }
        return is_used_up() ? std::min(at_once, best_) : best_;
    }
    /// Orders and sets looked at, as work.
    std::uint64_t work() const
    {
        const std::uint64_t things = jobs_.size();
        const std::uint64_t of_an_order = 20 + things * things * things / 200; // distances, and what may still follow what
        return of_an_order * (1 + static_cast<std::uint64_t>(looked_)) + work_of_sets_;
    }

private:
    double beyond(std::size_t i, std::size_t j) const { return beyond_[i * jobs_.size() + j]; }

    /// Above the floors of its vessels, and not beyond the ends of its own; what leans may be higher than it is told.
    void hold_in(Distances& distances, std::size_t j) const
    {
        const LevelJob& job = jobs_[j];
        for (const std::size_t holder : job.holders) {
            const auto floor = frame_.floor(job, holder);
            if (floor || !job.leans()) {
                distances.add(holder, j, floor.value_or(-job.height));
            }
            if (!job.leans() && frame_.cell_of(job, holder) == job.cells.front()) {
                distances.add(j, holder, -jobs_[holder].height);
            }
        }
    }

    double height(const Distances& distances) const
    {
        double most = 0;
        for (std::size_t j = 0; j < jobs_.size(); ++j) {
            most = std::max(most, distances.from_floor(j) + jobs_[j].height);
        }
        return most;
    }
    /// From where a thing begins to the highest end of what must be above.
    double to_top(const Distances& distances, std::size_t i) const
    {
        double most = 0;
        for (std::size_t j = 0; j < jobs_.size(); ++j) {
            most = std::max(most, distances.from(i, j) + jobs_[j].height);
        }
        return most;
    }

    bool is_too_high(double height) const { return height * (1 - hair) >= best_; }

    bool can_follow(const Distances& distances, std::size_t i, std::size_t j) const
    {
        return distances.from(j, i) + beyond(i, j) <= hair &&
               !is_too_high(distances.from_floor(i) + beyond(i, j) + to_top(distances, j));
    }

    /// Takes the orders of two that are the only ones left. False if one pair has none.
    bool propagate(Distances& distances) const
    {
        for (bool more = true; more;) {
            more = false;
            if (distances.is_circular() || is_too_high(height(distances))) {
                return false;
            }
            for (std::size_t i = 0; i < jobs_.size(); ++i) {
                for (std::size_t j = 0; j < i; ++j) {
                    if (beyond(i, j) == -infinite || distances.from(i, j) >= beyond(i, j) - hair ||
                        distances.from(j, i) >= beyond(j, i) - hair) {
                        continue;
                    }
                    const bool up = can_follow(distances, i, j), down = can_follow(distances, j, i);
                    if (!up && !down) {
                        return false;
                    }
                    if (up != down) {
                        distances.add(up ? i : j, up ? j : i, up ? beyond(i, j) : beyond(j, i));
                        more = true;
                    }
                }
            }
        }
        return true;
    }

    struct Above {
        std::size_t lower, upper;
        double distance;
    };

    bool is_used_up() const
    {
        constexpr std::uint64_t each = 100;
        return looked_ > most_ || work() > each * static_cast<std::uint64_t>(most_);
    }

    void look(Distances distances)
    {
        ++looked_;
        if (is_used_up()) {
            return;
        }
        const std::vector<Above> orders = orders_to_try(distances);
        if (orders.empty()) {
            best_ = std::min(best_, height(distances));
            return;
        }
        for (const Above& order : orders) {
            Distances next = distances;
            next.add(order.lower, order.upper, order.distance);
            if (propagate(next)) {
                look(std::move(next));
            }
            if (is_used_up()) {
                return;
            }
        }
    }

    std::vector<Above> orders_to_try(const Distances& distances)
    {
        std::vector<Above> found = orders_of_a_pair(distances);
        return found.empty() ? orders_of_a_set(distances) : found;
    }

    /// Of the two that overlap, and must not, whose parting wins most.
    std::vector<Above> orders_of_a_pair(const Distances& distances) const
    {
        std::vector<Above> found;
        double most = -infinite;
        for (std::size_t i = 0; i < jobs_.size(); ++i) {
            for (std::size_t j = 0; j < i; ++j) {
                const double apart = distances.from_floor(j) - distances.from_floor(i);
                if (beyond(i, j) == -infinite || apart >= beyond(i, j) - hair || -apart >= beyond(j, i) - hair) {
                    continue;
                }
                const double up = distances.from_floor(i) + beyond(i, j) + to_top(distances, j);
                const double down = distances.from_floor(j) + beyond(j, i) + to_top(distances, i);
                if (std::min(up, down) > most) {
                    most = std::min(up, down);
                    found = {{i, j, beyond(i, j)}, {j, i, beyond(j, i)}};
                    if (down < up) {
                        std::swap(found.front(), found.back());
                    }
                }
            }
        }
        return found;
    }

    using Crossing = std::vector<std::pair<std::size_t, const Zone*>>;

    /// What crosses a level of a cell: of each thing the widest slab; nothing that lies in another of them.
    Crossing crossing(const Distances& distances, std::size_t cell, double level) const
    {
        Crossing all;
        for (std::size_t j = 0; j < jobs_.size(); ++j) {
            const auto& zones = jobs_[j].zones;
            const double its = level - distances.from_floor(j);
            if (its < 0 || its > jobs_[j].height || !LevelFrame::is_in(jobs_[j], cell)) {
                continue;
            }
            const auto zone = std::find_if(zones.begin(), zones.end(), [&](const Zone& z) { return its > z.from && its < z.to; });
            if (zone != zones.end()) {
                all.emplace_back(j, &*zone);
            }
        }
        if (all.size() > 2) {
            const Crossing held = all;
            all.erase(std::remove_if(all.begin(), all.end(),
                                     [&](const auto& one) {
                                         return std::any_of(held.begin(), held.end(), [&](const auto& other) {
                                             return frame_.holds(other.first, one.first);
                                         });
                                     }),
                      all.end());
        }
        return all;
    }

    /// Of the first set that shares a level, and must not. Sets grow only where something begins.
    std::vector<Above> orders_of_a_set(const Distances& distances)
    {
        std::vector<std::pair<double, bool>> ends;
        for (std::size_t j = 0; j < jobs_.size(); ++j) {
            for (const Zone& zone : jobs_[j].zones) {
                ends.emplace_back(distances.from_floor(j) + zone.from, true);
                ends.emplace_back(distances.from_floor(j) + zone.to, false);
            }
        }
        std::sort(ends.begin(), ends.end());
        bool has_begun = false;
        for (std::size_t k = 1; k < ends.size(); ++k) {
            has_begun = has_begun || ends[k - 1].second;
            if (!has_begun || ends[k].first - ends[k - 1].first < 2 * hair) {
                continue;
            }
            has_begun = false;
            for (const std::size_t cell : cells_) {
                Crossing there = crossing(distances, cell, (ends[k].first + ends[k - 1].first) / 2);
                if (there.size() > 2 && !may_share(there, cell)) {
                    return all_orders(fewest_of(std::move(there), cell));
                }
            }
        }
        return {};
    }

    /// As few of them as still can't share a level.
    Crossing fewest_of(Crossing there, std::size_t cell)
    {
        for (std::size_t one = there.size(); one-- > 0;) {
            Crossing fewer = there;
            fewer.erase(fewer.begin() + static_cast<std::ptrdiff_t>(one));
            if (!may_share(fewer, cell)) {
                there = std::move(fewer);
            }
        }
        return there;
    }

    bool may_share(const Crossing& there, std::size_t cell)
    {
        work_of_sets_ += 2 + there.size() * there.size() * there.size() / 30; // threes
        SlabSet set;
        for (const auto& one : there) {
            set.set(one.second->slab);
        }
        return may_share_level(model_.slabs, state_.cells()[cell], set);
    }

    static std::vector<Above> all_orders(const Crossing& there)
    {
        std::vector<Above> found;
        for (const auto& lower : there) {
            for (const auto& upper : there) {
                if (lower.first != upper.first) {
                    found.push_back({lower.first, upper.first, lower.second->to - upper.second->from});
                }
            }
        }
        return found;
    }

    const LevelModel& model_;
    const LevelState& state_;
    const LevelFrame& frame_;
    const std::vector<LevelJob>& jobs_;
    double best_;
    int most_, looked_ = 0;
    std::uint64_t work_of_sets_ = 0;
    std::vector<double> beyond_;
    std::vector<std::size_t> cells_; ///< with three things or more
};

} // namespace

double height_by_order(const LevelModel& model, const LevelState& state, const ChoicesLeft& left, double enough, int most,
                       std::uint64_t& work)
{
    double height = 0;
    for (std::size_t root = 0; root < model.cells.size(); ++root) {
        const LevelFrame frame(model, state, left, root);
        if (frame.jobs().empty()) {
            continue;
        }
        const double room = root == 0 ? enough : model.cells[root].depth * (1 + 2 * hair) + 2 * hair;
        Orders orders(model, state, frame, room, most);
        const double its = orders.run();
        work += orders.work();
        if (root == 0) {
            height = std::max(height, its);
        } else if (its >= room) {
            return enough;
        }
    }
    return height;
}

} // namespace tuckwright::nesting
