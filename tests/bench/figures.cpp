// SPDX-License-Identifier: GPL-3.0-or-later
#include "bench/figures.hpp"

#include <algorithm>
#include <cmath>

#include "tuckwright/contract.hpp"

namespace tuckwright::bench {

double median(std::vector<double> values)
{
    require(!values.empty(), "a median is that of at least one value");
    std::sort(values.begin(), values.end());
    const std::size_t half = values.size() / 2;
    return values.size() % 2 == 1 ? values[half] : (values[half - 1] + values[half]) / 2;
}

std::optional<double> fitted_exponent(const std::vector<std::pair<double, double>>& points)
{
    const auto count = static_cast<double>(points.size());
    double mean_x = 0, mean_y = 0;
    for (const auto& [x, y] : points) {
        require(x > 0 && y > 0, "logarithms are those of positive numbers");
        mean_x += std::log(x) / count;
        mean_y += std::log(y) / count;
    }
    double across = 0, along = 0;
    for (const auto& [x, y] : points) {
        const double dx = std::log(x) - mean_x;
        across += dx * (std::log(y) - mean_y);
        along += dx * dx;
    }
    return along > 1e-12 ? std::optional<double>(across / along) : std::nullopt;
}

} // namespace tuckwright::bench
