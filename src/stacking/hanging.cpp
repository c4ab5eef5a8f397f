// SPDX-License-Identifier: GPL-3.0-or-later
#include "stacking/hanging.hpp"

namespace tuckwright::stacking
{

Hanging::Hanging(const Bundle& bundle) : bundle_(bundle)
{
    const std::size_t count = bundle.items.size();
    on_.assign(count, std::vector<bool>(count, false));
    for (std::size_t item = 0; item < count; ++item) {
        std::size_t steps = 0;
        for (std::optional<std::size_t> at = item; at && steps <= count; at = next(*at), ++steps) {
            on_[item][*at] = true;
        }
    }
}

std::optional<std::size_t> Hanging::next(std::size_t item) const
{
    const PlacedItem& it = bundle_.items[item];
    return it.closes ? it.closes : it.in ? std::optional(it.in->item) : std::nullopt;
}

bool Hanging::in(std::size_t item, std::size_t vessel) const
{
    for (auto in = bundle_.items[item].in; in; in = bundle_.items[in->item].in) {
        if (in->item == vessel) {
            return true;
        }
    }
    return false;
}

std::size_t Hanging::unit(std::size_t item) const
{
    while (bundle_.items[item].closes) {
        item = *bundle_.items[item].closes;
    }
    return item;
}

} // namespace tuckwright::stacking
