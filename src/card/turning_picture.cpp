// SPDX-License-Identifier: GPL-3.0-or-later
#include "tuckwright/turning_picture.hpp"

#include <fmt/format.h>

#include <cmath>
#include <nlohmann/json.hpp>

#include "card/html.hpp"
#include "card/picture_script.hpp"
#include "card/picture_words.hpp"
#include "report/words.hpp"
#include "drawing/covers.hpp"
#include "drawing/palette.hpp"
#include "report/cautions.hpp"
#include "report/covers.hpp"
#include "tuckwright/contract.hpp"
#include "tuckwright/report.hpp"
#include "tuckwright/savings.hpp"

namespace tuckwright {

namespace {

using nlohmann::ordered_json;
namespace palette = drawing::palette;

/// JSON as it may stand in a script element: nothing in it ends that.
std::string within_script(const ordered_json& value)
{
    constexpr int no_indent = -1;
    std::string safe;
    for (const char c : value.dump(no_indent, ' ', false, ordered_json::error_handler_t::replace)) {
        if (c == '<') {
            safe += "\\u003c";
        } else {
            safe += c;
        }
    }
    return safe;
}

std::string as_web(const Color& color)
{
    const auto part = [](double share) { return static_cast<int>(std::lround(255 * share)); };
    return fmt::format("#{:02x}{:02x}{:02x}", part(color.red), part(color.green), part(color.blue));
}

ordered_json colours_of(const palette::Screen& screen)
{
    ordered_json hues = ordered_json::array();
    for (const Color& hue : screen.hues) {
        hues.push_back(as_web(hue));
    }
    return {{"paper", as_web(screen.paper)},   {"ink", as_web(screen.ink)},   {"faint", as_web(screen.faint)},
            {"vessel", as_web(screen.vessel)}, {"room", as_web(screen.room)}, {"mark", as_web(screen.mark)},
            {"band", as_web(screen.band)},     {"hues", std::move(hues)}};
}

/// Where each band runs, in the order of the bundle's, and the number of the lid that it holds, or null.
ordered_json bands_of(const Bundle& bundle)
{
    ordered_json bands = ordered_json::array();
    for (const Band& band : bundle.bands) {
        ordered_json loop = ordered_json::array();
        for (const Vec3& corner : drawing::loop_of(bundle, band)) {
            loop.push_back({corner.x, corner.y, corner.z});
        }
        const auto lid = drawing::held_lid(bundle, band);
        bands.push_back({{"lid", lid ? ordered_json(*lid) : ordered_json(nullptr)}, {"loop", std::move(loop)}});
    }
    return bands;
}

/// The picture's data: the answers of `pack`, `room` and `size` as they are saved, but for the certificate, which may be
/// large and is of no use in a picture; where bands run, all words and all colours.
ordered_json data_of(const Bundle& bundle, const PictureExtras& extras)
{
    ordered_json all;
    all["format"] = "tuckwright-picture";
    all["version"] = 1;
    all["bundle"] = ordered_json::parse(to_json(bundle));
    all["bundle"].erase("certificate");
    for (std::size_t step = 0; step < bundle.steps.size(); ++step) { // for people, and so in their units
        all["bundle"]["steps"][step]["text"] = report::in_answer_units(bundle.steps[step].text, bundle);
    }
    all["room"] = extras.room ? ordered_json::parse(room_json(bundle, *extras.room)) : ordered_json(nullptr);
    all["size"] = nullptr;
    if (!extras.chains.empty()) {
        SizeAnswer answer;
        answer.bundle = bundle;
        answer.chains = extras.chains;
        all["size"] = ordered_json::parse(size_json(nullptr, answer));
    }
    all["words"] = card::picture_words(bundle, extras);
    all["bands"] = bands_of(bundle);
    all["colours"] = {{"light", colours_of(palette::light)}, {"dark", colours_of(palette::dark)}};
    return all;
}

/// The steps as a list, for browsers that run no scripts.
std::string steps_in_html(const Bundle& bundle)
{
    std::string list;
    for (const Step& step : bundle.steps) {
        list += fmt::format("<li>{}</li>\n", card::as_html(report::in_answer_units(step.text, bundle)));
    }
    for (const std::string& cover : report::cover_steps(bundle)) {
        list += fmt::format("<li>{}</li>\n", card::as_html(cover));
    }
    return "<ol>\n" + list + "</ol>\n";
}

std::string cautions_in_html(const Bundle& bundle)
{
    std::string list;
    for (const std::string& caution : report::cautions(bundle)) {
        list += fmt::format("<li>{}</li>\n", card::as_html(caution));
    }
    return list.empty() ? ""
                        : "<h2>Usual cautions; the maker's instructions and local rules go first</h2>\n<ul>\n" + list +
                              "</ul>\n";
}

/// Of the page round the picture, in the picture's own colours.
std::string page_style()
{
    return fmt::format(R"(:root {{ color-scheme: light dark; }}
body {{ margin: 0 auto; max-width: 82rem; padding: 0 1rem 2rem; background: {}; color: {};
  font: 16px/1.45 Georgia, "Times New Roman", serif; overflow-wrap: anywhere; }}
h1 {{ font-size: 1.4rem; margin: .8rem 0 .2rem; }}
h2 {{ font-size: 1rem; margin: 1.2rem 0 .3rem; }}
p {{ margin: 0 0 .6rem; }}
@media (prefers-color-scheme: dark) {{ body {{ background: {}; color: {}; }} }})",
                       as_web(palette::light.paper), as_web(palette::light.ink), as_web(palette::dark.paper),
                       as_web(palette::dark.ink));
}

} // namespace

bool has_turning_picture() { return !card::picture_script().empty(); }

std::string turning_picture_block(const Bundle& bundle, const PictureExtras& extras)
{
    if (!has_turning_picture()) {
        return "<section class=\"tuckwright-picture\"><p>The picture to turn is not part of this build.</p></section>\n";
    }
    std::string block = fmt::format("<section class=\"tuckwright-picture\" aria-label=\"{} as a picture to turn\">\n",
                                    card::as_html(bundle.kit));
    block += "<noscript><p>The picture to turn needs scripts, which are switched off here.</p></noscript>\n";
    block += "<script type=\"application/json\">" + within_script(data_of(bundle, extras)) + "</script>\n<script>";
    block += card::picture_script();
    return block + "</script>\n</section>\n";
}

std::string turning_picture(const Bundle& bundle, const PictureExtras& extras)
{
    require(has_turning_picture(), "the picture is part of this build");
    require(has_bundle(bundle.status), "there is a bundle to draw");
    const std::string title = card::as_html(bundle.kit);
    return "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n"
           "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n"
           "<link rel=\"icon\" href=\"data:,\">\n<title>" +
           title + "</title>\n<style>\n" + page_style() + "\n</style>\n</head>\n<body>\n<h1>" + title + "</h1>\n<p>" +
           card::as_html(card::headline(bundle)) + "</p>\n" + turning_picture_block(bundle, extras) +
           "<noscript>\n<h2>Putting it together</h2>\n" + steps_in_html(bundle) + "</noscript>\n" +
           cautions_in_html(bundle) + "</body>\n</html>\n";
}

} // namespace tuckwright
