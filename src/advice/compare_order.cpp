// SPDX-License-Identifier: GPL-3.0-or-later
#include "advice/compare_order.hpp"

#include <algorithm>
#include <numeric>
#include <tuple>

namespace tuckwright {

bool beats(const Figures& first, const Figures& second)
{
    constexpr double share = 1e-4, hair = 1e-6;
    const bool is_larger = first.ml > second.ml * (1 + share), is_smaller = second.ml > first.ml * (1 + share);
    const bool is_heavier = first.grams > second.grams + hair, is_lighter = second.grams > first.grams + hair;
    return !is_larger && !is_heavier && (is_smaller || is_lighter);
}

std::vector<std::size_t> by_hope(const std::vector<Figures>& all)
{
    std::vector<std::ptrdiff_t> beaten_by(all.size());
    std::transform(all.begin(), all.end(), beaten_by.begin(), [&](const Figures& one) {
        return std::count_if(all.begin(), all.end(), [&](const Figures& other) { return beats(other, one); });
    });
    std::vector<std::size_t> order(all.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        return std::tuple(beaten_by[a], all[a].ml, all[a].grams) < std::tuple(beaten_by[b], all[b].ml, all[b].grams);
    });
    return order;
}

} // namespace tuckwright
