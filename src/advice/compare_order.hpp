// SPDX-License-Identifier: GPL-3.0-or-later
/// Small and light: which of two is better in both, and which of many hope for most.
#pragma once
#include <cstddef>
#include <vector>

namespace tuckwright {

struct Figures {
    double ml = 0, grams = 0;
};

/// Whether the first is no larger and no heavier than the second, and better in one of the two. Volumes are equal up to
/// 0.01 %, for the search leaves as much behind; weights up to 1e-6 g.
bool beats(const Figures& first, const Figures& second);

/// The indices, those first that the fewest others beat; of these, the smallest first. Complexity: quadratic.
std::vector<std::size_t> by_hope(const std::vector<Figures>& all);

} // namespace tuckwright
