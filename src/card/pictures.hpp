// SPDX-License-Identifier: GPL-3.0-or-later
/// The drawings on a card.
#pragma once
#include "card/content.hpp"
#include "tuckwright/bundle.hpp"
#include "tuckwright/canvas.hpp"

namespace tuckwright::card {

inline constexpr double badge = 3.2; ///< mm: half the width of a step's number, which stands in the upper left corner

/// A step of the bundle, or what goes round it all; nothing of it is under its number.
void draw_step(Canvas& canvas, const Frame& frame, const Bundle& bundle, const Step& step);

/// The whole, with its dimensions.
void draw_whole(Canvas& canvas, const Frame& frame, const Bundle& bundle);

} // namespace tuckwright::card
