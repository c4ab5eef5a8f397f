// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <regex>
#include <set>
#include <sstream>
#include <unistd.h>

#include "card/content.hpp"
#include "support/handmade_bundles.hpp"
#include "support/tools.hpp"
#include "support/workload.hpp"
#include "tuckwright/card.hpp"
#include "tuckwright/check_code.hpp"
#include "tuckwright/kit_reader.hpp"
#include "tuckwright/play.hpp"
#include "tuckwright/solve.hpp"

using namespace tuckwright;
namespace fs = std::filesystem;

namespace {

bool holds(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

/// A handmade bundle with the figures that a solved one has.
Bundle with_plays(Bundle bundle)
{
    bundle.plays = plays(bundle);
    return bundle;
}

std::string text_of_pdf(const std::string& bytes, const std::string& tool)
{
    const fs::path file = fs::temp_directory_path() / ("tuckwright-card-" + std::to_string(::getpid()) + ".pdf");
    std::ofstream(file, std::ios::binary) << bytes;
    const std::string text =
        test::printed_by(tool + " " + file.string() + (tool.rfind("pdftotext", 0) == 0 ? " -" : "") + " 2>&1");
    fs::remove(file);
    return text;
}

int pages_of(const std::string& pdf)
{
    std::smatch found;
    const std::string info = text_of_pdf(pdf, "pdfinfo");
    return std::regex_search(info, found, std::regex("Pages: +([0-9]+)")) ? std::stoi(found[1]) : 0;
}

/// Without blanks and line breaks, since a name may be broken anywhere between its words.
std::string joined(std::string text)
{
    text = std::regex_replace(text, std::regex("\xC2\xA0"), "");
    std::erase_if(text, [](unsigned char c) { return std::isspace(c) != 0; });
    return text;
}

/// All fonts of a PDF with whether they are embedded, as pdffonts lists them.
bool fonts_embedded(const std::string& listing)
{
    std::istringstream lines(listing);
    std::string line;
    bool all = true, any = false;
    for (int number = 0; std::getline(lines, line); ++number) {
        if (number >= 2) { // below the heading and its rule
            any = true;
            all = all && std::regex_search(line, std::regex(" yes (yes|no) +(yes|no) +[0-9]+ +[0-9]+ *$"));
        }
    }
    return any && all;
}

/// mm between the lowest text of a PDF's first page and what its foot may take, from pdftotext's list of words.
double white_at_foot(const std::string& listing)
{
    std::smatch found;
    REQUIRE(std::regex_search(listing, found, std::regex("<page width=\"([0-9.]+)\" height=\"([0-9.]+)\">")));
    constexpr double point = 25.4 / 72, foot_and_margin = 7 + 11; // mm
    const double end = std::stod(found[2]) * point - foot_and_margin;
    const std::string page = listing.substr(0, listing.find("</page>"));
    double lowest = 0;
    const std::regex word("yMax=\"([0-9.]+)\"");
    for (std::sregex_iterator at(page.begin(), page.end(), word), none; at != none; ++at) {
        const double y = std::stod((*at)[1]) * point;
        lowest = y < end + 0.5 ? std::max(lowest, y) : lowest;
    }
    return end - lowest;
}

Bundle packed_sample(const fs::path& kit)
{
    const auto read = read_kit_file(kit.string());
    REQUIRE(read);
    SolveOptions options;
    options.effort = Effort::quick;
    options.any_size = true; // where things lie does not matter here
    return solve(*read, options);
}

} // namespace

TEST_CASE("a card lists everything, and its weights add up to that of the bundle")
{
    for (const auto& sample : handmade::all()) {
        const Bundle bundle = with_plays(sample.make());
        const card::Content content = card::content_of(bundle, "");
        CAPTURE(sample.name);
        std::size_t copies = 0;
        double grams = 0;
        std::set<std::string> numbers;
        for (const card::Part& part : content.parts) {
            copies += part.copies;
            std::smatch figure;
            REQUIRE(std::regex_match(part.weight, figure, std::regex("([0-9.]+) (g|kg)")));
            grams += static_cast<double>(part.copies) * std::stod(figure[1]) * (figure[2] == "kg" ? 1000 : 1);
            if (!part.numbers.empty()) { // "7", or "7 … 23"
                const std::size_t first = std::stoul(part.numbers), last = std::stoul(part.numbers.substr(part.numbers.rfind(' ') + 1));
                CHECK(last >= first + part.copies - 1);
                for (std::size_t k = first; k < first + part.copies; ++k) {
                    CHECK(numbers.insert(std::to_string(k)).second);
                }
            }
        }
        CHECK(copies == bundle.items.size() + bundle.bands.size() + (bundle.bag ? 1 : 0));
        CHECK(grams == Approx(total_weight_g(bundle)).margin(0.6 * static_cast<double>(copies)));
        CHECK(numbers.size() == bundle.items.size());
        CHECK(content.steps.size() >= bundle.steps.size());
        CHECK(content.code == check_code(bundle));
    }
}

TEST_CASE("what comes out is told from the outside in, what moves everything is passed over")
{
    const auto lidded = card::content_of(with_plays(handmade::cup_in_lidded_pot()), "");
    CHECK(lidded.unpacking == std::vector<std::string>{"3: pot-lid off pot", "2: cup from pot"});
    Bundle held = handmade::cup_in_lidded_pot();
    held.bands = {Band{"strap", "Strap, red", 10, 500, "pot-lid"}};
    CHECK(card::content_of(with_plays(held), "").unpacking ==
          std::vector<std::string>{"Strap off pot-lid", "3: pot-lid off pot", "2: cup from pot"});
    const Bundle bag = with_plays(handmade::tins_in_a_bag());
    const auto bagged = card::content_of(bag, "");
    REQUIRE_FALSE(bagged.unpacking.empty());
    CHECK(bagged.unpacking.front() == "Canvas sack");
    const auto pots = card::content_of(with_plays(handmade::many_pots(2)), "");
    CHECK(pots.unpacking.back() == "1: pot\u00A01"); // the number of a copy stays with its name
}

TEST_CASE("a page has every name, drawing and sentence, and nothing that it would have to fetch")
{
    for (const auto& sample : handmade::all()) {
        const Bundle bundle = with_plays(sample.make());
        CardOptions options;
        options.date = "4 May 2030";
        const std::string page = card_html(bundle, options);
        const card::Content content = card::content_of(bundle, options.date);
        CAPTURE(sample.name);
        CHECK(page == card_html(bundle, options));
        CHECK(holds(page, "4 May 2030"));
        CHECK(holds(page, content.code));
        for (const card::Part& part : content.parts) {
            CHECK(holds(page, part.name));
        }
        std::size_t drawings = 0;
        for (std::size_t at = page.find("<svg"); at != std::string::npos; at = page.find("<svg", at + 1)) {
            ++drawings;
        }
        CHECK(drawings == content.steps.size() + 1);
        CHECK_FALSE(std::regex_search(page, std::regex("(src|href)=\"(?!data:|#)")));
        CHECK_FALSE(holds(page, "url(http"));
        CHECK_FALSE(holds(page, "<script"));
    }
}

TEST_CASE("names that would be tags are text on the page")
{
    Bundle bundle = with_plays(handmade::cup_in_lidded_pot());
    bundle.kit = "<script>alert(1)</script> & \"tea\"";
    bundle.items[1].name = "<img src=x onerror=alert(2)>";
    const std::string page = card_html(bundle, {});
    CHECK_FALSE(holds(page, "<script>alert"));
    CHECK_FALSE(holds(page, "<img"));
    CHECK(holds(page, "&lt;script&gt;alert(1)&lt;/script&gt; &amp; &quot;tea&quot;"));
}

TEST_CASE("the picture to turn stands on the page where it is asked for")
{
    const Bundle bundle = with_plays(handmade::cup_in_lidded_pot());
    CardOptions options;
    options.picture = PictureExtras{};
    CHECK(holds(card_html(bundle, options), "tuckwright-picture"));
    CHECK_FALSE(holds(card_html(bundle, {}), "tuckwright-picture"));
}

TEST_CASE("the card of every sample kit takes two pages, with all names to be searched and all fonts in it")
{
    if (!test::has_tool("pdftotext")) {
        WARN("SKIPPED: pdftotext, pdfinfo and pdffonts (poppler-utils) are not installed");
        return;
    }
    int left = test::count(100, 3);
    for (const auto& entry : fs::directory_iterator(std::string(TUCKWRIGHT_SOURCE_DIR) + "/kits")) {
        if (entry.path().extension() != ".yaml" || left-- <= 0) {
            continue;
        }
        const Bundle bundle = packed_sample(entry.path());
        CAPTURE(entry.path());
        REQUIRE(has_bundle(bundle.status));
        for (const Paper paper : {Paper::a4, Paper::letter}) {
            CardOptions options;
            options.paper = paper;
            const std::string pdf = card_pdf(bundle, options);
            CHECK(pages_of(pdf) == 2);
            CHECK(fonts_embedded(text_of_pdf(pdf, "pdffonts")));
            const std::string text = joined(text_of_pdf(pdf, "pdftotext -layout"));
            for (const PlacedItem& item : bundle.items) {
                CHECK(holds(text, joined(item.name.substr(0, item.name.find_first_of(" ,")))));
            }
            CHECK(holds(text, joined(check_code(bundle))));
            CHECK(holds(text, joined(bundle.kit + ". Code"))); // the second page says what it belongs to
            CHECK(white_at_foot(text_of_pdf(pdf, "pdftotext -bbox")) < 12); // a row takes 50 mm and more
        }
        CardOptions with_picture;
        with_picture.picture = PictureExtras{};
        CHECK(card_html(bundle, with_picture).size() < 1'500'000);
    }
}

TEST_CASE("the judges of a PDF reject what lacks pages or fonts")
{
    if (!test::has_tool("pdftotext")) {
        WARN("SKIPPED: poppler-utils are not installed");
        return;
    }
    CHECK(pages_of("no PDF") == 0);
    const std::string heading = "name type encoding emb sub uni object ID\n---- ---- ---- --- --- --- ----\n";
    CHECK(fonts_embedded(heading + "ABCDEF+DejaVuSans  CID TrueType  Identity-H  yes yes yes      5  0\n"));
    CHECK_FALSE(fonts_embedded(heading + "Helvetica  Type 1  Custom  no  no  no       5  0\n"));
    CHECK_FALSE(fonts_embedded(heading));
    const std::string page = "<page width=\"595\" height=\"842\"><word xMin=\"1\" yMin=\"600\" xMax=\"2\" yMax=\"";
    // 842 pt less 18 mm are 791 pt: text down to 782 pt leaves 3.2 mm, down to 620 pt 60 mm; the foot itself does not count.
    CHECK(white_at_foot(page + "782\"><word yMax=\"800\"></page>") == Approx(3.2).margin(0.1));
    CHECK(white_at_foot(page + "620\"><word yMax=\"800\"></page>") > 50);
}

TEST_CASE("many steps take more pages, and long words and other scripts are printed")
{
    if (!test::has_tool("pdftotext")) {
        WARN("SKIPPED: poppler-utils are not installed");
        return;
    }
    Bundle crate = with_plays(handmade::many_pots(test::count(5, 3)));
    crate.kit = std::string(300, 'W');
    crate.items[0].name = "\xC4\x8C" "ajn\xC3\xADk \xCE\xA4\xCF\x83\xCE\xAC\xCE\xB9 \xD0\xA7\xD0\xB0\xD0\xB9";
    const std::string pdf = card_pdf(crate, {});
    CHECK(pages_of(pdf) >= test::count(3, 2));
    CHECK(holds(joined(text_of_pdf(pdf, "pdftotext -layout")), joined(crate.items[0].name)));
}
