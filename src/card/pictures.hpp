// SPDX-License-Identifier: GPL-3.0-or-later
/// The drawings on a card.
#pragma once
#include "card/content.hpp"
#include "tuckwright/bundle.hpp"
#include "tuckwright/canvas.hpp"

namespace tuckwright::card {

/// A step of the bundle, or what goes round it all.
void draw_step(Canvas& canvas, const Frame& frame, const Bundle& bundle, const Step& step);

/// The whole, with its dimensions.
void draw_whole(Canvas& canvas, const Frame& frame, const Bundle& bundle);

} // namespace tuckwright::card
