// SPDX-License-Identifier: GPL-3.0-or-later
/// The drawings on a card.
#pragma once
#include <optional>

#include "tuckwright/bundle.hpp"
#include "tuckwright/canvas.hpp"

namespace tuckwright::card {

/// A step of the bundle; with none, what goes round it all.
void draw_step(Canvas& canvas, const Frame& frame, const Bundle& bundle, std::optional<std::size_t> step);

/// The whole, with its dimensions.
void draw_whole(Canvas& canvas, const Frame& frame, const Bundle& bundle);

} // namespace tuckwright::card
