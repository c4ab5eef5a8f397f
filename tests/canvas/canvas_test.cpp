// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include <cairo.h>

#include <cmath>
#include <cstring>
#include <filesystem>
#include <fstream>
#include <numbers>

#include "support/random_solids.hpp"
#include "support/svg.hpp"
#include "support/tools.hpp"
#include "tuckwright/canvas.hpp"
#include "tuckwright/contract.hpp"

using namespace tuckwright;

namespace {

/// A page with a bit of everything, and a second one.
Canvas sampler()
{
    Canvas canvas({80, 50});
    canvas.draw(Path::rectangle({10, 10, 30, 20}), Pen{{0, 0, 0}, 0.5}, Fill{Color{0.9, 0.8, 0.7}, 1, Hatch{}});
    canvas.draw(Path::ellipse({60, 25}, {12, 3}, {-2, 8}), Pen{{0.1, 0.2, 0.3}, 0.3, 1, 1},
                Fill{Color{0.2, 0.4, 0.6}, 0.5});
    canvas.begin_clip(Path::circle({25, 20}, 6));
    canvas.draw(Path::line({0, 0}, {80, 50}), Pen{});
    canvas.end_clip();
    canvas.write("Löffel, Κουτάλι & ложка", {5, 36}, {.size = 4, .bold = true});
    canvas.add_page();
    canvas.write("The second page", {5, 5});
    return canvas;
}

/// The frame of what is darker than paper in a PNG, mm.
svg::Bounds ink_of(const std::string& png, double dots_per_inch)
{
    struct Rest {
        const std::string* text;
        std::size_t at;
    } rest{&png, 0};
    const auto take = [](void* from, unsigned char* to, unsigned count) {
        auto& r = *static_cast<Rest*>(from);
        if (r.at + count > r.text->size()) {
            return CAIRO_STATUS_READ_ERROR;
        }
        std::memcpy(to, r.text->data() + r.at, count);
        r.at += count;
        return CAIRO_STATUS_SUCCESS;
    };
    cairo_surface_t* picture = cairo_image_surface_create_from_png_stream(take, &rest);
    REQUIRE(cairo_surface_status(picture) == CAIRO_STATUS_SUCCESS);
    svg::Bounds ink;
    const int stride = cairo_image_surface_get_stride(picture);
    const double mm = 25.4 / dots_per_inch;
    for (int y = 0; y < cairo_image_surface_get_height(picture); ++y) {
        for (int x = 0; x < cairo_image_surface_get_width(picture); ++x) {
            if (cairo_image_surface_get_data(picture)[y * stride + 4 * x] < 250) {
                ink.take({x * mm, y * mm});
                ink.take({(x + 1) * mm, (y + 1) * mm});
            }
        }
    }
    cairo_surface_destroy(picture);
    return ink;
}

} // namespace

TEST_CASE("an SVG has its sides in mm and everything where it was drawn")
{
    const auto picture = svg::read(sampler().svg(0, "p", "Salt & <pepper>"));
    CHECK(picture.width == 80);
    CHECK(picture.height == 50);
    CHECK(picture.title == "Salt &amp; &lt;pepper&gt;");
    int rectangles = 0, ellipses = 0;
    for (const auto& drawn : picture.paths) {
        const auto b = drawn.bounds();
        rectangles +=
            !drawn.letter &&
            std::abs(b.left - 10) + std::abs(b.top - 10) + std::abs(b.right - 40) + std::abs(b.bottom - 30) < 0.01;
        // Half the width of an ellipse with conjugate half axes p and q is the root of px^2 + qx^2.
        ellipses += std::abs(b.left - (60 - std::hypot(12, 2))) + std::abs(b.bottom - (25 + std::hypot(3, 8))) < 0.1;
    }
    CHECK(rectangles == 4); // its area, the edge and the lines of its hatch, its line
    CHECK(ellipses == 1);
}

TEST_CASE("the same calls give the same bytes, whatever has been drawn before")
{
    const Canvas first = sampler();
    const std::string svg = first.svg(), pdf = first.pdf({"A title", ""}), png = first.png(0, 72);
    (void)sampler().svg(1);
    const Canvas again = sampler();
    CHECK(again.svg() == svg);
    CHECK(again.pdf({"A title", ""}) == pdf);
    CHECK(again.png(0, 72) == png);
    CHECK(first.pdf({"A title", "2030-05-04T10:00:00Z"}) != pdf);
    CHECK(svg.find("id=\"p1\"") != std::string::npos);
    CHECK(again.svg(0, "x").find("id=\"p1\"") == std::string::npos);
}

TEST_CASE("all ink of a text is within its extent, and wrapped lines are no longer than asked for")
{
    for (const char* text :
         {"Jolly fig", "ÅÄÇ ỹ", "f", "two\nlines", "مربى", "a much longer text that takes several lines"}) {
        for (const bool italic : {false, true}) {
            const TextStyle style{.size = 6, .bold = italic, .italic = italic, .wrap = 40};
            Canvas canvas({100, 60});
            const auto extent = canvas.write(text, {10, 10}, style);
            const auto ink = ink_of(canvas.png(0, 300), 300);
            INFO(text << " " << ink.left << " " << ink.top << " " << ink.right << " " << ink.bottom);
            constexpr double dot = 25.4 / 300;
            CHECK(ink.left > 10 - dot);
            CHECK(ink.top > 10 - dot);
            CHECK(ink.right < 10 + extent.width + dot);
            CHECK(ink.bottom < 10 + extent.height + dot);
            CHECK(ink.right - ink.left > 0.5); // there is some
            CHECK(extent.width < 40 + 2);
            const auto asked = Canvas::extent(text, style);
            CHECK(asked.width == extent.width);
            CHECK(asked.height == extent.height);
        }
    }
    CHECK(Canvas::extent("a much longer text that takes several lines", {.size = 6, .wrap = 40}).lines > 2);
    CHECK(Canvas::extent("two\nlines").lines == 2);
    CHECK(Canvas::extent("Tin").height > 2);
    CHECK(Canvas::extent("").height > 2);
    CHECK_FALSE(Canvas::font_family().empty());
}

TEST_CASE("letters in an SVG are within the text's extent too")
{
    Canvas canvas({100, 60});
    const auto extent = canvas.write("Kettle, 0.9 l", {20, 15}, {.size = 5});
    int letters = 0;
    for (const auto& drawn : svg::read(canvas.svg()).paths) {
        if (drawn.letter && !drawn.lines.empty()) {
            const auto b = drawn.bounds();
            CHECK(b.left > 19.9);
            CHECK(b.right < 20.1 + extent.width);
            CHECK(b.top > 14.9);
            CHECK(b.bottom < 15.1 + extent.height);
            ++letters;
        }
    }
    CHECK(letters >= 11);
}

TEST_CASE("bounds of a path are those of its curves")
{
    test::Dice dice(5);
    for (int k = 0; k < 200; ++k) {
        const Spot middle{dice.between(-50, 50), dice.between(-50, 50)};
        const Spot p{dice.between(-20, 20), dice.between(-20, 20)}, q{dice.between(-20, 20), dice.between(-20, 20)};
        const Frame whole = Path::ellipse(middle, p, q).bounds();
        const double off = 3e-4 * (std::hypot(p.x, p.y) + std::hypot(q.x, q.y));
        CHECK(whole.x == Approx(middle.x - std::hypot(p.x, q.x)).margin(off));
        CHECK(whole.bottom() == Approx(middle.y + std::hypot(p.y, q.y)).margin(off));
        const double from = dice.between(-4, 4), to = dice.between(-4, 4);
        svg::Bounds sampled;
        for (int i = 0; i <= 500; ++i) {
            const double t = from + (to - from) * i / 500;
            sampled.take(
                {middle.x + std::cos(t) * p.x + std::sin(t) * q.x, middle.y + std::cos(t) * p.y + std::sin(t) * q.y});
        }
        Path part;
        part.arc(middle, p, q, from, to);
        CHECK(part.bounds().x == Approx(sampled.left).margin(2 * off));
        CHECK(part.bounds().right() == Approx(sampled.right).margin(2 * off));
    }
}

TEST_CASE("a PDF has its pages, its fonts within, and text that can be found")
{
    if (!test::has_tool("pdftotext") || !test::has_tool("pdffonts") || !test::has_tool("pdfinfo")) {
        WARN("NOT TESTED: pdfinfo, pdffonts and pdftotext (poppler-utils) are not installed");
        return;
    }
    const auto path = std::filesystem::temp_directory_path() / "tuckwright-canvas-test.pdf";
    std::ofstream(path, std::ios::binary) << sampler().pdf({"A title", ""});
    const std::string file = "'" + path.string() + "'";
    const std::string info = test::printed_by("pdfinfo " + file), text = test::printed_by("pdftotext " + file + " -");
    CHECK(info.find("Pages:           2") != std::string::npos);
    CHECK(info.find("A title") != std::string::npos);
    CHECK(info.find("CreationDate") == std::string::npos);
    CHECK(info.find("226.772 x 141.732 pts") != std::string::npos); // 80 x 50 mm in 72nds of an inch
    CHECK(text.find("Löffel, Κουτάλι & ложка") != std::string::npos);
    CHECK(text.find("The second page") != std::string::npos);
    const std::string fonts = test::printed_by("pdffonts " + file + " | tail -n +3");
    int lines = 0;
    std::istringstream rows(fonts);
    for (std::string row; std::getline(rows, row); ++lines) {
        std::istringstream words(row);
        std::vector<std::string> all;
        for (std::string word; words >> word;) {
            all.push_back(word);
        }
        REQUIRE(all.size() > 5);
        CHECK(all[all.size() - 5] == "yes"); // emb sub uni object ID
    }
    CHECK(lines >= 2);
    std::ofstream(path, std::ios::binary) << sampler().pdf({"A title", "2030-05-04T10:00:00Z"});
    CHECK(test::printed_by("pdfinfo -isodates " + file).find("2030-05-04T10:00:00Z") != std::string::npos);
    std::filesystem::remove(path);
}

TEST_CASE("what is asked of a canvas wrongly is refused")
{
    CHECK_THROWS_AS(Canvas({0, 10}), ContractBroken);
    CHECK_THROWS_AS(Canvas({10, std::nan("")}), ContractBroken);
    Canvas canvas({10, 10});
    CHECK_THROWS_AS(canvas.end_clip(), ContractBroken);
    CHECK_THROWS_AS(canvas.svg(1), ContractBroken);
    CHECK_THROWS_AS(canvas.png(0, 5000), ContractBroken);
    CHECK_THROWS_AS(Path().bounds(), ContractBroken);
    canvas.begin_clip(Path::circle({5, 5}, 2));
    CHECK_THROWS_AS(canvas.svg(), ContractBroken);
    CHECK_THROWS_AS(canvas.add_page(), ContractBroken);
    canvas.end_clip();
    CHECK_NOTHROW(canvas.write("\xff\xfe broken \x01", {1, 1}));
    CHECK_NOTHROW(canvas.svg());
}
