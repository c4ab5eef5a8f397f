// SPDX-License-Identifier: GPL-3.0-or-later
/// A lower bound of a bundle's height where cells and forms are decided: each thing crosses its levels in one piece.
#pragma once
#include <cstdint>

#include "nesting/height_program.hpp"

namespace tuckwright::nesting {

/// No bundle whose things lie as in `left` is lower than this, in mm; at most `enough`, and that also where nothing fits.
/// Looks only at things with one choice left, in cells that hold still; the others count as if they were not there.
/// Looks at `most` partial orders at most, and says less than the truth where that is too few. `work` counts them.
/// Source: see the .cpp.
double height_by_order(const LevelModel& model, const LevelState& state, const ChoicesLeft& left, double enough, int most,
                       std::uint64_t& work);

} // namespace tuckwright::nesting
