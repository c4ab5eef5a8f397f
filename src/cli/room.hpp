// SPDX-License-Identifier: GPL-3.0-or-later
/// The command `room`: what else would go into a packed bundle.
#pragma once
#include <string>
#include <vector>

#include "tuckwright/kit_reader.hpp"
#include "tuckwright/solve.hpp"

namespace tuckwright::cli
{

struct RoomCommandOptions {
    std::string file; ///< path of a kit or of a saved bundle, or - for standard input
    std::string json; ///< path, - for standard output, or empty for none
    bool worst_case = false; ///< pack the kit for the worst case by the tolerances
    std::vector<Taken> chosen; ///< of the kit's choices
    bool way_back = false; ///< of the kit on the way back
    SolveOptions search;
};

/// Runs the command. Returns the exit status.
int room(const RoomCommandOptions& options);

} // namespace tuckwright::cli
