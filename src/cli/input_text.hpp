// SPDX-License-Identifier: GPL-3.0-or-later
/// The text of a file, or of standard input.
#pragma once
#include <string>

#include "tuckwright/result.hpp"

namespace tuckwright::cli
{

/// How standard input is called in problems, and how it is given on the command line.
inline constexpr const char* standard_input = "standard input";
inline constexpr const char* dash = "-";

/// The bytes of the file, or of standard input for "-", but no more than one above `most`: enough to see that it is
/// too large. Errors: a folder, or what the system says.
Result<std::string> input_text(const std::string& path, std::size_t most);

} // namespace tuckwright::cli
