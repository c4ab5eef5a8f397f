// SPDX-License-Identifier: GPL-3.0-or-later
// Outline. The smallest bundle mostly has room to spare inside, so the same envelope often takes a better arrangement.
// Each lane walks at random: the pile turned over, what topples put elsewhere, two things swapped, a loose lid shut, many
// things thrown about; overlap is driven out within the fixed envelope, things settle, and the walk goes on from the new
// arrangement if people would mind it no more than the last. Guarantee: never worse than the start.
// Source: own; a plain random walk that accepts equals.
#include "solve/comfort.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

#include "nesting/bundle_of_layout.hpp"
#include "nesting/moves.hpp"
#include "nesting/run_tasks.hpp"
#include "nesting/squeeze.hpp"
#include "packing/pile.hpp"
#include "packing/polish.hpp"
#include "packing/separation.hpp"
#include "solve/overloads.hpp"
#include "tuckwright/footing.hpp"
#include "tuckwright/handling.hpp"
#include "tuckwright/play.hpp"
#include "tuckwright/stacking.hpp"

namespace tuckwright {

using namespace packing;

bool at_ease(const Discomfort& discomfort)
{
    return discomfort.blocked == 0 && discomfort.overloading == 0 && discomfort.dropping == 0 && discomfort.toppling == 0 &&
           discomfort.out_of_reach == 0 && discomfort.loose_lids == 0;
}

namespace {

/// Adds what lies where it may not and what bars the way to what is wanted; `blamed` are the items that might move.
void add_handling(const Bundle& bundle, Discomfort& sum, std::vector<std::size_t>* blamed)
{
    const auto blame = [&](std::size_t item, const std::vector<std::size_t>& others) {
        if (blamed != nullptr) {
            blamed->push_back(item);
            blamed->insert(blamed->end(), others.begin(), others.end());
        }
    };
    const int all = static_cast<int>(bundle.items.size());
    for (const Overload& overload : overloads(bundle)) {
        sum.overloading += static_cast<int>(overload.load.size());
        blame(overload.item, overload.load);
    }
    for (std::size_t item = 0; item < bundle.items.size(); ++item) {
        const PlacedItem& it = bundle.items[item];
        if (it.reach == Wanted::any) {
            continue;
        }
        const Unpacking way = unpacking(bundle, item);
        const int before = way.alone ? static_cast<int>(way.count) : all;
        if (it.reach == Wanted::last) {
            sum.at_hand += all - before;
            continue;
        }
        sum.out_of_reach += (it.reach == Wanted::first ? 2 : 1) * before;
        if (before > 0) {
            blame(item, way.before);
        }
    }
}

/// All that people mind but an order that is wanting and play, which are dear to find out.
Discomfort at_a_glance(const Kit& kit, const Bundle& bundle, const std::vector<Footing>& all)
{
    Discomfort sum;
    add_handling(bundle, sum, nullptr);
    double weight = 0, moment = 0;
    for (const Footing& footing : all) {
        sum.dropping += footing.carried ? 0 : 1;
        sum.toppling += topples(footing) ? 1 : 0;
    }
    sum.loose_lids = static_cast<int>(nesting::lids(kit).size());
    for (const PlacedItem& item : bundle.items) {
        sum.loose_lids -= item.closes ? 1 : 0;
        const double grams = item.weight_g + item.contents_g;
        weight += grams;
        moment += grams * item.solids.front().pose.center.z;
    }
    sum.center_height = weight > 0 ? std::lround(moment / weight) : 0;
    return sum;
}

} // namespace

Discomfort discomfort(const Kit& kit, const Bundle& bundle) { return discomfort(kit, bundle, plays(bundle)); }

Discomfort discomfort(const Kit& kit, const Bundle& bundle, const std::vector<Play>& free)
{
    Discomfort sum = at_a_glance(kit, bundle, footings(bundle));
    sum.blocked = bundle.steps.empty() && stacking_order(bundle).steps.empty() ? 1 : 0;
    sum.play = std::lround(total_play(free));
    return sum;
}

namespace {

/// Whether people mind something more than something else, whatever the plays and centres of weight.
bool is_clearly_worse(Discomfort one, const Discomfort& other)
{
    one.play = other.play;
    one.center_height = other.center_height;
    return one > other;
}

struct Arrangement {
    nesting::Proposal proposal;
    Discomfort discomfort;
    std::vector<int> unsteady; ///< bodies that topple, drop or are in the way of others; without any, those that rattle
};

/// What people mind in a proposal; nothing where they mind it clearly more than `enough`, if that is told.
std::optional<Arrangement> judged(const Kit& kit, nesting::Proposal&& proposal, const Discomfort* enough)
{
    const Bundle bundle = nesting::bundle_of_layout(kit, *proposal.scene, proposal.layout);
    const std::vector<Footing> all = footings(bundle);
    Arrangement made{std::move(proposal), at_a_glance(kit, bundle, all), {}};
    if (enough != nullptr && is_clearly_worse(made.discomfort, *enough)) {
        return std::nullopt;
    }
    const StackingOrder order = stacking_order(bundle);
    made.discomfort.blocked = order.steps.empty() ? 1 : 0;
    if (enough != nullptr && is_clearly_worse(made.discomfort, *enough)) {
        return std::nullopt;
    }
    const std::vector<Play> free = plays(bundle);
    made.discomfort.play = std::lround(total_play(free));
    const std::vector<std::size_t> items = nesting::items_of_bodies(kit, *made.proposal.scene);
    Discomfort unused;
    std::vector<std::size_t> blamed;
    add_handling(bundle, unused, &blamed);
    if (made.discomfort.blocked != 0) {
        blamed = order.cycle;
    }
    for (std::size_t body = 0; body < items.size(); ++body) {
        const bool is_blamed = std::find(blamed.begin(), blamed.end(), items[body]) != blamed.end();
        if (is_blamed || !all[items[body]].carried || topples(all[items[body]])) {
            made.unsteady.push_back(static_cast<int>(body));
        }
    }
    for (std::size_t body = 0; body < items.size() && at_ease(made.discomfort); ++body) {
        if (longest_way(free[items[body]]) >= rattling) {
            made.unsteady.push_back(static_cast<int>(body));
        }
    }
    return made;
}

class Walk {
public:
    Walk(const Kit& kit, const EnvelopeLimits& limits, Arrangement start, const ComfortOptions& options,
         std::uint64_t seed)
        : kit_(kit), options_(options), random_(seed), now_(std::move(start)), best_(now_),
          widest_(now_.proposal.layout.envelope())
    {
        widest_.radius = std::min(widest_.radius * (1 + options.spare), limits.radius);
        widest_.half_length = std::min(widest_.half_length * (1 + options.spare), limits.half_length);
        widest_.half_width = std::min(widest_.half_width * (1 + options.spare), limits.half_width);
        widest_.height = std::min(widest_.height * (1 + options.spare), limits.height);
        polish_.limits = limits;
        polish_.iterations = 8;
        polish_.stop = options.stop;
        now_.proposal.layout.count_anew();
    }

    Arrangement run()
    {
        std::uint64_t spent = 0;
        for (int turn = 0; spent < (at_ease(best_.discomfort) ? options_.calm : options_.work) && !(options_.stop && options_.stop());
             ++turn) {
            nesting::Proposal trial = now_.proposal;
            trial.layout.count_anew();
            if (options_.spare > 0) {
                trial.layout.set_envelope(widest_);
            }
            change(trial, turn);
            const std::uint64_t before = trial.layout.measured();
            if (tidied(trial.layout)) {
                trial.volume = volume(trial.layout.envelope());
                if (auto next = judged(kit_, nesting::Proposal(trial), &now_.discomfort)) {
                    consider(std::move(*next));
                }
                spent += now_.discomfort.blocked != 0 ? blocked_cost : 0;
            }
            spent += trial.layout.measured() - before + judging_cost();
        }
        return std::move(best_);
    }

private:
    static constexpr std::uint64_t fixed_cost = 5'000;     ///< of judging, so that a walk of quick failures ends too
    static constexpr std::uint64_t blocked_cost = 50'000; ///< of looking in vain for an order

    /// Of judging many things more, in proportion to their pairs.
    std::uint64_t judging_cost() const
    {
        const std::size_t bodies = now_.proposal.layout.size();
        return bodies < packing::many_bodies ? fixed_cost : fixed_cost * bodies * bodies / 225;
    }

    /// Goes on from what is no worse but for its play and centre of weight, and remembers the best.
    void consider(Arrangement&& next)
    {
        if (next.discomfort < best_.discomfort) {
            best_ = next;
        }
        now_ = std::move(next);
    }

    void change(nesting::Proposal& trial, int turn)
    {
        const double draw = random_.unit();
        if (turn == 0 || draw < 0.15) {
            if (auto shut = nesting::with_a_lid_shut(kit_, trial, random_)) {
                trial = std::move(*shut);
                return;
            }
        }
        Layout& layout = trial.layout;
        if (turn == 1 || draw < 0.25) {
            nesting::turn_over(layout);
        } else if (draw < 0.7 && !now_.unsteady.empty()) {
            const int body = now_.unsteady[random_.below(now_.unsteady.size())];
            if (draw < 0.3 || !nesting::tuck(layout, body, random_)) {
                nesting::evict(layout, body, random_);
            }
        } else if (draw < 0.9) {
            nesting::swap(layout, random_);
        } else {
            nesting::stir(layout, random_);
        }
    }

    bool tidied(Layout& layout)
    {
        SeparationEffort effort;
        effort.passes = 12;
        effort.stop = options_.stop;
        return separate(layout, random_, effort) && compact(layout, polish_) &&
               nesting::within(layout.envelope(), polish_.limits) && settle(layout, polish_) &&
               !(options_.stop && options_.stop());
    }

    const Kit& kit_;
    const ComfortOptions& options_;
    Random random_;
    PolishOptions polish_;
    Arrangement now_, best_;
    Envelope widest_;
};

} // namespace

nesting::Proposal comfortable(const Kit& kit, const nesting::Proposal& from, const ComfortOptions& options)
{
    nesting::Proposal settled = from;
    const Envelope& envelope = from.layout.envelope();
    const EnvelopeLimits kit_limits = nesting::envelope_limits(kit);
    const double grown = 1 + options.spare;
    EnvelopeLimits limits;
    limits.height = std::max(envelope.height, std::min(grown * envelope.height, kit_limits.height));
    if (envelope.round) {
        limits.radius = std::max(envelope.radius, std::min(grown * envelope.radius, kit_limits.radius));
    } else {
        limits.half_length =
            std::max(envelope.half_length, std::min(grown * envelope.half_length, kit_limits.half_length));
        limits.half_width = std::max(envelope.half_width, std::min(grown * envelope.half_width, kit_limits.half_width));
    }
    PolishOptions polish;
    polish.limits = limits;
    settled.layout.count_anew();
    if (!settle(settled.layout, polish)) {
        return from;
    }
    const Arrangement start = *judged(kit, std::move(settled), nullptr);
    std::vector<std::optional<Arrangement>> found(static_cast<std::size_t>(options.lanes));
    nesting::run_tasks(found.size(), options.threads, [&](std::size_t lane) {
        found[lane] = Walk(kit, limits, start, options, options.seed * 0x9e3779b97f4a7c15ULL + lane).run();
    });
    const auto best = std::min_element(found.begin(), found.end(),
                                       [](const auto& a, const auto& b) { return a->discomfort < b->discomfort; });
    return std::move((*best)->proposal);
}

} // namespace tuckwright
