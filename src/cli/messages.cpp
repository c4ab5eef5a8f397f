// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/messages.hpp"

#include <cerrno>
#include <cstdio>
#include <system_error>

#include "report/words.hpp"

namespace tuckwright::cli
{

namespace
{

struct Talk {
    bool quiet = false, verbose = false;
};

Talk& talk()
{
    static Talk of_all;
    return of_all;
}

} // namespace

void be_quiet() { talk().quiet = true; }
bool is_quiet() { return talk().quiet; }
void be_verbose() { talk().verbose = true; }
bool is_verbose() { return talk().verbose; }

void note(std::string_view text)
{
    if (is_verbose()) {
        std::fputs((report::printable(text) + "\n").c_str(), stderr);
    }
}

bool say(std::string_view text) { return is_quiet() || print(text); }

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
