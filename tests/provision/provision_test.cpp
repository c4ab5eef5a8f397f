// SPDX-License-Identifier: GPL-3.0-or-later
/// What trips take: the working against a pocket calculator, and what must hold whatever the trip.
#include <catch2/catch.hpp>

#include <cmath>
#include <random>

#include "provision/sums.hpp"
#include "tuckwright/kit_reader.hpp"
#include "tuckwright/provision.hpp"

using namespace tuckwright;
using test::worked_out;

namespace {

Trip trip_of(Fuel fuel)
{
    Trip trip;
    trip.people = 2;
    trip.days = 2;
    trip.boils = 2;
    trip.water_each_ml = 400;
    trip.start_c = 10;
    trip.fuel.what = fuel;
    trip.fuel.strength = fuel == Fuel::spirit ? 0.85 : 0;
    trip.fuel.heat_share = 0.5;
    trip.fuel.reserve = 0.2;
    return trip;
}

Offer vessel(const std::string& id, double holds, double diameter, double height)
{
    Offer offer;
    offer.item.id = offer.item.name = id;
    offer.item.weight_g = 40;
    offer.item.outside = Cylinder{diameter, height};
    offer.holds = holds;
    return offer;
}

std::vector<WorkingLine> all_lines(const Provision& needs)
{
    std::vector<WorkingLine> all = needs.heat;
    const auto add = [&](const std::vector<WorkingLine>& lines) { all.insert(all.end(), lines.begin(), lines.end()); };
    add(needs.fuel.working);
    if (needs.dilution) {
        add(needs.dilution->working);
    }
    for (const Need& need : needs.food) {
        add(need.working);
    }
    return all;
}

/// Whether the sum printed gives the value printed, to one in its last digit.
bool adds_up(const WorkingLine& line)
{
    const auto value = worked_out(line.sum);
    return line.sum.empty() || (value && std::abs(*value - line.value) <= 1.0001 * std::pow(10.0, -line.decimals));
}

double last_value(const std::vector<WorkingLine>& lines, const std::string& what)
{
    for (auto line = lines.rbegin(); line != lines.rend(); ++line) {
        if (line->what == what) {
            return line->value;
        }
    }
    FAIL("no line " << what);
    return 0;
}

Trip random_trip(std::mt19937& random)
{
    const auto number = [&](double low, double high) {
        return low + (high - low) * static_cast<double>(random() % 10001) / 10000;
    };
    Trip trip = trip_of(static_cast<Fuel>(random() % 4));
    trip.people = 1 + static_cast<int>(random() % 9);
    trip.days = 1 + static_cast<int>(random() % 30);
    trip.boils = 1 + static_cast<int>(random() % 5);
    trip.water_each_ml = number(50, 2000);
    trip.start_c = number(0, 60);
    trip.altitude_m = number(-400, 8000);
    trip.boils_away = number(0, 0.3);
    trip.fuel.heat_share = number(0.1, 0.9);
    trip.fuel.reserve = number(0, 1);
    switch (trip.fuel.what) {
    case Fuel::spirit:
        trip.fuel.strength = number(0.6, 0.94);
        trip.fuel.from = 0.96;
        break;
    case Fuel::gas: trip.fuel.propane = number(0, 1); break;
    case Fuel::white_spirit: trip.fuel.density = number(0.7, 0.82); break;
    case Fuel::tablets: trip.fuel.tablet_g = number(2, 20); break;
    }
    trip.portions.push_back({"oats", Kind::food, number(5, 300), number(0.2, 4), number(0.1, 1.5), {}});
    return trip;
}

} // namespace

TEST_CASE("the pocket calculator works, and tells a wrong sum")
{
    CHECK(*worked_out("2 x 3 + 4 / 8 - 1") == 5.5);
    CHECK(*worked_out("2 x (1 - 0.5) ^ 2") == 0.5);
    CHECK(*worked_out("10 / (6 - log(1000 / 10))") == 2.5);
    CHECK_FALSE(worked_out("2 x"));
    CHECK_FALSE(worked_out("2 x 3)"));
    CHECK(adds_up({"", "", "2 x 3.04", 6.1, 1, "l"}));
    CHECK_FALSE(adds_up({"", "", "2 x 3.04", 6.3, 1, "l"}));
    CHECK_FALSE(adds_up({"", "", "two times three", 6, 0, "l"}));
}

TEST_CASE("a trip worked out by hand")
{
    // 2 people, 2 days, 2 boils of 0.4 l each: 3.2 l from 10 °C. At the sea 1013.25 hPa counts as 1013.3, 100.01 °C.
    // A litre: 4.2 x 90.01 = 378.1 (up), and 5 % of 2257: 491.0 in all. 3.2 x 491 = 1571.2; half of the heat is lost:
    // 3142.4; a fifth more: 3770.9. Spirit of 85 %: 0.794 x 26.8 - 0.206 x 2.45 = 20.77 kJ a gram. 181.6 g, 215 ml.
    const Provision needs = provision(trip_of(Fuel::spirit));
    CHECK(needs.water_l == Approx(3.2));
    CHECK(needs.boils == 4);
    CHECK(needs.boils_at_c == Approx(100.01));
    CHECK(last_value(needs.heat, "For a litre in all") == Approx(491.0));
    CHECK(needs.heat_kj == Approx(1571.2));
    CHECK(needs.fuel_kj == Approx(3770.9));
    CHECK(last_value(needs.fuel.working, "Net heat of a gram") == Approx(20.77));
    CHECK(needs.fuel.grams == Approx(181.6));
    CHECK(*needs.fuel.ml == Approx(215.0));
    CHECK(needs.assumed.size() == 2); // the altitude, and what boils away
    CHECK_FALSE(needs.dilution);
    CHECK_FALSE(needs.fuel.chosen);
}

TEST_CASE("other fuels take their own weights")
{
    CHECK(provision(trip_of(Fuel::gas)).fuel.grams == Approx(82.9));          // 3770.9 / 45.5
    CHECK(provision(trip_of(Fuel::white_spirit)).fuel.grams == Approx(87.7)); // 3770.9 / 43
    CHECK(*provision(trip_of(Fuel::white_spirit)).fuel.ml == Approx(117.0));  // 87.7 / 0.75
    CHECK(provision(trip_of(Fuel::tablets)).fuel.grams == Approx(134.7));     // 3770.9 / 28
    CHECK_FALSE(provision(trip_of(Fuel::gas)).fuel.ml);
    Trip whole = trip_of(Fuel::tablets);
    whole.fuel.tablet_g = 4; // 33.7, so 34 of them
    CHECK(provision(whole).fuel.grams == Approx(136));
    Trip mixed = trip_of(Fuel::gas);
    mixed.fuel.propane = 0.3; // 45.74 kJ a gram
    CHECK(provision(mixed).fuel.grams == Approx(82.5));
}

TEST_CASE("spirit is diluted by weight; volumes do not add up")
{
    Trip trip = trip_of(Fuel::spirit);
    trip.fuel.from = 0.95;
    const Provision needs = provision(trip);
    REQUIRE(needs.dilution);
    const Dilution& dilution = *needs.dilution;
    CHECK(dilution.spirit_g + dilution.water_g == Approx(needs.fuel.grams));
    CHECK(dilution.spirit_ml + dilution.water_ml > dilution.mixed_ml + 2);
    CHECK(100 * dilution.thumb_plain == Approx(86.4));
    CHECK(100 * dilution.thumb_true == Approx(87.3));
    // By OIML R 22: 215 ml of 85 % hold 182.75 ml of ethanol, which 192.4 ml of 95 % hold too.
    CHECK(dilution.spirit_ml == Approx(192.4).margin(0.2));
}

TEST_CASE("every sum of random trips adds up, and more is never less")
{
    std::mt19937 random(7);
    for (int i = 0; i < 300; ++i) {
        const Trip trip = random_trip(random);
        const Provision needs = provision(trip);
        CAPTURE(i);
        for (const WorkingLine& line : all_lines(needs)) {
            INFO(line.what << ": " << line.sum << " = " << line.value);
            CHECK(adds_up(line));
        }
        const auto takes = [&](const auto& change) {
            Trip other = trip;
            change(other);
            return provision(other).fuel.grams;
        };
        CHECK(takes([](Trip& t) { ++t.people; }) >= needs.fuel.grams);
        CHECK(takes([](Trip& t) { t.start_c += 1; }) <= needs.fuel.grams);
        CHECK(takes([](Trip& t) { *t.altitude_m += 300; }) <=
              needs.fuel.grams + 0.1 * needs.fuel.grams * *trip.boils_away);
        CHECK(takes([](Trip& t) { t.fuel.heat_share *= 0.9; }) >= needs.fuel.grams);
        CHECK(takes([](Trip& t) { t.fuel.reserve += 0.1; }) >= needs.fuel.grams);
    }
}

TEST_CASE("a fuel's weight is never below the unrounded one, and hardly above")
{
    std::mt19937 random(11);
    for (int i = 0; i < 200; ++i) {
        Trip trip = random_trip(random);
        trip.fuel.what = Fuel::tablets;
        trip.fuel.tablet_g.reset();
        trip.fuel.from.reset();
        trip.altitude_m.reset();
        trip.boils_at_c = 95;
        const double water_kg = trip.people * trip.days * trip.boils * trip.water_each_ml / 1000;
        const double kj = water_kg * (4.2 * (95 - trip.start_c) + *trip.boils_away * (2257 + 2.6 * 5));
        const double grams = kj / trip.fuel.heat_share * (1 + trip.fuel.reserve) / 28;
        const double told = provision(trip).fuel.grams;
        CAPTURE(i, grams, told);
        CHECK(told >= grams - 1e-6);
        CHECK(told < 1.01 * grams + 0.5);
    }
}

TEST_CASE("the smallest vessel that holds it with headspace is chosen, else several of one kind")
{
    Trip trip = trip_of(Fuel::spirit); // 215 ml
    trip.fuel.headspace = 0.1;
    trip.fuel.offers = {vessel("large", 900, 90, 180), vessel("just-too-small", 238, 70, 80),
                        vessel("right", 239, 70, 82), vessel("small", 120, 50, 80)};
    const Need one = provision(trip).fuel;
    REQUIRE(one.chosen);
    CHECK(one.vessels[*one.chosen].id == "right"); // 238 less a tenth are 214.2
    CHECK(one.vessels[1].count == 2);
    CHECK(one.vessels[1].usable == Approx(214.2));
    CHECK(one.each == Approx(215.0));
    CHECK(one.each_g == Approx(181.6));
    trip.fuel.offers = {vessel("wide", 120, 90, 60), vessel("slim", 120, 50, 80), vessel("tiny", 30, 40, 50)};
    const Need several = provision(trip).fuel;
    CHECK(several.vessels[*several.chosen].id == "slim"); // 2 of 157 ml; 8 of 63 ml are more
    CHECK(several.vessels[*several.chosen].count == 2);
    CHECK(several.vessels[2].count == 8);
    CHECK(several.each == Approx(107.5));
    CHECK(several.each_g == Approx(90.8));
    trip.fuel.offers = {vessel("first", 300, 60, 100), vessel("lighter", 300, 60, 100)};
    trip.fuel.offers[1].item.weight_g = 30;
    const Need equal = provision(trip).fuel;
    CHECK(equal.vessels[*equal.chosen].id == "lighter");
}

TEST_CASE("cartridges and packets come whole")
{
    Trip trip = trip_of(Fuel::gas); // 82.9 g
    trip.fuel.offers = {vessel("gas-40", 40, 60, 60), vessel("gas-80", 80, 90, 60)};
    const Need gas = provision(trip).fuel;
    CHECK(gas.vessels[*gas.chosen].id == "gas-40"); // three of 170 ml, not two of 382 ml
    CHECK(gas.vessels[*gas.chosen].count == 3);
    CHECK(gas.each_g == Approx(40));
}

namespace {

const char* const moor = R"(kit: Moor
trip:
  people: 2
  days: 2
  boils: 2
  water-each: 400 ml
  start: 10 C
  fuel:
    what: spirit
    strength: 85 %
    heat-share: 50 %
    reserve: 20 %
    offered:
      - {id: b100, weight: 20, holds: 100 ml, cylinder: {diameter: 50, height: 80}, apart-from: knife}
      - {id: b300, name: Bottle, weight: 40, holds: 300 ml, cylinder: {diameter: 64, height: 128}, apart-from: knife}
  food:
    - {what: oats, portion: 50 g, density: 0.4 kg/l, offered: [{id: bag, weight: 5, holds: 600 ml, box: {length: 120, width: 90, height: 60}, upright: no}]}
items:
  - {id: pot, weight: 190, cylinder: {diameter: 150, height: 130}, inside: {wall: 1, base: 1}}
  - {id: cup, weight: 60, cylinder: {diameter: 80, height: 60}, kind: lips}
  - {id: knife, weight: 60, box: {length: 110, width: 28, height: 16}}
)";

Kit kit_of(const std::string& text)
{
    const auto kit = read_kit_text(text, "kit.yaml");
    INFO((kit ? "" : to_string(kit.problems().front())));
    REQUIRE(kit.ok());
    return *kit;
}

bool has_rule(const Kit& kit, const std::string& first, const std::string& second)
{
    return std::any_of(kit.rules.begin(), kit.rules.end(), [&](const CarryRule& rule) {
        return (rule.first == first && rule.second == second) || (rule.first == second && rule.second == first);
    });
}

} // namespace

TEST_CASE("the chosen vessels join the kit's items, filled, with the rules that name them")
{
    const Kit written = kit_of(moor);
    REQUIRE(written.trip);
    CHECK(written.items.size() == 3);
    CHECK(written.rules.empty());
    const Kit kit = *with_provisions(written);
    REQUIRE(kit.items.size() == 5);
    const Item& bottle = kit.items[3];
    CHECK(bottle.id == "b300");
    CHECK(bottle.count == 1);
    CHECK(bottle.contents->what == "spirit, 85 % vol");
    CHECK(bottle.contents->weight_g == Approx(181.6));
    CHECK(bottle.weight_g == 40);
    CHECK(bottle.upright);
    CHECK(bottle.kinds == std::vector<Kind>{Kind::fuel, Kind::liquid});
    const Item& bag = kit.items[4];
    CHECK(bag.contents->weight_g == Approx(200));
    CHECK(bag.kinds == std::vector<Kind>{Kind::food});
    CHECK_FALSE(bag.upright);
    CHECK(has_rule(kit, "b300", "cup"));   // fuel keeps apart from what touches the lips
    CHECK(has_rule(kit, "b300", "bag"));   // and from food
    CHECK(has_rule(kit, "b300", "knife")); // as the kit says
    CHECK_FALSE(has_rule(kit, "b100", "cup"));
    for (const CarryRule& rule : kit.rules) {
        CHECK((rule.first != "b100" && rule.second != "b100"));
    }
    const Kit again = *with_provisions(kit);
    CHECK(again.items.size() == kit.items.size());
    CHECK(again.rules == kit.rules);
}

TEST_CASE("a kit without a trip stays as it is, and more vessels than a kit may have are refused")
{
    Kit plain;
    plain.name = "Plain";
    CHECK(with_provisions(plain)->name == "Plain");
    std::string text = moor;
    text.replace(text.find("people: 2"), 9, "people: 99");
    text.replace(text.find("days: 2"), 7, "days: 99");
    const auto many = with_provisions(kit_of(text));
    REQUIRE_FALSE(many.ok());
    CHECK(many.problems().size() == 2); // bottles and bags
    CHECK(many.problems()[0].what.find("the trip takes") == 0);
    CHECK(many.problems()[0].what.find("of 'b300' for spirit, 85 % vol, but a kit may have at most 200") !=
          std::string::npos);
    CHECK_FALSE(many.problems()[0].remedy.empty());
}

TEST_CASE("when the trip is over, the bottle holds the reserve, and the bag is empty")
{
    Trip trip = trip_of(Fuel::spirit);
    trip.fuel.offers.push_back(vessel("bottle", 500, 70, 150));
    trip.fuel.offers.back().item.kinds = {Kind::fuel, Kind::liquid};
    trip.fuel.offers.back().item.upright = true;
    Portion oats;
    oats.what = "oats";
    oats.weight_g = 50;
    oats.density = 0.42;
    oats.offers.push_back(vessel("bag", 900, 90, 150));
    oats.offers.back().item.upright = true;
    trip.portions.push_back(oats);
    Kit out;
    out.trip = std::make_shared<const Trip>(trip);
    trip.is_over = true;
    Kit back;
    back.trip = std::make_shared<const Trip>(trip);
    const auto full = with_provisions(out), over = with_provisions(back);
    REQUIRE(full.ok());
    REQUIRE(over.ok());
    REQUIRE(full->items.size() == 2);
    REQUIRE(over->items.size() == 2);
    // By hand: 181.6 g come along, a fifth more than is needed, so a sixth of it is the reserve.
    CHECK(full->items[0].contents->weight_g == Approx(181.6));
    CHECK(over->items[0].contents->weight_g == Approx(181.6 / 6));
    CHECK(over->items[0].upright);
    CHECK(full->items[1].contents->weight_g == Approx(200));
    CHECK_FALSE(over->items[1].contents);
    CHECK_FALSE(over->items[1].upright);
    CHECK(over->items[1].weight_g == 40);
}

TEST_CASE("no other vessel comes back than was taken along, and none that is gone")
{
    const std::string text = "kit: Pier\ntrip: {people: 2, days: 2, boils: 2, water-each: 400 ml, start: 10 C, altitude: 0 m, "
                             "fuel: {what: tablets, heat-share: 50 %, reserve: 0 %}, food: [{what: oats, portion: 50 g, density: "
                             "0.42 kg/l, offered: [{id: big, weight: 9, holds: 900 ml, box: {length: 140, width: 90, height: 90}}, "
                             "{id: bag, weight: 7, holds: 500 ml, box: {length: 130, width: 80, height: 60}}]}]}\n"
                             "items: [{id: pot, weight: 9, cylinder: {diameter: 99, height: 60}}]\n";
    const auto ids = [&](const std::string& way_back) {
        auto both = read_both_ways_text(text + way_back, "kit.yaml");
        REQUIRE(both.ok());
        auto done = with_provisions(std::move(both).value());
        REQUIRE(done.ok());
        REQUIRE(done->out.items.size() == 2);
        CHECK(done->out.items[1].id == "bag");
        std::string all;
        for (const Item& item : done->back.items) {
            all += item.id + " ";
        }
        return all;
    };
    CHECK(ids("way-back: {}\n") == "pot bag ");
    CHECK(ids("way-back: {gone: big}\n") == "pot bag ");
    CHECK(ids("way-back: {gone: bag, added: [{id: flat, weight: 7, box: {length: 130, width: 80, height: 4}}]}\n") == "pot flat ");
}

TEST_CASE("a cartridge that holds far more than is burnt comes back with the rest")
{
    const std::string text = "kit: Gas\ntrip: {people: 1, days: 1, boils: 2, water-each: 400 ml, start: 10 C, altitude: 0 m, "
                             "fuel: {what: gas, heat-share: 50 %, reserve: 20 %, offered: [{id: big, weight: 190, holds: 450 g, "
                             "cylinder: {diameter: 110, height: 90}}]}}\nway-back: {}\n"
                             "items: [{id: pot, weight: 9, cylinder: {diameter: 99, height: 60}}]\n";
    auto both = read_both_ways_text(text, "kit.yaml");
    REQUIRE(both.ok());
    const double needed = provision(*both->out.trip).fuel.grams; // the reserve included
    auto done = with_provisions(std::move(both).value());
    REQUIRE(done.ok());
    REQUIRE(done->back.items.size() == 2);
    CHECK(done->out.items[1].contents->weight_g == Approx(450));
    CHECK(done->back.items[1].contents->weight_g == Approx(450 - needed / 1.2));
    CHECK(needed < 40);
}
