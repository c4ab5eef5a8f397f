// SPDX-License-Identifier: GPL-3.0-or-later
#include "solve/compacted.hpp"

#include <algorithm>

#include "nesting/kit_scene.hpp"
#include "nesting/layout_of_bundle.hpp"
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

} // namespace

std::optional<Bundle> compacted(const Kit& measured, const Bundle& pattern)
{
    const Kit given = measured.worst_case ? worst_case(measured) : measured;
    const Kit kit = nesting::on_even_grid(with_pouches_of(with_stowages(pressed_in(given)), pattern));
    const auto proposal = nesting::layout_of_bundle(kit, pattern);
    if (!proposal) {
        return std::nullopt;
    }
    Refused refused;
    auto bundle = proved(kit, *proposal, refused);
    if (!bundle) {
        return std::nullopt;
    }
    bundle->seed = pattern.seed;
    bundle->effort = pattern.effort;
    bundle->worst_case = kit.worst_case;
    measure(kit, *bundle);
    if (!check(*bundle).empty() || !check_against(*bundle, given).empty()) {
        return std::nullopt;
    }
    return bundle;
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
            kept.copy -= goes[gone] && bundle.items[gone].id == kept.id && bundle.items[gone].copy < bundle.items[k].copy
                             ? 1
                             : 0;
        }
        rest.items.push_back(std::move(kept));
    }
    return rest;
}

} // namespace tuckwright
