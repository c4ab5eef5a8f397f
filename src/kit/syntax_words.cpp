// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/syntax_words.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <string>
#include <vector>

#include "kit/words.hpp"

namespace tuckwright::reading {

namespace {

struct PlainWords {
    std::string_view parser, what, remedy;
};

constexpr std::string_view misplaced_colon = "illegal map value";
constexpr std::string_view map_breaks_off = "end of map not found", list_breaks_off = "end of sequence not found";
constexpr std::string_view open_brace = "end of map flow not found", open_bracket = "end of sequence flow not found";
constexpr std::string_view misplaced_entry = "illegal block entry", misplaced_key = "illegal map key";

constexpr std::array<PlainWords, 14> plain_words{{
    {map_breaks_off, "this line does not fit in here",
     "check its indentation, and that each key has a colon and a space after it"},
    {list_breaks_off, "this line does not belong to the list above",
     "check its indentation; each entry of a list starts with '- '"},
    {open_brace, "a '{' is not closed", "add the missing '}', or a comma between two entries"},
    {open_bracket, "a '[' is not closed", "add the missing ']', or a comma between two entries"},
    {"illegal flow end", "a '}' or ']' closes nothing", "delete it, or add what opens it"},
    {misplaced_entry, "a list entry ('- ') cannot stand here", "start it on a line of its own, with spaces before it and no tab"},
    {misplaced_key, "a key cannot stand here", "start it on a line of its own"},
    {misplaced_colon, "a colon cannot stand here",
     "put text that holds ': ' into quotes, and check the indentation and the line above"},
    {"illegal tab when looking for indentation", "a tab cannot indent a line", "indent with spaces"},
    {"illegal EOF in scalar", "the file ends within quotes", "add the closing quote"},
    {"illegal document indicator in scalar", "a document ends within quotes", "add the closing quote"},
    {"unknown token", "this character cannot start a value", "put the text into quotes"},
    {"the referenced anchor is not defined", "an alias ('*' with a name) is not taken in a kit file",
     "write the value out"},
    {"cannot assign multiple anchors to the same node", "an anchor ('&' with a name) is not taken in a kit file",
     "take it out"},
}};

bool is_blank(char c) { return c == ' ' || c == '\t' || c == '\r' || c == '\n'; }

/// A line of the file, without what follows its last letter, and where its own text begins behind spaces and dashes.
struct Line {
    int number = 0; // from 0
    std::string_view text;
    std::size_t start = 0;

    std::string_view content() const { return text.substr(start); }
    Place place(std::size_t byte) const { return {number, static_cast<int>(byte)}; }
    std::string name() const { return "line " + std::to_string(number + 1); }
};

std::vector<Line> lines_of(std::string_view text)
{
    std::vector<Line> lines;
    while (!text.empty()) {
        const auto end = std::min(text.find('\n'), text.size());
        Line line{static_cast<int>(lines.size()), text.substr(0, end), 0};
        while (!line.text.empty() && is_blank(line.text.back())) {
            line.text.remove_suffix(1);
        }
        while (line.start < line.text.size() && (line.text[line.start] == ' ' || line.content().starts_with("- "))) {
            ++line.start;
        }
        lines.push_back(line);
        text.remove_prefix(std::min(end + 1, text.size()));
    }
    return lines;
}

/// The last line above that says something.
std::optional<Line> line_above(const std::vector<Line>& lines, int number)
{
    for (auto i = std::min(static_cast<std::size_t>(number), lines.size()); i > 0; --i) {
        const std::string_view content = lines[i - 1].content();
        if (!content.empty() && !content.starts_with('#')) {
            return lines[i - 1];
        }
    }
    return std::nullopt;
}

/// Where a line has a colon behind its first word, but no space behind that: 'weight:62 g'.
std::optional<std::size_t> tight_colon(const Line& line)
{
    constexpr std::string_view letters = "abcdefghijklmnopqrstuvwxyz_";
    const auto end = line.content().find_first_not_of(letters);
    if (end == std::string_view::npos || end == 0 || line.content()[end] != ':') {
        return std::nullopt;
    }
    return end + 1 < line.content().size() && line.content()[end + 1] != ' ' ? std::optional(line.start + end)
                                                                             : std::nullopt;
}

/// Adds a problem for a colon without a space, if this line has one.
bool add_tight_colon(const Line& line, ProblemList& problems)
{
    const auto colon = tight_colon(line);
    if (colon) {
        const std::string before(line.text.substr(line.start, *colon + 1 - line.start));
        problems.add(line.place(*colon), "there is no space after the colon of " + in_quotes(line.content()),
                     "put a space after the colon in " + line.name() + ": " +
                         in_quotes(before + " " + std::string(line.text.substr(*colon + 1))));
    }
    return colon.has_value();
}

/// Adds a problem for a colon where none can be, if the lines around it tell how it came about.
bool add_misplaced_colon(const std::vector<Line>& lines, Place at, ProblemList& problems)
{
    const auto number = static_cast<std::size_t>(at.line);
    const auto above = line_above(lines, at.line);
    if (number >= lines.size() || !above ||
        lines[number].text.substr(0, static_cast<std::size_t>(at.byte)).find(": ") != std::string_view::npos) {
        return false;
    }
    const Line& line = lines[number];
    const bool has_colon = above->content().find(':') != std::string_view::npos;
    if (line.start > above->start && has_colon) {
        problems.add(line.place(line.start),
                     "this line is indented further than " + above->name() +
                         ", and so it is taken for more of that line's text",
                     "indent it as far as the text of " + above->name() +
                         "; or, if it is text that holds ': ', put it into quotes");
        return true;
    }
    if (!has_colon) {
        problems.add(above->place(above->start), "there is no colon in this line",
                     "put a colon and a space after its first word, such as 'weight: 62 g'");
    }
    return !has_colon;
}

/// A bracket that is open at a place of the text.
struct Bracket {
    char sign;
    Place place;
};

/// Follows brackets, quotes and comments as far as kit files have them: brackets and quotes count where a value starts,
/// and brackets anywhere within others.
class BracketReader {
public:
    void read(char c, char next)
    {
        const bool blank = is_blank(c);
        if (c == '\n') {
            comment_ = false;
            starts_ = starts_ || open_.empty();
        } else if (comment_) { // says nothing
        } else if (quote_ != 0) {
            quote_ = c == quote_ && before_ != '\\' ? '\0' : quote_;
        } else if (c == '#' && is_blank(before_)) {
            comment_ = true;
        } else if ((c == '"' || c == '\'') && starts_) {
            quote_ = c;
        } else {
            read_sign(c);
        }
        if (!blank && !comment_) {
            starts_ = (c == ',' || c == '{' || c == '[' || ((c == ':' || (c == '-' && starts_)) && is_blank(next)));
        }
        before_ = c;
        place_ = c == '\n' ? Place{place_.line + 1, 0} : Place{place_.line, place_.byte + 1};
    }

    Place place() const { return place_; }
    std::optional<Bracket> innermost() const { return open_.empty() ? std::nullopt : std::optional(open_.back()); }

private:
    void read_sign(char c)
    {
        if ((c == '{' || c == '[') && (starts_ || !open_.empty())) {
            open_.push_back({c, place_});
        } else if ((c == '}' || c == ']') && !open_.empty()) {
            open_.pop_back();
        }
    }

    std::vector<Bracket> open_;
    Place place_;
    char quote_ = 0, before_ = '\n';
    bool comment_ = false, starts_ = true;
};

/// Adds a problem for a bracket that is still open from a line above, if there is one.
bool add_open_bracket(std::string_view text, Place at, ProblemList& problems)
{
    BracketReader reader;
    for (std::size_t i = 0; i < text.size() && reader.place() < at; ++i) {
        reader.read(text[i], i + 1 < text.size() ? text[i + 1] : '\n');
    }
    const auto open = reader.innermost();
    if (!open || open->place.line == at.line) {
        return false;
    }
    const std::string sign(1, open->sign), closing = open->sign == '{' ? "}" : "]";
    problems.add(open->place, "this '" + sign + "' is not closed before line " + std::to_string(at.line + 1),
                 "add the missing '" + closing + "', or a comma between two entries");
    return true;
}

bool add_likely_cause(std::string_view text, std::string_view says, Place at, ProblemList& problems)
{
    const auto is_one_of = [&](std::initializer_list<std::string_view> known) {
        return std::any_of(known.begin(), known.end(), [&](std::string_view k) { return says.starts_with(k); });
    };
    if (is_one_of({open_brace, open_bracket, misplaced_colon, misplaced_entry, misplaced_key}) &&
        add_open_bracket(text, at, problems)) {
        return true;
    }
    if (!is_one_of({misplaced_colon, map_breaks_off, list_breaks_off})) {
        return false;
    }
    const auto lines = lines_of(text);
    const auto number = static_cast<std::size_t>(at.line);
    const auto above = line_above(lines, at.line);
    if ((above && add_tight_colon(*above, problems)) ||
        (number < lines.size() && add_tight_colon(lines[number], problems))) {
        return true;
    }
    return says.starts_with(misplaced_colon) && add_misplaced_colon(lines, at, problems);
}

} // namespace

void add_syntax_problem(std::string_view text, std::string_view parser_says, Place at, ProblemList& problems)
{
    if (add_likely_cause(text, parser_says, at, problems)) {
        return;
    }
    // The parser puts some details behind its message (an unknown escape, an alias's name).
    for (const PlainWords& plain : plain_words) {
        if (parser_says.starts_with(plain.parser)) {
            problems.add(at, std::string(plain.what), std::string(plain.remedy));
            return;
        }
    }
    problems.add(at, "this is not YAML: " + std::string(parser_says), "check the line and the one above it");
}

} // namespace tuckwright::reading
