// SPDX-License-Identifier: GPL-3.0-or-later
// The card as one HTML page.
#include <fmt/format.h>

#include "card/content.hpp"
#include "card/html.hpp"
#include "card/pictures.hpp"
#include "tuckwright/card.hpp"

namespace tuckwright {

namespace card {

namespace {

constexpr PageSize whole_size{80, 80}, step_size{62, 40}; ///< mm

constexpr const char* style = R"(:root { color-scheme: light; }
* { box-sizing: border-box; }
body { margin: 0 auto; max-width: 60rem; padding: 1rem; background: #fff; color: #1a1a1a;
  font: 15px/1.4 "DejaVu Sans", Verdana, sans-serif; overflow-wrap: anywhere; }
h1 { font-size: 1.7rem; line-height: 1.2; margin: 0 0 .6rem; }
h2 { font-size: 1.1rem; margin: 1.2rem 0 .5rem; padding-top: .4rem; border-top: 1px solid #999; }
svg { display: block; width: 100%; height: auto; }
.whole { display: grid; grid-template-columns: minmax(0, 2fr) minmax(0, 3fr); gap: 1.2rem; }
dl { display: grid; grid-template-columns: max-content 1fr; gap: .2rem 1rem; margin: 0 0 .6rem; }
dt { font-weight: bold; } dd { margin: 0; }
ul, ol { margin: 0; padding: 0; list-style: none; }
.parts { columns: 2; column-gap: 1.5rem; }
.parts li { break-inside: avoid; margin-bottom: .35rem; }
.parts label { display: grid; grid-template-columns: 1.3rem 1fr max-content; gap: 0 .3rem; }
.parts input { margin: .2rem 0 0; width: 1rem; height: 1rem; }
.parts small { grid-column: 2 / 4; font-size: .9em; }
.steps { display: grid; grid-template-columns: repeat(3, minmax(0, 1fr)); gap: 1rem; counter-reset: step; }
.steps li { break-inside: avoid; counter-increment: step; position: relative; }
.steps li::before { content: counter(step); position: absolute; left: 0; top: 0; width: 1.9em; height: 1.9em;
  line-height: 1.9em; border-radius: 50%; background: #1a1a1a; color: #fff; text-align: center; font-weight: bold;
  print-color-adjust: exact; -webkit-print-color-adjust: exact; }
.steps p { margin: .3rem 0 0; }
.unpacking { display: flex; flex-wrap: wrap; gap: .2rem 1.2rem; list-style: decimal inside; }
.cautions { border: 3px solid #1a1a1a; padding: .6rem .8rem; margin-top: 1.2rem; break-inside: avoid; }
.cautions h2 { border: 0; margin: 0 0 .3rem; padding: 0; }
.cautions ul { list-style: disc outside; padding-left: 1.2rem; }
footer { margin-top: 1rem; font-size: .9em; color: #555; }
@media (max-width: 38rem) {
  .whole { grid-template-columns: 1fr; } .parts { columns: 1; }
  .steps { grid-template-columns: repeat(auto-fill, minmax(14rem, 1fr)); }
}
)";

constexpr const char* print_style = R"(@page {{ size: {}; margin: 11mm; }}
@media print {{ body {{ max-width: none; padding: 0; font-size: 10pt; }} .steps {{ gap: 3mm; }}
  .whole {{ grid-template-columns: 62mm 1fr; }} .parts {{ columns: 2; }} .steps {{ grid-template-columns: repeat(3, 1fr); }} }}
)";

std::string list(const char* open, const std::vector<std::string>& sentences, const char* close)
{
    std::string text = open;
    for (const std::string& sentence : sentences) {
        text += "<li>" + as_html(sentence) + "</li>\n";
    }
    return text + close;
}

std::string overview(const Bundle& bundle, const Content& content)
{
    Canvas canvas(whole_size);
    draw_whole(canvas, {0, 0, whole_size.width, whole_size.height}, bundle);
    std::string text = "<div class=\"whole\">\n<div>" + canvas.svg(0, "whole", content.title) + "</div>\n<div>\n<dl>";
    const auto fact = [&](const char* name, const std::string& value) {
        text += fmt::format("<dt>{}</dt><dd>{}</dd>", name, as_html(value));
    };
    fact("Size", content.size);
    fact("Volume", content.volume);
    fact("Weight", content.weight);
    fact("Code", content.code);
    text += "</dl>\n";
    for (const std::string& note : content.notes) {
        text += "<p>" + as_html(note) + "</p>\n";
    }
    return text + "</div>\n</div>\n";
}

std::string parts(const Content& content)
{
    std::string text = "<h2>Lay ready</h2>\n<ul class=\"parts\">\n";
    for (const Part& part : content.parts) {
        text += fmt::format("<li><label><input type=\"checkbox\"><span>{}{}</span><span>{}{}</span>{}</label></li>\n",
                            part.numbers.empty() ? "" : "<b>" + part.numbers + "</b> ", as_html(part.name), part.copies > 1 ? fmt::format("{} × ", part.copies) : "",
                            as_html(part.weight),
                            part.details.empty() ? "" : "<small>" + as_html(part.details) + "</small>");
    }
    return text + "</ul>\n";
}

std::string steps(const Bundle& bundle, const Content& content)
{
    std::string text = "<h2>Put together</h2>\n";
    for (const std::string& note : content.before) {
        text += "<p>" + as_html(note) + "</p>\n";
    }
    text += "<ol class=\"steps\">\n";
    for (std::size_t i = 0; i < content.steps.size(); ++i) {
        Canvas canvas(step_size);
        draw_step(canvas, {0, 0, step_size.width, step_size.height}, bundle, content.steps[i]);
        text += fmt::format("<li>{}<p>{}</p></li>\n",
                            canvas.svg(0, fmt::format("s{}-", i + 1), fmt::format("Step {}", i + 1)),
                            as_html(content.steps[i].text));
    }
    return text + "</ol>\n";
}

std::string body(const Bundle& bundle, const Content& content, const CardOptions& options)
{
    std::string text = "<h1>" + as_html(content.title) + "</h1>\n" + overview(bundle, content) + parts(content) +
                       steps(bundle, content);
    if (content.unpacking.size() > 1) {
        text += "<h2>Comes out in this order</h2>\n" + list("<ol class=\"unpacking\">\n", content.unpacking, "</ol>\n");
    }
    if (!content.cautions.empty()) {
        text += "<section class=\"cautions\"><h2>Usual cautions; the maker's instructions and local rules go first</h2>\n" +
                list("<ul>\n", content.cautions, "</ul>\n") + "</section>\n";
    }
    text += "<footer>" + as_html(proof_line(content)) + (content.date.empty() ? "" : " " + as_html(content.date)) +
            "</footer>\n";
    return text + (options.picture ? turning_picture_block(bundle, *options.picture) : "");
}

} // namespace

} // namespace card

std::string card_html(const Bundle& bundle, const CardOptions& options)
{
    const card::Content content = card::content_of(bundle, options.date);
    return "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n"
           "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n"
           "<link rel=\"icon\" href=\"data:,\">\n<title>" +
           card::as_html(content.title) + "</title>\n<style>\n" + card::style +
           fmt::format(card::print_style, options.paper == Paper::a4 ? "A4" : "letter") + "</style>\n</head>\n<body>\n" +
           card::body(bundle, content, options) + "</body>\n</html>\n";
}

} // namespace tuckwright
