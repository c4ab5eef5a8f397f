// SPDX-License-Identifier: GPL-3.0-or-later
/// A lower bound of a bundle's height over all ways to decide where things lie: each way by its order of levels.
#pragma once
#include <cstdint>

#include "nesting/height_program.hpp"

namespace tuckwright::nesting {

/// Whether the body would lie in itself if it lay in that cell, by what has been decided.
bool lies_in_itself(const LevelModel& model, const ChoicesLeft& left, std::size_t body, int cell);

/// What heights are asked for, mm: no more than `enough`; what is no more than `little` is as good as nothing.
struct HeightsAsked {
    double little = 0, enough = 0;
};

/// No bundle whose things lie in any of the ways left is lower than this, in mm; at most `enough`. Looks at `most` ways,
/// partly decided, at most, and says less than the truth where that is too few. `work` counts them.
double height_by_choices(const LevelModel& model, const SharedRules& rules, const ChoicesLeft& left,
                         const HeightsAsked& asked, int most, std::uint64_t& work);

} // namespace tuckwright::nesting
