// SPDX-License-Identifier: GPL-3.0-or-later
/// What is said once before the steps and after them.
#pragma once
#include <cstddef>
#include <optional>
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

/// Something that comes off or out: "Soft bag", "Lid off Pot", "Cup 2", "Tea tin from Cup 2".
struct ComingOut {
    std::string words;
    std::optional<std::size_t> item; ///< none for what goes round it all
};

/// What comes off and out, in that order. A step that moves everything is passed over.
std::vector<ComingOut> unpacking_order(const Bundle& bundle);

} // namespace tuckwright::report
