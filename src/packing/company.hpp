// SPDX-License-Identifier: GPL-3.0-or-later
/// Which bodies may be in which vessels together, whatever their size. Nothing here knows why.
#pragma once
#include <vector>

namespace tuckwright::packing {

/// Empty where there is no rule at all; otherwise one row for each body.
struct Company {
    std::vector<std::vector<bool>> apart; ///< [i][j], symmetric: no vessel holds both, and neither holds the other
    std::vector<std::vector<bool>> out;   ///< [i][v]: the vessel v does not hold i, however deep
    /// [i]: of each of these sets of vessels, one holds i, however deep.
    std::vector<std::vector<std::vector<int>>> within;
    /// [i]: of each of these sets of bodies, one lies in the very cell that i lies in.
    std::vector<std::vector<std::vector<int>>> together;

    bool empty() const { return apart.empty(); }
};

} // namespace tuckwright::packing
