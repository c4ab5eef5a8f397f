// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include <nlohmann/json.hpp>

#include "cli/program.hpp"

using namespace tuckwright::cli_test;
using nlohmann::json;
namespace fs = std::filesystem;

namespace {

/// Whether the program has a turning picture in it; without one, `look` says so whatever else is given.
bool can_draw()
{
    const Folder folder;
    write(folder / "kit.yaml", two_tins);
    const auto outcome = program("look " + quoted((folder / "kit.yaml").string()) + " --effort quick --html -");
    if (holds(outcome.err, "no turning picture")) {
        CHECK(outcome.code == 2);
        CHECK(outcome.out.empty());
        CHECK(holds(outcome.err, "node (18 or later)"));
        WARN("this build has no turning picture, so 'look' is NOT tested further");
        return false;
    }
    return true;
}

} // namespace

TEST_CASE("look draws a kit and its saved bundle alike")
{
    if (!can_draw()) {
        return;
    }
    const Folder folder;
    write(folder / "kit.yaml", two_tins);
    const std::string kit = quoted((folder / "kit.yaml").string()), saved = quoted((folder / "bundle.json").string());
    const auto page = folder / "page.html";
    const auto of_kit = program("look " + kit + " --effort quick --html " + quoted(page.string()));
    INFO(of_kit.err);
    CHECK(of_kit.code == 0);
    CHECK(of_kit.err.empty());
    CHECK(holds(of_kit.out, "Two tins: a round bundle 60"));
    CHECK(holds(of_kit.out, "needs no"));
    const std::string html = text_of(page);
    CHECK(html.rfind("<!DOCTYPE html>", 0) == 0);
    CHECK(holds(html, "<h1>Two tins</h1>"));
    CHECK(holds(html, "\"rooms\":[{"));
    REQUIRE(program("pack " + kit + " --effort quick --json " + saved).code == 0);
    const auto piped = shell("\"$TUCKWRIGHT\" look - --html - --threads 1 <" + saved);
    CHECK(piped.code == 0);
    CHECK(piped.out == html);
    const auto without = program("look " + saved + " --without-room --html -");
    CHECK(without.code == 0);
    CHECK(holds(without.out, "\"room\":null"));
}

TEST_CASE("look refuses a saved bundle that does not hold, and writes nothing")
{
    if (!can_draw()) {
        return;
    }
    const Folder folder;
    write(folder / "kit.yaml", two_tins);
    const auto bundle = folder / "bundle.json", page = folder / "page.html";
    REQUIRE(program("pack " + quoted((folder / "kit.yaml").string()) + " --effort quick --json " +
                    quoted(bundle.string()))
                .code == 0);
    auto spoilt = json::parse(text_of(bundle));
    auto& height = spoilt["items"][1]["solids"][0]["center"][2];
    height = height.get<double>() + 1;
    write(bundle, spoilt.dump());
    const auto refused = program("look " + quoted(bundle.string()) + " --html " + quoted(page.string()));
    INFO(refused.err);
    CHECK(refused.code == 1);
    CHECK(holds(refused.err, "refused ("));
    CHECK(refused.out.empty());
    CHECK_FALSE(fs::exists(page));
}

TEST_CASE("look: a kit that does not fit exits 1, says why, and writes nothing")
{
    if (!can_draw()) {
        return;
    }
    const Folder folder;
    write(folder / "kit.yaml", "kit: Too long\nbundle: {shape: box, limits: {length: 100, width: 80, height: 60}}\nitems:\n"
                               "  - {id: pole, weight: 90, cylinder: {diameter: 10, height: 500}}\n");
    const std::string kit = quoted((folder / "kit.yaml").string());
    const auto outcome = program("look " + kit + " --effort quick --html " + quoted((folder / "page.html").string()));
    CHECK(outcome.code == 1);
    CHECK(holds(outcome.out, "does not fit into a box at most 100 mm long"));
    CHECK(folder.entries() == 1);
    const auto piped = program("look " + kit + " --effort quick --html -");
    CHECK(piped.code == 1);
    CHECK(piped.out.empty());
    CHECK(holds(piped.err, "does-not-fit"));
}

TEST_CASE("look: what is wrong with files and options is told at once, and nothing written")
{
    const Folder folder;
    write(folder / "kit.yaml", "kit: Nonsense\nitems:\n  - {id: a, wieght: 3, cylinder: {diameter: -4, height: 5}}\n");
    const std::string kit = quoted((folder / "kit.yaml").string());
    const auto faulty = program("look " + kit + " --html /nowhere/at/all.html");
    INFO(faulty.err);
    CHECK(faulty.code == 2);
    CHECK(holds(faulty.err, "kit.yaml:3:"));
    CHECK(holds(faulty.err, "wieght"));
    CHECK(holds(faulty.err, "/nowhere/at"));
    CHECK(program("look " + kit).code == 2);
    CHECK(program("look " + kit + " --html " + kit).code == 2);
    CHECK(program("look").code == 2);
    CHECK(program("look " + quoted((folder / "missing.yaml").string()) + " --html -").code == 2);
    const auto option = program("look x.yaml --htm page.html");
    CHECK(option.code == 2);
    write(folder / "bundle.json", "{\"format\": \"tuckwright-bundle\", \"version\": 1}");
    const std::string saved = quoted((folder / "bundle.json").string());
    CHECK(program("look " + saved + " --html -").code == 2);
    write(folder / "nonsense.yaml", "\x01\x02 not a kit");
    CHECK(program("look " + quoted((folder / "nonsense.yaml").string()) + " --html -").code == 2);
    CHECK(folder.entries() == 3);
}
