// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include <nlohmann/json.hpp>
#include <regex>

#include "card/picture_words.hpp"
#include "drawing/covers.hpp"
#include "drawing/palette.hpp"
#include "support/handmade_bundles.hpp"
#include "tuckwright/play.hpp"
#include "tuckwright/report.hpp"
#include "tuckwright/savings.hpp"
#include "tuckwright/turning_picture.hpp"

using namespace tuckwright;
using nlohmann::json;

namespace {

Bundle lidded_pot()
{
    Bundle bundle = handmade::cup_in_lidded_pot();
    bundle.plays = plays(bundle);
    return bundle;
}

bool holds(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

/// The data of a block as a browser finds them: what is between the tags, up to the first thing that ends them.
json data_in(const std::string& block)
{
    const std::string tag = "<script type=\"application/json\">";
    const auto from = block.find(tag) + tag.size();
    return json::parse(block.substr(from, block.find("</script", from) - from));
}

/// How often a text holds another.
std::size_t count(const std::string& text, const std::string& part)
{
    std::size_t found = 0;
    for (auto at = text.find(part); at != std::string::npos; at = text.find(part, at + part.size())) {
        ++found;
    }
    return found;
}

} // namespace

TEST_CASE("the words about play tell both ways, rounded down")
{
    Bundle bundle = lidded_pot();
    // A cup 80 mm across and 87 mm high in a bore of 126 mm that is 87 mm high.
    CHECK(card::play_in_words(bundle, 1) == "46 mm sideways, none up and down");
    CHECK(card::play_in_words(bundle, 2) == "none, for it is shut");
    bundle.plays[1].free = {{{0, 0.0999}, {3.05, 0}, {1, 1.29}}};
    CHECK(card::play_in_words(bundle, 1) == "3 mm sideways, 2.2 mm up and down");
    bundle.items[1].pressed = 81;
    CHECK(card::play_in_words(bundle, 1) == "none, for it is held by its spring");
    bundle.plays.clear();
    CHECK_THROWS(card::play_in_words(bundle, 0));
}

TEST_CASE("what was wrapped is put on one line")
{
    CHECK(card::on_one_line("  Put it\n     into the pot.  \n") == "Put it into the pot.");
    CHECK(card::on_one_line("").empty());
    CHECK(card::on_one_line(" \n ").empty());
}

TEST_CASE("the picture's words are those of the other answers")
{
    const Bundle bundle = lidded_pot();
    PictureExtras extras;
    extras.chains = chains(bundle);
    extras.room = room_left(bundle, {Effort::quick, 1, nullptr});
    const json words = card::picture_words(bundle, extras);
    REQUIRE(words["items"].size() == bundle.items.size());
    CHECK(words["items"][0]["name"] == spoken_name(bundle, 0));
    CHECK(words["items"][0]["full"] == full_name(bundle, 0));
    CHECK(words["items"][0]["size"] == "standing, 128 mm across, 96 mm high");
    CHECK(words["items"][1]["where"] == "in " + spoken_name(bundle, 0));
    CHECK(words["items"][2]["where"] == "on " + spoken_name(bundle, 0));
    REQUIRE(words["chains"].size() == 2);
    const std::string told = card::on_one_line(chains_text(bundle, extras.chains));
    for (const auto& chain : words["chains"]) {
        CHECK(holds(told, chain["text"].get<std::string>()));
        for (const auto& part : chain["parts"]) {
            CHECK(holds(chain["text"].get<std::string>(), part.get<std::string>()));
        }
    }
    REQUIRE(words["rooms"].size() == extras.room->rooms.size());
    const std::string room = card::on_one_line(room_text(bundle, *extras.room));
    std::size_t shapes = 0;
    for (const auto& place : words["rooms"]) {
        for (const auto& shape : place["shapes"]) {
            const std::string text = shape["text"], size = text.substr(text.find(": ") + 2);
            INFO(text);
            CHECK(holds(room, size));
            ++shapes;
        }
    }
    CHECK(shapes > 0);
}

TEST_CASE("the headline says what is proved, and no more")
{
    Bundle bundle = lidded_pot();
    bundle.status = Status::found;
    bundle.items[0].weight_g = 200;
    bundle.items[1].weight_g = 60;
    bundle.items[1].contents_g = 30;
    bundle.items[2].weight_g = 40;
    // pi / 4 x 129 mm x 129 mm x 99 mm = 1.2939 l, rounded up.
    CHECK(card::headline(bundle) == "Packs into a round bundle 129 mm across and 99 mm high; 1.3 l, 330 g. Proved to "
                                    "fit; a smaller one may exist.");
    bundle.status = Status::proved_best;
    CHECK(holds(card::headline(bundle), "proved the smallest with everything standing, lying or on its side"));
    bundle.status = Status::stopped;
    CHECK(holds(card::headline(bundle), "stopped early"));
}

TEST_CASE("a page holds the saved bundle, once, and asks for nothing else")
{
    if (!has_turning_picture()) {
        WARN("this build has no turning picture, so its page is NOT tested");
        return;
    }
    const Bundle bundle = lidded_pot();
    PictureExtras extras;
    extras.chains = chains(bundle);
    const std::string page = turning_picture(bundle, extras);
    CHECK(page.size() < 1'300'000);
    CHECK(page == turning_picture(bundle, extras));
    CHECK(count(page, "<script") == 2);
    CHECK(count(page, "</script>") == 2);
    CHECK_FALSE(std::regex_search(page, std::regex("<(script|img|iframe)[^>]* src=|<link[^>]* href=\"(?!data:)|@import")));
    CHECK(holds(page, "Permission is hereby granted, free of charge")); // the MIT licence of three.js
    json saved = json::parse(to_json(bundle));
    saved.erase("certificate");
    const json data = data_in(page);
    CHECK(data["format"] == "tuckwright-picture");
    CHECK(data["version"] == 1);
    CHECK(data["bundle"] == saved);
    CHECK(data["room"].is_null());
    CHECK(data["size"]["chains"].size() == 2);
    for (const Step& step : bundle.steps) {
        CHECK(holds(page, "<li>" + step.text + "</li>")); // without scripts, too
    }
}

TEST_CASE("the page gets its colours and where bands run with its data")
{
    if (!has_turning_picture()) {
        WARN("this build has no turning picture, so its page is NOT tested");
        return;
    }
    Bundle bundle = lidded_pot();
    bundle.bands = {Band{"strap", "strap", 10, 500, "pot-lid"}, Band{"belt", "belt", 10, 500}};
    const std::string page = turning_picture(bundle);
    const json data = data_in(page);
    namespace palette = drawing::palette;
    const auto read = [](const std::string& web) {
        return palette::rgb(static_cast<unsigned>(std::stoul(web.substr(1), nullptr, 16)));
    };
    for (const auto& [name, screen] : {std::pair{"light", palette::light}, {"dark", palette::dark}}) {
        const json& colours = data["colours"][name];
        CHECK(read(colours["paper"]) == screen.paper);
        CHECK(read(colours["ink"]) == screen.ink);
        CHECK(read(colours["mark"]) == screen.mark);
        CHECK(read(colours["band"]) == screen.band);
        REQUIRE(colours["hues"].size() == screen.hues.size());
        for (std::size_t k = 0; k < screen.hues.size(); ++k) {
            CHECK(read(colours["hues"][k]) == screen.hues[k]);
        }
        CHECK(holds(page, "background: " + colours["paper"].get<std::string>()));
    }
    REQUIRE(data["bands"].size() == 2);
    CHECK(data["bands"][0]["lid"] == 2);
    CHECK(data["bands"][1]["lid"].is_null());
    for (std::size_t k = 0; k < 2; ++k) {
        const auto loop = drawing::loop_of(bundle, bundle.bands[k]);
        REQUIRE(data["bands"][k]["loop"].size() == loop.size());
        CHECK(data["bands"][k]["loop"][0] == json({loop[0].x, loop[0].y, loop[0].z}));
    }
}

TEST_CASE("names that look like tags do no harm")
{
    if (!has_turning_picture()) {
        WARN("this build has no turning picture, so its page is NOT tested");
        return;
    }
    const std::string evil = "</script><script>alert(1)</script><!-- \" & '";
    Bundle bundle = lidded_pot();
    bundle.kit = evil;
    bundle.items[0].name = evil;
    const std::string page = turning_picture(bundle);
    CHECK(count(page, "<script") == 2);
    CHECK(count(page, "</script>") == 2);
    CHECK_FALSE(holds(page, "alert(1)</script>"));
    CHECK_FALSE(holds(page, "<!--"));
    CHECK(holds(page, "<title>&lt;/script&gt;&lt;script&gt;alert(1)"));
    CHECK(data_in(page)["bundle"]["kit"] == evil);
    CHECK(data_in(page)["words"]["items"][0]["full"] == full_name(bundle, 0));
}

TEST_CASE("the block stands alone in a larger page, and says where there is no picture")
{
    const std::string block = turning_picture_block(lidded_pot());
    CHECK(block.rfind("<section class=\"tuckwright-picture\"", 0) == 0);
    CHECK(count(block, "<section") == 1);
    CHECK(block.substr(block.size() - 11) == "</section>\n");
    CHECK_FALSE(holds(block, "<html"));
    CHECK(holds(block, "is not part of this build") == !has_turning_picture());
}

TEST_CASE("a page of no bundle is refused")
{
    Bundle bundle;
    bundle.status = Status::not_found;
    CHECK_THROWS(turning_picture(bundle));
}
