// SPDX-License-Identifier: GPL-3.0-or-later
/// What is said once before the steps and after them.
#pragma once
#include <string>
#include <vector>

#include "tuckwright/bundle.hpp"

namespace tuckwright::report {

/// For a box: which side is left and which is front, as the steps call them; what the hours of the clock mean, where steps speak of them.
/// Not wrapped; nothing where nothing needs to be said.
std::string frame_in_words(const Bundle& bundle);

/// What comes first on the way back: "take out Lid", or "open Pot" where a lid bars the way. A last step that moves
/// everything is passed over, for nothing comes out of anything by that. Nothing for a single thing.
std::string first_when_unpacking(const Bundle& bundle);

/// What comes off and out, in that order: "Soft bag", "lid of Pot", "Cup 2", "Tea tin from Cup 2". A step that moves
/// everything is passed over.
std::vector<std::string> unpacking_order(const Bundle& bundle);

} // namespace tuckwright::report
