// SPDX-License-Identifier: GPL-3.0-or-later
#include "advice/carried.hpp"

#include <algorithm>

#include "tuckwright/contract.hpp"

namespace tuckwright::advice {

namespace {

using Ancestors = std::vector<std::size_t>;

bool holds(const Ancestors& chain, std::size_t thing)
{
    return std::find(chain.begin(), chain.end(), thing) != chain.end();
}

/// Whether two things are carried against `apart`.
bool meet(const Carried& things, std::size_t a, std::size_t b)
{
    const Ancestors of_a = chain_of(things, a), of_b = chain_of(things, b);
    return holds(of_a, b) || holds(of_b, a) ||
           std::any_of(of_a.begin(), of_a.end(), [&](std::size_t vessel) { return holds(of_b, vessel); });
}

/// What a thing lies in directly; a shut lid in its vessel.
std::optional<std::size_t> container(const CarriedThing& thing) { return thing.closes ? thing.closes : thing.in; }

/// Whether the first is so to the second as the rule wants it, or does not want it.
bool is_so(const Carried& things, Keep keep, std::size_t first, std::size_t second)
{
    switch (keep) {
    case Keep::apart: return meet(things, first, second);
    case Keep::within:
    case Keep::out: return holds(chain_of(things, first), second);
    case Keep::together: return container(things[first]) == container(things[second]);
    case Keep::shut: return things[first].closes == second;
    }
    require(false, "a rule is one of the five");
    return false;
}

} // namespace

Carried carried(const Bundle& bundle)
{
    Carried things;
    for (const PlacedItem& item : bundle.items) {
        things.push_back({item.id, item.copy, item.in ? std::optional(item.in->item) : std::nullopt, item.closes});
    }
    return things;
}

std::vector<std::size_t> chain_of(const Carried& things, std::size_t thing)
{
    Ancestors chain;
    for (auto at = container(things[thing]); at && !things[thing].anywhere; at = container(things[*at])) {
        chain.push_back(*at);
        require(chain.size() <= things.size(), "nothing lies within itself");
        if (things[*at].anywhere) {
            break;
        }
    }
    return chain;
}

std::optional<std::pair<std::size_t, std::size_t>> broken(const Carried& things, const CarryRule& rule)
{
    const bool forbids = rule.keep == Keep::apart || rule.keep == Keep::out;
    for (std::size_t first = 0; first < things.size(); ++first) {
        if (things[first].id != rule.first || (!forbids && things[first].anywhere)) {
            continue;
        }
        const Ancestors chain = chain_of(things, first);
        std::optional<std::size_t> seen;
        bool kept = !chain.empty() && things[chain.back()].anywhere && rule.keep == Keep::within;
        for (std::size_t second = 0; second < things.size(); ++second) {
            if (things[second].id != rule.second) {
                continue;
            }
            seen = seen ? seen : second;
            const bool so = is_so(things, rule.keep, first, second);
            if (forbids && so) {
                return std::pair(first, second);
            }
            kept = kept || so || (rule.keep == Keep::together && things[second].anywhere);
        }
        if (!forbids && seen && !kept) {
            return std::pair(first, *seen);
        }
    }
    return std::nullopt;
}

} // namespace tuckwright::advice
