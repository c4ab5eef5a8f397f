// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <vector>

#include "tuckwright/kit_reader.hpp"

using namespace tuckwright;
namespace fs = std::filesystem;

namespace
{

const fs::path corpus = fs::path(TUCKWRIGHT_SOURCE_DIR) / "tests/corpus/kits";

std::string bytes_of(const fs::path& path)
{
    std::ifstream file(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(file), {}};
}

std::vector<fs::path> files_in(const fs::path& folder, const std::string& extension)
{
    std::vector<fs::path> found;
    for (const auto& entry : fs::directory_iterator(folder)) {
        if (entry.path().extension() == extension) {
            found.push_back(entry.path());
        }
    }
    std::sort(found.begin(), found.end());
    return found;
}

std::string messages(const std::vector<Problem>& problems)
{
    std::string text;
    for (const auto& problem : problems) {
        text += to_string(problem) + "\n";
    }
    return text;
}

} // namespace

TEST_CASE("each faulty kit gives exactly its expected messages")
{
    const auto kits = files_in(corpus / "faulty", ".yaml");
    CHECK(kits.size() >= 100); // so that a folder gone astray is noticed
    for (const auto& path : kits) {
        const std::string name = path.filename().string();
        CAPTURE(name);
        const auto kit = read_kit_text(bytes_of(path), name);
        auto expected = path;
        expected.replace_extension(".expected");
        CHECK(fs::exists(expected));
        CHECK(messages(kit.ok() ? std::vector<Problem>{} : kit.problems()) == bytes_of(expected));
        CHECK_FALSE(kit.ok());
    }
}

TEST_CASE("each expectation has its kit")
{
    for (auto path : files_in(corpus / "faulty", ".expected")) {
        CAPTURE(path);
        CHECK(fs::exists(path.replace_extension(".yaml")));
    }
}

TEST_CASE("every problem has a place, says what is wrong and how to mend it, in the order of places")
{
    for (const auto& path : files_in(corpus / "faulty", ".yaml")) {
        CAPTURE(path);
        const auto kit = read_kit_text(bytes_of(path), "kit.yaml");
        REQUIRE_FALSE(kit.ok());
        const auto& problems = kit.problems();
        for (const auto& problem : problems) {
            CAPTURE(to_string(problem));
            CHECK(problem.file == "kit.yaml");
            CHECK(problem.line >= 1);
            CHECK(problem.column >= 1);
            CHECK_FALSE(problem.what.empty());
            CHECK_FALSE(problem.remedy.empty());
            CHECK(to_string(problem).find('\n') == std::string::npos);
        }
        CHECK(std::is_sorted(problems.begin(), problems.end(), [](const Problem& a, const Problem& b) {
            return std::pair(a.line, a.column) < std::pair(b.line, b.column);
        }));
    }
}

TEST_CASE("each sound kit of the corpus is accepted")
{
    const auto kits = files_in(corpus / "sound", ".yaml");
    CHECK(kits.size() >= 6);
    for (const auto& path : kits) {
        const auto kit = read_kit_file(path.string());
        INFO((kit.ok() ? path.string() : messages(kit.problems())));
        CHECK(kit.ok());
    }
}
