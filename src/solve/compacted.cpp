// SPDX-License-Identifier: GPL-3.0-or-later
#include "solve/compacted.hpp"

#include <algorithm>

#include "nesting/kit_scene.hpp"
#include "nesting/layout_of_bundle.hpp"
#include "packing/construct.hpp"
#include "packing/random.hpp"
#include "solve/measures.hpp"
#include "solve/proving.hpp"
#include "tuckwright/proof.hpp"
#include "tuckwright/stowage.hpp"
#include "tuckwright/worst_case.hpp"

namespace tuckwright {

namespace {

/// The kit in which each pouch can also be filled out as it is in the bundle: such forms come of a search.
Kit with_pouches_of(Kit kit, const Bundle& pattern)
{
    for (Item& item : kit.items) {
        std::vector<Stowage> forms;
        for (const PlacedItem& placed : pattern.items) {
            if (item.pouch && placed.id == item.id && !placed.cavities.empty()) {
                if (auto filled = filled_out(*item.pouch, placed.cavities.front().shape)) {
                    forms.push_back(std::move(*filled));
                }
            }
        }
        if (!forms.empty()) {
            add_pouch_forms(item, std::move(forms));
        }
    }
    return kit;
}

/// A kit as solve() has it, at its sizes and in the forms that the search knows, and as it is held against a bundle.
struct Prepared {
    Kit given, kit;
};

Prepared prepared(const Kit& measured, const Bundle& pattern)
{
    Kit given = measured.worst_case ? worst_case(measured) : measured;
    Kit kit = nesting::on_even_grid(with_pouches_of(with_stowages(pressed_in(given)), pattern));
    return {std::move(given), std::move(kit)};
}

/// The smaller of two, where they are there.
std::optional<Bundle> smaller(std::optional<Bundle> one, std::optional<Bundle> other)
{
    const bool is_other = other && (!one || volume_ml(other->envelope) < volume_ml(one->envelope));
    return is_other ? std::move(other) : std::move(one);
}

/// A proposal pushed together and proved. What is jammed in a vessel may find no room for the usual gaps once its places
/// have been rounded to the grid, and what is loose there may be moved into the way of others: so it is also tried as it is
/// turned, and only let down, with gaps a little less.
std::optional<Bundle> finished(const Prepared& prepared, const nesting::Proposal& proposal, const Bundle& pattern)
{
    Refused refused;
    auto bundle = proved(prepared.kit, proposal, refused);
    for (const Pushing pushing : {Pushing::as_turned, Pushing::only_down}) {
        Hopeless hopeless;
        bundle = smaller(std::move(bundle), proved(prepared.kit, proposal, {1.15e-3, 0, 0, pushing}, hopeless));
    }
    if (!bundle) {
        return std::nullopt;
    }
    bundle->seed = pattern.seed;
    bundle->effort = pattern.effort;
    measure(prepared.kit, *bundle);
    if (!check(*bundle).empty() || !check_against(*bundle, prepared.given).empty()) {
        return std::nullopt;
    }
    return bundle;
}

} // namespace

std::optional<Bundle> compacted(const Kit& kit, const Bundle& pattern)
{
    const Prepared now = prepared(kit, pattern);
    const auto proposal = nesting::layout_of_bundle(now.kit, pattern);
    return proposal ? finished(now, *proposal, pattern) : std::nullopt;
}

std::optional<Bundle> completed(const Kit& kit, const Bundle& pattern, std::uint64_t seed)
{
    constexpr int trials = 12, samples = 200;
    const Prepared now = prepared(kit, pattern);
    std::vector<int> missing;
    const auto start = nesting::layout_of_part(now.kit, pattern, missing);
    if (!start) {
        return std::nullopt;
    }
    std::optional<nesting::Proposal> best;
    for (int trial = 0; trial < trials; ++trial) {
        nesting::Proposal next = *start;
        next.layout.count_anew();
        packing::Random random(seed + static_cast<std::uint64_t>(trial));
        if (!packing::rebuild(next.layout, random, missing, samples)) {
            continue;
        }
        packing::tighten(next.layout);
        next.volume = packing::volume(next.layout.envelope());
        if (!best || next.volume < best->volume) {
            best = std::move(next);
        }
    }
    return best ? finished(now, *best, pattern) : std::nullopt;
}

Bundle without(const Bundle& bundle, std::size_t item)
{
    std::vector<bool> goes(bundle.items.size(), false);
    goes[item] = true;
    for (std::size_t k = 0; k < bundle.items.size(); ++k) {
        goes[k] = goes[k] || bundle.items[k].closes == item;
    }
    std::vector<std::size_t> now(bundle.items.size(), 0);
    for (std::size_t k = 0, next = 0; k < bundle.items.size(); ++k) {
        now[k] = next;
        next += goes[k] ? 0 : 1;
    }
    Bundle rest = bundle;
    rest.items.clear();
    rest.steps.clear();
    rest.certificate = {};
    rest.fits.clear();
    rest.plays.clear();
    for (std::size_t k = 0; k < bundle.items.size(); ++k) {
        if (goes[k]) {
            continue;
        }
        PlacedItem kept = bundle.items[k];
        while (kept.in && goes[kept.in->item]) {
            kept.in = bundle.items[kept.in->item].in;
        }
        if (kept.in) {
            kept.in->item = now[kept.in->item];
        }
        kept.closes = kept.closes && !goes[*kept.closes] ? std::optional(now[*kept.closes]) : std::nullopt;
        for (std::size_t gone = 0; gone < bundle.items.size(); ++gone) {
            kept.copy -=
                goes[gone] && bundle.items[gone].id == kept.id && bundle.items[gone].copy < bundle.items[k].copy ? 1
                                                                                                                 : 0;
        }
        rest.items.push_back(std::move(kept));
    }
    return rest;
}

} // namespace tuckwright
