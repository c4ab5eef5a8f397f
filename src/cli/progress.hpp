// SPDX-License-Identifier: GPL-3.0-or-later
/// A search that tells how far it has come.
#pragma once
#include "tuckwright/solve.hpp"

namespace tuckwright::cli
{

/// solve(), with a line on the terminal that says what was found so far, or one for each on request (--verbose); nothing
/// where standard error is no terminal.
Bundle search(const Kit& kit, SolveOptions options);

} // namespace tuckwright::cli
