// SPDX-License-Identifier: GPL-3.0-or-later
/// The YAML parser's complaints, said for somebody who writes a kit file now and then.
#pragma once
#include <string_view>

#include "kit/problem_list.hpp"

namespace tuckwright::reading {

/// Adds a problem for what the parser says about a place, or rather for what has most likely led to it: a bracket still
/// open from a line above, no space after a colon, a line indented too far. Complexity: linear.
void add_syntax_problem(std::string_view text, std::string_view parser_says, Place at, ProblemList& problems);

} // namespace tuckwright::reading
