// SPDX-License-Identifier: GPL-3.0-or-later
// Outline. The way out is packed as any kit. For the way back, the same arrangement is pushed together with what is
// different; the kit is searched as any; and, where the first is not good enough, it is searched with rules that leave
// things in what they were in. What keeps most is taken, if it is hardly larger than the smallest.
#include "tuckwright/there_and_back.hpp"

#include <algorithm>
#include <chrono>

#include "advice/kept_places.hpp"
#include "solve/compacted.hpp"
#include "tuckwright/contract.hpp"
#include "tuckwright/proof.hpp"
#include "tuckwright/savings.hpp"
#include "tuckwright/worst_case.hpp"

namespace tuckwright {

namespace {

class Packing {
public:
    Packing(const BothWays& kits, const SolveOptions& options) : kits_(kits), options_(options) {}

    ThereAndBack answer()
    {
        constexpr double first_share = 0.4, second_share = 0.75; // of the seconds, so that each search has its part
        answer_.changes = state_changes(kits_);
        answer_.new_rules = new_rules(kits_);
        answer_.out = searched(kits_.out, first_share);
        answer_.back = searched(kits_.back, second_share);
        free_ = answer_.back;
        answer_.searched_ml = volume_of(free_);
        if (!has_bundle(answer_.out.status) || free_.status == Status::does_not_fit) {
            return std::move(answer_);
        }
        const auto kept = advice::kept_places(answer_.out, kits_.back);
        auto places = in_old_places(kept);
        answer_.places_ml = places ? std::optional(packed_volume_ml(*places)) : std::nullopt;
        std::optional<Bundle> vessels;
        if (!places || !is_good(*places)) {
            vessels = in_old_vessels(kept);
            answer_.vessels_ml = vessels ? std::optional(packed_volume_ml(*vessels)) : std::nullopt;
        }
        if (places && is_good(*places)) {
            take(std::move(*places), Keeping::places);
        } else if (vessels && is_good(*vessels)) {
            take(std::move(*vessels), Keeping::vessels);
        }
        if (has_bundle(answer_.back.status)) {
            answer_.elsewhere = elsewhere(kits_, answer_.out, answer_.back);
            answer_.reordered = reordered(answer_.out, answer_.back);
        }
        return std::move(answer_);
    }

private:
    static std::optional<double> volume_of(const Bundle& bundle)
    {
        return has_bundle(bundle.status) ? std::optional(packed_volume_ml(bundle)) : std::nullopt;
    }

    /// Solves a kit, with what is left of that share of the seconds.
    Bundle searched(const Kit& kit, double share) const
    {
        SolveOptions options = options_;
        if (options.seconds > 0) {
            const std::chrono::duration<double> since = std::chrono::steady_clock::now() - begin_;
            options.seconds = std::max(0.01, share * options_.seconds - since.count());
        }
        return solve(kit, options);
    }

    std::optional<Bundle> in_old_places(const advice::KeptPlaces& kept) const
    {
        const Bundle& pattern = kept.pattern;
        return pattern.items.size() == kept.things.size() ? compacted(kits_.back, pattern)
                                                          : completed(kits_.back, pattern, options_.seed);
    }

    /// The rules that hold things in their vessels are for the search alone.
    std::optional<Bundle> in_old_vessels(const advice::KeptPlaces& kept)
    {
        Bundle bundle = searched(advice::with_vessels_kept(kits_.back, kept), 1);
        answer_.vessels_refuted = bundle.status == Status::does_not_fit;
        if (!has_bundle(bundle.status)) {
            return std::nullopt;
        }
        bundle.rules = kits_.back.rules;
        require(check_against(bundle, bundle.worst_case ? worst_case(kits_.back) : kits_.back).empty(),
                "a bundle that keeps more rules is one of the kit");
        return bundle;
    }

    /// Whether a kept arrangement is hardly larger than the smallest.
    bool is_good(const Bundle& bundle) const
    {
        double least = packed_volume_ml(bundle);
        for (const auto& other : {answer_.places_ml, answer_.vessels_ml, answer_.searched_ml}) {
            least = std::min(least, other.value_or(least));
        }
        return packed_volume_ml(bundle) <= least * (1 + worth_staying);
    }

    /// The bound is that of the kit itself, which the search for the smallest has worked out.
    void take(Bundle bundle, Keeping keeping)
    {
        constexpr double the_same = 1 + 5e-8;
        const double volume = packed_volume_ml(bundle);
        const bool is_least = free_.lower_bound_ml > 0 && volume <= free_.lower_bound_ml * the_same;
        const bool was_stopped = free_.status == Status::stopped || (options_.stop != nullptr && options_.stop->load());
        bundle.status = is_least ? Status::proved_best : was_stopped ? Status::stopped : Status::found;
        bundle.lower_bound_ml = std::min(free_.lower_bound_ml, volume);
        answer_.back = std::move(bundle);
        answer_.keeping = keeping;
    }

    const BothWays& kits_;
    const SolveOptions& options_;
    std::chrono::steady_clock::time_point begin_ = std::chrono::steady_clock::now();
    ThereAndBack answer_;
    Bundle free_; ///< of the way back, without regard to the way out
};

} // namespace

const char* to_string(Difference difference)
{
    switch (difference) {
    case Difference::gone: return "gone";
    case Difference::added: return "added";
    case Difference::emptied: return "emptied";
    case Difference::less_left: return "less-left";
    case Difference::other_kind: return "other-kind";
    case Difference::otherwise: return "otherwise";
    }
    require(false, "a difference is one of the six");
    return "";
}

const char* to_string(Cause cause)
{
    switch (cause) {
    case Cause::rule: return "rule";
    case Cause::vessel_gone: return "vessel-gone";
    case Cause::vessel_full: return "vessel-full";
    case Cause::inside_out: return "inside-out";
    case Cause::room_now: return "room-now";
    case Cause::need_not_stand: return "need-not-stand";
    case Cause::must_stand: return "must-stand";
    case Cause::search: return "search";
    }
    require(false, "a cause is one of the eight");
    return "";
}

const char* to_string(Keeping keeping)
{
    switch (keeping) {
    case Keeping::places: return "places";
    case Keeping::vessels: return "vessels";
    case Keeping::nothing: return "nothing";
    }
    require(false, "it is one of the three");
    return "";
}

ThereAndBack there_and_back(const BothWays& kits, const SolveOptions& options) { return Packing(kits, options).answer(); }

} // namespace tuckwright
