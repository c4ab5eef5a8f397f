// SPDX-License-Identifier: GPL-3.0-or-later
/// Text set in lines, once for all kinds of files, so that it takes the same room in each.
#pragma once
#include <memory>
#include <string_view>

#include "tuckwright/canvas.hpp"

using PangoLayout = struct _PangoLayout;

namespace tuckwright::canvas {

/// Units of set text in a millimetre. Fonts are scaled in steps of a 64th of a unit, which a whole millimetre would show.
inline constexpr double text_units = 10;

struct Layout {
    std::shared_ptr<PangoLayout> lines;
    Spot origin; ///< where the lines' own origin lies, mm from the extent's upper left corner
    TextExtent extent;
};

Layout set_in_lines(std::string_view text, const TextStyle& style);

} // namespace tuckwright::canvas
