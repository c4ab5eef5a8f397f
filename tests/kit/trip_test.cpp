// SPDX-License-Identifier: GPL-3.0-or-later
/// The trip of a kit as it is read: units, what may be left out, offered vessels and the rules that name them.
#include <catch2/catch.hpp>

#include <algorithm>
#include <string>

#include "kit/quantity.hpp"
#include "tuckwright/kit_reader.hpp"
#include "tuckwright/trip.hpp"

using namespace tuckwright;

namespace {

std::string with(std::string text, const std::string& old, const std::string& fresh)
{
    const auto at = text.find(old);
    REQUIRE(at != std::string::npos);
    return text.replace(at, old.size(), fresh);
}

const std::string spirit = R"(kit: Trip
trip:
  people: 2
  days: 3
  boils: 2
  water-each: 400 ml
  start: 8 C
  fuel: {what: spirit, strength: 85 %, heat-share: 50 %, reserve: 20 %}
items:
  - {id: pot, weight: 190, cylinder: {diameter: 130, height: 110}, inside: {wall: 1, base: 1}}
)";

Trip trip_of(const std::string& text)
{
    const auto kit = read_kit_text(text, "kit.yaml");
    INFO((kit ? "" : to_string(kit.problems().front())));
    REQUIRE(kit.ok());
    REQUIRE(kit->trip);
    return *kit->trip;
}

std::string first_fault(const std::string& text)
{
    const auto kit = read_kit_text(text, "kit.yaml");
    return kit ? "" : to_string(kit.problems().front());
}

} // namespace

TEST_CASE("a trip is read, and what it leaves out stays open")
{
    const Trip trip = trip_of(spirit);
    CHECK(trip.people == 2);
    CHECK(trip.days == 3);
    CHECK(trip.boils == 2);
    CHECK(trip.water_each_ml == 400);
    CHECK(trip.start_c == 8);
    CHECK_FALSE(trip.altitude_m);
    CHECK_FALSE(trip.boils_at_c);
    CHECK_FALSE(trip.boils_away);
    CHECK(trip.fuel.what == Fuel::spirit);
    CHECK(trip.fuel.strength == Approx(0.85));
    CHECK(trip.fuel.heat_share == Approx(0.5));
    CHECK(trip.fuel.reserve == Approx(0.2));
    CHECK_FALSE(trip.fuel.headspace);
    CHECK(trip.portions.empty());
    CHECK_FALSE(read_kit_text(with(spirit, spirit.substr(10, spirit.find("items") - 10), ""), "kit.yaml")->trip);
}

TEST_CASE("units of a trip are turned into those of the program")
{
    CHECK(trip_of(with(spirit, "start: 8 C", "start: 50 F")).start_c == Approx(10));
    CHECK(trip_of(with(spirit, "start: 8 C", "start: 8 °C")).start_c == 8);
    CHECK(trip_of(with(spirit, "start: 8 C", "start: 8")).start_c == 8);
    CHECK(*trip_of(with(spirit, "start: 8 C", "start: 8 C\n  boils-at: 208.4 F")).boils_at_c == Approx(98));
    CHECK(*trip_of(with(spirit, "start: 8 C", "start: 8 C\n  altitude: 2000 ft")).altitude_m == Approx(609.6));
    CHECK(*trip_of(with(spirit, "start: 8 C", "start: 8 C\n  altitude: 1.2 km")).altitude_m == Approx(1200));
    CHECK(*trip_of(with(spirit, "start: 8 C", "start: 8 C\n  altitude: -400")).altitude_m == Approx(-400));
    // US fluid ounce: 231/128 cubic inches, 29.5735 ml (NIST Special Publication 811, 2008, appendix B.8).
    CHECK(trip_of(with(spirit, "400 ml", "16 fl oz")).water_each_ml == Approx(473.1765).margin(1e-4));
    CHECK(trip_of(with(spirit, "400 ml", "0.4 l")).water_each_ml == Approx(400));
    CHECK(trip_of(with(spirit, "85 %", "85 % vol")).fuel.strength == Approx(0.85));
    CHECK(*reading::parse_volume("1 fl oz", reading::Unit::ml) == Approx(29.5735296));
    const std::string fuel = "{what: spirit, strength: 85 %, heat-share: 50 %, reserve: 20 %}";
    const std::string petrol = "{what: white-spirit, density: 720 g/l, heat-share: 50 %, reserve: 20 %}";
    CHECK(*trip_of(with(spirit, fuel, petrol)).fuel.density == Approx(0.72));
}

TEST_CASE("bounds are included, and what lies beyond is told with them")
{
    for (const char* share : {"5 %", "95 %"}) {
        CHECK(first_fault(with(spirit, "heat-share: 50 %", std::string("heat-share: ") + share)).empty());
    }
    CHECK(first_fault(with(spirit, "heat-share: 50 %", "heat-share: 95.1 %")) ==
          "kit.yaml:8:52: heat-share is '95.1 %', but must be from 5 to 95 %; check the number and its unit");
    CHECK(first_fault(with(spirit, "heat-share: 50 %", "heat-share: 50")) ==
          "kit.yaml:8:52: heat-share is '50', without a unit; write it such as '50 %'");
    CHECK(first_fault(with(spirit, "start: 8 C", "start: 8 K")).find("unknown unit 'K'") != std::string::npos);
    CHECK(first_fault(with(spirit, "start: 8 C", "start: 1/2")).find("is a fraction") != std::string::npos);
    CHECK(first_fault(with(spirit, "start: 8 C", "start: 8,5 C")).find("comma") != std::string::npos);
}

TEST_CASE("offered vessels leave the items and rules of the kit alone until they come along")
{
    const std::string fuel = "reserve: 20 %}";
    const std::string offered = R"(reserve: 20 %, offered: [
    {id: b1, weight: 30, holds: 300 ml, cylinder: {diameter: 70, height: 100}, kind: fragile},
    {id: b2, weight: 30, holds: 400 ml, cylinder: {diameter: 80, height: 100}, inside: {wall: 1, base: 1, lid: own}}]})";
    const std::string cup =
        "  - {id: cup, weight: 60, kind: lips, cylinder: {diameter: 80, height: 60}, apart-from: b2}\n";
    const auto kit = read_kit_text(with(spirit, fuel, offered) + cup, "kit.yaml");
    INFO((kit ? "" : to_string(kit.problems().front())));
    REQUIRE(kit.ok());
    CHECK(kit->items.size() == 2);
    CHECK(kit->rules.empty());
    const auto& offers = kit->trip->fuel.offers;
    REQUIRE(offers.size() == 2);
    CHECK(offers[0].item.id == "b1");
    CHECK(offers[0].holds == 300);
    CHECK(offers[0].item.kinds == std::vector<Kind>{Kind::fuel, Kind::liquid, Kind::fragile});
    CHECK(offers[0].item.upright);
    CHECK(offers[0].item.nothing_on_top); // for it is fragile
    CHECK(offers[1].item.is_full());
    const auto& rules = kit->trip->rules;
    CHECK(rules.size() == 2); // fuel keeps apart from lips, for each
    CHECK(std::all_of(rules.begin(), rules.end(), [](const CarryRule& rule) { return rule.keep == Keep::apart; }));
}

TEST_CASE("gas cartridges are fuel under pressure, tablets are fuel, food is food")
{
    const std::string fuel = "{what: spirit, strength: 85 %, heat-share: 50 %, reserve: 20 %}";
    const std::string of = "heat-share: 50 %, reserve: 20 %, offered: [{id: o, weight: 9, holds: 90 g, cylinder: "
                           "{diameter: 70, height: 60}}]}";
    using Kinds = std::vector<Kind>;
    CHECK(trip_of(with(spirit, fuel, "{what: gas, " + of)).fuel.offers[0].item.kinds ==
          Kinds{Kind::fuel, Kind::pressurised});
    CHECK(trip_of(with(spirit, fuel, "{what: tablets, " + of)).fuel.offers[0].item.kinds == Kinds{Kind::fuel});
    const std::string food = fuel +
                             "\n  food: [{what: tea, kind: drink, portion: 3 g, a-day: 2, density: 0.4 kg/l, offered: "
                             "[{id: o, weight: 9, holds: 90 ml, cylinder: {diameter: 70, height: 60}}]}]";
    const Trip trip = trip_of(with(spirit, fuel, food));
    CHECK(trip.portions[0].offers[0].item.kinds == Kinds{Kind::drink});
    CHECK(trip.portions[0].a_day == 2);
    CHECK(trip.portions[0].kind == Kind::drink);
}
