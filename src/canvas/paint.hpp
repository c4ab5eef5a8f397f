// SPDX-License-Identifier: GPL-3.0-or-later
/// Draws the marks of a page with cairo.
#pragma once
#include <cairo.h>

#include "canvas/marks.hpp"

namespace tuckwright::canvas {

/// Draws them in their order. Requires: a context whose unit is a millimetre, its origin the page's upper left corner.
void paint(cairo_t* to, const Page& page);

} // namespace tuckwright::canvas
