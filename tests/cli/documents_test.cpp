// SPDX-License-Identifier: GPL-3.0-or-later
/// What README.md and kits/README.md show is what the program prints.
#include <catch2/catch.hpp>

#include "cli/program.hpp"

using namespace tuckwright::cli_test;
namespace fs = std::filesystem;

namespace
{

const fs::path source = TUCKWRIGHT_SOURCE_DIR;

/// A block of a file, behind its mark.
std::string block(const std::string& file, const std::string& mark)
{
    const std::string text = text_of(source / file);
    const auto at = text.find("<!-- " + mark + " -->");
    REQUIRE(at != std::string::npos);
    const auto start = text.find('\n', text.find("```", at)) + 1;
    return text.substr(start, text.find("```", start) - start);
}

} // namespace

TEST_CASE("the kit that is worked through is packed as the guide says")
{
    const auto packed = program("pack " + quoted((source / "kits/broth-heath.yaml").string()));
    CHECK(packed.code == 0);
    CHECK(packed.out.find(block("kits/README.md", "worked")) == 0);
}

TEST_CASE("answers in inches are those of README.md, and what is saved is metric all the same")
{
    const Folder folder;
    write(folder / "tea.yaml", block("README.md", "kit"));
    const std::string kit = quoted((folder / "tea.yaml").string());
    const auto us = program("pack " + kit + " --units us --json " + quoted((folder / "us.json").string()));
    CHECK(us.code == 0);
    CHECK(us.out.find(block("README.md", "units")) == 0);
    CHECK(!holds(us.out, " mm"));
    CHECK(!holds(us.out, " ml"));
    const auto metric = program("pack " + kit + " --units metric --json " + quoted((folder / "metric.json").string()));
    CHECK(metric.out == block("README.md", "answer"));
    CHECK(text_of(folder / "us.json") == text_of(folder / "metric.json"));
    const auto verified = program("verify --units us " + quoted((folder / "us.json").string()) + " --kit " + kit);
    CHECK(verified.code == 0);
    CHECK(holds(verified.out, "4.38 in across"));
    const auto wrong = program("pack " + kit + " --units feet");
    CHECK(wrong.code == 2);
    CHECK(holds(wrong.err, "\"feet\" is not a system of units; choose metric or us"));
}
