// SPDX-License-Identifier: GPL-3.0-or-later
// The pipeline: bound, search, settle, put on the grid, order, certify, check. Only a bundle to which the exact check
// has no objection leaves; a proposal that fails is tried again with wider gaps, then given up for the next best.
#include "tuckwright/solve.hpp"

#include <algorithm>
#include <chrono>
#include <cmath>
#include <fmt/format.h>
#include <optional>
#include <thread>

#include "kit/soundness.hpp"
#include "nesting/lower_bound.hpp"
#include "nesting/search.hpp"
#include "packing/construct.hpp"
#include "packing/pile.hpp"
#include "solve/acceptable.hpp"
#include "solve/comfort.hpp"
#include "solve/covers.hpp"
#include "solve/least_volume.hpp"
#include "solve/lid_bands.hpp"
#include "solve/measures.hpp"
#include "solve/mending.hpp"
#include "solve/pouches.hpp"
#include "solve/proving.hpp"
#include "tuckwright/contract.hpp"
#include "tuckwright/proof.hpp"
#include "tuckwright/stowage.hpp"
#include "tuckwright/worst_case.hpp"

namespace tuckwright {

const char* to_string(Effort effort)
{
    switch (effort) {
    case Effort::quick: return "quick";
    case Effort::normal: return "normal";
    case Effort::thorough: return "thorough";
    }
    require(false, "an effort is one of the three");
    return "";
}

namespace {

nesting::SearchEffort counts(Effort effort)
{
    switch (effort) {
    case Effort::quick: return {32, 12, 2, 150'000, 200'000, 5'000'000, 10'000'000};
    case Effort::normal: return {48, 32, 6, 150'000, 400'000, 10'000'000, 40'000'000};
    case Effort::thorough: return {384, 96, 8, 300'000, 1'000'000, 100'000'000, 400'000'000};
    }
    return {};
}

/// How hard to try to prove that nothing is smaller.
std::uint64_t bound_work(Effort effort)
{
    switch (effort) {
    case Effort::quick: return 1'000'000;
    case Effort::normal: return 4'000'000;
    case Effort::thorough: return 40'000'000;
    }
    return 0;
}

bool has_load_limits(const Kit& kit)
{
    return std::any_of(kit.items.begin(), kit.items.end(),
                       [](const Item& item) { return item.nothing_on_top || item.bears_g; });
}

/// Where loads forbid all that was found: the first that can be rearranged, in ever larger envelopes.
std::optional<Bundle> proved_with_spare_room(const Kit& kit, const std::vector<nesting::Proposal>& proposals,
                                             ComfortOptions comfort, Refused& refused)
{
    constexpr std::size_t most_tried = 2;
    for (const double spare : {0.03, 0.1, 0.25, 0.6}) {
        comfort.spare = spare;
        for (std::size_t k = 0; k < std::min(most_tried, proposals.size()) && !(comfort.stop && comfort.stop()); ++k) {
            if (auto bundle = proved(kit, comfortable(kit, proposals[k], comfort), refused)) {
                return bundle;
            }
        }
    }
    return std::nullopt;
}

/// Whether people would rather build the one than the other. What is worse than a nuisance may cost what nobody can
/// measure; less play may cost no more than rounding, and gives way to a smaller bundle.
bool is_nicer(const Kit& kit, const Bundle& bundle, const Bundle& than)
{
    constexpr double as_small = 1 + 1e-4, the_same = 1 + 5e-8;
    const double volume = volume_ml(bundle.envelope), other = volume_ml(than.envelope);
    Discomfort here = discomfort(kit, bundle), there = discomfort(kit, than);
    if (volume <= the_same * other && other <= the_same * volume) {
        return here < there;
    }
    here.play = there.play = 0;
    here.center_height = there.center_height = 0;
    return here < there ? volume <= as_small * other : here == there && volume < other;
}

/// Whether two lists of items have one in common.
bool share_one(const std::vector<std::size_t>& some, const std::vector<std::size_t>& others)
{
    return std::any_of(some.begin(), some.end(), [&](std::size_t item) {
        return std::find(others.begin(), others.end(), item) != others.end();
    });
}

/// The first bundle of many things that can be proved: as it was found, or with what spoils it put elsewhere. What the
/// exact check objects to twice leaves its vessel, which may fit too tightly for its turn.
std::optional<Bundle> first_proved(const Kit& kit, const std::vector<nesting::Proposal>& proposals, std::uint64_t seed,
                                   Refused& refused)
{
    constexpr std::size_t rounds = 16, gentle_rounds = 4, most_rounds = 64; // of one proposal, and of all together
    std::size_t left = most_rounds;
    for (const nesting::Proposal& proposal : proposals) {
        packing::Random random(seed);
        nesting::Proposal present = proposal;
        std::vector<std::size_t> objected_before;
        for (std::size_t round = 0, given = 0; round < rounds && given < std::size(tries) && left > 0; ++round, --left) {
            Hopeless hopeless;
            if (auto bundle = proved(kit, present, tries[given], hopeless)) {
                return bundle;
            }
            refused.insert(refused.end(), hopeless.too_much.begin(), hopeless.too_much.end());
            if (hopeless.misplaced.empty()) {
                ++given;
            } else {
                const bool again = hopeless.is_objected_to && share_one(hopeless.misplaced, objected_before);
                const packing::Going going = again                    ? packing::Going::out_of_its_vessel
                                             : round >= gentle_rounds ? packing::Going::on_top
                                                                      : packing::Going::as_near_as_can_be;
                put_elsewhere(kit, present, hopeless.misplaced, random, going);
                if (hopeless.is_objected_to) {
                    objected_before = std::move(hopeless.misplaced);
                }
            }
        }
    }
    return std::nullopt;
}

/// The smallest bundle that can be proved, rearranged within its size to what people would rather build.
std::optional<Bundle> best_proved(const Kit& kit, const std::vector<nesting::Proposal>& proposals,
                                  const ComfortOptions& comfort, Refused& refused)
{
    // Later proposals are larger before the last compaction, which wins a fraction of a per cent at most.
    constexpr double worth_a_look = 1.002;
    if (!proposals.empty() && has_many(proposals.front())) {
        auto first = first_proved(kit, proposals, comfort.seed, refused);
        return first || !has_load_limits(kit) ? std::move(first)
                                              : proved_with_spare_room(kit, proposals, comfort, refused);
    }
    constexpr int most_rearranged = 4; // where none can be proved, rearranging them all would take too long
    int rearranged = 0;
    std::optional<Bundle> best;
    const nesting::Proposal* at_ease_from = nullptr; // what the best was made of, if it has not been rearranged
    for (const nesting::Proposal& proposal : proposals) {
        if (best && proposal.volume > volume_ml(best->envelope) * 1000 * worth_a_look) {
            break;
        }
        auto bundle = proved(kit, proposal, refused);
        const bool improvable = rearranged < most_rearranged && (!bundle || !at_ease(discomfort(kit, *bundle)));
        bool untouched = true;
        if (improvable && (!best || !bundle || volume_ml(bundle->envelope) < volume_ml(best->envelope))) {
            ++rearranged;
            untouched = false;
            auto nicer = proved(kit, comfortable(kit, proposal, comfort), refused);
            if (nicer && (!bundle || is_nicer(kit, *nicer, *bundle))) {
                bundle = std::move(nicer);
            }
        }
        if (bundle && (!best || volume_ml(bundle->envelope) < volume_ml(best->envelope))) {
            best = std::move(bundle);
            at_ease_from = untouched ? &proposal : nullptr;
        }
    }
    if (at_ease_from != nullptr) {
        auto calmer = proved(kit, comfortable(kit, *at_ease_from, comfort), refused);
        if (calmer && is_nicer(kit, *calmer, *best)) {
            best = std::move(calmer);
        }
    }
    return best || !has_load_limits(kit) ? best : proved_with_spare_room(kit, proposals, comfort, refused);
}

/// One of the few smallest, as it was found; where none can be proved, the first rearranged.
std::optional<Bundle> any_proved(const Kit& kit, const std::vector<nesting::Proposal>& proposals,
                                 const ComfortOptions& comfort, Refused& refused)
{
    constexpr std::size_t most_tried = 4;
    for (std::size_t k = 0; k < std::min(most_tried, proposals.size()); ++k) {
        if (auto bundle = proved(kit, proposals[k], refused)) {
            return bundle;
        }
    }
    return proposals.empty() ? std::nullopt : proved(kit, comfortable(kit, proposals.front(), comfort), refused);
}

nesting::SearchOptions search_options(const SolveOptions& options)
{
    const auto begin = std::chrono::steady_clock::now();
    nesting::SearchOptions search;
    search.effort = counts(options.effort);
    if (options.any_size) {
        search.aims_low = false;
        search.effort.starts /= 4; // what there is, one of the first starts finds; deepening makes it smaller
    }
    search.seed = options.seed;
    search.threads = options.threads != 0 ? options.threads : std::max(1u, std::thread::hardware_concurrency());
    search.progress = options.progress;
    search.stop = [begin, seconds = options.seconds, flag = options.stop] {
        return (flag != nullptr && flag->load()) ||
               (seconds > 0 &&
                std::chrono::duration<double>(std::chrono::steady_clock::now() - begin).count() > seconds);
    };
    return search;
}

/// Work in proportion to the things of a kit, up to fifteen.
ComfortOptions comfort_options(const Kit& kit, const SolveOptions& options, const nesting::SearchOptions& search)
{
    ComfortOptions comfort;
    comfort.lanes = options.effort == Effort::thorough ? 16 : 8;
    comfort.work = options.effort == Effort::quick ? 250'000 : options.effort == Effort::normal ? 1'000'000 : 2'000'000;
    comfort.work = comfort.work * static_cast<std::uint64_t>(std::clamp(things_of(kit), 4, 15)) / 15;
    comfort.calm = comfort.work / 2;
    comfort.seed = options.seed;
    comfort.threads = search.threads;
    comfort.stop = search.stop;
    return comfort;
}

/// The rule by which nothing may lie on it.
const char* rule_of_top(const Item& item)
{
    const bool fragile = std::find(item.kinds.begin(), item.kinds.end(), Kind::fragile) != item.kinds.end();
    return fragile ? "the usual rule fragile-top" : "its 'nothing-on-top'";
}

/// Why there is no bundle, which is no proof that none exists.
std::string not_found_in_words(const Kit& kit, const Refused& refused, bool was_stopped, const SolveOptions& options)
{
    if (!refused.empty()) {
        const TooMuch& first = refused.front();
        const Item& item =
            *std::find_if(kit.items.begin(), kit.items.end(), [&](const Item& one) { return one.id == first.item; });
        const std::string upper = first.upper == first.item ? "another " + first.upper : "the " + first.upper;
        const std::string rule =
            item.nothing_on_top
                ? fmt::format("{} would lie on the {}, on which nothing may ({})", upper, item.id, rule_of_top(item))
                : fmt::format("more than {:g} g, of it {}, would lie on the {} (its 'bears')", *item.bears_g, upper,
                              item.id);
        return fmt::format("bundles were found{}, but in them {}; that is no proof that none exists",
                           was_stopped ? " before the search was stopped" : " within this effort", rule);
    }
    if (!was_stopped) {
        return fmt::format(
            "no bundle{}{} within the limits was found within this effort; that is no proof that none exists",
            filling_in_words(kit), passing_in_words(kit));
    }
    const bool by_hand = options.stop != nullptr && options.stop->load();
    return fmt::format("the search was stopped{} before it had found anything; that is no proof that there is nothing",
                       by_hand ? "" : fmt::format(" after {:g} s", options.seconds));
}

/// The best bundle that a search finds. Where all that it ends at is alike and cannot be put together, another one.
/// What bears too much is no matter of chance: `refused` says so.
std::optional<Bundle> searched(const Kit& kit, const SolveOptions& options, nesting::SearchOptions search,
                               Refused& refused)
{
    constexpr int most_searches = 3;
    for (int trial = 0; trial < most_searches; ++trial) {
        const std::vector<nesting::Proposal> proposals = covered_proposals(kit, search);
        const ComfortOptions comfort = comfort_options(kit, options, search);
        if (options.any_size) {
            return any_proved(kit, proposals, comfort, refused);
        }
        auto best = best_proved(kit, proposals, comfort, refused);
        if (best || proposals.empty() || !refused.empty() || search.stop()) {
            return best;
        }
        search.seed += 0x9e3779b97f4a7c15; // the golden ratio: far from what anybody gives
    }
    return std::nullopt;
}

/// The best bundle; with thorough effort the smaller of what normal effort finds first, so that there is something if
/// the search is stopped later on, and of what thorough effort does.
std::optional<Bundle> searched_in_turn(const Kit& kit, const SolveOptions& options, const nesting::SearchOptions& search,
                                       Refused& refused)
{
    std::optional<Bundle> first;
    const auto volume = [](const Bundle& bundle) { return volume_ml(outer_envelope(bundle)); };
    nesting::SearchOptions next = search;
    if (options.effort == Effort::thorough && things_of(kit) < static_cast<int>(packing::many_bodies)) {
        next.effort = counts(Effort::normal);
        first = searched(kit, options, next, refused);
        if (first && (search.stop() || search.is_least(volume(*first) * 1000))) {
            return first;
        }
        next.effort = search.effort;
        if (first && search.progress) {
            next.progress = [&search, least = volume(*first)](double ml) {
                if (ml < least) {
                    search.progress(ml);
                }
            };
        }
    }
    auto best = searched(kit, options, next, refused);
    return first && !(best && volume(*best) <= volume(*first)) ? first : best;
}

/// A proof in words that nothing meets the limits and passes through the bag and bands, where a simple one exists.
std::optional<std::string> misfit(const Kit& kit)
{
    for (const auto& simple : {cover_misfit, lid_band_misfit, pouch_misfit}) {
        if (auto proof = simple(kit)) {
            return proof;
        }
    }
    auto proof = nesting::misfit_proof(within_bag(kit));
    if (proof && kit.bag) {
        *proof += fmt::format("; the limits are those within \"{}\", which is {:g} mm thick and closes over {:g} mm",
                              kit.bag->id, kit.bag->thickness, kit.bag->length);
    }
    return proof;
}

} // namespace

Bundle solve(const Kit& measured, const SolveOptions& options)
{
    const std::vector<Problem> faults = reading::structural_problems(measured);
    require(faults.empty(), faults.empty() ? "" : "a sound kit, but " + to_string(faults.front()));
    const Kit given = measured.worst_case ? worst_case(measured) : measured;
    const Kit pressed = pressed_in(given);
    Kit kit = nesting::on_even_grid(with_stowages(pressed));
    Bundle bundle;
    bundle.kit = kit.name;
    bundle.clearance = kit.clearance;
    bundle.rule = kit.bundle;
    bundle.rules = kit.rules;
    bundle.bag = kit.bag;
    bundle.bands = kit.bands;
    bundle.worst_case = kit.worst_case;
    bundle.waived = kit.waived;
    LeastVolume least(pressed);
    const auto signed_off = [&](Bundle&& done) {
        done.seed = options.seed;
        done.effort = to_string(options.effort);
        done.lower_bound_ml = least.ml();
        return std::move(done);
    };
    if (const auto proof = misfit(pressed)) {
        bundle.status = Status::does_not_fit;
        bundle.explanation = *proof;
        return signed_off(std::move(bundle));
    }
    nesting::SearchOptions search = search_options(options);
    kit = nesting::on_even_grid(with_packed_pouches(std::move(kit), search));
    search.is_least = [&least, &options](double volume) {
        return options.any_size || least.is_soon_met_by(volume / 1000);
    };
    search.accepts = [&kit](const nesting::Proposal& proposal) {
        return has_many(proposal) || acceptable(kit, proposal); // of many things, what is not is put right
    };
    Refused refused;
    auto best = searched_in_turn(kit, options, search, refused);
    if (!best) {
        bundle.status = Status::not_found;
        bundle.explanation = not_found_in_words(kit, refused, search.stop(), options);
        return signed_off(std::move(bundle));
    }
    const double volume = volume_ml(outer_envelope(*best));
    // Of many things the bound stays far below, so that nobody should wait for it once the search is stopped.
    const bool is_late = search.stop() && things_of(kit) >= static_cast<int>(packing::many_bodies);
    if (!(options.stop != nullptr && options.stop->load()) && !is_late && !options.any_size) {
        least.raise(volume, bound_work(options.effort));
    }
    require(least.ml() <= volume * (1 + 1e-9), "no bundle is smaller than the lower bound");
    best->status = least.is_met_by(volume) ? Status::proved_best : search.stop() ? Status::stopped : Status::found;
    measure(kit, *best);
    require(check_against(*best, given).empty(), "the bundle holds what the kit asks for");
    best = signed_off(std::move(*best));
    best->lower_bound_ml = std::min(least.ml(), volume); // the same number, but for rounding in the last place
    return *best;
}

} // namespace tuckwright
