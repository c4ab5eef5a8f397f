// SPDX-License-Identifier: GPL-3.0-or-later
/// The command `compare`: which of several kits packs best.
#pragma once
#include <string>
#include <vector>

#include "tuckwright/compare.hpp"

namespace tuckwright::cli {

struct CompareCommand {
    std::vector<std::string> kits; ///< paths, one of them perhaps - for standard input
    std::string json;              ///< path, - for standard output, or empty for none
    std::string picture;           ///< path ending in .svg, .pdf or .png; empty for none
    CompareOptions options;
};

/// Runs the command. Returns the exit status.
int compare_kits(const CompareCommand& command);

} // namespace tuckwright::cli
