// SPDX-License-Identifier: GPL-3.0-or-later
/// What sets the size, as the program is run.
#include <catch2/catch.hpp>
#include <cmath>
#include <nlohmann/json.hpp>

#include "cli/program.hpp"

using namespace tuckwright::cli_test;
using nlohmann::json;

namespace {

const std::string quick = " --effort quick";

std::string kit_in(const Folder& folder, const std::string& text = two_tins)
{
    write(folder / "kit.yaml", text);
    return quoted((folder / "kit.yaml").string());
}

} // namespace

TEST_CASE("size tells the chains and what would be saved, the same on any number of threads")
{
    const Folder folder;
    const std::string kit = kit_in(folder), saved = quoted((folder / "size.json").string());
    const auto told = program("size " + kit + quick + " --json " + saved);
    INFO(told.err << told.out);
    CHECK(told.code == 0);
    CHECK(told.err.empty());
    CHECK(holds(told.out, "Two tins: packs into a round bundle 60"));
    CHECK(holds(told.out, "Diameter 60 mm: tin 60 mm."));
    CHECK((holds(told.out, "tin 40 mm + box 30 mm.") || holds(told.out, "box 30 mm + tin 40 mm.")));
    CHECK(holds(told.out, "tin: left at home"));
    CHECK(holds(told.out, "10 %"));
    const json answer = json::parse(text_of(folder / "size.json"));
    CHECK(answer["format"] == "tuckwright-size");
    CHECK(answer["version"] == 1);
    CHECK(answer["status"] == "proved-best");
    REQUIRE(answer["chains"].size() == 2);
    CHECK(answer["chains"][1]["mm"] == 70);
    for (const json& ask : answer["what_ifs"]) {
        REQUIRE(ask["bundle"].is_object());
        CHECK(ask["saved_ml"].get<double>() >= 0);
        CHECK(ask["bundle"]["volume_ml"].get<double>() + ask["saved_ml"].get<double>() <=
              answer["bundle"]["volume_ml"].get<double>() * (1 + 1e-9) +
                  (ask["saved_ml"] == 0 ? 1e9 : 0)); // without a saving, the bundle may be a larger one
    }
    for (const char* threads : {"1", "2"}) {
        CHECK(program("size " + kit + quick + " --json - --threads " + threads).out == text_of(folder / "size.json"));
    }
}

TEST_CASE("size tells the chains of a saved bundle, and refuses a spoilt one")
{
    const Folder folder;
    const std::string saved = quoted((folder / "bundle.json").string());
    REQUIRE(program("pack " + kit_in(folder) + quick + " --json " + saved).code == 0);
    const auto told = program("size " + saved);
    INFO(told.err);
    CHECK(told.code == 0);
    CHECK(holds(told.out, "Diameter 60 mm: tin 60 mm."));
    CHECK(holds(told.out, "give the kit file"));
    CHECK(json::parse(program("size " + saved + " --json -").out)["what_ifs"].empty());
    json spoilt = json::parse(text_of(folder / "bundle.json"));
    spoilt["items"][0]["solids"][0]["center"][2] = 25;
    write(folder / "spoilt.json", spoilt.dump());
    const auto refused = program("size " + quoted((folder / "spoilt.json").string()));
    CHECK(refused.code == 1);
    CHECK(refused.out.empty());
    CHECK(holds(refused.err, "refused"));
}

TEST_CASE("size names faults of the kit and of options, and writes nothing")
{
    const Folder folder;
    const std::string saved = (folder / "size.json").string();
    const std::string kit =
        kit_in(folder, "kit: Tins\nitems:\n  - {id: tin, weight: 50, cylinder: {diameter: -3, hight: 40}}\n");
    const auto faulty = program("size " + kit + " --json " + quoted(saved));
    CHECK(faulty.code == 2);
    CHECK(faulty.out.empty());
    CHECK(holds(faulty.err, "kit.yaml:3:"));
    CHECK(holds(faulty.err, "hight"));
    CHECK_FALSE(std::filesystem::exists(saved));
    CHECK(program("size").code == 2);
    CHECK(program("size " + quoted((folder / "none.yaml").string())).code == 2);
    CHECK(program("size " + kit_in(folder) + " --effort great").code == 2);
    const auto misspelt = program("size " + kit_in(folder) + " --threds 2");
    CHECK(misspelt.code == 2);
    CHECK(holds(misspelt.err, "--threads"));
    const auto nowhere = program("size " + kit_in(folder) + " --json " + quoted((folder / "no/such.json").string()));
    CHECK(nowhere.code == 2);
    CHECK(nowhere.out.empty());
    const auto onto_itself = program("size " + kit_in(folder) + " --json " + kit_in(folder));
    CHECK(onto_itself.code == 2);
    CHECK(text_of(folder / "kit.yaml") == two_tins);
    CHECK(program("size " + kit_in(folder, "just some words")).code == 2);
}

TEST_CASE("size says why nothing fits")
{
    const Folder folder;
    const auto told =
        program("size " +
                kit_in(folder, "bundle: {shape: cylinder, height: 20}\n" + two_tins.substr(0, two_tins.find("bundle")) +
                                   two_tins.substr(two_tins.find("items"))) +
                quick);
    INFO(told.err);
    CHECK(told.code == 1);
    CHECK(holds(told.out, "does not fit"));
    CHECK_FALSE(holds(told.out, "What sets the size"));
}

TEST_CASE("size keeps to its seconds, and reads a kit from standard input")
{
    const Folder folder;
    kit_in(folder);
    const auto told =
        shell("\"$TUCKWRIGHT\" size - --seconds 20 --effort quick < " + quoted((folder / "kit.yaml").string()));
    CHECK(told.code == 0);
    CHECK(holds(told.out, "What sets the size:"));
}
