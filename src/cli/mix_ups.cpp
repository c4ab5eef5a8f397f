// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/mix_ups.hpp"

#include <algorithm>

#include "kit/words.hpp"

namespace tuckwright::cli {

namespace {

std::string joined(const std::vector<std::string>& words)
{
    const std::vector<std::string_view> views(words.begin(), words.end());
    return reading::listed(views);
}

} // namespace

bool looks_like_kit(std::string_view text)
{
    while (!text.empty()) {
        if (text.starts_with("kit:") || text.starts_with("items:")) {
            return true;
        }
        const auto end = text.find('\n');
        text.remove_prefix(end == std::string_view::npos ? text.size() : end + 1);
    }
    return false;
}

bool looks_like_bundle(std::string_view text)
{
    constexpr std::size_t enough = 400; // the format is the first of all fields
    const auto start = text.find_first_not_of(" \t\r\n");
    return start != std::string_view::npos && text[start] == '{' &&
           text.substr(start, enough).find("\"tuckwright-bundle\"") != std::string_view::npos;
}

std::string about_unexpected(const std::vector<std::string>& arguments, std::string_view command,
                             const std::vector<std::string>& options, const std::vector<std::string>& commands)
{
    const std::string& first = arguments.front();
    if (first.size() > 1 && first.front() == '-') {
        const std::string name = first.substr(0, first.find('='));
        const std::vector<std::string_view> known(options.begin(), options.end());
        if (std::find(options.begin(), options.end(), name) != options.end()) {
            return "give " + name + " behind " + std::string(command);
        }
        const auto meant = reading::mistyped(name, known);
        return "there is no option " + name + (command.empty() ? "" : " of " + std::string(command)) +
               (meant ? "; did you mean " + std::string(*meant) + "?" : "; known here: " + joined(options));
    }
    if (command.empty()) {
        const auto meant = reading::mistyped(first, std::vector<std::string_view>(commands.begin(), commands.end()));
        return "there is no command " + first + "; " +
               (meant ? "did you mean " + std::string(*meant) + "?" : "known are " + joined(commands));
    }
    return first + " is one file too many for " + std::string(command) + "; give one";
}

} // namespace tuckwright::cli
