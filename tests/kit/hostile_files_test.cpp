// SPDX-License-Identifier: GPL-3.0-or-later
/// Files that are large, deep or many times what they seem: refused, and soon.
#include <algorithm>
#include <catch2/catch.hpp>
#include <ctime>
#include <filesystem>
#include <fstream>
#include <functional>
#include <optional>
#include <string>
#include <unistd.h>

#include "support/workload.hpp"
#include "tuckwright/kit_reader.hpp"
#include "tuckwright/shelf.hpp"

using namespace tuckwright;
using tuckwright::test::slow_build;
namespace fs = std::filesystem;

namespace
{

constexpr std::size_t limit = std::size_t{1024} * 1024;
constexpr std::size_t large = slow_build ? 100'000 : limit - 200; ///< what is still read

std::string repeated(const std::string& part, std::size_t bytes)
{
    std::string text;
    while (text.size() + part.size() <= bytes) {
        text += part;
    }
    return text;
}

std::string numbered(const std::string& start, std::size_t bytes, const std::function<std::string(std::size_t)>& part)
{
    std::string text = start;
    for (std::size_t i = 0; text.size() < bytes; ++i) {
        text += part(i);
    }
    return text;
}

double processor_time(const std::function<void()>& work)
{
    const auto start = std::clock();
    work();
    return static_cast<double>(std::clock() - start);
}

/// Checks that work takes no longer than the reading of some plain kit files as large as may be: a yardstick that follows
/// the machine, its load and the build. Usual are two at most; what grows with the square of a file takes hundreds.
void check_soon(const std::function<void()>& work)
{
    static const double plain = processor_time(
        [] { CHECK_FALSE(read_kit_text("kit: Soup\nitems:\n" + repeated("- a\n", large), "plain.yaml").ok()); });
    CHECK(processor_time(work) < 20 * plain);
}

Result<Kit> read_soon(const std::string& text, const std::string& source = "kit.yaml")
{
    std::optional<Result<Kit>> kit;
    check_soon([&] { kit = read_kit_text(text, source); });
    return *kit;
}

/// The first problem; checks that it came soon and that there are not too many to read.
std::string first_problem(const std::string& text)
{
    const auto kit = read_soon(text);
    REQUIRE_FALSE(kit.ok());
    CHECK(kit.problems().size() <= 1000);
    return to_string(kit.problems().front());
}

/// A file or folder that is gone afterwards.
struct Scratch {
    fs::path path = fs::temp_directory_path() / ("tuckwright-kit-test-" + std::to_string(::getpid()));
    ~Scratch() { fs::remove_all(path); }
};

} // namespace

TEST_CASE("a file above the limit is refused at once")
{
    const std::string expected = "kit.yaml:1:1: the file is larger than 1 MiB; a kit file is a few kilobytes of text; "
                                 "check that it is the right file";
    CHECK(first_problem(repeated("kit: Soup\n", 10 * limit)) == expected);
    CHECK(first_problem(std::string(limit + 1, ' ')) == expected);
    CHECK(first_problem("\xEF\xBB\xBF" + std::string(limit, ' ')) == expected);
    CHECK(first_problem(std::string(limit, ' ')) ==
          "kit.yaml:1:1: the file holds no kit; write at least 'kit:' and 'items:'");
}

TEST_CASE("deep nesting is refused wherever it begins")
{
    for (const std::string opener : {"[", "{", "[ ", "[\n", "- ", "? ", "{a: ", "[a, "}) {
        CAPTURE(opener);
        CHECK(first_problem(repeated(opener, large)).find("nested more than 32 deep") != std::string::npos);
    }
    std::string stairs;
    for (std::size_t depth = 0; depth < 1000; ++depth) {
        stairs += std::string(depth, ' ') + "a:\n";
    }
    CHECK(first_problem(stairs) ==
          "kit.yaml:33:33: lists and fields are nested more than 32 deep; a kit file needs no more than six levels");
}

TEST_CASE("32 levels are still read, and brackets in a comment are no levels")
{
    const auto levels = [](std::size_t n) { return std::string(n, '[') + std::string(n, ']'); };
    CHECK(first_problem("# " + levels(99) + "\n" + levels(32)).find("a kit file is given as a list") != std::string::npos);
    CHECK(first_problem(levels(33)).find("nested more than 32 deep") != std::string::npos);
}

TEST_CASE("aliases are never expanded")
{
    std::string bomb = "items: []\nkit: &a0 [x, x, x, x, x, x, x, x, x, x]\n";
    for (int level = 1; level <= 60; ++level) {
        const std::string alias = "*a" + std::to_string(level - 1) + ", ";
        bomb += "k" + std::to_string(level) + ": &a" + std::to_string(level) + " [" +
                repeated(alias, alias.size() * 10) + "]\n";
    }
    CHECK(first_problem(bomb) == "kit.yaml:1:8: the kit has no items; list at least one under 'items:'");
    const auto kit = read_kit_text(bomb, "kit.yaml");
    REQUIRE_FALSE(kit.ok());
    const auto aliases = std::count_if(kit.problems().begin(), kit.problems().end(), [](const Problem& problem) {
        return problem.what == "an alias ('*' with a name) is not taken in a kit file";
    });
    CHECK(aliases == 600); // each as it stands in the file, and none that it stands for
    CHECK_FALSE(first_problem("kit: &a b\nx: [" + repeated("*a,", large) + "]").empty());
}

TEST_CASE("many faults are found soon, and only the first thousand shown")
{
    const std::string start = "kit: Soup\nitems:\n";
    const auto number = [](std::size_t i) { return std::to_string(i); };
    CHECK_FALSE(first_problem(numbered(start, large, [&](std::size_t i) {
                    return "- {id: a" + number(i) + ", closes: {item: a" + number(i + 1) + "}}\n";
                })).empty());
    CHECK_FALSE(
        first_problem(numbered("", large, [&](std::size_t i) { return "k" + number(i) + ": 1\n"; })).empty());
    CHECK_FALSE(first_problem(start + repeated("- a\n", large)).empty());
    CHECK_FALSE(first_problem(std::string(large, 'a')).empty());
    CHECK_FALSE(first_problem("\"" + std::string(large, 'a')).empty());
    CHECK_FALSE(first_problem(repeated("\n", limit)).empty());
    const auto kit =
        read_kit_text(numbered("", 50'000, [&](std::size_t i) { return "k" + number(i) + ": 1\n"; }), "kit.yaml");
    REQUIRE_FALSE(kit.ok());
    CHECK(kit.problems().size() == 1000);
    CHECK(to_string(kit.problems().back()).find("more problems are not shown") != std::string::npos);
}

TEST_CASE("any start of a sound file is read without a crash")
{
    const std::string whole = "kit: \"Soup\"\nunits: {length: cm}\nitems:\n  - id: pot\n    weight: 1.5 kg\n"
                              "    cylinder: {diameter: 12, height: 9}\n    inside: {wall: 1 mm, base: 1 mm}\n"
                              "    contents: {what: 'réglisse', amount: 5}\n";
    REQUIRE(read_kit_text(whole, "kit.yaml").ok());
    std::size_t refused = 0;
    for (std::size_t size = 0; size < whole.size(); ++size) {
        refused += read_kit_text(whole.substr(0, size), "kit.yaml").ok() ? 0U : 1U;
    }
    CHECK(refused > whole.size() / 2);
}

TEST_CASE("any byte of a sound file may be changed without a crash")
{
    const std::string whole =
        "kit: \"Soup\"\nitems:\n- {id: a, weight: 1, cylinder: {diameter: 9, height: 9}, inside: {wall: 1, "
        "base: 1}}\n- {id: b, weight: 1, cylinder: {diameter: 9, height: 2}, closes: {item: a, adds: 2, "
        "intrudes: 0}}\n";
    REQUIRE(read_kit_text(whole, "kit.yaml").ok());
    std::size_t refused = 0;
    const std::string bytes = "\n\t -:{}[]'\"&*!#%@|>?,.0a~\xC3\x04";
    for (std::size_t at = 0; at < whole.size(); ++at) {
        for (const char byte : bytes) {
            std::string changed = whole;
            changed[at] = byte;
            refused += read_kit_text(changed, "kit.yaml").ok() ? 0U : 1U;
        }
    }
    CHECK(refused > whole.size() * bytes.size() / 2);
}

TEST_CASE("a path that gives no file says why")
{
    const Scratch scratch;
    const auto problem = [](const fs::path& path) {
        const auto kit = read_kit_file(path.string());
        REQUIRE_FALSE(kit.ok());
        REQUIRE(kit.problems().size() == 1);
        return to_string(kit.problems().front());
    };
    const std::string name = scratch.path.string();
    CHECK(problem(scratch.path) ==
          name + ": cannot be read: No such file or directory; check the path and its permissions");
    CHECK(problem("") == "the path of the kit file is empty; give the path of a kit file");
    fs::create_directory(scratch.path);
    CHECK(problem(scratch.path) == name + ": is a folder, not a file; give the path of a kit file");
    CHECK(problem(scratch.path / "kit.yaml" / "kit.yaml") ==
          (scratch.path / "kit.yaml/kit.yaml").string() +
              ": cannot be read: No such file or directory; check the path and its permissions");
}

TEST_CASE("a file is read as its text is, under the path given")
{
    const Scratch scratch;
    std::ofstream(scratch.path) << "kit: Soup\nitems: [{id: a, weight: 1, cylinder: {diameter: 9, height: 9}}]\n";
    CHECK(read_kit_file(scratch.path.string()).ok());
    std::ofstream(scratch.path) << "kit: Soup\nitems: []\n";
    const auto empty = read_kit_file(scratch.path.string());
    REQUIRE_FALSE(empty.ok());
    CHECK(to_string(empty.problems().front()) ==
          scratch.path.string() + ":2:8: the kit has no items; list at least one under 'items:'");
    std::ofstream(scratch.path) << std::string(3 * limit, '#');
    const auto large = read_kit_file(scratch.path.string());
    REQUIRE_FALSE(large.ok());
    CHECK(to_string(large.problems().front()).find("larger than 1 MiB") != std::string::npos);
}

TEST_CASE("choices with many alternatives, or of many things, are told soon")
{
    const auto thing = [](const std::string& id, const std::string& weight) {
        return "{id: " + id + ", weight: " + weight + ", cylinder: {diameter: 20, height: 20}}\n";
    };
    const auto alternative = [&](std::size_t i) { return "      - " + thing("a" + std::to_string(i), "x"); };
    const auto fixed = [&](std::size_t i) { return "  - " + thing("b" + std::to_string(i), "1"); };
    const std::string start = "kit: A\nitems:\n  - choice: c\n    one-of:\n";
    CHECK(first_problem(numbered(start, large, alternative)).find("but may have at most 100") != std::string::npos);
    const std::string hundred = numbered(start, start.size() + 6000, alternative);
    CHECK(first_problem(numbered(hundred, large, fixed)).find("the kit has ") != std::string::npos);
    const std::string many = numbered("kit: A\nitems:\n", large, [](std::size_t i) {
        return "  - {choice: c" + std::to_string(i) + ", one-of: [nothing, nothing]}\n";
    });
    CHECK(first_problem(many).find("two alternatives called 'nothing'") != std::string::npos);
}

TEST_CASE("a large thing of a shelf that is taken many times is refused soon")
{
    const Scratch folder;
    fs::create_directory(folder.path);
    std::string parts = "{at: top, box: {length: 1, width: 1, height: 1}}";
    while (parts.size() < large / 2) {
        parts += ", {at: top, box: {length: 1, width: 1, height: 1}}";
    }
    std::ofstream(folder.path / "s.yaml") << "shelf: S\nitems:\n  - {id: pot, weight: 1, cylinder: {diameter: 20, height: 20}, "
                                             "parts: [" << parts << "]}\n";
    const std::string text = repeated("- from: pot\n", large);
    const auto kit = read_soon("kit: A\nshelf: s.yaml\nitems:\n" + text, (folder.path / "kit.yaml").string());
    REQUIRE_FALSE(kit.ok());
    CHECK(kit.problems().size() <= 1000);
}

TEST_CASE("a table that is large, or of many faults, is refused soon")
{
    const auto refused_soon = [](const std::string& table, const std::string& part) {
        std::string said;
        check_soon([&] {
            const auto shelf = shelf_from_csv(table, "things.csv", "Things");
            said = shelf ? "" : to_string(shelf.problems().front());
        });
        INFO(said);
        CHECK_FALSE(said.empty());
        CHECK(said.find(part) != std::string::npos);
    };
    const std::string head = "id,weight_g,height_mm,diameter_mm\n";
    refused_soon(repeated("a,1,2,3\n", 5 * limit), "larger than");
    refused_soon(head + repeated("a,1,2,3\n", large), "");
    refused_soon(head + repeated("a,x,y,z\n", large), "");
    refused_soon(repeated("\"", large), "");
    refused_soon(repeated(",", large), "fields, but a table of things has at most 19 columns");
    refused_soon(head + "\"" + std::string(large, 'x'), "");
}
