// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include <nlohmann/json.hpp>

#include "cli/program.hpp"

using namespace tuckwright::cli_test;
using nlohmann::json;
namespace fs = std::filesystem;

namespace {

const std::string cup_and_tin = R"(kit: A cup and a tin
bundle: {shape: cylinder}
items:
  - {id: cup, name: Cup, weight: 62 g, cylinder: {diameter: 80, height: 70}, inside: {wall: 1, base: 1}}
  - {id: tin, name: Tin, weight: 50 g, cylinder: {diameter: 40, height: 60}, contents: {what: salt, amount: 10 g}}
)";

} // namespace

TEST_CASE("room answers for a kit and for its saved bundle alike")
{
    const Folder folder;
    write(folder / "kit.yaml", cup_and_tin);
    const std::string kit = quoted((folder / "kit.yaml").string()), saved = quoted((folder / "bundle.json").string());
    const auto of_kit = program("room " + kit + " --effort quick");
    INFO(of_kit.err << of_kit.out);
    CHECK(of_kit.code == 0);
    CHECK(of_kit.err.empty());
    CHECK(holds(of_kit.out, "A cup and a tin: what else goes into a round bundle 80 mm across"));
    CHECK(holds(of_kit.out, "In Cup, beside Tin:\n  round, standing:"));
    CHECK(holds(of_kit.out, "proved to go in by hand"));
    CHECK(holds(of_kit.out, "fuel and food above all"));
    REQUIRE(program("pack " + kit + " --effort quick --json " + saved).code == 0);
    const auto of_bundle = program("room " + saved + " --effort quick");
    INFO(of_bundle.err);
    CHECK(of_bundle.code == 0);
    CHECK(of_bundle.out == of_kit.out);
    const auto piped = shell("\"$TUCKWRIGHT\" room - --effort quick --json - --threads 1 <" + saved);
    CHECK(piped.code == 0);
    const auto all = json::parse(piped.out);
    CHECK(all["format"] == "tuckwright-room");
    CHECK(all["rooms"].size() == 2);
    const auto written = program("room " + kit + " --effort quick --json " + quoted((folder / "room.json").string()));
    CHECK(written.out == of_kit.out);
    CHECK(text_of(folder / "room.json") == piped.out);
}

TEST_CASE("room refuses a saved bundle that does not hold, and writes nothing")
{
    const Folder folder;
    write(folder / "kit.yaml", cup_and_tin);
    const auto bundle = folder / "bundle.json", wanted = folder / "room.json";
    REQUIRE(program("pack " + quoted((folder / "kit.yaml").string()) + " --effort quick --json " +
                    quoted(bundle.string()))
                .code == 0);
    auto spoilt = json::parse(text_of(bundle));
    for (auto& item : spoilt["items"]) {
        if (item["id"] == "tin") {
            item["solids"][0]["center"][2] = item["solids"][0]["center"][2].get<double>() + 3; // it hovers
        }
    }
    write(bundle, spoilt.dump());
    const auto refused = program("room " + quoted(bundle.string()) + " --json " + quoted(wanted.string()));
    INFO(refused.err);
    CHECK(refused.code == 1);
    CHECK(holds(refused.err, "refused ("));
    CHECK(refused.out.empty());
    CHECK_FALSE(fs::exists(wanted));
}

TEST_CASE("room: a kit that does not fit exits 1 and says why")
{
    const Folder folder;
    write(folder / "kit.yaml", "kit: Too long\nbundle: {shape: box, limits: {length: 100, width: 80, height: 60}}\nitems:\n"
                               "  - {id: pole, weight: 90, cylinder: {diameter: 10, height: 500}}\n");
    const auto outcome = program("room " + quoted((folder / "kit.yaml").string()) + " --effort quick");
    CHECK(outcome.code == 1);
    CHECK(holds(outcome.out, "does not fit into a box at most 100 mm long"));
    const auto saved = program("room " + quoted((folder / "kit.yaml").string()) + " --effort quick --json -");
    CHECK(saved.code == 1);
    CHECK(json::parse(saved.out)["rooms"].empty());
    CHECK(json::parse(saved.out)["status"] == "does-not-fit");
}

TEST_CASE("room: what is wrong with files and options is told at once, and nothing written")
{
    const Folder folder;
    write(folder / "kit.yaml", "kit: Nonsense\nitems:\n  - {id: a, wieght: 3, cylinder: {diameter: -4, height: 5}}\n");
    const auto faulty = program("room " + quoted((folder / "kit.yaml").string()) + " --json /nowhere/at/all.json");
    INFO(faulty.err);
    CHECK(faulty.code == 2);
    CHECK(holds(faulty.err, "kit.yaml:3:"));
    CHECK(holds(faulty.err, "wieght"));
    CHECK(holds(faulty.err, "/nowhere/at"));
    CHECK(folder.entries() == 1);
    CHECK(program("room " + quoted((folder / "missing.yaml").string())).code == 2);
    CHECK(program("room").code == 2);
    const auto option = program("room x.yaml --efort quick");
    CHECK(option.code == 2);
    CHECK(holds(option.err, "did you mean --effort?"));
    write(folder / "bundle.json", "{\"format\": \"tuckwright-bundle\", \"version\": 1}");
    CHECK(program("room " + quoted((folder / "bundle.json").string())).code == 2);
    const auto worst = program("room " + quoted((folder / "bundle.json").string()) + " --worst-case");
    CHECK(worst.code == 2);
}
