// SPDX-License-Identifier: GPL-3.0-or-later
#include "tuckwright/result.hpp"

namespace tuckwright {

std::string to_string(const Problem& problem)
{
    std::string text = problem.file;
    if (problem.line > 0) {
        text += ":" + std::to_string(problem.line) + ":" + std::to_string(problem.column);
    }
    if (!text.empty()) {
        text += ": ";
    }
    text += problem.what;
    if (!problem.remedy.empty()) {
        text += "; " + problem.remedy;
    }
    return text;
}

} // namespace tuckwright
