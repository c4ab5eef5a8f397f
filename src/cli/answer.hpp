// SPDX-License-Identifier: GPL-3.0-or-later
/// Where an answer goes: its text to standard output, its JSON to a file besides, or alone to standard output.
#pragma once
#include <functional>
#include <string>
#include <vector>

#include "tuckwright/bundle.hpp"
#include "tuckwright/result.hpp"

namespace tuckwright::cli
{

/// Adds what is wrong with saving an answer there (empty for not at all, - for standard output), so that it is found out
/// before a search and not after it. `source` is the file that is read.
void check_output(const std::string& json_path, const std::string& source, std::vector<Problem>& problems);

/// The same for several answers of one command, no two of which may go to one file, nor two to standard output.
void check_outputs(const std::vector<std::string>& paths, const std::string& source, std::vector<Problem>& problems);

/// Adds that a bundle alone is not saved to standard output, where the text goes, if it is asked for by such an option.
void check_saved(const std::string& option, const std::string& path, std::vector<Problem>& problems);

/// Saves a bundle by itself, if there is a path. Says whether all of it got there; tells of it on standard error if not.
bool save_bundle(const std::string& path, const Bundle& bundle);

/// Writes an answer, and says whether all of it got there; tells of it on standard error if not.
bool write_answer(const std::string& json_path, const std::function<std::string()>& json, const std::string& text);

} // namespace tuckwright::cli
