// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/asked_kit.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "kit/words.hpp"
#include "report/words.hpp"
#include "tuckwright/kit_reader.hpp"

namespace tuckwright::cli
{

namespace
{

constexpr std::size_t comment_column = 58;

/// A line of the file, with what it is for.
std::string line(const std::string& text, const std::string& comment = "")
{
    if (comment.empty()) {
        return text + "\n";
    }
    return text + std::string(text.size() < comment_column ? comment_column - text.size() : 1, ' ') + "# " + comment + "\n";
}

/// "diameter: 110 mm, height: 90 mm", without what is empty.
std::string fields(bool is_round, const std::vector<std::string>& sizes)
{
    constexpr std::array<const char*, 2> of_round{"diameter", "height"};
    constexpr std::array<const char*, 3> of_box{"length", "width", "height"};
    std::string text;
    for (std::size_t k = 0; k < sizes.size(); ++k) {
        if (!sizes[k].empty()) {
            text += fmt::format("{}{}: {}", text.empty() ? "" : ", ", is_round ? of_round.at(k) : of_box.at(k), sizes[k]);
        }
    }
    return text;
}

std::string inside_line(const AskedItem& item)
{
    switch (item.sort) {
    case Sort::pot: return line(fmt::format("    inside: {{wall: {}, base: {}}}", item.wall, item.base), "open at the top");
    case Sort::tin:
        return line(fmt::format("    inside: {{wall: {}, base: {}, lid: own}}", item.wall, item.base), "its own lid is shut");
    case Sort::sleeve: return line(fmt::format("    inside: {{wall: {}, opens: both}}", item.wall), "open at both ends");
    default: return "";
    }
}

std::string outside_line(const AskedItem& item)
{
    if (item.sort == Sort::soft) {
        return line(fmt::format("    cloth: {{volume: {}, thickness: {}}}", item.volume, item.thickness),
                    "pressed together; no thinner than that");
    }
    return line(fmt::format("    {}: {{{}}}", item.is_round ? "cylinder" : "box", fields(item.is_round, item.sizes)),
                item.sort == Sort::lid ? "the whole lid" : "outside");
}

std::string item_text(const AskedItem& item)
{
    std::string text = "\n" + line("  - id: " + item.id) + line("    name: " + yaml_text(item.name));
    if (item.count > 1) {
        text += line(fmt::format("    count: {}", item.count), "so many alike");
    }
    text += line("    weight: " + item.weight, item.count > 1 ? "of one, empty" : item.contents.empty() ? "" : "empty");
    text += outside_line(item) + inside_line(item);
    if (item.sort == Sort::lid) {
        text += line(fmt::format("    closes: {{item: {}, adds: {}, intrudes: {}}}", item.closes, item.adds, item.intrudes),
                     "shut: stands above the rim, hangs in");
    }
    if (!item.contents.empty()) {
        text += line(fmt::format("    contents: {{what: {}, amount: {}}}", yaml_text(item.contents), item.amount),
                     "keeps it the right way up");
    }
    if (!item.kinds.empty()) {
        text += line(fmt::format("    kind: [{}]", fmt::join(item.kinds, ", ")));
    }
    return text;
}

constexpr auto head = R"(# A kit for tuckwright. Whatever follows a # is for people only. Change it with any text editor: sizes are those from
# outside, with a ruler or calliper, rounded up; weights those on a kitchen scale.
)";

constexpr auto foot = R"(
# Handles and spouts are `parts`, other ways to carry a thing `forms`; what goes where is told by `goes-in`, `not-in` and
# `apart-from`. A fuel bottle is `kind: [fuel, liquid]`: shut tightly, upright, away from flames and apart from food. The
# maker's instructions and local rules go first.
)";

} // namespace

std::string yaml_text(const std::string& text)
{
    std::string value = "\"";
    for (const char c : report::printable(text)) {
        value += c == '"' || c == '\\' ? std::string("\\") + c : std::string(1, c);
    }
    return value + "\"";
}

std::string kit_text(const AskedKit& kit)
{
    const std::string limits = fields(kit.is_round, kit.limits);
    std::string text = head;
    text += line("kit: " + yaml_text(kit.name));
    text += line("clearance: 0.5 mm", "air kept between a thing and the wall round it");
    text += line(fmt::format("bundle: {{shape: {}{}}}", kit.is_round ? "cylinder" : "box", limits.empty() ? "" : ", " + limits),
                 limits.empty() ? "as small as can be" : "no larger than that");
    text += "\nitems:\n";
    for (const AskedItem& item : kit.items) {
        text += item_text(item);
    }
    return text + foot;
}

std::optional<Problem> fault_of(const AskedKit& kit)
{
    const auto read = read_kit_text(kit_text(kit), "");
    if (read) {
        return std::nullopt;
    }
    const Problem& first = read.problems().front();
    return Problem{"", 0, 0, first.what, first.remedy};
}

std::string new_id(const std::string& name, const std::vector<AskedItem>& items)
{
    constexpr std::size_t long_enough = 40;
    std::string id;
    for (const char c : name.substr(0, name.find(','))) {
        const char small = c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
        if ((small >= 'a' && small <= 'z') || (small >= '0' && small <= '9')) {
            id += small;
        } else if (!id.empty() && id.back() != '-' && id.size() < long_enough) {
            id += '-';
        }
        if (id.size() >= long_enough) {
            break;
        }
    }
    while (!id.empty() && id.back() == '-') {
        id.pop_back();
    }
    id = id.empty() || id == "nothing" ? "thing" : id;
    const auto is_taken = [&](const std::string& word) {
        return std::any_of(items.begin(), items.end(), [&](const AskedItem& item) { return item.id == word; });
    };
    std::string unused = id;
    for (int k = 2; is_taken(unused); ++k) {
        unused = fmt::format("{}-{}", id, k);
    }
    return unused;
}

} // namespace tuckwright::cli
