// SPDX-License-Identifier: GPL-3.0-or-later
#include "solve/proving.hpp"

#include "nesting/bundle_of_layout.hpp"
#include "packing/polish.hpp"
#include "solve/certificate.hpp"
#include "solve/mending.hpp"
#include "solve/overloads.hpp"
#include "solve/rests.hpp"
#include "tuckwright/proof.hpp"
#include "tuckwright/stacking.hpp"

namespace tuckwright {

std::optional<Bundle> proved(const Kit& kit, const nesting::Proposal& proposal, const Gaps& gaps, Hopeless& hopeless)
{
    packing::Layout layout = proposal.layout;
    layout.count_anew();
    packing::PolishOptions options;
    options.limits = nesting::envelope_limits(kit);
    options.curved_gap = gaps.curved + gaps.for_turns;
    options.wall_gap += gaps.for_turns;
    options.flat_gap = gaps.flat;
    options.iterations = 40;
    if (gaps.pushing == Pushing::freely) {
        if (!packing::compact(layout, options)) {
            return std::nullopt;
        }
        nesting::round_turns(layout);
    }
    options.turning = false;
    options.curved_gap -= gaps.for_turns;
    options.wall_gap -= gaps.for_turns;
    if ((gaps.pushing != Pushing::only_down && !packing::compact(layout, options)) ||
        !packing::settle(layout, options)) {
        return std::nullopt;
    }
    Bundle bundle = nesting::bundle_of_layout(kit, *proposal.scene, layout);
    bundle.status = Status::found;
    for (const Overload& overload : overloads(bundle)) {
        const auto& load = overload.load;
        hopeless.too_much.push_back({bundle.items[overload.item].id, bundle.items[load.front()].id});
        if (has_many(proposal)) {
            hopeless.misplaced.insert(hopeless.misplaced.end(), load.begin(), load.end());
        }
    }
    if (!hopeless.too_much.empty()) {
        return std::nullopt;
    }
    bundle.certificate.rests = rests(bundle);
    hopeless.misplaced = has_many(proposal) ? without_rest(bundle) : std::vector<std::size_t>{};
    if (!hopeless.misplaced.empty()) {
        return std::nullopt;
    }
    StackingOrder order = stacking_order(bundle);
    hopeless.no_order = order.steps.empty();
    if (hopeless.no_order) {
        hopeless.misplaced = std::move(order.cycle);
        return std::nullopt;
    }
    bundle.steps = std::move(order.steps);
    certify(bundle);
    if (const auto objections = check(bundle); !objections.empty()) {
        hopeless.is_objected_to = true;
        hopeless.misplaced = has_many(proposal) ? objected_to(bundle, objections) : std::vector<std::size_t>{};
        return std::nullopt;
    }
    return bundle;
}

std::optional<Bundle> proved(const Kit& kit, const nesting::Proposal& proposal, Refused& refused)
{
    for (const Gaps& gaps : tries) {
        Hopeless hopeless;
        if (auto bundle = proved(kit, proposal, gaps, hopeless)) {
            return bundle;
        }
        refused.insert(refused.end(), hopeless.too_much.begin(), hopeless.too_much.end());
        if (hopeless) {
            break;
        }
    }
    return std::nullopt;
}

} // namespace tuckwright
