// SPDX-License-Identifier: GPL-3.0-or-later
/// The command `verify`: proves a saved bundle anew.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "tuckwright/kit_reader.hpp"
#include "tuckwright/report.hpp"

namespace tuckwright::cli
{

struct VerifyOptions {
    std::string bundle;        ///< a file that `pack --json` wrote, or - for standard input
    std::string kit;           ///< the kit file with which it is compared; empty: none
    std::vector<Taken> chosen; ///< of that kit's choices
    bool way_back = false;     ///< that kit as it is on the way back
    std::optional<std::string> code; ///< of a card, as typed
};

/// Runs the command. Returns the exit status.
int verify(const VerifyOptions& options);

/// A saved bundle that could be read, with its proof tried anew.
struct Proved {
    Bundle bundle;             ///< with the words of today
    int outcome = 0;           ///< exit status; if it is not `done`, what is wrong first has been told
    bool was_reworded = false; ///< the file has other words
};

/// Proves a saved bundle, its figures and names too, and words it anew; says on standard error what is wrong first, with
/// the file's name.
Proved prove(const SavedBundle& saved, const std::string& name);

} // namespace tuckwright::cli
