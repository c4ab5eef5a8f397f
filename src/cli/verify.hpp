// SPDX-License-Identifier: GPL-3.0-or-later
/// The command `verify`: proves a saved bundle anew.
#pragma once
#include <string>

namespace tuckwright::cli
{

/// Runs the command for a file that `pack --json` wrote, or - for standard input, and compares it with that kit file,
/// where one is named. Returns the exit status.
int verify(const std::string& path, const std::string& kit_path);

} // namespace tuckwright::cli
