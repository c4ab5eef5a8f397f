// SPDX-License-Identifier: GPL-3.0-or-later
#include "tuckwright/provision.hpp"

#include <fmt/format.h>

#include "provision/fuel_need.hpp"
#include "provision/heat.hpp"
#include "provision/vessels.hpp"
#include "provision/working.hpp"

namespace tuckwright {

namespace {

using namespace provisioning;

Need portion_need(const Trip& trip, const Portion& portion)
{
    Working working;
    Need need;
    need.what = portion.what;
    const double each = rounded(portion.weight_g, 2, Toward::more), a_day = rounded(portion.a_day, 2, Toward::more);
    need.grams = working.line({"By weight", "people x days x portions a day x grams",
                               fmt::format("{} x {} x {} x {}", trip.people, trip.days, figure(a_day), figure(each)),
                               trip.people * trip.days * a_day * each, 1, "g"},
                              Toward::more);
    const double density = rounded(portion.density, 4, Toward::less);
    need.ml = working.line({"Poured loosely", "grams / weight of a ml, poured loosely",
                            fmt::format("{} / {}", figure(need.grams), figure(density)), need.grams / density, 1, "ml"},
                           Toward::more);
    need.working = working.lines();
    choose_vessel(need, portion.offers, 0, Filling::shared);
    return need;
}

std::vector<std::string> sources_of(const Trip& trip)
{
    std::vector<std::string> all;
    if (!trip.boils_at_c) {
        all.emplace_back(
            "Air pressure: standard atmosphere, ISO 2533 (1975). Weather moves the boiling point by up to a "
            "degree either way.");
        all.emplace_back(
            "Boiling point: Antoine equation for 344 to 373 K, NIST Chemistry WebBook, water (from memory).");
    }
    all.emplace_back("Water: 4.18 to 4.19 kJ for a kilogram and degree, 2257 kJ to boil a kilogram away at 100 °C, by "
                     "steam tables (from memory), rounded up. A litre counts as a kilogram.");
    switch (trip.fuel.what) {
    case Fuel::spirit:
        all.emplace_back("Spirit: density and alcohol by weight at 20 °C by OIML R 22 (1975), International "
                         "alcoholometric tables.");
        all.emplace_back(
            "Alcohol counts as ethanol: 1367 kJ/mol by NIST Chemistry WebBook, less the heat in the steam it "
            "burns to: 26.8 kJ a gram. The water in spirit is evaporated with it: 44 kJ/mol, 2.45 kJ a gram.");
        break;
    case Fuel::gas:
        all.emplace_back(
            "Gas: isobutane 2869 and propane 2220 kJ/mol by NIST Chemistry WebBook (from memory), less the "
            "heat in the steam they burn to: 45.5 and 46.3 kJ a gram. A share of propane is by weight.");
        break;
    case Fuel::white_spirit:
        all.emplace_back("White spirit and stove petrol: 43 to 44.5 kJ a gram, net, in handbooks (from memory).");
        break;
    case Fuel::tablets:
        all.emplace_back(
            "Tablets count as hexamine: 4200 kJ/mol by NIST Chemistry WebBook (from memory), less the heat "
            "in the steam it burns to: 28 kJ a gram.");
        break;
    }
    return all;
}

} // namespace

Provision provision(const Trip& trip)
{
    Provision answer;
    answer.people = trip.people;
    answer.days = trip.days;
    answer.boils = trip.days * trip.boils;
    work_out_heat(trip, answer);
    work_out_fuel(trip.fuel, answer);
    for (const Portion& portion : trip.portions) {
        answer.food.push_back(portion_need(trip, portion));
    }
    answer.sources = sources_of(trip);
    return answer;
}

} // namespace tuckwright
