// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/messages.hpp"

#include <cerrno>
#include <cstdio>
#include <system_error>

#include "report/words.hpp"

namespace tuckwright::cli
{

void tell(const std::vector<Problem>& problems)
{
    for (const auto& problem : problems) {
        std::fputs((report::printable(to_string(problem)) + "\n").c_str(), stderr);
    }
}

bool print(std::string_view text)
{
    errno = 0;
    const bool whole = std::fwrite(text.data(), 1, text.size(), stdout) == text.size();
    if (std::fflush(stdout) == 0 && whole) {
        return true;
    }
    tell({{"standard output", 0, 0, "cannot be written: " + std::generic_category().message(errno), ""}});
    return false;
}

} // namespace tuckwright::cli
