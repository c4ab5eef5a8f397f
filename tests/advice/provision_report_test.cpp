// SPDX-License-Identifier: GPL-3.0-or-later
/// What a trip takes, as text and JSON.
#include <catch2/catch.hpp>

#include <algorithm>
#include <nlohmann/json.hpp>
#include <sstream>

#include "tuckwright/kit_reader.hpp"
#include "tuckwright/provision_report.hpp"

using namespace tuckwright;
using nlohmann::json;

namespace {

Kit kit_of(const std::string& fuel, const std::string& altitude = "0 m", const std::string& items = "")
{
    const std::string text =
        "kit: Trip\ntrip:\n  people: 1\n  days: 2\n  boils: 3\n  water-each: 500 ml\n  start: 10 C\n"
        "  altitude: " +
        altitude + "\n  fuel: {what: " + fuel +
        ", heat-share: 50 %, reserve: 20 %}\n"
        "items:\n  - {id: pot, weight: 190, cylinder: {diameter: 130, height: 110}}\n" +
        items;
    const auto kit = read_kit_text(text, "kit.yaml");
    INFO((kit ? "" : to_string(kit.problems().front())));
    REQUIRE(kit.ok());
    return *kit;
}

std::string text_of(const Kit& kit) { return provision_text(provision(*kit.trip), kit); }

bool holds(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

const std::string bottle =
    ", offered: [{id: b, name: Bottle, weight: 30, holds: 200 ml, cylinder: {diameter: 60, height: 90}}]";

} // namespace

TEST_CASE("the text says what to take along, in what, and every line of the working")
{
    const Kit kit = kit_of("spirit, strength: 85 %, from: 95 %" + bottle);
    const Provision needs = provision(*kit.trip);
    const std::string text = provision_text(needs, kit);
    CHECK(holds(text, "Trip: what the trip takes, 1 person for 2 days"));
    CHECK(holds(text, "in 2 of Bottle (b), with "));
    CHECK(holds(text, "It is for 6 boils: "));
    CHECK(holds(text, "holds 200 ml, and may be filled with 180 ml: 2 of it would do"));
    CHECK(holds(text, "By the rule of thumb, one part of water to ten of spirit of 95 %, it would become 87.3 % vol;"));
    CHECK(holds(text, "86.4 % if volumes added up"));
    for (const auto& lines : {needs.heat, needs.fuel.working, needs.dilution->working}) {
        for (const WorkingLine& line : lines) {
            INFO(line.what << " " << line.sum);
            CHECK(holds(text, line.what + ": "));
            CHECK((line.sum.empty() || holds(text, "      " + line.sum + " = ")));
        }
    }
    std::istringstream stream(text);
    for (std::string line; std::getline(stream, line);) {
        CHECK(std::count_if(line.begin(), line.end(),
                            [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; }) <= 100);
    }
}

TEST_CASE("what was taken for granted, lies besides, or is not offered, is told")
{
    CHECK(holds(text_of(kit_of("gas")), "all isobutane"));
    CHECK_FALSE(holds(text_of(kit_of("gas, propane: 20 %")), "all isobutane"));
    CHECK(holds(text_of(kit_of("gas")), "5 % of the water to boil away"));
    CHECK_FALSE(holds(text_of(kit_of("gas")), "no altitude is given"));
    CHECK(holds(text_of(kit_of("white-spirit" + bottle)), "10 % of a bottle to stay empty"));
    CHECK(holds(text_of(kit_of("white-spirit")), "No vessel is offered for it"));
    const std::string can =
        "  - {id: can, name: Old can, weight: 90, kind: fuel, cylinder: {diameter: 60, height: 80}, contents: {what: "
        "petrol, amount: 100}}\n";
    CHECK(holds(text_of(kit_of("white-spirit", "0 m", can)), "there is fuel already: Old can."));
    CHECK_FALSE(holds(text_of(kit_of("white-spirit")), "fuel already"));
}

TEST_CASE("cautions are about the fuel at hand, and about heights where it is high")
{
    struct Row {
        const char *fuel, *word;
    };
    for (const Row& row :
         {Row{"spirit, strength: 85 %", "hardly be seen by day"}, Row{"gas", "in the cold its pressure falls"},
          Row{"white-spirit", "never for a spirit burner"}, Row{"tablets", "their fumes are poisonous"}}) {
        CAPTURE(row.fuel);
        const std::string text = text_of(kit_of(row.fuel));
        CHECK(holds(text, row.word));
        CHECK(holds(text, "Carbon monoxide"));
        CHECK(holds(text, "Trains, ships and planes"));
        CHECK(holds(text, "The maker's instructions and the rules of the place go first."));
        CHECK_FALSE(holds(text, "High up"));
        CHECK(holds(text_of(kit_of(row.fuel, "2500 m")), "High up"));
    }
}

TEST_CASE("JSON tells the same figures")
{
    const Kit kit = kit_of("spirit, strength: 85 %, from: 96 %" + bottle);
    const Provision needs = provision(*kit.trip);
    const json object = json::parse(provision_json(needs, kit));
    CHECK(object["format"] == "tuckwright-provision");
    CHECK(object["version"] == 1);
    CHECK(object["kit"] == "Trip");
    CHECK(object["boils"] == 6);
    CHECK(object["fuel_kj"] == needs.fuel_kj);
    CHECK(object["fuel"]["weight_g"] == needs.fuel.grams);
    CHECK(object["fuel"]["volume_ml"] == *needs.fuel.ml);
    CHECK(object["fuel"]["chosen"]["id"] == "b");
    CHECK(object["fuel"]["chosen"]["count"] == 2);
    CHECK(object["fuel"]["offered"].size() == 1);
    CHECK(object["dilution"]["from_percent_vol"] == 96);
    CHECK(object["dilution"]["water_ml"] == needs.dilution->water_ml);
    CHECK(object["working"].size() == needs.heat.size());
    CHECK(object["food"].empty());
    CHECK(object["cautions"].size() >= 6);
    const Kit gas = kit_of("gas");
    const json other = json::parse(provision_json(provision(*gas.trip), gas));
    CHECK(other["dilution"].is_null());
    CHECK(other["fuel"]["volume_ml"].is_null());
    CHECK(other["fuel"]["chosen"].is_null());
}

TEST_CASE("below a packed bundle stands what was packed for the trip")
{
    CHECK(holds(provided_text(provision(*kit_of("spirit, strength: 85 %" + bottle).trip)),
                "spirit, 85 % vol in 2 of Bottle (b)"));
    CHECK(holds(provided_text(provision(*kit_of("gas").trip)), "no fuel or food was added"));
    CHECK(holds(provided_text(provision(*kit_of("gas").trip)), "'tuckwright provision'"));
}
