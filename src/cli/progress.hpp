// SPDX-License-Identifier: GPL-3.0-or-later
/// A search that tells how far it has come.
#pragma once
#include <string>
#include <thread>

#include "tuckwright/solve.hpp"

namespace tuckwright::cli
{

/// solve(), with a line on the terminal that says what was found so far, or one for each on request (--verbose); nothing
/// where standard error is no terminal.
Bundle search(const Kit& kit, SolveOptions options);

/// As long as it lives, a line on the terminal that says what is going on and for how many seconds: where many searches
/// answer one question, no volume tells how far they are. Nothing where standard error is no terminal, or on request.
class WorkingLine
{
public:
    explicit WorkingLine(const std::string& what);

private:
    std::jthread teller_; ///< ends, and wipes the line, with the object
};

} // namespace tuckwright::cli
