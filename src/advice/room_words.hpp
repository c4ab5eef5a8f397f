// SPDX-License-Identifier: GPL-3.0-or-later
/// Where room is left, and how much, in words.
#pragma once
#include <optional>
#include <string>

#include "tuckwright/room.hpp"

namespace tuckwright::advice {

/// Whether there is one, no thinner than `worth_telling_mm` and no smaller than `worth_telling_ml`.
bool is_worth_telling(const std::optional<OneMore>& one);

/// Whether the way into the place is level, for its vessel lies on its side.
bool is_on_its_side(const Bundle& bundle, const RoomLeft& room);

/// "In Cup 2, which is empty", "In Pot, beside Tin and Spoon".
std::string place_in_words(const Bundle& bundle, const RoomLeft& room);

/// "61 mm across, 78 mm high (19 mm of it beyond the rim)", rounded down; `lies` where the vessel is on its side.
std::string one_more_in_words(const OneMore& one, Posing posing, bool lies);

} // namespace tuckwright::advice
