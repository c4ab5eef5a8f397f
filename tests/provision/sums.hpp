// SPDX-License-Identifier: GPL-3.0-or-later
/// A pocket calculator: works out the sums that the working prints.
#pragma once
#include <optional>
#include <string>

namespace tuckwright::test {

/// The value of a sum of numbers, + - x / ^, log() to the base 10 and brackets; nothing where it is none.
std::optional<double> worked_out(const std::string& sum);

} // namespace tuckwright::test
