// SPDX-License-Identifier: GPL-3.0-or-later
/// The command `shelf`: from a table of things to a file from which kits take them.
#pragma once
#include <string>

namespace tuckwright::cli {

struct ShelfOptions {
    std::string csv;   ///< path, or - for standard input
    std::string yaml;  ///< path; - or empty for standard output
    std::string title; ///< of the shelf; empty: the file's name
};

/// Runs the command. Returns the exit status.
int shelf(const ShelfOptions& options);

} // namespace tuckwright::cli
