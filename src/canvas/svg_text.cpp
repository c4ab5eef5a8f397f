// SPDX-License-Identifier: GPL-3.0-or-later
#include "canvas/svg_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cstdlib>
#include <map>

#include "canvas/text.hpp"

#include "tuckwright/contract.hpp"

namespace tuckwright::canvas {

namespace {

std::string escaped(const std::string& text)
{
    std::string safe;
    for (const char c : text) {
        safe += c == '<' ? "&lt;" : c == '>' ? "&gt;" : c == '&' ? "&amp;" : std::string(1, c);
    }
    return safe;
}

/// Where an id is given or meant, what stands before and behind it.
struct Mention {
    std::string before;
    char behind;
};

std::string with_ids_anew(const std::string& svg, const std::string& prefix)
{
    static const std::array<Mention, 3> mentions{{{" id=\"", '"'}, {"href=\"#", '"'}, {"url(#", ')'}}};
    std::map<std::string, std::string> fresh;
    std::string made;
    for (std::size_t at = 0; at < svg.size();) {
        const Mention* found = nullptr;
        for (const Mention& one : mentions) {
            found = svg.compare(at, one.before.size(), one.before) == 0 ? &one : found;
        }
        if (found == nullptr) {
            made += svg[at++];
            continue;
        }
        const std::size_t start = at + found->before.size(), end = svg.find(found->behind, start);
        require(end != std::string::npos, "an id ends");
        const auto [name, is_new] =
            fresh.emplace(svg.substr(start, end - start), fmt::format("{}{}", prefix, fresh.size() + 1));
        made += found->before + name->second;
        at = end;
    }
    return made;
}

/// The file with the numbers of its outlines and places rounded to three decimals, a tenth of a micrometre of paper.
std::string with_fewer_digits(const std::string& svg)
{
    static const std::array<std::string, 3> starts{" d=\"", " x=\"", " y=\""};
    std::string made;
    bool inside = false;
    for (std::size_t at = 0; at < svg.size();) {
        if (!inside) {
            inside = std::any_of(starts.begin(), starts.end(),
                                 [&](const std::string& start) { return svg.compare(at, start.size(), start) == 0; });
            const std::size_t taken = inside ? starts[0].size() : 1;
            made += svg.substr(at, taken);
            at += taken;
            continue;
        }
        const std::size_t end = std::min(svg.find_first_not_of("-.0123456789", at), svg.size());
        if (end == at) {
            inside = svg[at] != '"';
            made += svg[at++];
            continue;
        }
        std::string number = fmt::format("{:.3f}", std::strtod(svg.substr(at, end - at).c_str(), nullptr));
        number.erase(number.find_last_not_of('0') + 1);
        number.erase(number.find_last_not_of('.') + 1);
        made += number == "-0" ? "0" : number;
        at = end;
    }
    return made;
}

} // namespace

std::string tidied_svg(const std::string& svg, PageSize size, const std::string& id_prefix, const std::string& title)
{
    const std::size_t start = svg.find("<svg "), end = svg.find('>', start);
    require(start != std::string::npos && end != std::string::npos, "an SVG file has its first element");
    const std::string head =
        fmt::format("<svg xmlns=\"http://www.w3.org/2000/svg\" xmlns:xlink=\"http://www.w3.org/1999/xlink\" "
                    "width=\"{}mm\" height=\"{}mm\" viewBox=\"0 0 {} {}\" role=\"img\" version=\"1.1\">",
                    size.width, size.height, size.width * text_units, size.height * text_units);
    const std::string told = title.empty() ? "" : fmt::format("\n<title>{}</title>", escaped(title));
    return "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n" + head + told +
           with_fewer_digits(with_ids_anew(svg.substr(end + 1), id_prefix));
}

} // namespace tuckwright::canvas
