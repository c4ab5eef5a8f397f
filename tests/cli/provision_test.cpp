// SPDX-License-Identifier: GPL-3.0-or-later
/// What a trip takes, as the program is run; and what of it is packed.
#include <catch2/catch.hpp>

#include <nlohmann/json.hpp>
#include <sstream>

#include "cli/program.hpp"

using namespace tuckwright::cli_test;
using nlohmann::json;
namespace fs = std::filesystem;

namespace {

const fs::path source = TUCKWRIGHT_SOURCE_DIR;
const std::string moor = quoted((source / "kits/porridge-moor.yaml").string());

/// The code block that follows a marker in README.md.
std::string block(const std::string& marker)
{
    const std::string readme = text_of(source / "README.md");
    const auto at = readme.find("<!-- " + marker + " -->");
    REQUIRE(at != std::string::npos);
    const auto start = readme.find('\n', readme.find("```", at)) + 1;
    return readme.substr(start, readme.find("```", start) - start);
}

const std::string small_trip = R"(kit: Small trip
trip:
  people: 1
  days: 1
  boils: 2
  water-each: 300 ml
  start: 15 C
  fuel:
    what: gas
    heat-share: 50 %
    reserve: 20 %
    offered: [{id: gas, name: Cartridge, weight: 60 g, holds: 100 g, cylinder: {diameter: 90, height: 70}}]
items:
  - {id: pot, weight: 120, cylinder: {diameter: 110, height: 90}, inside: {wall: 1, base: 1}}
)";

} // namespace

TEST_CASE("the example of README.md is what the program says")
{
    const Folder folder;
    write(folder / "pier.yaml", block("trip"));
    const auto outcome = program("provision " + quoted((folder / "pier.yaml").string()));
    INFO(outcome.err);
    REQUIRE(outcome.code == 0);
    std::istringstream expected(block("provision"));
    std::size_t at = 0, lines = 0;
    for (std::string line; std::getline(expected, line); ++lines) { // an extract, its lines in order
        INFO(line);
        const auto found = outcome.out.find(line + "\n", at);
        REQUIRE(found != std::string::npos);
        at = found + line.size();
    }
    CHECK(lines > 15);
}

TEST_CASE("a trip's provision is printed, saved, or written as JSON alone")
{
    const Folder folder;
    const auto plain = program("provision " + moor);
    CHECK(plain.code == 0);
    CHECK(plain.err.empty());
    CHECK(holds(plain.out, "Porridge and tea on the moor: what the trip takes, 2 people for 3 days"));
    CHECK(holds(plain.out, "Take care:"));
    const auto alone = program("provision " + moor + " --json -");
    CHECK(alone.code == 0);
    const json object = json::parse(alone.out);
    CHECK(object["format"] == "tuckwright-provision");
    const fs::path saved = folder / "needs.json";
    const auto both = program("provision " + moor + " --json " + quoted(saved.string()));
    CHECK(both.out == plain.out);
    CHECK(text_of(saved) == alone.out);
    CHECK(shell("\"$TUCKWRIGHT\" provision - <" + moor).out == plain.out);
}

TEST_CASE("what the trip takes is packed, and the saved bundle is one of that kit")
{
    const Folder folder;
    write(folder / "kit.yaml", small_trip);
    const std::string kit = quoted((folder / "kit.yaml").string()), saved = quoted((folder / "bundle.json").string());
    const auto packed = program("pack " + kit + " --effort quick --json " + saved);
    INFO(packed.err);
    REQUIRE(packed.code == 0);
    CHECK(holds(packed.out, "Cartridge (gas), standing, 90 mm across, 70 mm high, holds 100 g of gas"));
    CHECK(holds(packed.out, "For the trip: gas in Cartridge (gas), with 100 g in it."));
    CHECK(holds(packed.out, "'tuckwright provision'"));
    CHECK(program("verify " + saved).code == 0);
    CHECK(program("verify " + saved + " --kit " + kit).code == 0);
    const auto weighs = json::parse(text_of(folder / "bundle.json"))["weight_g"]["total"];
    CHECK(weighs == 280); // pot 120, cartridge 60 and 100 of gas
    std::string longer = small_trip;
    longer.replace(longer.find("days: 1"), 7, "days: 9");
    write(folder / "longer.yaml", longer);
    const auto other = program("verify " + saved + " --kit " + quoted((folder / "longer.yaml").string()));
    CHECK(other.code == 1); // that trip takes more cartridges
    CHECK(holds(other.err, "refused"));
}

TEST_CASE("a kit without a trip, a faulty one and a wrong file are refused, and nothing is written")
{
    const Folder folder;
    const fs::path saved = folder / "needs.json";
    const std::string json_option = " --json " + quoted(saved.string());
    const auto none = program("provision " + quoted((source / "kits/tea-ridge.yaml").string()) + json_option);
    CHECK(none.code == 2);
    CHECK(holds(none.err, "this kit has no 'trip'"));
    CHECK(none.out.empty());
    const auto faulty =
        program("provision " + quoted((source / "tests/corpus/kits/faulty/trip-faulty.yaml").string()) + json_option);
    CHECK(faulty.code == 2);
    CHECK(holds(faulty.err, "trip-faulty.yaml:3:11: people is 'none'"));
    CHECK(holds(faulty.err, "trip-faulty.yaml:18:9: food is")); // all at once
    CHECK(program("provision /no/such/kit.yaml" + json_option).code == 2);
    CHECK(program("provision").code == 2);
    CHECK(program("provision " + moor + " --effort quick").code == 2);
    CHECK(program("provision " + moor + " --json " + quoted((folder / "no/such.json").string())).code == 2);
    CHECK(folder.entries() == 0);
}

TEST_CASE("more vessels than a kit may have are refused by pack, while provision still shows why")
{
    const Folder folder;
    std::string text = small_trip;
    text.replace(text.find("days: 1"), 7, "days: 365");
    text.replace(text.find("people: 1"), 9, "people: 90");
    write(folder / "kit.yaml", text);
    const std::string kit = quoted((folder / "kit.yaml").string());
    const auto packed = program("pack " + kit);
    CHECK(packed.code == 2);
    CHECK(holds(packed.err, "kit.yaml: the trip takes "));
    CHECK(holds(packed.err, "of 'gas' for gas, but a kit may have at most 200 of one thing"));
    const auto shown = program("provision " + kit);
    CHECK(shown.code == 0);
    CHECK(holds(shown.out, " of it would do"));
}
