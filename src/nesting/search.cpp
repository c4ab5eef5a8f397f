// SPDX-License-Identifier: GPL-3.0-or-later
// Outline. Three levels are kept apart: the width of the envelope (from tower to flat), the nesting plan (who is in
// whom, which lids are shut), and the places. Many short starts are spread evenly over the widths on a log scale: each
// builds a layout without overlap, takes a few bodies out and puts them in again many times, then shrinks the envelope
// step by step and drives the overlap out again, over all cells at once. The best, no two alike, are then deepened in
// rounds: shrink, change the aspect, evict and re-nest a body with all it holds, swap two, rebuild a part, each followed
// by separation and compaction. Each round takes half as many as the one before, for twice as long.
// Guarantee: every proposal is free of overlap to the polish's accuracy and within the limits; the first start always
// ends in one when the kit has no limits. Work is counted in pairs of pieces measured, so that answers repeat on any
// number of threads: tasks are numbered, each has its own random numbers, and rounds wait for one another.
// Source: own, from the parts cited in packing/separation.cpp and packing/polish.cpp.
#include "nesting/search.hpp"

#include <algorithm>
#include <array>
#include <atomic>
#include <cmath>
#include <limits>
#include <map>
#include <mutex>
#include <optional>
#include <tuple>

#include "nesting/disc_layer.hpp"
#include "nesting/first_envelope.hpp"
#include "nesting/rework.hpp"
#include "nesting/run_tasks.hpp"
#include "nesting/squeeze.hpp"
#include "packing/construct.hpp"
#include "packing/exact_fill.hpp"
#include "packing/least_box.hpp"
#include "packing/pile.hpp"
#include "packing/steadying.hpp"

namespace tuckwright::nesting {

using namespace packing;

namespace {

/// All lids shut, all loose, and mixtures: the scenes that the starts take turns in.
std::vector<std::shared_ptr<const KitScene>> scenes(const Kit& kit)
{
    std::vector<std::shared_ptr<const KitScene>> made;
    for (const std::vector<bool>& shut : lid_choices(kit)) {
        made.push_back(std::make_shared<const KitScene>(kit_scene(kit, shut)));
    }
    return made;
}

/// Evenly spread in [0, 1): the binary digits of k mirrored. Source: van der Corput 1935.
double spread(std::size_t k)
{
    double value = 0, digit = 0.5;
    for (; k > 0; k >>= 1, digit /= 2) {
        value += digit * static_cast<double>(k & 1);
    }
    return value;
}

/// How many layouts the last rounds still work on: one for each of a few threads.
constexpr std::size_t least_deepened = 2;

/// Work for so many bodies: in proportion to them, from a quarter of that for fifteen to three times as much; for many, in
/// proportion to their pairs, and to themselves where they are very many, so that nobody waits for long.
std::uint64_t worth(std::uint64_t work, std::size_t bodies)
{
    constexpr std::size_t very_many = 120;
    return bodies >= many_bodies ? work * bodies * std::min(bodies, very_many) / 150
                                 : work * std::clamp<std::uint64_t>(bodies, 4, 45) / 15;
}

/// From so many bodies on, some always end over a mouth when they are moved all at once, and what putting them right costs
/// is more than was won: such layouts are made smaller in steps after each of which all is carried.
constexpr std::size_t crowd = 240;

/// Of many bodies few layouts are worked on, for long: chance evens out among many bodies.
SearchEffort for_bodies(SearchEffort effort, std::size_t bodies)
{
    if (bodies >= many_bodies) {
        const int least = bodies >= crowd ? 3 : 4;
        const int few = std::max(least, 4 * effort.starts / static_cast<int>(bodies));
        effort.starts = std::min(effort.starts, few);
        effort.deepened = std::min(effort.deepened, few / 2);
    }
    return effort;
}

class Search {
public:
    Search(const Kit& kit, const SearchOptions& options)
        : kit_(kit), options_(options), scenes_(scenes(kit)), limits_(envelope_limits(kit)),
          is_large_(is_large(scenes_.front()->scene)),
          effort_(for_bodies(options.effort, scenes_.front()->scene.bodies.size())),
          start_work_(worth(effort_.start_work, scenes_.front()->scene.bodies.size())),
          deepen_work_(worth(effort_.deepen_work, scenes_.front()->scene.bodies.size()))
    {
    }

    std::vector<Proposal> run()
    {
        constexpr std::size_t batch = 16; // after each, it may be over
        std::vector<std::optional<Proposal>> exact{of_boxes()};
        keep(exact, deepened_in(0));
        const auto starts = static_cast<std::size_t>(effort_.starts);
        for (std::size_t first = 0; first < starts && !is_over(); first += batch) {
            std::vector<std::optional<Proposal>> started(std::min(batch, starts - first));
            run_tasks(started.size(), options_.threads, [&](std::size_t k) { started[k] = start(first + k); });
            keep(started, deepened_in(0));
        }
        for (int round = 0; round < effort_.rounds && !pool_.empty() && !stopped() && !is_over(); ++round) {
            const std::size_t count = deepened_in(round);
            const std::uint64_t work = deepen_work_ * static_cast<std::uint64_t>(effort_.deepened) / count;
            const std::vector<std::size_t> chosen = choose(count);
            std::vector<std::optional<Proposal>> deeper(count); // where there are fewer, some of them more than once
            run_tasks(count, options_.threads, [&](std::size_t k) {
                deeper[k] = deepen(pool_[chosen[k % chosen.size()]], seed_of(1 + static_cast<std::size_t>(round), k), work);
            });
            keep(deeper, deepened_in(round + 1));
        }
        return std::move(pool_);
    }

private:
    bool stopped() const { return options_.stop && options_.stop(); }
    bool is_crowd() const { return scenes_.front()->scene.bodies.size() >= crowd; }

    /// Whether nothing is left to find.
    bool is_over() const
    {
        return !stopped() && !pool_.empty() && pool_.front().accepted.value_or(true) &&
               (pool_.front().is_least || (options_.is_least && options_.is_least(pool_.front().volume)));
    }

    std::uint64_t seed_of(std::size_t stage, std::size_t task) const
    {
        return options_.seed * 0x9e3779b97f4a7c15ULL + stage * 1000003 + task * 7919 + 1;
    }

    /// Builds a layout, in wider envelopes as long as it comes out higher than the limit and the width may grow:
    /// within its limits, or past them too if `wide`, to be squeezed afterwards. Of many bodies, as long as that helps.
    Layout first_layout(const KitScene& scene, Envelope envelope, Random& random, double eagerness, bool wide,
                        double height_limit) const
    {
        const EnvelopeLimits widest = wide ? EnvelopeLimits{} : limits_;
        const auto burden_of = [&](const Layout& layout) { return burden(layout.envelope(), limits_); };
        std::optional<Layout> best; // of many
        constexpr int most_in_vain = 3;
        constexpr double worth_its_height = 2; // times the volume of a higher one
        for (int trial = 0, in_vain = 0;; ++trial) {
            Layout layout(scene.scene, envelope);
            construct(layout, random, eagerness, 60);
            tighten(layout);
            const double factor =
                is_large_ ? std::clamp(std::sqrt(layout.envelope().height / height_limit), 1.12, 3.0) : 1.12;
            const Envelope wider{envelope.round, std::min(envelope.radius * factor, widest.radius),
                                 std::min(envelope.half_length * factor, widest.half_length),
                                 std::min(envelope.half_width * factor, widest.half_width), envelope.height};
            const bool grown = wider.radius > envelope.radius || wider.half_length > envelope.half_length ||
                               wider.half_width > envelope.half_width;
            const bool is_done = layout.envelope().height <= height_limit || !grown || trial == 40 || stopped();
            if (!is_large_ && is_done) {
                return layout;
            }
            if (is_large_) {
                in_vain = best && burden_of(layout) >= burden_of(*best) ? in_vain + 1 : 0;
                if (in_vain == 0) {
                    best = std::move(layout);
                }
                if (is_done && in_vain > 0 && layout.envelope().height <= height_limit &&
                    volume(layout.envelope()) <= worth_its_height * volume(best->envelope())) {
                    return layout;
                }
                if (is_done || in_vain == most_in_vain) { // a height that only a few of them have may be out of reach
                    return *std::move(best);
                }
            }
            envelope = wider;
        }
    }

    /// Of nothing but boxes: a box that they fill, or else the least box of a few, where an exact search finds it.
    std::optional<Proposal> of_boxes()
    {
        if (scenes_.size() > 1 || kit_.bundle.shape != BundleShape::box) {
            return std::nullopt;
        }
        const auto& scene = scenes_.front();
        LeastBox least;
        least.layout = exact_fill(scene->scene, limits_, {options_.effort.fill_work, options_.stop});
        least.proved = least.layout.has_value();
        if (!least.layout) {
            LeastBoxOptions options{limits_};
            options.work = options_.effort.box_work;
            options.stop = options_.stop;
            least = least_box(scene->scene, options);
        }
        if (!least.layout) {
            return std::nullopt;
        }
        const double found = volume(least.layout->envelope());
        report(found);
        const bool is_least = least.proved && !kit_.bag; // round which the least need not be the least
        return Proposal{scene, *least.layout, found, is_least};
    }

    std::optional<Proposal> start(std::size_t k)
    {
        if (stopped() && k > 0) {
            return std::nullopt;
        }
        Random random(seed_of(0, k));
        // Every scene has its own even spread of widths: half of the starts with all lids shut, the others in turns.
        const std::size_t others = scenes_.size() - 1, half = k / 2;
        const bool first = others == 0 || k % 2 == 0;
        const auto& scene = scenes_[first ? 0 : 1 + half % others];
        Envelope envelope = first_envelope(*scene, kit_,
                                           spread(others == 0 ? k
                                                  : first     ? half
                                                              : half / others),
                                           random);
        widen(envelope, *scene);
        const bool wide = random.chance(0.5);
        EnvelopeLimits aim = limits_;
        if (random.chance(0.4) && options_.aims_low) {
            aim.height = std::min(aim.height, natural_height(*scene, random));
        }
        std::optional<Layout> best;
        for (int trial = 0; trial < (is_large_ ? 1 : 3) && !(best && stopped()); ++trial) {
            Layout layout =
                first_layout(*scene, envelope, random, trial == 0 ? 1.0 : random.between(0.5, 1.0), wide, aim.height);
            if (!best || burden(layout.envelope(), aim) < burden(best->envelope(), aim)) {
                best = layout;
            }
        }
        if (is_large_) {
            aim.height = best->envelope().height > aim.height ? limits_.height : aim.height;
            return large_start(scene, *best, random, aim);
        }
        rework(*best, envelope, random, {aim, options_.stop});
        const SqueezeOptions squeeze_options{aim, start_work_, options_.stop};
        if (!squeeze(*best, random, squeeze_options) &&
            !(within(best->envelope(), limits_) && worst_violation(*best, PolishOptions{}) <= 2e-8)) {
            return std::nullopt;
        }
        report(volume(best->envelope()));
        return Proposal{scene, *best, volume(best->envelope())};
    }

    /// Squeezes a large layout; what was built is kept where that does not end well.
    std::optional<Proposal> large_start(const std::shared_ptr<const KitScene>& scene, const Layout& built,
                                        Random& random, const EnvelopeLimits& aim)
    {
        const auto tell = [this](double smaller) { report(smaller); };
        Layout layout = built;
        const bool is_sound = (is_crowd() && within(layout.envelope(), limits_)) ||
                              squeeze(layout, random, {aim, start_work_, options_.stop, tell}) ||
                              within(layout.envelope(), limits_);
        if (stopped() && has_steady_) {
            return std::nullopt; // there is something to end with soon
        }
        Layout as_built = built;
        const bool stands = steady(as_built, random, limits_, options_.stop);
        if (!(is_sound && steady(layout, random, limits_, options_.stop))) {
            if (!stands) {
                return std::nullopt;
            }
            layout = as_built;
        }
        if (stands && volume(as_built.envelope()) < volume(layout.envelope())) {
            layout = as_built; // steadying may cost more than squeezing has won
        }
        has_steady_ = true;
        squeeze_steadily(layout, random, is_crowd() ? 2 * start_work_ : start_work_);
        report(volume(layout.envelope()));
        return Proposal{scene, layout, volume(layout.envelope())};
    }

    /// Makes a large layout in which all is carried smaller, and keeps it so.
    void squeeze_steadily(Layout& layout, Random& random, std::uint64_t work)
    {
        SqueezeOptions options{limits_, work, options_.stop, [this](double smaller) { report(smaller); }};
        options.finish = [&](Layout& trial) { return steady(trial, random, limits_, options_.stop); };
        Layout smaller = layout;
        if (squeeze(smaller, random, options) && volume(smaller.envelope()) < volume(layout.envelope())) {
            layout = smaller;
        }
    }

    std::optional<Proposal> deepen(const Proposal& from, std::uint64_t seed, std::uint64_t work)
    {
        Random random(seed);
        Layout layout = from.layout;
        layout.count_anew();
        SqueezeOptions squeeze_options{limits_, work, options_.stop, [this](double smaller) { report(smaller); }};
        if (is_disc_layer(layout)) {
            squeeze_options.work /= 2;
            rearrange_layer(layout, random, squeeze_options);
            squeeze_options.work /= 2; // there is little left to gain
        }
        squeeze_options.work /= is_crowd() ? 2 : 1; // most of what is won is lost again by steadying
        refine(layout, random, squeeze_options);
        if (is_large_) {
            if (!steady(layout, random, limits_, options_.stop)) {
                return std::nullopt;
            }
            if (is_crowd() && volume(layout.envelope()) > from.volume) {
                layout = from.layout;
                layout.count_anew();
            }
            squeeze_steadily(layout, random, start_work_);
        }
        return Proposal{from.scene, layout, volume(layout.envelope())};
    }

    /// Rearranges what stands side by side, and compacts it.
    static void rearrange_layer(Layout& layout, Random& random, const SqueezeOptions& options)
    {
        Layout smaller = layout;
        PolishOptions polish;
        polish.limits = options.limits;
        polish.stop = options.stop;
        if (rearrange_discs(smaller, random, options) && compact(smaller, polish) &&
            volume(smaller.envelope()) < volume(layout.envelope())) {
            layout = smaller;
            options.found(volume(layout.envelope()));
        }
    }

    /// A nesting plan: who is in whom, and how stowed, whichever copy it is.
    using Plan = std::vector<std::array<std::size_t, 3>>;
    static Plan plan_of(const Proposal& proposal)
    {
        Plan plan;
        for (int body = 0; body < static_cast<int>(proposal.layout.size()); ++body) {
            const Place& place = proposal.layout.place(body);
            const auto& origins = proposal.scene->origins;
            plan.push_back({origins[at(body)].self.item,
                            place.cell == outermost ? 0 : origins[at(place.cell)].self.item + 1, at(place.way)});
        }
        std::sort(plan.begin(), plan.end());
        return plan;
    }

    /// Keeps the best few of each nesting plan: one that leads nowhere, or can't be put together, must not crowd out the
    /// others. Of the rest, the best of each height are set aside.
    void thin_out()
    {
        constexpr int most_of_a_plan = 3;
        constexpr double same_height = 0.25; // as a share
        std::map<std::pair<const KitScene*, Plan>, int> met;
        std::map<std::tuple<const KitScene*, Plan, long>, int> met_so_high;
        std::vector<Proposal> kept;
        for (Proposal& proposal : pool_) {
            const Plan plan = plan_of(proposal);
            const KitScene* scene = proposal.scene.get();
            const long height = std::lround(std::log(proposal.layout.envelope().height) / same_height);
            const bool is_first_so_high = ++met_so_high[{scene, plan, height}] == 1;
            if (++met[{scene, plan}] <= most_of_a_plan) {
                kept.push_back(std::move(proposal));
            } else if (is_first_so_high) {
                reserve_.push_back(std::move(proposal));
            }
        }
        pool_ = std::move(kept);
    }

    void sort_and_cut(std::vector<Proposal>& proposals)
    {
        std::stable_sort(proposals.begin(), proposals.end(),
                         [](const auto& a, const auto& b) { return a.volume < b.volume; });
        constexpr std::size_t most = 40;
        if (proposals.size() > most) {
            proposals.erase(proposals.begin() + most, proposals.end());
        }
    }

    /// How many layouts a round works on.
    std::size_t deepened_in(int round) const
    {
        return std::max(least_deepened, static_cast<std::size_t>(effort_.deepened) >> round);
    }

    /// Adds to the pool, in rising volume; earlier tasks win ties. So many that are accepted are looked for.
    void keep(std::vector<std::optional<Proposal>>& found, std::size_t wanted)
    {
        for (auto& proposal : found) {
            if (proposal) {
                pool_.push_back(std::move(*proposal));
            }
        }
        std::stable_sort(pool_.begin(), pool_.end(), [](const auto& a, const auto& b) { return a.volume < b.volume; });
        thin_out();
        sort_and_cut(pool_);
        sort_and_cut(reserve_);
        ask(wanted);
        const auto is_accepted = [](const Proposal& proposal) { return proposal.accepted.value_or(true); };
        if (options_.accepts && std::none_of(pool_.begin(), pool_.end(), is_accepted)) {
            pool_.insert(pool_.end(), reserve_.begin(), reserve_.end());
            reserve_.clear();
            sort_and_cut(pool_);
            ask(wanted);
        }
    }

    /// Asks of the smallest proposals, until enough are accepted.
    void ask(std::size_t wanted)
    {
        for (std::size_t from = 0, accepted = 0; options_.accepts && from < pool_.size() && accepted < wanted;) {
            const std::size_t to = std::min(pool_.size(), from + wanted);
            run_tasks(to - from, options_.threads, [&](std::size_t k) {
                Proposal& proposal = pool_[from + k];
                proposal.accepted = proposal.accepted ? *proposal.accepted : options_.accepts(proposal);
            });
            for (; from < to; ++from) {
                accepted += *pool_[from].accepted ? 1 : 0;
            }
        }
    }

    static bool alike(const Proposal& a, const Proposal& b)
    {
        return a.scene == b.scene && std::abs(a.volume / b.volume - 1) < 1e-3 &&
               std::abs(a.layout.envelope().height / b.layout.envelope().height - 1) < 2e-2;
    }

    /// The best of the pool, no two alike; the very best twice, as it is the likeliest to be improved. First the best of
    /// each height, up to half of all: what ends up smallest may be larger than others for a long time, since it takes
    /// many moves to get from one height to another. Of what was not accepted only a few, smaller than the others: they
    /// may become so.
    std::vector<std::size_t> choose(std::size_t most) const
    {
        std::vector<std::size_t> chosen;
        const auto height_class = [&](std::size_t k) {
            constexpr double same_height = 0.15; // as a share
            return std::lround(std::log(pool_[k].layout.envelope().height) / same_height);
        };
        const auto add = [&](bool accepted, std::size_t up_to, bool one_of_each_height) {
            for (std::size_t k = 0; k < pool_.size() && chosen.size() < up_to; ++k) {
                const auto is_alike = [&](std::size_t c) {
                    return alike(pool_[c], pool_[k]) || (one_of_each_height && height_class(c) == height_class(k));
                };
                if (pool_[k].accepted.value_or(true) == accepted &&
                    std::none_of(chosen.begin(), chosen.end(), is_alike)) {
                    if (chosen.empty()) {
                        chosen.push_back(k);
                    }
                    chosen.push_back(k);
                }
            }
        };
        const bool some_refused = std::any_of(
            pool_.begin(), pool_.end(), [](const Proposal& proposal) { return !proposal.accepted.value_or(true); });
        const std::size_t sound = some_refused ? most - most / 2 : most;
        add(true, 1 + sound / 2, true);
        add(true, sound, false);
        add(false, most, false);
        return chosen;
    }

    /// Tells of a layout that is smaller than any before; from whatever thread found it, one at a time.
    void report(double found)
    {
        if (options_.progress) {
            const std::lock_guard<std::mutex> lock(reporting_);
            if (found < smallest_) {
                smallest_ = found;
                options_.progress(found / 1000);
            }
        }
    }

    const Kit& kit_;
    const SearchOptions& options_;
    std::vector<std::shared_ptr<const KitScene>> scenes_;
    EnvelopeLimits limits_;
    bool is_large_; ///< with all lids shut, and so with any
    SearchEffort effort_;
    std::uint64_t start_work_, deepen_work_;
    std::vector<Proposal> pool_;
    std::atomic<bool> has_steady_ = false; ///< whether some large start has ended well
    std::mutex reporting_;
    double smallest_ = std::numeric_limits<double>::infinity(); ///< mm^3, of what was reported
    std::vector<Proposal> reserve_; ///< of plans that the pool has enough of, for when nothing there is accepted
};

} // namespace

std::vector<Proposal> search(const Kit& kit, const SearchOptions& options) { return Search(kit, options).run(); }

} // namespace tuckwright::nesting
