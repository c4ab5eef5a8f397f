// SPDX-License-Identifier: GPL-3.0-or-later
/// The command that starts a kit file: one with comments and a few things to change.
#pragma once
#include <string>

namespace tuckwright::cli
{

struct NewKitOptions {
    std::string file;           ///< where to write, or a dash for standard output
    std::string name;           ///< the kit's, if not as the file is called
    bool ask = false;           ///< make it of answers to questions, not of a template
    bool for_editors = false;   ///< write the schema beside it, and name it in its first line
};

int new_kit(const NewKitOptions& options);

} // namespace tuckwright::cli
