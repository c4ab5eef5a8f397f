// SPDX-License-Identifier: GPL-3.0-or-later
/// Reading a kit file (YAML).
#pragma once
#include <string>
#include <string_view>

#include "tuckwright/kit.hpp"
#include "tuckwright/result.hpp"

namespace tuckwright {

/// Reads a kit from a file. Ensures: either a kit in which every index, dimension and rule is sound, or every problem
/// of the file, in the order of their places. Errors: unreadable path, too large, not YAML, and each faulty entry.
Result<Kit> read_kit_file(const std::string& path);

/// The same from text; `name` stands for the file in problems.
Result<Kit> read_kit_text(std::string_view text, const std::string& name);

} // namespace tuckwright
