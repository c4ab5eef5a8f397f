// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/mix_ups.hpp"

#include <algorithm>
#include <array>

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

struct Beginning {
    std::string_view bytes;
    const char* what;
};

// The first bytes of files. PNG: W3C, Portable Network Graphics (2003), 5.2. ZIP: PKWARE, APPNOTE.TXT, 4.3.7 and 4.3.16. PDF: ISO
// 32000-1 (2008), 7.5.2. JPEG: ITU-T T.81 (1992), B.1.1.3. GIF: CompuServe, Graphics Interchange Format (1989), 17. gzip: RFC
// 1952, 2.3.1. All from memory.
constexpr std::array<Beginning, 12> beginnings{{{"\x89PNG\r\n\x1A\n", "a PNG picture"},
                                                {"\xFF\xD8\xFF", "a JPEG picture"},
                                                {"GIF87a", "a GIF picture"},
                                                {"GIF89a", "a GIF picture"},
                                                {"%PDF-", "a PDF document"},
                                                {"PK\x03\x04", "a ZIP archive (as spreadsheets and office documents are)"},
                                                {"PK\x05\x06", "an empty ZIP archive"},
                                                {"\x1F\x8B", "a compressed file (gzip)"},
                                                {"<svg", "an SVG picture"},
                                                {"<?xml", "an XML file, perhaps a picture"},
                                                {"<!doctype html", "a page for browsers (HTML)"},
                                                {"<html", "a page for browsers (HTML)"}}};

std::string in_small_letters(std::string_view text)
{
    std::string small(text);
    std::transform(small.begin(), small.end(), small.begin(),
                   [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; });
    return small;
}

bool begins_as(std::string_view text, std::string_view bytes)
{
    const std::string_view start = text.substr(0, bytes.size());
    return start == bytes || (bytes.front() == '<' && in_small_letters(start) == bytes);
}

/// Whether the first line is that of a table: fields between commas, semicolons or tabs, and nothing of YAML or JSON.
bool looks_like_table(std::string_view text)
{
    const std::string_view line = text.substr(0, text.find('\n'));
    constexpr std::size_t longest = 1000;
    const auto fields = [&](char separator) { return 1 + std::count(line.begin(), line.end(), separator); };
    return line.size() < longest && line.find_first_of(":#[{") == std::string_view::npos && !line.starts_with("-") &&
           std::max({fields(','), fields(';'), fields('\t')}) >= 3;
}

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

std::optional<Problem> another_file(std::string_view text, const std::string& name, const std::string& wanted)
{
    std::string_view start = text;
    while (start.starts_with(' ') || start.starts_with('\n') || start.starts_with('\r') || start.starts_with("\xEF\xBB\xBF")) {
        start.remove_prefix(start.starts_with('\xEF') ? 3 : 1);
    }
    for (const auto& [bytes, what] : beginnings) {
        if (begins_as(bytes.front() == '<' ? start : text, bytes)) {
            return Problem{name, 0, 0, std::string("this is ") + what + ", not " + wanted,
                           wanted == a_table ? "save the table as CSV, and give that" : "check that it is the right file"};
        }
    }
    if (wanted != a_table && looks_like_table(start)) {
        return Problem{name, 0, 0, "this looks like a table (CSV), not like " + wanted,
                       "'tuckwright shelf' makes a shelf of a table, from which a kit file takes its things"};
    }
    return std::nullopt;
}

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
