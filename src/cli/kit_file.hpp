// SPDX-License-Identifier: GPL-3.0-or-later
/// The kit file that the command line names.
#pragma once
#include <string>
#include <vector>

#include "tuckwright/kit_reader.hpp"
#include "tuckwright/result.hpp"
#include "tuckwright/way_back.hpp"

namespace tuckwright::cli
{

/// Reads the kit of that path, or of standard input for "-", with what is taken of its choices. Errors: no such file, a
/// saved bundle, or all mistakes in it.
Result<Kit> kit_as_written(const std::string& path, const std::vector<Taken>& chosen = {});

/// The same, with the vessels that its trip takes along among its items; on the way back, if that is asked for. Errors: also
/// more of these than a kit may have, and a kit that says nothing of a way back.
Result<Kit> kit_file(const std::string& path, const std::vector<Taken>& chosen = {}, bool way_back = false);

/// The same on the way out and on the way back.
Result<BothWays> both_ways_file(const std::string& path, const std::vector<Taken>& chosen = {});

/// The same with every combination of the file's choices.
Result<std::vector<ChosenKit>> kits_file(const std::string& path);

} // namespace tuckwright::cli
