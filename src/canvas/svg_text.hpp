// SPDX-License-Identifier: GPL-3.0-or-later
/// What cairo's SVG lacks: sides in mm, ids that repeat, a title; and fewer digits.
#pragma once
#include <string>

#include "tuckwright/canvas.hpp"

namespace tuckwright::canvas {

/// The file with its sides in mm, its ids numbered anew in their order behind the prefix (cairo counts them through the
/// life of the program), and the title, if any, as its first element.
std::string tidied_svg(const std::string& svg, PageSize size, const std::string& id_prefix, const std::string& title);

} // namespace tuckwright::canvas
