// SPDX-License-Identifier: GPL-3.0-or-later
/// Every file that once was a fault, and the sample files changed at random, taken through what the fuzzers ask.
#include <algorithm>
#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "fuzz/targets.hpp"
#include "support/handmade_bundles.hpp"
#include "support/random_solids.hpp"
#include "support/workload.hpp"
#include "tuckwright/report.hpp"

using namespace tuckwright;
namespace fs = std::filesystem;

namespace {

const fs::path root = TUCKWRIGHT_SOURCE_DIR;

std::string bytes_of(const fs::path& path)
{
    std::ifstream file(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(file), {}};
}

std::vector<fs::path> files_below(const fs::path& folder, const std::string& extension)
{
    std::vector<fs::path> found;
    for (const auto& entry : fs::recursive_directory_iterator(folder)) {
        if (entry.path().extension() == extension) {
            found.push_back(entry.path());
        }
    }
    std::sort(found.begin(), found.end());
    return found;
}

/// The text with some of its bytes changed, left out or doubled, or parts of it put elsewhere.
std::string changed_text(std::string text, test::Dice& dice)
{
    static constexpr std::string_view signs = " \n\t:-{}[]#&*!|>'\"%@`,.0123456789eE+\x7F\x80\xC2\xB1\xFF";
    for (int k = 1 + dice.below(4); k > 0 && !text.empty(); --k) {
        const auto any = [&] { return static_cast<std::size_t>(dice.below(static_cast<int>(text.size()))); };
        const std::size_t at = any(), from = any();
        const std::string part = text.substr(from, static_cast<std::size_t>(1 + dice.below(40)));
        switch (dice.below(4)) {
        case 0: text[at] = signs[static_cast<std::size_t>(dice.below(static_cast<int>(signs.size())))]; break;
        case 1: text.erase(at, part.size()); break;
        case 2: text.insert(at, part); break;
        default: text.replace(at, std::min(part.size(), text.size() - at), part);
        }
    }
    return text;
}

} // namespace

TEST_CASE("no file of the corpus, sound, faulty or a fault of ours once, breaks what the readers promise")
{
    std::size_t tried = 0;
    for (const fs::path& folder : {root / "kits", root / "tests/corpus"}) {
        for (const auto& path : files_below(folder, ".yaml")) {
            INFO(path);
            CHECK_NOTHROW(fuzz::try_kit(bytes_of(path)));
            ++tried;
        }
        for (const auto& path : files_below(folder, ".csv")) {
            INFO(path);
            CHECK_NOTHROW(fuzz::try_table(bytes_of(path)));
            ++tried;
        }
        for (const auto& path : files_below(folder, ".json")) {
            INFO(path);
            CHECK_NOTHROW(fuzz::try_saved_bundle(bytes_of(path)));
            CHECK_NOTHROW(fuzz::try_verify(bytes_of(path)));
            ++tried;
        }
    }
    CHECK(tried >= 150);
}

TEST_CASE("sample files changed at random break nothing")
{
    test::Dice dice(811);
    const auto kits = files_below(root / "kits", ".yaml");
    const std::string table = bytes_of(root / "kits/shelf/things.csv");
    REQUIRE(kits.size() >= 10);
    for (int trial = 0; trial < test::count(400, 40); ++trial) {
        const auto& path = kits[static_cast<std::size_t>(dice.below(static_cast<int>(kits.size())))];
        const std::string kit = changed_text(bytes_of(path), dice), things = changed_text(table, dice);
        INFO(trial << "\n" << kit);
        CHECK_NOTHROW(fuzz::try_kit(kit));
        CHECK_NOTHROW(fuzz::try_table(things));
    }
}

TEST_CASE("saved bundles with up to four values changed break nothing")
{
    test::Dice dice(812);
    const auto samples = handmade::all();
    int read = 0;
    for (int trial = 0; trial < test::count(2000, 200); ++trial) {
        const auto sample = samples[static_cast<std::size_t>(dice.below(static_cast<int>(samples.size())))];
        std::string json = to_json(sample.make());
        for (int k = 1 + dice.below(4); k > 0; --k) {
            json = fuzz::changed_json(json, dice.next());
        }
        INFO(trial << ": " << json);
        CHECK_NOTHROW(fuzz::try_saved_bundle(json));
        CHECK_NOTHROW(fuzz::try_verify(json));
        read += read_saved(json, "bundle.json").ok() ? 1 : 0;
    }
    CHECK(read >= test::count(100, 5)); // of bytes changed at random hardly any gets so far
}

TEST_CASE("a saved bundle's own words cannot steer the terminal when it is refused")
{
    const auto saved = read_saved(bytes_of(root / "tests/corpus/fuzz/bundle/a-name-with-a-line-end.json"), "bundle.json");
    REQUIRE_FALSE(saved.ok());
    for (const auto& problem : saved.problems()) {
        CHECK(problem.what.find('\n') == std::string::npos);
        CHECK(problem.what.find("\xE2\x80\xAE") == std::string::npos); // right to left from here
    }
}
