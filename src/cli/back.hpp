// SPDX-License-Identifier: GPL-3.0-or-later
/// The command `back`: a kit on the way out and on the way back.
#pragma once
#include <string>
#include <vector>

#include "tuckwright/kit_reader.hpp"
#include "tuckwright/solve.hpp"

namespace tuckwright::cli {

struct BackOptions {
    std::string kit;                 ///< path, or - for standard input
    std::string json;                ///< path, - for standard output, or empty for none
    std::string save_out, save_back; ///< paths for either bundle alone, or empty for none
    std::vector<Taken> chosen;       ///< of the kit's choices
    bool worst_case = false;         ///< pack for the worst case by the tolerances, whatever the kit says
    SolveOptions search;
};

/// Runs the command. Returns the exit status.
int back(const BackOptions& options);

} // namespace tuckwright::cli
