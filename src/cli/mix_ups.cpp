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

namespace {

/// The format that a JSON object of this program names, "tuckwright-bundle"; empty for any other text.
std::string format_of(std::string_view text)
{
    constexpr std::size_t enough = 400; // the format is the first of all fields
    const auto start = text.find_first_not_of(" \t\r\n");
    if (start == std::string_view::npos || text[start] != '{') {
        return {};
    }
    const std::string_view head = text.substr(start, enough);
    const auto begin = head.find("\"tuckwright-");
    const auto end = begin == std::string_view::npos ? begin : head.find('"', begin + 1);
    return end == std::string_view::npos ? "" : std::string(head.substr(begin + 1, end - begin - 1));
}

} // namespace

bool looks_like_bundle(std::string_view text) { return format_of(text) == "tuckwright-bundle"; }

std::optional<Problem> another_answer(std::string_view text, const std::string& name)
{
    const std::string format = format_of(text);
    if (format.empty() || format == "tuckwright-bundle") {
        return std::nullopt;
    }
    return Problem{name, 0, 0, "this is an answer of another command (" + format + "), not a kit and not a saved bundle",
                   "give the kit file, or a bundle saved by pack --json, card --json, back --save-out or --save-back; the "
                   "bundles within such an answer can be cut out and given by themselves"};
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
