// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "house/files.hpp"
#include "house/layers.hpp"

using namespace tuckwright::house;

namespace
{

const std::map<std::string, Room>& rooms()
{
    static const auto table = rooms_from_table(text_of(root() / "DEVELOPERS.md"));
    return table;
}

std::string told(const std::vector<std::string>& objections)
{
    std::string text;
    for (const auto& objection : objections) {
        text += objection + "\n";
    }
    return text;
}

/// What is said of a file with one include after the usual first line.
std::string said(const std::string& path, const std::string& line)
{
    return told(objections({path, "// first line\n" + line + "\n"}, rooms()));
}

} // namespace

TEST_CASE("the table of rooms is read")
{
    REQUIRE(rooms().size() == 17);
    CHECK(rooms().at("base").layer == 0);
    CHECK(rooms().at("base").headers == std::set<std::string>{"units", "result", "contract", "tolerance"});
    CHECK(rooms().at("cli").layer == 8);
    CHECK(rooms().at("packing").headers.empty());
    CHECK(rooms().at("report").libraries.find("nlohmann") == 0);
}

TEST_CASE("includes point down the layers only")
{
    std::size_t read = 0;
    for (const char* folder : {"src", "include"}) {
        for (const auto& path : files_below(folder, {".cpp", ".hpp"})) {
            const auto found = objections({path, text_of(root() / path)}, rooms());
            INFO(told(found));
            CHECK(found.empty());
            ++read;
        }
    }
    CHECK(read > 50);
}

TEST_CASE("every public header has its room, and the other way round")
{
    std::set<std::string> there, in_table;
    for (const auto& path : files_below("include", {".hpp"})) {
        there.insert(std::filesystem::path(path).stem().string());
    }
    for (const auto& [name, room] : rooms()) {
        in_table.insert(room.headers.begin(), room.headers.end());
    }
    CHECK(there == in_table);
}

TEST_CASE("every folder of sources is a room")
{
    std::set<std::string> folders;
    for (const auto& entry : std::filesystem::directory_iterator(root() / "src")) {
        if (entry.is_directory()) {
            folders.insert(entry.path().filename().string());
        }
    }
    for (const auto& folder : folders) {
        INFO(folder);
        CHECK(rooms().count(folder) == 1);
    }
    CHECK(folders.size() == rooms().size());
}

TEST_CASE("the checker lets what is allowed pass")
{
    CHECK(said("src/proof/apart.cpp", "#include <CGAL/Gmpq.h>").empty());
    CHECK(said("src/proof/apart.cpp", "#include \"tuckwright/bundle.hpp\"").empty());
    CHECK(said("src/proof/apart.cpp", "#include \"proof/exact.hpp\"").empty());
    CHECK(said("src/proof/apart.cpp", "#include <fmt/format.h>").empty());
    CHECK(said("src/nesting/search.cpp", "#include \"packing/layout.hpp\"").empty());
    CHECK(said("src/solve/solve.cpp", "#include \"nesting/search.hpp\"").empty());
    CHECK(said("src/cli/main.cpp", "#include <CLI/CLI.hpp>").empty());
    CHECK(said("include/tuckwright/bundle.hpp", "#include <vector>").empty());
    CHECK(said("include/tuckwright/bundle.hpp", "#include \"tuckwright/kit.hpp\"").empty());
    CHECK(said("src/base/units.cpp", "// #include \"tuckwright/solve.hpp\"").empty());
}

TEST_CASE("the checker rejects what is faulty, and says where")
{
    struct Fault {
        const char *path, *line, *why;
    };
    const std::vector<Fault> faults = {
        {"src/kit/reader.cpp", "#include \"tuckwright/solve.hpp\"",
         "src/kit/reader.cpp:2: room kit must not see solve"},
        {"src/base/units.cpp", "#include \"tuckwright/shape.hpp\"", "which lies above it"},
        {"src/geometry/hull.cpp", "  #  include   \"packing/layout.hpp\"", "which lies above it"},
        {"src/packing/piece.cpp", "#include \"tuckwright/bundle.hpp\"", "must not see its neighbour bundle"},
        {"src/stacking/order.cpp", "#include \"nesting/search.hpp\"", "must not see its neighbour nesting"},
        {"src/report/text.cpp", "#include \"tuckwright/solve.hpp\"", "must not see its neighbour solve"},
        {"src/proof/apart.cpp", "#include \"tuckwright/geometry.hpp\"", "the search's geometry"},
        {"src/proof/apart.cpp", "#include \"packing/separation.hpp\"", "the search's packing"},
        {"src/proof/apart.cpp", "#include \"nesting/search.hpp\"", "must not see its neighbour nesting"},
        {"src/proof/apart.cpp", "#include \"exact.hpp\"", "name the header with its room"},
        {"src/proof/apart.cpp", "#include \"../proof/exact.hpp\"", "there is no room .."},
        {"src/proof/apart.cpp", "#include \"tuckwright/magic.hpp\"", "magic is not in the table"},
        {"src/proof/apart.cpp", "#include HEADER", "cannot be read"},
        {"src/packing/piece.cpp", "#include <CGAL/Gmpq.h>", "room packing must not use CGAL"},
        {"src/kit/reader.cpp", "#include <nlohmann/json.hpp>", "room kit must not use nlohmann"},
        {"src/report/text.cpp", "#include <CLI/CLI.hpp>", "room report must not use CLI11"},
        {"src/bundle/bundle.cpp", "#include <yaml-cpp/yaml.h>", "room bundle must not use yaml-cpp"},
        {"src/proof/apart.cpp", "#include <boost/rational.hpp>", "room proof must not use Boost"},
        {"src/kit/reader.cpp", "#include <cairo.h>", "room kit must not use cairo"},
        {"src/geometry/hull.cpp", "#include \"tuckwright/canvas.hpp\"", "must not see its neighbour canvas"},
        {"include/tuckwright/canvas.hpp", "#include <pango/pango.h>", "no outside library in a public header"},
        {"src/kit/reader.cpp", "#include <unistd.h>", "only the command line"},
        {"src/kit/reader.cpp", "#include <zlib.h>", "belongs to no library"},
        {"include/tuckwright/kit.hpp", "#include <fmt/format.h>", "no outside library in a public header"},
        {"include/tuckwright/kit.hpp", "#include <yaml-cpp/yaml.h>", "no outside library in a public header"},
        {"include/tuckwright/kit.hpp", "#include \"kit/fields.hpp\"", "public ones only"},
        {"include/tuckwright/kit.hpp", "#include \"tuckwright/bundle.hpp\"", "which lies above it"},
        {"include/tuckwright/magic.hpp", "", "belongs to no room"},
        {"src/attic/box.cpp", "", "belongs to no room"},
    };
    for (const auto& fault : faults) {
        const auto words = said(fault.path, fault.line);
        INFO(fault.path << " with " << fault.line << " said: " << words);
        CHECK(words.find(fault.why) != std::string::npos);
    }
}
