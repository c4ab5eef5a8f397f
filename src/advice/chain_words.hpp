// SPDX-License-Identifier: GPL-3.0-or-later
/// What a chain goes through, in words.
#pragma once
#include <string>
#include <vector>

#include "tuckwright/chains.hpp"

namespace tuckwright::advice {

/// "spoon 12 mm", "bottom of Pot 1 mm": one a stretch, with tenths that add up as printed; empty for hairs of air, which
/// are told with what comes next.
std::vector<std::string> stretches_in_words(const Bundle& bundle, const Chain& chain);

} // namespace tuckwright::advice
