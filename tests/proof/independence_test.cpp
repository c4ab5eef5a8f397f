// SPDX-License-Identifier: GPL-3.0-or-later
/// The proof is worth something because it shares nothing with what it judges.
#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>
#include <set>
#include <string>

namespace {

/// The project's headers that a source includes, by the name in quotation marks.
std::set<std::string> included(const std::filesystem::path& source)
{
    std::set<std::string> names;
    std::ifstream in(source);
    for (std::string line; std::getline(in, line);) {
        if (const std::string start = "#include \""; line.rfind(start, 0) == 0) {
            names.insert(line.substr(start.size(), line.rfind('"') - start.size()));
        }
    }
    return names;
}

} // namespace

TEST_CASE("the proof includes only its own headers and plain data")
{
    const std::set<std::string> plain{"tuckwright/proof.hpp",    "tuckwright/bundle.hpp", "tuckwright/kit.hpp",
                                      "tuckwright/shape.hpp",    "tuckwright/units.hpp",  "tuckwright/contract.hpp",
                                      "tuckwright/tolerance.hpp"};
    int sources = 0, includes = 0;
    for (const auto& entry : std::filesystem::directory_iterator(std::string(TUCKWRIGHT_SOURCE_DIR) + "/src/proof")) {
        ++sources;
        for (const auto& name : included(entry.path())) {
            INFO(entry.path() << " includes " << name);
            ++includes;
            CHECK((name.rfind("proof/", 0) == 0 || plain.count(name) == 1));
        }
    }
    CHECK(sources > 10);
    CHECK(includes > 20);
}
