// SPDX-License-Identifier: GPL-3.0-or-later
/// What is said once before the steps and after them.
#pragma once
#include <string>

#include "tuckwright/bundle.hpp"

namespace tuckwright::report {

/// For a box: which side is left and which is front, as the steps call them, wrapped. Nothing for a round bundle.
std::string frame_in_words(const Bundle& bundle);

/// What comes first on the way back: "take out Lid", or "open Pot" where a lid bars the way. A last step that moves
/// everything is passed over, for nothing comes out of anything by that. Nothing for a single thing.
std::string first_when_unpacking(const Bundle& bundle);

} // namespace tuckwright::report
