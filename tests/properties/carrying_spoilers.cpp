// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <set>

#include "properties/spoilers.hpp"
#include "tuckwright/report.hpp"

namespace properties {

using namespace tuckwright;
using test::Dice;

namespace {

using Chain = std::set<std::size_t>;

/// All that the item lies in, a shut lid in its vessel.
Chain chain_of(const Bundle& bundle, std::size_t item)
{
    const PlacedItem& it = bundle.items[item];
    if (!it.closes && !it.in) {
        return {};
    }
    const std::size_t next = it.closes ? *it.closes : it.in->item;
    Chain chain = chain_of(bundle, next);
    chain.insert(next);
    return chain;
}

bool share(const Chain& a, const Chain& b)
{
    return std::any_of(a.begin(), a.end(), [&](std::size_t item) { return b.count(item) > 0; });
}

bool lies_in(const Bundle& bundle, std::size_t item, const std::string& id)
{
    const Chain chain = chain_of(bundle, item);
    return std::any_of(chain.begin(), chain.end(), [&](std::size_t vessel) { return bundle.items[vessel].id == id; });
}

Spoiled with_rule(Bundle bundle, Dice& dice, Keep keep, const std::string& first, const std::string& second)
{
    const auto at = static_cast<std::ptrdiff_t>(any(dice, bundle.rules.size() + 1));
    bundle.rules.insert(bundle.rules.begin() + at, {keep, first, second, "a test asks for it"});
    return to_json(bundle);
}

/// A rule for two items that the places of one copy of each break.
Spoiled ask_for_what_is_not_so(Bundle bundle, Dice& dice)
{
    const std::size_t i = any(dice, bundle.items.size()), j = any(dice, bundle.items.size());
    const std::string &first = bundle.items[i].id, &second = bundle.items[j].id;
    const Chain a = chain_of(bundle, i), b = chain_of(bundle, j);
    if (first == second) {
        return std::nullopt;
    }
    switch (dice.below(4)) {
    case 3:
        if (bundle.items[i].in == bundle.items[j].in || bundle.items[i].closes || bundle.items[j].closes ||
            std::count_if(bundle.items.begin(), bundle.items.end(),
                          [&](const PlacedItem& item) { return item.id == second; }) > 1) {
            return std::nullopt;
        }
        return with_rule(bundle, dice, Keep::together, first, second);
    case 0:
        if (!share(a, b) && a.count(j) == 0 && b.count(i) == 0) {
            return std::nullopt;
        }
        return with_rule(bundle, dice, Keep::apart, first, second);
    case 1:
        if (lies_in(bundle, i, second)) {
            return std::nullopt;
        }
        return with_rule(bundle, dice, Keep::within, first, second);
    default:
        if (a.count(j) == 0) {
            return std::nullopt;
        }
        return with_rule(bundle, dice, Keep::out, first, second);
    }
}

/// One item lies in the vessel, and another, which is made a copy of it, does not: by within or by out one is wrong.
Spoiled ask_for_all_copies(Bundle bundle, Dice& dice)
{
    const std::size_t i = any(dice, bundle.items.size()), j = any(dice, bundle.items.size());
    const Chain chain = chain_of(bundle, i);
    if (i == j || chain.empty()) {
        return std::nullopt;
    }
    const std::string first = bundle.items[i].id, second = bundle.items[*chain.begin()].id;
    bundle.items[j].id = first;
    bundle.items[j].copy = 1000;
    if (first == second || bundle.items[*chain.begin()].id == first || lies_in(bundle, j, second)) {
        return std::nullopt;
    }
    return with_rule(bundle, dice, dice.below(2) == 0 ? Keep::within : Keep::out, first, second);
}

/// An item put, by name, into a vessel that it was kept out of or apart from.
Spoiled move_into_the_vessel(Bundle bundle, Dice& dice)
{
    const std::size_t i = any(dice, bundle.items.size()), k = any(dice, bundle.items.size());
    const std::string first = bundle.items[i].id, second = bundle.items[k].id;
    if (first == second || bundle.items[k].cavities.empty() || bundle.items[k].full || bundle.items[i].closes ||
        chain_of(bundle, k).count(i) > 0 || lies_in(bundle, i, second)) {
        return std::nullopt;
    }
    bundle.items[i].in = Lodging{k, 0};
    return with_rule(bundle, dice, dice.below(2) == 0 ? Keep::apart : Keep::out, first, second);
}

Spoiled speak_of_nobody(Bundle bundle, Dice& dice)
{
    const std::string id = bundle.items[any(dice, bundle.items.size())].id;
    const auto keep = static_cast<Keep>(dice.below(4));
    switch (dice.below(3)) {
    case 0: return with_rule(bundle, dice, keep, id, id);
    case 1: return with_rule(bundle, dice, keep, id, id + " of another kit");
    default: return with_rule(bundle, dice, keep, "", id);
    }
}

} // namespace

std::vector<Spoiler> carrying_spoilers()
{
    return {{"a rule of carrying that is not kept", ask_for_what_is_not_so},
            {"a rule of carrying that one copy does not keep", ask_for_all_copies},
            {"an item in a vessel that it keeps out of", move_into_the_vessel},
            {"a rule of carrying about nobody, or one with itself", speak_of_nobody}};
}

} // namespace properties
