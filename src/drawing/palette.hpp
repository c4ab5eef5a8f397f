// SPDX-License-Identifier: GPL-3.0-or-later
/// The few colours of the pictures. Each fill is far lighter than the ink, those that lie side by side differ in lightness
/// too, and nothing is told by colour alone: lines, hatches and labels say the same.
#pragma once
#include <array>

#include "tuckwright/canvas.hpp"

namespace tuckwright::drawing::palette {

inline constexpr Color paper{1, 1, 1};
inline constexpr Color ink{0.10, 0.10, 0.12};       ///< lines, letters
inline constexpr Color faint{0.45, 0.46, 0.48};     ///< dimensions, what is cut away
inline constexpr Color wall{0.27, 0.32, 0.38};      ///< a vessel's wall where it is cut
inline constexpr Color inside{0.97, 0.95, 0.89};    ///< a vessel seen from within
inline constexpr Color glass{0.55, 0.62, 0.68};     ///< a vessel's near side, which is see-through
inline constexpr Color contents{0.93, 0.90, 0.82};  ///< what fills a vessel
inline constexpr Color placed_now{1.0, 0.72, 0.28}; ///< the item of the step, hatched besides

/// What has its place already, by turns.
inline constexpr std::array<Color, 3> placed{{{0.79, 0.87, 0.94}, {0.67, 0.75, 0.69}, {0.83, 0.77, 0.85}}};

} // namespace tuckwright::drawing::palette
