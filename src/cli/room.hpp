// SPDX-License-Identifier: GPL-3.0-or-later
/// The command `room`: what else would go into a packed bundle.
#pragma once
#include <string>

#include "cli/packed.hpp"

namespace tuckwright::cli
{

struct RoomCommandOptions : WhatToPack {
    std::string json; ///< path, - for standard output, or empty for none
};

/// Runs the command. Returns the exit status.
int room(const RoomCommandOptions& options);

} // namespace tuckwright::cli
