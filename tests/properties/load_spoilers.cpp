// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "properties/sampling_judge.hpp"
#include "properties/spoilers.hpp"
#include "tuckwright/report.hpp"

namespace properties {

using namespace tuckwright;
using test::Dice;

namespace {

/// One that rests on another, by the certificate of a bundle that was proved.
std::optional<Rest> some_rest(const Bundle& bundle, Dice& dice)
{
    const auto& rests = bundle.certificate.rests;
    const Rest& rest = rests[any(dice, rests.size())];
    return rest.on ? std::optional(rest) : std::nullopt;
}

/// The vessel under a row of shut lids.
std::size_t under_lids(const Bundle& bundle, std::size_t item)
{
    return bundle.items[item].closes ? under_lids(bundle, *bundle.items[item].closes) : item;
}

/// What bears another must bear nothing: itself, or the vessel on whose lid that lies.
Spoiled bear_nothing(Bundle bundle, Dice& dice)
{
    const auto rest = some_rest(bundle, dice);
    if (!rest) {
        return std::nullopt;
    }
    bundle.items[dice.below(2) == 0 ? *rest->on : under_lids(bundle, *rest->on)].nothing_on_top = true;
    return to_json(bundle);
}

/// What bears another bears less than that weighs.
Spoiled bear_too_little(Bundle bundle, Dice& dice)
{
    const auto rest = some_rest(bundle, dice);
    if (!rest) {
        return std::nullopt;
    }
    const PlacedItem& upper = bundle.items[rest->item];
    const double grams = upper.weight_g + upper.contents_g;
    if (grams <= 0) {
        return std::nullopt;
    }
    bundle.items[*rest->on].bears_g = grams * dice.below(1000) / 1000;
    return to_json(bundle);
}

/// A thing that lies in a vessel under a shut lid does not come out first.
Spoiled out_through_the_lid(Bundle bundle, Dice& dice)
{
    PlacedItem& item = bundle.items[any(dice, bundle.items.size())];
    if (!item.in || item.closes || std::none_of(bundle.items.begin(), bundle.items.end(), [&](const PlacedItem& lid) {
            return lid.closes == item.in->item;
        })) {
        return std::nullopt;
    }
    item.reach = Wanted::first;
    item.out_after = 0;
    return to_json(bundle);
}

/// A number of things that was not asked for, or cannot be, or none where it was asked for.
Spoiled miscount(Bundle bundle, Dice& dice)
{
    PlacedItem& item = bundle.items[any(dice, bundle.items.size())];
    if (item.out_after) {
        *item.out_after += 1 + any(dice, 3);
    } else if (dice.below(2) == 0) {
        item.out_after = any(dice, 5);
    } else {
        item.reach = Wanted::early;
        item.out_after = bundle.items.size() + any(dice, 5);
    }
    return to_json(bundle);
}

} // namespace

std::vector<Spoiler> load_spoilers()
{
    return {{"something on what may bear nothing", bear_nothing},
            {"more on a thing than it bears", bear_too_little},
            {"a thing out through a shut lid", out_through_the_lid},
            {"a wrong number of things before another", miscount}};
}

} // namespace properties
