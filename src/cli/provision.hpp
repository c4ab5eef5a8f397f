// SPDX-License-Identifier: GPL-3.0-or-later
/// The command `provision`: what the trip of a kit takes of fuel and food.
#pragma once
#include <string>
#include <vector>

#include "tuckwright/kit_reader.hpp"

namespace tuckwright::cli {

struct ProvisionOptions {
    std::string kit;  ///< path, or - for standard input
    std::string json; ///< path, - for standard output, or empty for none
    std::vector<Taken> chosen; ///< of the kit's choices
};

/// Runs the command. Returns the exit status.
int provision(const ProvisionOptions& options);

} // namespace tuckwright::cli
