// SPDX-License-Identifier: GPL-3.0-or-later
/// The command `pack`: from a kit file to the smallest bundle.
#pragma once
#include <string>
#include <vector>

#include "tuckwright/kit_reader.hpp"
#include "tuckwright/solve.hpp"

namespace tuckwright::cli
{

struct PackOptions {
    std::string kit;  ///< path, or - for standard input
    std::string json; ///< path, - for standard output, or empty for none
    std::vector<Taken> chosen; ///< of the kit's choices
    bool way_back = false; ///< of the kit on the way back
    bool worst_case = false; ///< pack for the worst case by the tolerances, whatever the kit says
    SolveOptions search;
};

/// Runs the command. Returns the exit status.
int pack(const PackOptions& options);

} // namespace tuckwright::cli
