// SPDX-License-Identifier: GPL-3.0-or-later
/// The kit file that the command line names.
#pragma once
#include <string>
#include <vector>

#include "tuckwright/kit_reader.hpp"
#include "tuckwright/result.hpp"

namespace tuckwright::cli
{

/// Reads the kit of that path, or of standard input for "-", with what is taken of its choices. Errors: no such file, a
/// saved bundle, or all mistakes in it.
Result<Kit> kit_as_written(const std::string& path, const std::vector<Taken>& chosen = {});

/// The same, with the vessels that its trip takes along among its items. Errors: also more of these than a kit may have.
Result<Kit> kit_file(const std::string& path, const std::vector<Taken>& chosen = {});

/// The same with every combination of the file's choices.
Result<std::vector<ChosenKit>> kits_file(const std::string& path);

} // namespace tuckwright::cli
