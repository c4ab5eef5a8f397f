// SPDX-License-Identifier: GPL-3.0-or-later
// Outline. Both ways are packed as any kit; what that finds for the way back may be better for the way out, too. Then
// the arrangement of the way out is pushed together with what is different; where that is not good enough, the way
// back is searched with rules that leave things in what they were in. What keeps most is taken, if it is hardly larger
// than the smallest.
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
        answer_.old_rules = old_rules(kits_);
        answer_.out = searched(kits_.out, first_share);
        answer_.back = searched(kits_.back, second_share);
        free_ = answer_.back;
        answer_.searched_ml = volume_of(free_);
        if (!has_bundle(answer_.out.status) || free_.status == Status::does_not_fit) {
            return std::move(answer_);
        }
        better_the_way_out();
        const auto kept = advice::kept_places(answer_.out, kits_.back);
        auto places = in_old_places(kits_.back, kept);
        answer_.places_ml = places ? std::optional(packed_volume_ml(*places)) : std::nullopt;
        std::optional<Bundle> vessels;
        if (!kept.pattern.items.empty() && (!places || !is_good(*places))) {
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
            std::erase_if(answer_.reordered, [&](const Reordered& one) {
                return std::any_of(answer_.elsewhere.begin(), answer_.elsewhere.end(),
                                   [&](const Elsewhere& other) { return other.id == one.id; });
            });
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

    std::optional<Bundle> in_old_places(const Kit& kit, const advice::KeptPlaces& kept) const
    {
        const Bundle& pattern = kept.pattern;
        if (pattern.items.empty()) {
            return std::nullopt;
        }
        return pattern.items.size() == kept.things.size() ? compacted(kit, pattern)
                                                          : completed(kit, pattern, options_.seed);
    }

    /// What the search found for the way back may serve the way out, too, and be smaller.
    void better_the_way_out()
    {
        constexpr double smaller = 1 - 1e-4;
        auto bundle =
            has_bundle(free_.status) ? in_old_places(kits_.out, advice::kept_places(free_, kits_.out)) : std::nullopt;
        if (bundle && packed_volume_ml(*bundle) < smaller * packed_volume_ml(answer_.out)) {
            answer_.out = signed_off(std::move(*bundle), answer_.out);
            answer_.bettered = true;
        }
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

    /// A bundle with the bound that a search has worked out for its kit.
    Bundle signed_off(Bundle bundle, const Bundle& found) const
    {
        constexpr double the_same = 1 + 5e-8;
        const double volume = packed_volume_ml(bundle);
        const bool is_least = found.lower_bound_ml > 0 && volume <= found.lower_bound_ml * the_same;
        const bool was_stopped = found.status == Status::stopped || (options_.stop != nullptr && options_.stop->load());
        bundle.status = is_least ? Status::proved_best : was_stopped ? Status::stopped : Status::found;
        bundle.lower_bound_ml = std::min(found.lower_bound_ml, volume);
        bundle.effort = to_string(options_.effort);
        bundle.seed = options_.seed;
        return bundle;
    }

    void take(Bundle bundle, Keeping keeping)
    {
        answer_.back = signed_off(std::move(bundle), free_);
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
    case Cause::too_large: return "too-large";
    case Cause::no_room: return "no-room";
    case Cause::room_now: return "room-now";
    case Cause::need_not_stand: return "need-not-stand";
    case Cause::must_stand: return "must-stand";
    case Cause::search: return "search";
    }
    require(false, "a cause is one of the ten");
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

ThereAndBack there_and_back(const BothWays& kits, const SolveOptions& options)
{
    return Packing(kits, options).answer();
}

} // namespace tuckwright
