// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include <nlohmann/json.hpp>

#include "cli/program.hpp"
#include "support/workload.hpp"

using namespace tuckwright::cli_test;
using nlohmann::json;
namespace fs = std::filesystem;

namespace
{

/// Many things of many sizes: a search that takes a while.
std::string long_kit(const std::string& bundle = "{shape: cylinder}")
{
    std::string text = "kit: A long search\nbundle: " + bundle + "\nitems:\n";
    for (int i = 0; i < 30; ++i) {
        const int a = 20 + 7 * i % 31, b = 25 + 11 * i % 37, c = 30 + 5 * i % 41;
        text += "  - {id: box-" + std::to_string(i) + ", weight: 10, box: {length: " + std::to_string(a) +
                ", width: " + std::to_string(b) + ", height: " + std::to_string(c) + "}}\n";
    }
    return text;
}

/// Starts the program, sends it a signal after some seconds, and exits as it does.
Outcome interrupted(const std::string& arguments, const std::string& signal)
{
    return shell("\"$TUCKWRIGHT\" " + arguments + " & program=$!; sleep 4; kill -" + signal +
                 " $program; wait $program; exit $?");
}

} // namespace

TEST_CASE("every sample kit is packed, and its saved bundle verified")
{
    int tried = 0;
    for (const auto& entry : fs::directory_iterator(fs::path(TUCKWRIGHT_SOURCE_DIR) / "kits")) {
        if (entry.path().extension() != ".yaml" || tried == tuckwright::test::count(100, 5)) {
            continue;
        }
        ++tried;
        const Folder folder;
        const std::string saved = quoted((folder / "bundle.json").string());
        const auto packed = program("pack " + quoted(entry.path().string()) + " --effort quick --json " + saved);
        INFO(entry.path() << " said: " << packed.err << packed.out);
        CHECK(packed.code == 0);
        CHECK(packed.err.empty());
        CHECK(holds(packed.out, ": packs into a "));
        CHECK(holds(packed.out, "What lies in what:"));
        CHECK(holds(packed.out, "Putting it together:"));
        const auto verified = program("verify " + saved);
        INFO("verify said: " << verified.err);
        CHECK(verified.code == 0);
        CHECK(verified.out.find("verified: ") == 0);
        CHECK(folder.entries() == 1);
    }
    CHECK(tried >= 5);
}

TEST_CASE("a kit from standard input, JSON alone to standard output, and the same bytes each time")
{
    const Folder folder;
    write(folder / "kit.yaml", two_tins);
    const std::string from =
        "\"$TUCKWRIGHT\" pack - --effort quick --json - <" + quoted((folder / "kit.yaml").string());
    const auto first = shell(from);
    INFO(first.err);
    REQUIRE(first.code == 0);
    CHECK(first.err.empty());
    const auto object = json::parse(first.out);
    CHECK(object["kit"] == "Two tins");
    CHECK(object["effort"] == "quick");
    CHECK(object["seed"] == 1);
    CHECK(object["items"].size() == 2);
    CHECK(shell(from + " --threads 1").out == first.out);
    const auto piped = shell(from + " | \"$TUCKWRIGHT\" verify -");
    CHECK(piped.code == 0);
    CHECK(holds(piped.out, "2 items"));
}

TEST_CASE("the seed is taken over")
{
    const Folder folder;
    write(folder / "kit.yaml", two_tins);
    const auto outcome = program("pack " + quoted((folder / "kit.yaml").string()) +
                                 " --effort quick --json - --seed 18446744073709551615");
    INFO(outcome.err);
    REQUIRE(outcome.code == 0);
    CHECK(json::parse(outcome.out)["seed"] == 18446744073709551615U);
}

TEST_CASE("a kit that does not fit exits 1, with its proof as text and JSON")
{
    const Folder folder;
    write(folder / "kit.yaml",
          "kit: Too long\nbundle: {shape: box, limits: {length: 100, width: 80, height: 60}}\nitems:\n"
          "  - {id: pole, weight: 90, cylinder: {diameter: 10, height: 500}}\n");
    const auto saved = folder / "bundle.json";
    const auto packed =
        program("pack " + quoted((folder / "kit.yaml").string()) + " --effort quick --json " + quoted(saved.string()));
    INFO(packed.err);
    CHECK(packed.code == 1);
    CHECK(holds(packed.out, "Too long: does not fit into a box at most 100 mm long"));
    REQUIRE(fs::exists(saved));
    const auto object = json::parse(text_of(saved));
    CHECK(object["status"] == "does-not-fit");
    CHECK(object["bundle"].is_null());
    CHECK(object["items"].empty());
    CHECK_FALSE(object["explanation"].get<std::string>().empty());
    const auto verified = program("verify " + quoted(saved.string()));
    CHECK(verified.code == 1);
    CHECK(holds(verified.err, "holds no bundle: its status is does-not-fit"));
}

TEST_CASE("interrupted, it exits 130 with the best bundle so far, which verifies")
{
    for (const char* signal : {"INT", "TERM"}) {
        const Folder folder;
        write(folder / "kit.yaml", long_kit());
        const auto saved = folder / "bundle.json";
        const auto outcome = interrupted("pack " + quoted((folder / "kit.yaml").string()) +
                                             " --effort thorough --json " + quoted(saved.string()),
                                         signal);
        INFO(signal << " said: " << outcome.err << outcome.out);
        CHECK(outcome.code == 130);
        REQUIRE(fs::exists(saved));
        CHECK(json::parse(text_of(saved))["status"] == "stopped");
        CHECK(holds(outcome.out, "The search was stopped early"));
        CHECK(program("verify " + quoted(saved.string())).code == 0);
        CHECK(folder.entries() == 2);
    }
}

TEST_CASE("a search that is stopped before it has found anything says so, and not that effort lacks")
{
    const Folder folder;
    // Four thousandths more than the boxes' own volumes.
    write(folder / "kit.yaml", long_kit("{shape: box, length: 131, width: 131, height: 131}"));
    const auto outcome = program("pack " + quoted((folder / "kit.yaml").string()) + " --seconds 0.000001 --json " +
                                 quoted((folder / "bundle.json").string()));
    INFO(outcome.err << outcome.out);
    CHECK(outcome.code == 1);
    CHECK(holds(outcome.out, "The search was stopped after 1e-06 s before it had found anything"));
    CHECK(holds(outcome.out, "give it longer: more --seconds, or none"));
    CHECK_FALSE(holds(outcome.out, "thorough"));
    CHECK(json::parse(text_of(folder / "bundle.json"))["status"] == "not-found");
}

TEST_CASE("a saved bundle is not taken for a kit with many faults")
{
    const Folder folder;
    write(folder / "kit.yaml", two_tins);
    const std::string saved = quoted((folder / "bundle.json").string());
    REQUIRE(program("pack " + quoted((folder / "kit.yaml").string()) + " --effort quick --json " + saved).code == 0);
    const auto outcome = program("pack " + saved);
    CHECK(outcome.code == 2);
    CHECK(outcome.err ==
          (folder / "bundle.json").string() + ": this is a saved bundle, not a kit; give it to verify, card, draw, look, room or size\n");
}

TEST_CASE("a search with a clock ends by itself, done")
{
    const Folder folder;
    write(folder / "kit.yaml", long_kit());
    const auto outcome =
        program("pack " + quoted((folder / "kit.yaml").string()) + " --effort thorough --seconds 3 --json -");
    INFO(outcome.err);
    CHECK(outcome.code == 0);
    CHECK(json::parse(outcome.out)["status"] == "stopped");
}
