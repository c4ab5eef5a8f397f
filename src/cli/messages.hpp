// SPDX-License-Identifier: GPL-3.0-or-later
/// What is said on standard output and standard error.
#pragma once
#include <string_view>
#include <vector>

#include "tuckwright/result.hpp"

namespace tuckwright::cli
{

/// Each problem on a line of standard error.
void tell(const std::vector<Problem>& problems);

/// Writes to standard output, and says whether all of it got there; tells of it on standard error if not.
bool print(std::string_view text);

} // namespace tuckwright::cli
