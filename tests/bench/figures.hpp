// SPDX-License-Identifier: GPL-3.0-or-later
/// Figures of many runs at once.
#pragma once
#include <optional>
#include <utility>
#include <vector>

namespace tuckwright::bench {

/// The middle value, or the mean of the two in the middle. Requires: at least one value.
double median(std::vector<double> values);

/// The exponent b of the power law y = a x^b that fits best: least squares on the logarithms. Nothing where fewer than
/// two different x are given. Requires: positive x and y.
std::optional<double> fitted_exponent(const std::vector<std::pair<double, double>>& points);

} // namespace tuckwright::bench
