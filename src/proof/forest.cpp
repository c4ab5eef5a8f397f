// SPDX-License-Identifier: GPL-3.0-or-later
#include "proof/forest.hpp"

#include <map>
#include <set>
#include <utility>

namespace tuckwright::proof {

namespace {

/// Whether the chain of `next` from an item comes to an end.
template <class Next> bool ends(std::size_t count, std::size_t item, Next next)
{
    std::optional<std::size_t> at = item;
    for (std::size_t steps = 0; at && steps <= count; ++steps) {
        at = next(*at);
    }
    return !at;
}

std::optional<std::size_t> container(const PlacedItem& item)
{
    return item.in ? std::optional(item.in->item) : std::nullopt;
}

void check_names(const Bundle& bundle, Findings& findings)
{
    std::set<std::pair<std::string, int>> seen;
    for (std::size_t i = 0; i < bundle.items.size(); ++i) {
        const auto& item = bundle.items[i];
        if (item.copy < 1) {
            findings.add("forest",
                         named(bundle, i) + " is copy " + std::to_string(item.copy) + "; copies count from 1");
        }
        if (!seen.emplace(item.id, item.copy).second) {
            findings.add("forest", named(bundle, i) + " is there twice as copy " + std::to_string(item.copy));
        }
    }
}

void check_indices(const Bundle& bundle, Findings& findings)
{
    const auto count = bundle.items.size();
    for (std::size_t i = 0; i < count; ++i) {
        const auto& item = bundle.items[i];
        if (item.in && item.in->item >= count) {
            findings.add("forest", named(bundle, i) + " is in an item that is not there");
        } else if (item.in && item.in->item == i) {
            findings.add("forest", named(bundle, i) + " is in itself");
        } else if (item.in && item.in->cavity >= bundle.items[item.in->item].cavities.size()) {
            findings.add("forest", named(bundle, i) + " is in cavity " + std::to_string(item.in->cavity) + " of " +
                                       named(bundle, item.in->item) + ", which is not there");
        } else if (item.in && bundle.items[item.in->item].full) {
            findings.add("forest",
                         named(bundle, i) + " is in " + named(bundle, item.in->item) + ", whose contents fill it");
        }
        if (item.closes && *item.closes >= count) {
            findings.add("forest", named(bundle, i) + " is shut on an item that is not there");
        }
    }
}

} // namespace

void check_forest(const Bundle& bundle, Findings& findings)
{
    check_names(bundle, findings);
    check_indices(bundle, findings);
    if (!findings.empty()) {
        return;
    }
    const auto count = bundle.items.size();
    for (std::size_t i = 0; i < count; ++i) {
        if (!ends(count, i, [&](std::size_t at) { return container(bundle.items[at]); })) {
            findings.add("forest", named(bundle, i) + " is within itself, through the containers it is in");
        } else if (!ends(count, i, [&](std::size_t at) { return hangs_on(bundle.items[at]); })) {
            findings.add("forest",
                         named(bundle, i) + " hangs on itself, through the lids and containers it belongs to");
        }
    }
}

std::vector<Lodging> containers_of(const Bundle& bundle, std::size_t item)
{
    std::vector<Lodging> chain;
    for (auto in = bundle.items[item].in; in; in = bundle.items[in->item].in) {
        chain.push_back(*in);
    }
    return chain;
}

bool holds(const Bundle& bundle, std::size_t outer, std::size_t inner)
{
    for (auto in = bundle.items[inner].in; in; in = bundle.items[in->item].in) {
        if (in->item == outer) {
            return true;
        }
    }
    return false;
}

std::optional<std::size_t> hangs_on(const PlacedItem& item) { return item.closes ? item.closes : container(item); }

std::vector<std::optional<std::size_t>> shut_lids(const Bundle& bundle)
{
    std::vector<std::optional<std::size_t>> lids(bundle.items.size());
    for (std::size_t i = 0; i < bundle.items.size(); ++i) {
        if (const auto vessel = bundle.items[i].closes; vessel && !lids[*vessel]) {
            lids[*vessel] = i;
        }
    }
    return lids;
}

} // namespace tuckwright::proof
