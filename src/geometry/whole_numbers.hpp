// SPDX-License-Identifier: GPL-3.0-or-later
/// Exact whole numbers in lowest terms, for turns and directions.
#pragma once
#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>

#include "tuckwright/contract.hpp"

namespace tuckwright::whole {

__extension__ using Wide = __int128;

inline constexpr Wide limit = Wide{1} << 62; ///< what is kept stays below it, so that sums of products overflow nothing

constexpr Wide magnitude(Wide a) { return a < 0 ? -a : a; }

constexpr Wide common_divisor(Wide a, Wide b)
{
    a = magnitude(a);
    b = magnitude(b);
    while (b != 0) {
        const Wide rest = a % b;
        a = b;
        b = rest;
    }
    return a;
}

/// The numbers less their common divisor. Requires: not all zero. Nothing when one stays at 2^62 or above.
template <std::size_t N> std::optional<std::array<std::int64_t, N>> in_lowest_terms(const std::array<Wide, N>& numbers)
{
    Wide divisor = 0;
    for (const Wide number : numbers) {
        divisor = common_divisor(divisor, number);
    }
    require(divisor != 0, "a turn or direction is not all zero");
    std::array<std::int64_t, N> lowest{};
    for (std::size_t k = 0; k < N; ++k) {
        const Wide part = numbers[k] / divisor;
        if (magnitude(part) >= limit) {
            return std::nullopt;
        }
        lowest[k] = static_cast<std::int64_t>(part);
    }
    return lowest;
}

} // namespace tuckwright::whole
