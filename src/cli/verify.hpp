// SPDX-License-Identifier: GPL-3.0-or-later
/// The command `verify`: proves a saved bundle anew.
#pragma once
#include <string>
#include <vector>

#include "tuckwright/kit_reader.hpp"
#include "tuckwright/report.hpp"

namespace tuckwright::cli
{

/// Runs the command for a file that `pack --json` wrote, or - for standard input, and compares it with that kit file,
/// where one is named, with what is taken of its choices, on the way back if that is asked for. Returns the exit status.
int verify(const std::string& path, const std::string& kit_path, const std::vector<Taken>& chosen, bool way_back);

/// Proves a saved bundle that could be read, its figures and words too; says on standard error what is wrong first, with
/// the file's name. Returns the exit status.
int prove(const SavedBundle& saved, const std::string& name);

} // namespace tuckwright::cli
