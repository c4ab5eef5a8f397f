// SPDX-License-Identifier: GPL-3.0-or-later
/// Says what is wrong with how the program was called, and what to do.
#pragma once
#include <string>

namespace CLI
{
class App;
class ParseError;
}

namespace tuckwright::cli
{

/// Whether there is such a command; says what may have been meant if not.
bool knows_command(const CLI::App& app, const std::string& word);

/// Requires: no call for help or the version.
void tell_wrong_call(const CLI::App& app, const CLI::ParseError& error);

} // namespace tuckwright::cli
