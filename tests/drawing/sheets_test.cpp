// SPDX-License-Identifier: GPL-3.0-or-later
// Whole pages of sample kits.
#include <catch2/catch.hpp>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <sstream>

#include "drawing/random_pictures.hpp"
#include "support/svg.hpp"
#include "support/tools.hpp"
#include "tuckwright/drawing.hpp"
#include "tuckwright/kit_reader.hpp"
#include "tuckwright/solve.hpp"

using namespace tuckwright;
namespace fs = std::filesystem;

namespace {

const fs::path root = TUCKWRIGHT_SOURCE_DIR;

std::string text_of(const fs::path& path)
{
    std::ifstream file(path, std::ios::binary);
    std::stringstream text;
    text << file.rdbuf();
    return text.str();
}

Bundle packed(const Kit& kit)
{
    SolveOptions options;
    options.effort = Effort::quick;
    return solve(kit, options);
}

const Bundle& first_aid()
{
    static const Bundle bundle = packed(*read_kit_file((root / "kits/first-aid-tin.yaml").string()));
    return bundle;
}

/// The kit that README.md gives as its example.
Kit readme_kit()
{
    const std::string text = text_of(root / "README.md");
    const std::size_t marker = text.find("<!-- kit -->"), start = text.find("```yaml\n", marker) + 8;
    return *read_kit_text(text.substr(start, text.find("```", start) - start), "README.md");
}

std::string text_printed(const std::string& program, const fs::path& pdf, const std::string& rest)
{
    return test::printed_by(program + " '" + pdf.string() + "' " + rest);
}

} // namespace

TEST_CASE("pages of a sample kit: all on the page, no text on another, the same bytes again")
{
    const Bundle& bundle = first_aid();
    const Canvas pages = step_pictures(bundle);
    REQUIRE(pages.pages() == bundle.steps.size() + 1);
    for (std::size_t page = 0; page < pages.pages(); ++page) {
        const auto faults =
            drawing_test::faults_of(svg::read(pages.svg(page)), {0, 0, pages.size().width, pages.size().height});
        INFO("page " << page << ": " << (faults.empty() ? "" : faults.front()));
        CHECK(faults.empty());
    }
    const Canvas again = step_pictures(bundle);
    CHECK(again.svg(3) == pages.svg(3));
    CHECK(again.pdf() == pages.pdf());
}

TEST_CASE("a PDF of pages has one for each step, its fonts, and every name")
{
    if (!test::has_tool("pdftotext") || !test::has_tool("pdffonts") || !test::has_tool("pdfinfo")) {
        WARN("NOT TESTED: pdfinfo, pdffonts and pdftotext (poppler-utils) are not installed");
        return;
    }
    const Bundle& bundle = first_aid();
    const fs::path path = fs::temp_directory_path() / "tuckwright-sheets-test.pdf";
    std::ofstream(path, std::ios::binary) << step_pictures(bundle).pdf({bundle.kit, ""});
    CHECK(text_printed("pdfinfo", path, "").find("Pages:           " + std::to_string(bundle.steps.size() + 1)) !=
          std::string::npos);
    const std::string text = text_printed("pdftotext", path, "-");
    for (std::size_t i = 0; i < bundle.items.size(); ++i) {
        INFO(spoken_name(bundle, i));
        CHECK(text.find(spoken_name(bundle, i)) != std::string::npos);
    }
    CHECK(text.find("step 1 of " + std::to_string(bundle.steps.size())) != std::string::npos);
    std::istringstream rows(text_printed("pdffonts", path, "| tail -n +3"));
    int fonts = 0;
    for (std::string row; std::getline(rows, row); ++fonts) {
        CHECK(row.find(" yes yes ") != std::string::npos); // embedded, a part of it
    }
    CHECK(fonts > 0);
    fs::remove(path);
}

TEST_CASE("the pictures in README.md are what is drawn now")
{
    if (Canvas::font_family() != "DejaVu Sans") {
        WARN("NOT TESTED: letters come from " << Canvas::font_family()
                                              << ", and those in the pictures from DejaVu Sans");
        return;
    }
    const Bundle bundle = packed(readme_kit());
    const Canvas pages = step_pictures(bundle);
    const std::size_t last = bundle.steps.size();
    REQUIRE(last > 4);
    for (const auto& [name, page] : {std::pair{"viz/tea-step-4.svg", std::size_t{3}}, {"viz/tea-packed.svg", last}}) {
        INFO(name << "; to draw it anew: tuckwright draw tea.yaml --effort quick --out viz, and rename it");
        CHECK((text_of(root / name) == pages.svg(page, "p", step_title(bundle, page))));
        CHECK(text_of(root / "README.md").find(name) != std::string::npos);
    }
}

TEST_CASE("names of any script and of any length are written, and none leaves its page")
{
    const std::string kit =
        R"(kit: "Чай на пирсе: a name that goes on and on and on and on and on and on and on and on and on"
items:
  - {id: pot, name: Καζάνι, weight: 140, cylinder: {diameter: 110, height: 90}, inside: {wall: 0.8, base: 1}}
  - {id: cup, name: "Ложка очень длинное название этой вещи, которое никуда не помещается", weight: 50,
     cylinder: {diameter: 50, height: 50}}
  - {id: tin, name: قدح, weight: 50, cylinder: {diameter: 40, height: 120}}
)";
    const Bundle bundle = packed(*read_kit_text(kit, "kit"));
    const Canvas pages = step_pictures(bundle);
    for (std::size_t page = 0; page < pages.pages(); ++page) {
        const auto faults =
            drawing_test::faults_of(svg::read(pages.svg(page)), {0, 0, pages.size().width, pages.size().height});
        INFO("page " << page << ": " << (faults.empty() ? "" : faults.front()));
        CHECK(faults.empty());
    }
}
