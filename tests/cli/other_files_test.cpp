// SPDX-License-Identifier: GPL-3.0-or-later
/// Files that are no kit, bundle or table at all are called by what they are.
#include <catch2/catch.hpp>

#include <algorithm>

#include "cli/mix_ups.hpp"
#include "cli/program.hpp"

using namespace tuckwright::cli_test;

namespace
{

std::string said(const std::string& text, const char* wanted = tuckwright::cli::a_kit)
{
    const auto problem = tuckwright::cli::another_file(text, "file", wanted);
    return problem ? problem->what : "";
}

} // namespace

// Sources of the first bytes (from memory): W3C, Portable Network Graphics, 2003, 5.2; PKWARE, APPNOTE.TXT, 4.3.7; ISO 32000-1, 2008,
// 7.5.2; ITU-T T.81, 1992, B.1.1.3; RFC 1952, 2.3.1.
TEST_CASE("pictures, documents, archives and pages are told by their first bytes")
{
    CHECK(said("\x89PNG\r\n\x1A\n....IHDR") == "this is a PNG picture, not a kit file");
    CHECK(said("\xFF\xD8\xFF\xE0..JFIF") == "this is a JPEG picture, not a kit file");
    CHECK(said("%PDF-1.7\n", tuckwright::cli::a_bundle) == "this is a PDF document, not a saved bundle");
    CHECK(said("PK\x03\x04....", tuckwright::cli::a_table) ==
          "this is a ZIP archive (as spreadsheets and office documents are), not a table of things (CSV)");
    CHECK(said("\x1F\x8B\b") == "this is a compressed file (gzip), not a kit file");
    CHECK(said("\n<!DOCTYPE html>\n<html>") == "this is a page for browsers (HTML), not a kit file");
    CHECK(said("<svg xmlns=''>") == "this is an SVG picture, not a kit file");
}

TEST_CASE("a table is told from a kit, and kits from tables")
{
    const std::string table = "this looks like a table (CSV), not like a kit file";
    CHECK(said("id,weight_g,height_mm\na,1,2\n") == table);
    CHECK(said("Ding;Gewicht;H\xC3\xB6he\n") == table);
    CHECK(said("thing\tweight\theight\n") == table);
    CHECK(said("id,weight_g,height_mm\n", tuckwright::cli::a_table).empty());
    for (const char* kit : {"", "kit: Tea, soup, and tin\n", "# mine, for tea, and soup\nkit: A\n", "- a, b, c\n",
                            "{kit: A, items, more}", "tea, soup\n", "\x89PN", "PK"}) {
        CHECK(said(kit).empty());
    }
    CHECK(said(two_tins).empty());
}

TEST_CASE("whichever command is given another file says what it is, in one line, and what takes it")
{
    const Folder folder;
    write(folder / "kit.yaml", two_tins);
    REQUIRE(program("draw " + quoted((folder / "kit.yaml").string()) + " --effort quick --format png --out " +
                    quoted((folder / "p").string()))
                .code == 0);
    write(folder / "things.csv", "id,weight_g,height_mm,diameter_mm\ntin,1,2,3\n");
    const std::string picture = quoted((folder / "p/kit-packed.png").string()), table = quoted((folder / "things.csv").string());
    for (const std::string command : {"pack", "room", "size", "verify", "compare", "fill", "back", "provision", "shelf"}) {
        const auto outcome = program(command + " " + picture);
        INFO(command << ": " << outcome.err);
        CHECK(outcome.code == 2);
        CHECK(holds(outcome.err, "this is a PNG picture, not "));
        CHECK(std::count(outcome.err.begin(), outcome.err.end(), '\n') == 1);
        if (command != "shelf") {
            const auto other = program(command + " " + table);
            INFO(other.err);
            CHECK(other.code == 2);
            CHECK(holds(other.err, "things.csv: this looks like a table (CSV), not like "));
            CHECK(holds(other.err, "'tuckwright shelf' makes a shelf of a table"));
        }
    }
    CHECK(program("shelf " + table).code == 0);
}
