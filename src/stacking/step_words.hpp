// SPDX-License-Identifier: GPL-3.0-or-later
/// A step in plain words, for a friend at the table.
#pragma once
#include <string>

#include "stacking/replay.hpp"

namespace tuckwright::stacking {

/// One or two short sentences: what, which way up, into what, where, and how much air is left at the sides.
/// Requires: the replay stands just before this step.
std::string step_text(const Replay& before, const Step& step);

} // namespace tuckwright::stacking
