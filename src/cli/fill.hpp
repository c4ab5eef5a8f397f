// SPDX-License-Identifier: GPL-3.0-or-later
/// The command `fill`: what goes into one vessel.
#pragma once
#include <string>
#include <vector>

#include "tuckwright/kit_reader.hpp"
#include "tuckwright/solve.hpp"

namespace tuckwright::cli
{

struct FillOptions {
    std::string kit;  ///< path, or - for standard input
    std::string into; ///< id of the vessel; empty for the one with the largest inside
    std::string json; ///< path, - for standard output, or empty for none
    std::string save; ///< path for the bundle alone, or empty for none
    std::vector<Taken> chosen; ///< of the kit's choices
    bool way_back = false; ///< of the kit on the way back
    SolveOptions search;
};

/// Runs the command. Returns the exit status.
int fill(const FillOptions& options);

} // namespace tuckwright::cli
