// SPDX-License-Identifier: GPL-3.0-or-later
#include "provision/vessels.hpp"

#include <cmath>
#include <tuple>

#include "provision/working.hpp"
#include "tuckwright/contract.hpp"

namespace tuckwright::provisioning {

namespace {

double outside_ml(const Item& item)
{
    double ml = volume_ml(item.outside);
    for (const Part& part : item.parts) {
        ml += volume_ml(part.shape);
    }
    return ml;
}

} // namespace

void choose_vessel(Need& need, const std::vector<Offer>& offers, double headspace, Filling filling)
{
    const bool by_volume = filling == Filling::shared && need.ml.has_value();
    const double amount = by_volume ? *need.ml : need.grams;
    using Rank = std::tuple<bool, double, double>; // several of them, outside, empty weight: less is better
    std::optional<Rank> best;
    for (const Offer& offer : offers) {
        const double holds = rounded(offer.holds, 1, Toward::less);
        Considered one{offer.item.id, offer.item.name, holds, rounded(holds * (1 - headspace), 1, Toward::less)};
        require(one.usable > 0, "an offered vessel holds something");
        constexpr double hair = 1e-9;
        const double count = std::max(1.0, std::ceil(amount / one.usable - hair));
        one.count = static_cast<std::int64_t>(count);
        one.outside_ml = count * outside_ml(offer.item);
        const Rank rank{one.count > 1, one.outside_ml, count * offer.item.weight_g};
        if (!best || rank < *best) {
            best = rank;
            need.chosen = need.vessels.size();
        }
        need.vessels.push_back(one);
    }
    if (!need.chosen) {
        return;
    }
    const Considered& chosen = need.vessels[*need.chosen];
    const auto count = static_cast<double>(chosen.count);
    need.each = filling == Filling::whole ? chosen.holds : rounded(amount / count, 1, Toward::more);
    need.each_g = filling == Filling::whole ? chosen.holds : rounded(need.grams / count, 1, Toward::more);
}

} // namespace tuckwright::provisioning
