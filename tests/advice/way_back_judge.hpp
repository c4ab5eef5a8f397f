// SPDX-License-Identifier: GPL-3.0-or-later
/// Judges what is told of a way back, by other means than those by which it was found.
#pragma once
#include <string>
#include <vector>

#include "tuckwright/there_and_back.hpp"

namespace tuckwright::test {

/// All that is wrong with an answer, in words: bundles that are not proved or not of their kits, moves that are told
/// but did not happen, or happened and are not told, causes that do not hold, weights that do not add up.
std::vector<std::string> faults_of(const BothWays& kits, const ThereAndBack& answer);

} // namespace tuckwright::test
