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

/// From now on nothing is said but what is wrong and what was asked for by name, such as a file or "-".
void be_quiet();
bool is_quiet();

/// From now on standard error tells how the work goes.
void be_verbose();
bool is_verbose();

/// How the work goes, a line on standard error; nothing unless it is asked for.
void note(std::string_view text);

/// The answer for people, on standard output, unless nothing is to be said; otherwise as print().
bool say(std::string_view text);

/// Writes to standard output, and says whether all of it got there; tells of it on standard error if not.
bool print(std::string_view text);

} // namespace tuckwright::cli
