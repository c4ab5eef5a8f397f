// SPDX-License-Identifier: GPL-3.0-or-later
/// The heaviest set of slabs that one level of a cell may cross.
#pragma once
#include <bitset>
#include <cstdint>
#include <vector>

#include "nesting/level_model.hpp"

namespace tuckwright::nesting {

inline constexpr std::size_t most_slabs = 512;
using SlabSet = std::bitset<most_slabs>;

/// Which slabs may share a level of a cell.
struct LevelRules {
    Plan plan;
    std::vector<Turned> turned;    ///< [slab]: how it may lie
    SlabSet allowed;               ///< those that a level of the cell may cross at all
    std::vector<SlabSet> together; ///< [slab]: which others may be at its level
};

/// By pairs in the plan; slabs of one body are never at one level. `turned[slab]` tells how it may lie.
LevelRules rules_of_plan(const std::vector<Slab>& slabs, std::vector<Turned> turned, const Plan& plan);

/// Whether the set may share a level, by every condition that is known: pairs, threes, numbers and area.
bool may_share_level(const std::vector<Slab>& slabs, const LevelRules& rules, const SlabSet& set);

struct Heaviest {
    double weight = 0; ///< no set that may share a level weighs more
    SlabSet set;       ///< the heaviest that was met
};

/// `weight[slab]` for each slab; what is left of the plan's area weighs `fluid` for each mm^2. Looks at `most` sets at
/// most, and says more than the truth rather than less where that is too few. `work` counts them.
Heaviest heaviest_set(const std::vector<Slab>& slabs, const LevelRules& rules, const std::vector<double>& weight,
                      double fluid, int most, std::uint64_t& work);

} // namespace tuckwright::nesting
