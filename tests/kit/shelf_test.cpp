// SPDX-License-Identifier: GPL-3.0-or-later
/// Things of a shelf, taken into a kit: the kit that one would have written out.
#include <catch2/catch.hpp>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <string>
#include <unistd.h>

#include "tuckwright/kit_reader.hpp"
#include "tuckwright/shelf.hpp"

using namespace tuckwright;
namespace fs = std::filesystem;

namespace {

const std::string things = R"(shelf: My things
units: {length: cm}
items:
  - {id: pot, name: Small pot, weight: 140, cylinder: {diameter: 11, height: 9}, inside: {wall: 0.1, base: 0.1}}
  - {id: lid, weight: 38, cylinder: {diameter: 11.1, height: 0.8}, closes: {item: pot, adds: 0.2, intrudes: 0.5}}
  - {id: cup, weight: 62, cylinder: {diameter: 7.8, height: 4}, inside: {wall: 0.1, base: 0.1}, goes-in: pot, apart-from: spirit}
  - {id: spirit, weight: 30, cylinder: {diameter: 6, height: 9}, kind: fuel}
)";

/// A folder with a shelf in it, gone afterwards.
class Folder {
public:
    explicit Folder(const std::string& shelf = things)
    {
        fs::create_directory(path_);
        write("things.yaml", shelf);
    }
    ~Folder() { fs::remove_all(path_); }
    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;

    void write(const std::string& name, const std::string& text) const { std::ofstream(path_ / name) << text; }
    std::string kit_path() const { return (path_ / "kit.yaml").string(); }

    /// Kit of a text that lies beside the shelf.
    Kit kit(const std::string& text, const std::vector<Taken>& chosen = {}) const
    {
        const auto read = read_kit_text(text, kit_path(), chosen);
        INFO((read ? "" : to_string(read.problems().front())));
        REQUIRE(read.ok());
        return *read;
    }

    /// The problems of a kit, by the files' own names.
    std::string refusal(const std::string& text, const std::vector<Taken>& chosen = {}) const
    {
        const auto read = read_kit_text(text, kit_path(), chosen);
        REQUIRE_FALSE(read.ok());
        std::string told;
        for (Problem problem : read.problems()) {
            problem.file = fs::path(problem.file).filename().string();
            told += to_string(problem) + "\n";
        }
        return told;
    }

private:
    fs::path path_ = fs::temp_directory_path() / ("tuckwright-shelf-" + std::to_string(::getpid()));
};

const std::string head = "kit: Tea\nshelf: things.yaml\nitems:\n";

} // namespace

TEST_CASE("things of a shelf are as if the kit had given them, in the shelf's units")
{
    const Folder folder;
    const Kit taken = folder.kit(head + "  - from: pot\n  - from: lid\n  - from: cup\n");
    const Kit written = folder.kit(
        "kit: Tea\nitems:\n"
        "  - {id: pot, name: Small pot, weight: 140, cylinder: {diameter: 110, height: 90}, inside: {wall: 1, base: "
        "1}}\n"
        "  - {id: lid, weight: 38, cylinder: {diameter: 111, height: 8}, closes: {item: pot, adds: 2, intrudes: 5}}\n"
        "  - {id: cup, weight: 62, cylinder: {diameter: 78, height: 40}, inside: {wall: 1, base: 1}, goes-in: pot}\n");
    REQUIRE(taken.items.size() == 3);
    for (std::size_t i = 0; i < 3; ++i) {
        CHECK(taken.items[i].id == written.items[i].id);
        CHECK(taken.items[i].name == written.items[i].name);
        CHECK(taken.items[i].weight_g == written.items[i].weight_g);
        CHECK(taken.items[i].outside == written.items[i].outside);
        CHECK(taken.items[i].inside.has_value() == written.items[i].inside.has_value());
    }
    CHECK(taken.items[0].inside->shape == written.items[0].inside->shape);
    CHECK(taken.items[1].closes->item == 0);
    CHECK(taken.items[1].closes->intrudes == 5);
    CHECK(taken.rules == written.rules); // apart from spirit, which stays at home, is left out
}

TEST_CASE("fields that an entry gives replace those of the shelf, in the kit's own units")
{
    const Folder folder;
    const Kit kit =
        folder.kit(head + "  - from: pot\n"
                          "  - {from: cup, id: big-cup, name: Big cup, count: 2, weight: 80,\n"
                          "     box: {length: 70, width: 60, height: 30}, inside: nothing, goes-in: nothing}\n");
    const Item& cup = kit.items[1];
    CHECK(cup.id == "big-cup");
    CHECK(cup.name == "Big cup");
    CHECK(cup.count == 2);
    CHECK(cup.weight_g == 80);
    CHECK(cup.outside == Shape(Box{70, 60, 30}));
    CHECK_FALSE(cup.inside);
    CHECK(kit.rules.empty());
}

TEST_CASE("things of a shelf may be alternatives of a choice, alone or with others")
{
    const Folder folder;
    const std::string text = head + "  - choice: pot\n    one-of:\n      - from: pot\n"
                                    "      - {take: shut, items: [from: pot, {from: lid, weight: 40}]}\n"
                                    "      - - from: spirit\n        - {from: cup, goes-in: nothing}\n"
                                    "  - {id: tin, weight: 3, box: {length: 30, width: 20, height: 20}}\n";
    const auto kits = read_kits_text(text, folder.kit_path());
    INFO((kits ? "" : to_string(kits.problems().front())));
    REQUIRE(kits.ok());
    REQUIRE(kits->size() == 3);
    CHECK((*kits)[0].taken == std::vector<Taken>{{"pot", "pot"}});
    CHECK((*kits)[1].kit.items[1].weight_g == 40);
    CHECK((*kits)[2].kit.items.size() == 3);
    CHECK((*kits)[2].taken == std::vector<Taken>{{"pot", "spirit"}});
}

TEST_CASE("problems of a shelf have its own file, line and column, and come after those of the kit")
{
    std::string faulty = things;
    faulty.replace(faulty.find("weight: 38"), 10, "wieght: 38");
    const Folder folder(faulty);
    CHECK(
        folder.refusal("kit: Tea\nclearence: 1\nshelf: things.yaml\nitems:\n  - from: pot\n") ==
        "kit.yaml:2:1: unknown key 'clearence' in a kit file; did you mean 'clearance'?\n"
        "things.yaml:5:5: item 'lid' has no 'weight'; weigh it without contents, and write it such as 'weight: 120 g'\n"
        "things.yaml:5:15: unknown key 'wieght' in item 'lid'; did you mean 'weight'?\n");
}

TEST_CASE("what a kit takes wrongly from a shelf is told with the nearest that is known")
{
    const Folder folder;
    CHECK(folder.refusal(head + "  - from: pod\n  - from: [cup]\n") ==
          "kit.yaml:4:11: the shelf 'My things' has nothing with the id 'pod'; did you mean 'pot'?\n"
          "kit.yaml:5:11: from is a list, not the id of a thing on the shelf; name one, such as '- from: pot'\n");
    CHECK(folder.refusal(head + "  - from: pot\n  - from: pot\n") ==
          "kit.yaml:5:11: the id 'pot' is given twice, first in line 4; rename one, or use 'count' for copies that are "
          "alike\n");
    CHECK(folder.refusal("kit: Tea\nshelf: things.yaml\n").find("kit.yaml:1:1: a kit file has no 'items'") == 0);
    CHECK(folder.refusal(head + "  from: pot\n").find("items is a group of fields, not a list") != std::string::npos);
    // A lid cannot do without its pot; and a rule of the kit's own may not name what stays on the shelf.
    CHECK(folder.refusal(head + "  - from: lid\n"
                                "  - {id: tin, weight: 3, box: {length: 3, width: 3, height: 3}, goes-in: pot}\n") ==
          "kit.yaml:5:74: 'pot' is on the shelf, but not among the things of this kit; take it along with '- from: "
          "pot', or "
          "leave this one at home\n"
          "things.yaml:5:83: 'pot' is on the shelf, but not among the things of this kit; take it along with '- from: "
          "pot', "
          "or leave this one at home\n");
}

TEST_CASE("a shelf that is not there, or is none, or lies elsewhere")
{
    const Folder folder;
    const auto with = [&](const std::string& name) {
        return folder.refusal("kit: Tea\nshelf: " + name + "\nitems:\n  - from: pot\n");
    };
    CHECK(with("thing.yaml").find("kit.yaml:2:8: the shelf '") == 0);
    CHECK(with("thing.yaml")
              .find("cannot be read: No such file or directory; it is looked for in the kit file's folder") !=
          std::string::npos);
    for (const char* outside : {"../things.yaml", "/etc/passwd", "a/../../b.yaml"}) {
        CHECK(with(outside).find("which is not in the kit file's folder or below it") != std::string::npos);
    }
    CHECK(with("[a]").find("kit.yaml:2:8: shelf is a list, not the name of a file") == 0);
    folder.write("other.yaml", "kit: Other\nitems: []\n");
    CHECK(with("other.yaml") ==
          "other.yaml:1:1: this is a kit, not a shelf; a shelf begins with 'shelf: My things' instead\n");
    folder.write("empty.yaml", "");
    CHECK(with("empty.yaml") == "empty.yaml:1:1: the file holds no shelf; write at least 'shelf:' and 'items:'\n");
    CHECK(folder.refusal(things) ==
          "kit.yaml:1:1: this is a shelf, not a kit; write a kit that takes things from it: 'kit: "
          "...', 'shelf: FILE', and entries '- from: pot'\n");
    CHECK(folder.refusal("kit: Tea\nitems:\n  - from: pot\n") ==
          "kit.yaml:3:5: 'from' takes a thing from a shelf, but this kit has none; name it at the top of the file: "
          "'shelf: "
          "my-things.yaml'\n");
}

TEST_CASE("a byte-order mark shifts no column, in a kit, a shelf or a table")
{
    const std::string mark = "\xEF\xBB\xBF";
    const Folder folder(mark + "shelv: A\nitems: []\n");
    CHECK(folder.refusal(mark + "kut: Tea\nshelf: things.yaml\nitems:\n  - from: pot\n").find("kit.yaml:1:1: ") == 0);
    CHECK(folder.refusal(mark + "{kit: Tea, shelve: x, items: []}\n").find("kit.yaml:1:12: unknown key 'shelve'") == 0);
    const auto shelf = read_shelf_text(mark + "{shelf: A, kind: x, items: []}\n", "s.yaml");
    REQUIRE_FALSE(shelf.ok());
    CHECK(to_string(shelf.problems().front()).find("s.yaml:1:12: unknown key 'kind'") == 0);
    const auto table = shelf_from_csv(mark + "id,wight_g\n", "t.csv", "Mine");
    REQUIRE_FALSE(table.ok());
    CHECK(table.problems().front().column == 4);
}

TEST_CASE("a shelf by itself")
{
    const auto shelf = read_shelf_text(things, "things.yaml");
    REQUIRE(shelf.ok());
    CHECK(shelf->title == "My things");
    REQUIRE(shelf->items.size() == 4);
    CHECK(shelf->items[1].outside == Shape(Cylinder{111, 8}));
    const auto for_kits =
        read_shelf_text("shelf: A\nitems:\n  - from: pot\n  - choice: cup\n    one-of: [nothing, nothing]\n", "s.yaml");
    REQUIRE_FALSE(for_kits.ok());
    REQUIRE(for_kits.problems().size() == 2);
    CHECK(to_string(for_kits.problems()[0]) ==
          "s.yaml:3:5: a shelf takes nothing from another; describe the thing here");
    CHECK(to_string(for_kits.problems()[1]) ==
          "s.yaml:4:5: a shelf has no choices; put the things on the shelf one by one, and the choice into the kit");
    const auto faulty =
        read_shelf_text("shelf: A\ntolerance: 1\nitems:\n  - {id: a, weight: x}\n  - {id: a, weight: 1}\n", "s.yaml");
    REQUIRE_FALSE(faulty.ok());
    CHECK(faulty.problems().size() >= 4);
}

namespace {

const std::string table =
    "\xEF\xBB\xBFid,name,count,weight_g,diameter_mm,length_mm,width_mm,height_mm,wall_mm,base_mm,opens,lid,"
    "contents,contents_g,upright,kinds,closes,adds_mm,intrudes_mm\r\n"
    "pot,\"Pot, 0.7 l\",,140,110,,,90,0.8,1,,,,,,lips sooty,,,\r\n"
    "lid,,,38,111,,,8,,,,,,,,,pot,2,5\r\n"
    "\r\n"
    "ring,\"A \"\"ring\"\" \\ Größe\",2,12.5,90,,,30,1,,both,,,,,,,,\r\n"
    "tea,Tea: tin,,31,60,,,34,1,1,,own,\"black, tea\",30,no,food,,,\r\n"
    "spoon,no,,17,,105,30,12,,,,,,,,,,,\r\n";

std::string refused_table(const std::string& csv)
{
    const auto text = shelf_from_csv(csv, "t.csv", "Mine");
    REQUIRE_FALSE(text.ok());
    std::string told;
    for (const Problem& problem : text.problems()) {
        told += to_string(problem) + "\n";
    }
    return told;
}

} // namespace

TEST_CASE("a table becomes a shelf that reads back as it was, and from which a kit takes things")
{
    const auto text = shelf_from_csv(table, "t.csv", "My \"own\": things");
    INFO((text ? *text : to_string(text.problems().front())));
    REQUIRE(text.ok());
    const auto shelf = read_shelf_text(*text, "t.yaml");
    REQUIRE(shelf.ok());
    CHECK(shelf->title == "My \"own\": things");
    REQUIRE(shelf->items.size() == 5);
    const auto& items = shelf->items;
    CHECK(items[0].name == "Pot, 0.7 l");
    CHECK(items[0].outside == Shape(Cylinder{110, 90}));
    CHECK(items[0].inside->shape == Shape(Cylinder{108.4, 89}));
    CHECK(items[0].kinds == std::vector<Kind>{Kind::lips, Kind::sooty});
    CHECK(items[1].name == "lid");
    CHECK(items[2].name == "A \"ring\" \\ Größe");
    CHECK(items[2].count == 2);
    CHECK(items[2].weight_g == 12.5);
    CHECK(items[2].inside->opens == Opening::both);
    CHECK(items[3].name == "Tea: tin");
    CHECK(items[3].inside->opens == Opening::closed);
    CHECK(items[3].contents->what == "black, tea");
    CHECK(items[3].contents->weight_g == 30);
    CHECK_FALSE(items[3].upright);
    CHECK(items[4].name == "no");
    CHECK(items[4].outside == Shape(Box{105, 30, 12}));
    const Folder folder(*text);
    const Kit kit = folder.kit(head + "  - from: pot\n  - from: lid\n  - {from: tea, upright: yes}\n");
    CHECK(kit.items[1].closes->intrudes == 5);
    CHECK(kit.items[2].upright);
}

TEST_CASE("every fault of a table is told with its line and column")
{
    CHECK(
        refused_table("id,name,weight_g,diameter_mm,length_mm,width_mm,height_mm,kinds\n"
                      "pot,\"Pot, 0.7 l\",,110,,,90,lips sotty\n"
                      "spoon,x,\"17,5\",,105,30,12,\n"
                      "tea,Tea tin,31,60,10,,34,food\n"
                      "tea,Tea tin,31,,,,34,food\n"
                      "a b,\"Two\nlines\",31,40,,,,food\n"
                      "short,3\n"
                      "c,b\"c,31,40,,,30,food\n") ==
        "t.csv:2:18: weight_g is empty; fill it in\n"
        "t.csv:2:33: unknown word 'sotty' for kind; did you mean 'sooty'?\n"
        "t.csv:3:9: weight: '17,5' has a comma in its number; write a point before the decimals, nothing between "
        "thousands\n"
        "t.csv:4:19: the thing has a diameter and a length or width; give diameter_mm for a round one, length_mm and "
        "width_mm for one with corners\n"
        "t.csv:5:1: the thing has no diameter_mm, and no length_mm and width_mm; measure it\n"
        "t.csv:5:1: the id 'tea' is given twice, first in line 4; rename one, or use 'count' for copies that are "
        "alike\n"
        "t.csv:6:1: id is 'a b'; use only letters a to z, digits, '-' and '_'\n"
        "t.csv:6:5: name holds a line break or another control character; write it on one line\n"
        "t.csv:7:16: height_mm is empty; fill it in\n"
        "t.csv:8:1: this line has 2 fields, but the first 8; give each column a field, be it empty; put a field with a "
        "comma in quotes\n"
        "t.csv:9:3: there is a quote in a field that does not begin with one; put the whole field in quotes, and "
        "double "
        "each quote in it\n");
}

TEST_CASE("tables without what makes them tables of things")
{
    CHECK(refused_table("") ==
          "t.csv:1:1: the table is empty; its first line names the columns, each further one is a thing\n");
    CHECK(refused_table("id;weight_g\na;3\n").find("there is no column 'height_mm'") != std::string::npos);
    CHECK(refused_table("id,wight_g,height_mm,id\na,3,4,b\n") ==
          "t.csv:1:4: unknown column 'wight_g'; did you mean 'weight_g'?\n"
          "t.csv:1:22: the column 'id' is given twice; keep one of the two\n");
    CHECK(refused_table("id,weight_g\na,3\n").find("there is no column 'height_mm'") != std::string::npos);
    CHECK(refused_table("id,weight_g,height_mm\n") ==
          "t.csv:1:1: the table names columns, but holds no things; write each thing on a line of its own\n");
    CHECK(refused_table("id,weight_g,height_mm\na,\xFF,3\n") ==
          "t.csv:2:3: this is not UTF-8 text; save the file as UTF-8\n");
}

TEST_CASE("tables with semicolons or tabs between the columns may have decimal commas")
{
    const std::string head = "id,name,weight_g,diameter_mm,height_mm,kinds\n";
    const auto shelf = shelf_from_csv(head + "tin,\"Tin, small\",50.5,60,40.25,food\ncup,Cup,62,78,40,lips\n", "t.csv", "Mine");
    REQUIRE(shelf.ok());
    for (const char separator : {';', '\t'}) {
        std::string table = "id;name;weight_g;diameter_mm;height_mm;kinds\ntin;Tin, small;50,5;60;40,25;food\ncup;Cup;62;78;40;lips\n";
        std::replace(table.begin(), table.end(), ';', separator);
        const auto with_commas = shelf_from_csv(table, "t.csv", "Mine");
        INFO((with_commas ? "" : with_commas.problems().front().what));
        REQUIRE(with_commas.ok());
        CHECK(*with_commas == *shelf);
        std::replace(table.begin(), table.end(), ',', '.');
        CHECK(shelf_from_csv(table, "t.csv", "Mine").ok());
    }
    const std::string columns = "id;weight_g;diameter_mm;height_mm\n";
    CHECK(refused_table(columns + "a;1,5;60;40\nb;2;60.5;40\n") ==
          "t.csv:2:3: '1,5' has a comma, but '60.5' in line 3 a point; write all numbers with decimal points, or all with "
          "decimal commas, and nothing between thousands\n");
    CHECK(refused_table(columns + "a;1,000,5;60;40\n") ==
          "t.csv:2:3: weight: '1,000,5' has a comma in its number; write a point before the decimals, nothing between thousands\n");
    CHECK(refused_table(columns + "a;1\n") ==
          "t.csv:2:1: this line has 2 fields, but the first 4; give each column a field, be it empty; put a field with a "
          "semicolon in quotes\n");
    CHECK(refused_table("id;weight_g;height_mm,x\na;1;2\n").find("unknown column 'height_mm,x'; did you mean") !=
          std::string::npos);
}
