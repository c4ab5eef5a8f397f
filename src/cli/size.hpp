// SPDX-License-Identifier: GPL-3.0-or-later
/// The command `size`: what sets the size of a bundle, and what would make it smaller.
#pragma once
#include <string>
#include <vector>

#include "tuckwright/kit_reader.hpp"
#include "tuckwright/solve.hpp"

namespace tuckwright::cli {

struct SizeOptions {
    std::string input; ///< path of a kit file, or of a bundle that was saved, or - for standard input
    std::string json;  ///< path, - for standard output, or empty for none
    std::vector<Taken> chosen; ///< of the kit's choices
    bool way_back = false; ///< of the kit on the way back
    bool worst_case = false;
    SolveOptions search;
};

/// Runs the command. Returns the exit status.
int size(const SizeOptions& options);

} // namespace tuckwright::cli
