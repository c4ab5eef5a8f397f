// SPDX-License-Identifier: GPL-3.0-or-later
// Outline (logic-based Benders cuts, Hooker and Ottosson 2003). A small model knows what each thing is worth, what it
// takes up at least, and sets that did not go in. The set of most worth that it allows is packed. If it goes in, no other
// is better as far as is known, and that is the answer. If not, it is made smaller as long as it still does not go in, and
// the model learns that no set may hold what is left. Guarantee: what is said to go in has been proved by the exact check;
// no better set goes in if all that the model learnt was proved, else none was found to.
#include "tuckwright/fill.hpp"

#include <algorithm>
#include <chrono>
#include <numeric>

#include "advice/best_set.hpp"
#include "advice/left_out.hpp"
#include "advice/vessel_kit.hpp"
#include "tuckwright/contract.hpp"
#include "tuckwright/worst_case.hpp"

namespace tuckwright {

using namespace advice;

const char* to_string(LeftOut why)
{
    switch (why) {
    case LeftOut::too_large: return "too-large";
    case LeftOut::by_rule: return "by-rule";
    case LeftOut::too_much: return "too-much";
    case LeftOut::not_together: return "not-together";
    case LeftOut::not_alone: return "not-alone";
    case LeftOut::not_tried: return "not-tried";
    }
    require(false, "there are six reasons");
    return "";
}

const char* to_string(Choice choice)
{
    switch (choice) {
    case Choice::proved: return "proved";
    case Choice::searched: return "searched";
    case Choice::cut_short: return "cut-short";
    case Choice::none: return "none";
    }
    require(false, "a choice is one of the four");
    return "";
}

namespace {

/// How much may be tried. A search in vain takes about as long as its things squared: a second for ten.
struct Patience {
    Effort effort = Effort::quick; ///< of each search
    int in_vain = 0;               ///< of all short searches in vain, their things squared
    int again_in_vain = 0;         ///< of those by which things are exchanged
    std::uint64_t bound_work = 0;  ///< of each proof that a set does not go in
};

Patience patience_of(Effort effort)
{
    switch (effort) {
    case Effort::quick: return {Effort::quick, 1'200, 250, 250'000};
    case Effort::normal: return {Effort::quick, 1'500, 500, 1'000'000};
    case Effort::thorough: return {Effort::normal, 20'000, 4'000, 4'000'000};
    }
    return {};
}

/// All copies of what may go in, by priority; and what each set has come to so far.
class Filler {
public:
    Filler(const Kit& kit, std::size_t vessel, const SolveOptions& options)
        : kit_(kit), vessel_(vessel), options_(options), patience_(patience_of(options.effort)),
          begin_(std::chrono::steady_clock::now())
    {
        make_model();
    }

    Filling run()
    {
        Filling filling;
        tell_vessel(filling);
        const Counts first = model_.least;
        const bool must_go_in = tried(first);
        if (!must_go_in) {
            learn(core_of(first));
        }
        try_each_alone();
        if (!must_go_in) {
            filling.left = left_out(facts(), Counts(kit_.items.size(), 0));
            filling.tries = tries_;
            return filling;
        }
        add_what_goes_in(model_.least);
        add_what_goes_in(set_);
        look_for_better(patience_.in_vain);
        add_what_goes_in(set_);
        if (try_harder()) {
            add_what_goes_in(set_);
        }
        const bool all_looked_at = look_for_better(0);
        filling.choice = !all_looked_at               ? Choice::cut_short
                         : nothing_better_by_proofs() ? Choice::proved
                                                      : Choice::searched;
        tidy_up();
        tell_set(filling);
        return filling;
    }

private:
    void try_each_alone()
    {
        for (std::size_t item = 0; item < kit_.items.size() && !stopped(); ++item) {
            if (model_.most[item] > 0) {
                Counts alone(kit_.items.size(), 0);
                alone[item] = 1;
                goes_in_alone_[item] = tried(alone);
                if (!goes_in_alone_[item]) {
                    learn(alone);
                }
            }
        }
    }

    void make_model()
    {
        const std::size_t n = kit_.items.size();
        const auto lid = lid_of(kit_, vessel_);
        model_.worth.resize(n);
        model_.least.assign(n, 0);
        model_.most.assign(n, 0);
        model_.stuff.assign(n, 0);
        model_.needs.resize(n);
        goes_in_alone_.assign(n, false);
        const Kit sized = kit_.worst_case ? worst_case(kit_) : kit_;
        model_.room = volume_ml(shut_cavity(sized, vessel_)) * 1000;
        for (std::size_t i = 0; i < n; ++i) {
            const Item& item = kit_.items[i];
            if (i == vessel_ || i == lid) {
                continue;
            }
            model_.worth[i] = {item.priority, 1, volume_ml(item.outside) * 1000};
            model_.most[i] = item.count;
            model_.least[i] = item.must_have ? item.count : 0;
            model_.stuff[i] = least_stuff(sized.items[i]);
        }
        for (const CarryRule& rule : kit_.rules) {
            learn_rule(rule);
        }
    }

    void learn_rule(const CarryRule& rule)
    {
        const std::size_t first = index_of(kit_, rule.first), second = index_of(kit_, rule.second);
        const auto lid = lid_of(kit_, vessel_);
        Counts set(kit_.items.size(), 0);
        if (first == vessel_ || first == lid || second == lid) {
            if (rule.keep == Keep::apart && second != vessel_ && second != lid) { // the vessel holds it
                set[second] = 1;
                model_.impossible.push_back(set);
                proved_.push_back(set);
            }
            return;
        }
        set[first] = 1;
        if (second == vessel_) {
            if (rule.keep == Keep::apart || rule.keep == Keep::out) {
                model_.impossible.push_back(set);
                proved_.push_back(set);
            }
        } else if (rule.keep == Keep::apart) {
            set[second] = 1;
            model_.impossible.push_back(set);
            proved_.push_back(set);
        } else if (rule.keep == Keep::within || rule.keep == Keep::shut) {
            model_.needs[first].push_back(second);
        }
    }

    bool stopped() const
    {
        const std::chrono::duration<double> gone = std::chrono::steady_clock::now() - begin_;
        return (options_.stop != nullptr && options_.stop->load()) ||
               (options_.seconds > 0 && gone.count() >= options_.seconds);
    }

    SolveOptions search_options(Effort effort) const
    {
        SolveOptions search = options_;
        search.effort = effort;
        search.progress = nullptr;
        if (options_.seconds > 0) {
            const std::chrono::duration<double> gone = std::chrono::steady_clock::now() - begin_;
            search.seconds = std::max(1e-3, options_.seconds - gone.count());
        }
        return search;
    }

    /// The chosen set once more, with time for what people would rather build.
    void tidy_up()
    {
        if (!stopped()) {
            Bundle tidy = solve(vessel_kit(kit_, vessel_, set_), search_options(patience_.effort));
            if (has_bundle(tidy.status)) {
                bundle_ = std::move(tidy);
            }
        }
    }

    /// Whether a set goes in; the bundle of the best set so far is kept.
    bool tried(const Counts& set)
    {
        if (std::any_of(fitting_.begin(), fitting_.end(), [&](const Counts& known) { return is_part(set, known); })) {
            return true;
        }
        if (std::any_of(failing_.begin(), failing_.end(), [&](const Counts& known) { return is_part(known, set); })) {
            return false;
        }
        ++tries_;
        if (cannot_go_in(kit_, vessel_, set, 0)) {
            failing_.push_back(set);
            proved_.push_back(set);
            return false;
        }
        SolveOptions search = search_options(patience_.effort);
        search.any_size = true;
        const Bundle packed = solve(vessel_kit(kit_, vessel_, set), search);
        if (!has_bundle(packed.status)) {
            in_vain_ += things_squared(set);
            if (!stopped()) {
                failing_.push_back(set);
            }
            return false;
        }
        fitting_.push_back(set);
        if (set_.empty() || worth_of(model_, set) > worth_of(model_, set_)) {
            const auto at_least = [](int a, int b) { return a >= b; };
            if (std::equal(set.begin(), set.end(), model_.least.begin(), at_least)) {
                set_ = set;
                bundle_ = packed;
                if (options_.progress) {
                    options_.progress(volume_ml(bundle_.envelope));
                }
            }
        }
        return true;
    }

    static int things_squared(const Counts& set)
    {
        const int things = std::accumulate(set.begin(), set.end(), 0);
        return things * things;
    }

    static bool is_part(const Counts& set, const Counts& of)
    {
        return std::equal(set.begin(), set.end(), of.begin(), [](int a, int b) { return a <= b; });
    }

    /// No set may hold this one, which does not go in.
    void learn(const Counts& set)
    {
        if (stopped()) {
            return; // it may not have been looked at properly
        }
        model_.impossible.push_back(set);
        const bool known = std::find(proved_.begin(), proved_.end(), set) != proved_.end();
        if (!known && cannot_go_in(kit_, vessel_, set, patience_.bound_work)) {
            proved_.push_back(set);
        }
    }

    /// A part of a set that does not go in which does not go in either. Things are put in, the largest first, until they
    /// do not go in: the last is to blame, and is put in before all others the next time.
    Counts core_of(const Counts& set)
    {
        std::vector<std::size_t> rest;
        for (std::size_t item = 0; item < set.size(); ++item) {
            rest.insert(rest.end(), static_cast<std::size_t>(set[item]), item);
        }
        std::stable_sort(rest.begin(), rest.end(), [&](std::size_t a, std::size_t b) {
            return model_.worth[a].volume > model_.worth[b].volume;
        });
        Counts core(set.size(), 0), failing = set;
        while (!is_exhausted() && tried(core)) {
            Counts filled = core;
            std::size_t last = 0;
            for (; last < rest.size() && !is_exhausted(); ++last) {
                ++filled[rest[last]];
                if (last + 1 == rest.size() || !tried(filled)) {
                    break;
                }
            }
            if (is_exhausted()) {
                break;
            }
            failing = filled;
            ++core[rest[last]];
            rest.resize(last);
        }
        return least_failing_part(failing);
    }

    /// The fewest things of a set of which it is known that they do not go in; the set itself where nothing is known.
    Counts least_failing_part(const Counts& set) const
    {
        const auto things = [](const Counts& counts) { return std::accumulate(counts.begin(), counts.end(), 0); };
        Counts least = set;
        for (const Counts& known : failing_) {
            if (is_part(known, set) && things(known) < things(least)) {
                least = known;
            }
        }
        return least;
    }

    bool is_exhausted() const { return in_vain_ >= patience_.in_vain || stopped(); }

    /// Whether every set of more worth has been looked at or holds something that does not go in.
    bool look_for_better(int in_vain)
    {
        for (;;) {
            const BestSet next = best_set(model_, worth_of(model_, set_));
            if (!next.set) {
                return next.complete;
            }
            if (in_vain_ >= in_vain || stopped()) {
                return false;
            }
            if (tried(*next.set)) {
                continue; // the model has none of more worth, unless it was given up
            }
            learn(core_of(*next.set));
        }
    }

    /// One more thing at a time, those first that count most for what they take up. Begun with nothing but what must go in,
    /// this is not led astray by one large thing that goes in alone.
    void add_what_goes_in(Counts filled)
    {
        std::vector<std::size_t> order(kit_.items.size());
        std::iota(order.begin(), order.end(), std::size_t{0});
        const auto per_room = [&](std::size_t item) {
            return static_cast<double>(model_.worth[item].priority) / std::max(1.0, model_.worth[item].volume);
        };
        std::stable_sort(order.begin(), order.end(),
                         [&](std::size_t a, std::size_t b) { return per_room(a) > per_room(b); });
        for (const std::size_t item : order) {
            for (bool goes_in = true; goes_in && filled[item] < model_.most[item] && !stopped();) {
                Counts more = filled;
                ++more[item];
                goes_in = is_allowed(model_, more) && tried(more);
                if (goes_in) {
                    filled = more;
                }
                if (!goes_in && is_allowed(model_, more)) {
                    learn(least_failing_part(more));
                }
            }
        }
    }

    /// Once more, for whatever is not proved not to go in: one more thing at a time, with a whole search; and one in place
    /// of another, with a short search of another seed. Returns whether any did.
    bool try_harder()
    {
        bool any = false;
        for (std::size_t item = 0; item < kit_.items.size(); ++item) {
            for (bool goes_in = true; goes_in && set_[item] < model_.most[item];) {
                Counts more = set_;
                ++more[item];
                goes_in = goes_in_after_all(more, search_options(patience_.effort));
                any = any || goes_in;
            }
        }
        SolveOptions again = search_options(patience_.effort);
        again.any_size = true;
        ++again.seed;
        for (bool goes_in = true; goes_in;) {
            const std::vector<Counts> all = exchanges();
            goes_in = std::any_of(all.begin(), all.end(), [&](const Counts& other) {
                return again_in_vain_ < patience_.again_in_vain && goes_in_after_all(other, again);
            });
            any = any || goes_in;
        }
        return any;
    }

    /// The sets of more worth that have one thing in place of another, those of most worth first.
    std::vector<Counts> exchanges() const
    {
        std::vector<Counts> all;
        for (std::size_t out = 0; out < set_.size(); ++out) {
            for (std::size_t in = 0; in < set_.size(); ++in) {
                Counts other = set_;
                --other[out];
                ++other[in];
                if (set_[out] > model_.least[out] && set_[in] < model_.most[in] &&
                    worth_of(model_, other) > worth_of(model_, set_)) {
                    all.push_back(std::move(other));
                }
            }
        }
        std::stable_sort(all.begin(), all.end(), [&](const Counts& a, const Counts& b) {
            return worth_of(model_, a) > worth_of(model_, b);
        });
        return all;
    }

    /// Whether a set of more worth goes in by that search: then it is the best, and what was held against it is forgotten.
    bool goes_in_after_all(const Counts& set, const SolveOptions& search)
    {
        SetModel proofs = model_;
        proofs.impossible = proved_;
        if (stopped() || !is_allowed(proofs, set) || cannot_go_in(kit_, vessel_, set, 0)) {
            return false;
        }
        ++tries_;
        Bundle packed = solve(vessel_kit(kit_, vessel_, set), search);
        if (!has_bundle(packed.status)) {
            again_in_vain_ += things_squared(set);
            return false;
        }
        set_ = set;
        bundle_ = std::move(packed);
        fitting_.push_back(set);
        const auto was_wrong = [&](const Counts& known) { return is_part(known, set); };
        std::erase_if(model_.impossible, was_wrong);
        std::erase_if(failing_, was_wrong);
        return true;
    }

    /// Whether what was proved is enough to leave no better set.
    bool nothing_better_by_proofs() const
    {
        SetModel model = model_;
        model.impossible = proved_;
        const BestSet better = best_set(model, worth_of(model, set_));
        return !better.set && better.complete;
    }

    void tell_vessel(Filling& filling) const
    {
        const Item& vessel = kit_.items[vessel_];
        const auto lid = lid_of(kit_, vessel_);
        filling.kit = kit_.name;
        filling.vessel = vessel.id;
        filling.lid = lid ? kit_.items[*lid].id : "";
        filling.own_lid = !lid && vessel.inside->opens == Opening::closed;
        filling.room_ml = model_.room / 1000;
        filling.candidates = std::accumulate(model_.most.begin(), model_.most.end(), 0);
    }

    Facts facts() const { return {kit_, vessel_, model_, proved_, goes_in_alone_}; }

    void tell_set(Filling& filling)
    {
        filling.things = std::accumulate(set_.begin(), set_.end(), 0);
        filling.bundle = bundle_;
        for (const PlacedItem& item : bundle_.items) {
            const bool is_direct = item.in && bundle_.items[item.in->item].id == filling.vessel;
            filling.filled_ml += is_direct && !item.closes ? volume_ml(item.solids.front().shape) : 0;
        }
        filling.left = left_out(facts(), set_);
        filling.tries = tries_;
    }

    const Kit& kit_;
    std::size_t vessel_;
    const SolveOptions& options_;
    Patience patience_;
    std::chrono::steady_clock::time_point begin_;
    SetModel model_;
    std::vector<Counts> proved_;  ///< sets that are proved not to go in
    std::vector<Counts> fitting_; ///< sets that go in
    std::vector<Counts> failing_; ///< sets that were not found to
    std::vector<bool> goes_in_alone_;
    Counts set_; ///< the best so far
    Bundle bundle_;
    int tries_ = 0, in_vain_ = 0, again_in_vain_ = 0;
};

} // namespace

Filling fill(const Kit& kit, const std::string& vessel, const SolveOptions& options)
{
    require(problems_of_vessel(kit, vessel).empty(), "the vessel can be filled");
    return Filler(kit, index_of(kit, vessel), options).run();
}

} // namespace tuckwright
