// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "cli/program.hpp"

using namespace tuckwright::cli_test;
namespace fs = std::filesystem;

namespace {

const std::string table = "id,name,weight_g,diameter_mm,height_mm,wall_mm,base_mm\r\n"
                          "pot,\"Pot, 0.7 l\",140,110,90,0.8,1\r\n"
                          "cup,Cup,62,78,40,0.6,0.6\r\n";

const fs::path samples = fs::path(TUCKWRIGHT_SOURCE_DIR) / "kits/shelf";

} // namespace

TEST_CASE("a table becomes a shelf, to a file or to standard output, and a kit takes things from it")
{
    const Folder folder;
    write(folder / "things.csv", table);
    const std::string csv = quoted((folder / "things.csv").string());
    const auto printed = program("shelf " + csv);
    CHECK(printed.code == 0);
    CHECK(printed.err.empty());
    CHECK(printed.out.find("shelf: things\n\nitems:\n  - id: pot\n    name: \"Pot, 0.7 l\"\n    weight: 140\n") == 0);
    CHECK(program("shelf " + csv + " --yaml -").out == printed.out);
    CHECK(shell("\"$TUCKWRIGHT\" shelf - --title things <" + csv).out == printed.out);
    const auto written = program("shelf " + csv + " --yaml " + quoted((folder / "things.yaml").string()));
    CHECK(written.code == 0);
    CHECK(written.out.empty());
    CHECK(text_of(folder / "things.yaml") == printed.out);

    write(folder / "kit.yaml", "kit: Tea\nshelf: things.yaml\nitems:\n  - from: pot\n  - {from: cup, name: My cup}\n");
    const auto packed = program("pack " + quoted((folder / "kit.yaml").string()) + " --effort quick");
    INFO(packed.err);
    CHECK(packed.code == 0);
    CHECK(holds(packed.out, "My cup"));
    const auto misused = program("pack " + quoted((folder / "things.yaml").string()));
    CHECK(misused.code == 2);
    CHECK(holds(misused.err, "things.yaml:1:1: this is a shelf, not a kit"));
}

TEST_CASE("a faulty table, or what is none, exits 2 and writes nothing")
{
    const Folder folder;
    write(folder / "things.csv", table + "lid,,heavy,110,8,,\r\npan,Pan,200,,40,,\r\n");
    write(folder / "kit.yaml", two_tins);
    const std::string to = " --yaml " + quoted((folder / "out.yaml").string());
    const auto faulty = program("shelf " + quoted((folder / "things.csv").string()) + to);
    CHECK(faulty.code == 2);
    CHECK(holds(faulty.err, "things.csv:4:6: weight: 'heavy' is not a number"));
    CHECK(holds(faulty.err, "things.csv:5:1: the thing has no diameter_mm"));
    CHECK(holds(program("shelf " + quoted((folder / "kit.yaml").string()) + to).err, "this is no table of things"));
    CHECK(holds(program("shelf " + quoted((folder / "none.csv").string()) + to).err, "cannot be read"));
    CHECK(program("shelf").code == 2);
    write(folder / "things.csv", table);
    const std::string csv = quoted((folder / "things.csv").string());
    CHECK(program("shelf " + csv + " --yaml " + csv).code == 2); // not over what is read
    CHECK(text_of(folder / "things.csv") == table);
    CHECK(program("shelf " + csv + " --yaml " + quoted((folder / "no/out.yaml").string())).code == 2);
    CHECK(folder.entries() == 2);
}

TEST_CASE("the sample shelf is what its table gives, and each kit from it is packed or compared")
{
    const auto made = program("shelf " + quoted((samples / "things.csv").string()) + " --title 'Things for the jetty'");
    CHECK(made.code == 0);
    const std::string for_editors = "# yaml-language-server: $schema=../shelf.schema.json\n";
    CHECK(for_editors + made.out == text_of(samples / "things.yaml"));
    const auto packed = program("pack " + quoted((samples / "oats-jetty.yaml").string()) + " --effort quick");
    INFO(packed.err);
    CHECK(packed.code == 0);
    const auto compared = program("compare " + quoted((samples / "tea-jetty.yaml").string()) + " " +
                                  quoted((samples / "oats-jetty.yaml").string()) + " --effort quick");
    INFO(compared.err);
    CHECK(compared.code == 0);
    CHECK(holds(compared.out, "4 kits compared"));
}

TEST_CASE("no answer is written over the shelf that the kit takes things from")
{
    const Folder folder;
    const std::string shelf = "shelf: Things\nitems:\n  - {id: cup, weight: 62 g, cylinder: {diameter: 80, height: 70}}\n";
    write(folder / "things.yaml", shelf);
    write(folder / "kit.yaml", "kit: A cup\nshelf: things.yaml\nitems:\n  - {from: cup}\n");
    const std::string kit = quoted((folder / "kit.yaml").string()), over = quoted((folder / "things.yaml").string());
    for (const std::string& command :
         {"pack " + kit + " --json ", "size " + kit + " --json ", "card " + kit + " --pdf ", "back " + kit + " --save-out ",
          "compare " + kit + " --json "}) {
        const auto refused = program(command + over + " --effort quick");
        CAPTURE(command, refused.err);
        CHECK(refused.code == 2);
        CHECK(holds(refused.err, "is the shelf that the kit takes things from"));
        CHECK(text_of(folder / "things.yaml") == shelf);
    }
}

TEST_CASE("two answers of one command do not go to one file")
{
    const Folder folder;
    write(folder / "kit.yaml", "kit: A cup\nitems:\n  - {id: cup, weight: 62 g, cylinder: {diameter: 80, height: 70}}\n");
    const std::string kit = quoted((folder / "kit.yaml").string()), one = quoted((folder / "x.svg").string());
    for (const std::string& command : {"card " + kit + " --pdf " + one + " --html " + one,
                                       "card " + kit + " --pdf - --json -",
                                       "compare " + kit + " --picture " + one + " --json " + one}) {
        const auto refused = program(command + " --effort quick");
        CAPTURE(command, refused.err);
        CHECK(refused.code == 2);
        CHECK(holds(refused.err, "two answers cannot go to the same file"));
        CHECK_FALSE(fs::exists(folder / "x.svg"));
    }
}
