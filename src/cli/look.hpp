// SPDX-License-Identifier: GPL-3.0-or-later
/// The command `look`: a bundle as a picture to turn in a browser.
#pragma once
#include <string>
#include <vector>

#include "tuckwright/kit_reader.hpp"
#include "tuckwright/solve.hpp"

namespace tuckwright::cli {

struct LookOptions {
    std::string file; ///< path of a kit or of a saved bundle, or - for standard input
    std::string html; ///< path of the page, or - for standard output
    bool without_room = false; ///< do not look for the room that is left
    bool worst_case = false;   ///< pack the kit for the worst case by the tolerances
    bool way_back = false;    ///< the kit as it is on the way back
    std::vector<Taken> chosen; ///< of the kit's choices
    SolveOptions search;
};

/// Runs the command. Returns the exit status.
int look(const LookOptions& options);

} // namespace tuckwright::cli
