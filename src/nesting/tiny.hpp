// SPDX-License-Identifier: GPL-3.0-or-later
/// What rounding may add up to in the lower bound, and other numbers that its files share.
#pragma once
#include <cstddef>
#include <limits>

namespace tuckwright::nesting {

inline constexpr double hair = 1e-9; ///< mm, and relative: far more than rounding in the sums; what just fits does fit
inline constexpr double infinite = std::numeric_limits<double>::infinity();

/// The solver counts with signed numbers.
inline std::size_t at(int index) { return static_cast<std::size_t>(index); }

} // namespace tuckwright::nesting
