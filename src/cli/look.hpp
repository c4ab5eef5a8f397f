// SPDX-License-Identifier: GPL-3.0-or-later
/// The command `look`: a bundle as a picture to turn in a browser.
#pragma once
#include <string>

#include "cli/packed.hpp"

namespace tuckwright::cli {

struct LookOptions : WhatToPack {
    std::string html;          ///< path of the page, or - for standard output
    bool without_room = false; ///< do not look for the room that is left
};

/// Runs the command. Returns the exit status.
int look(const LookOptions& options);

} // namespace tuckwright::cli
