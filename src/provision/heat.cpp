// SPDX-License-Identifier: GPL-3.0-or-later
#include "provision/heat.hpp"

#include <fmt/format.h>

#include <cmath>

#include "provision/water.hpp"
#include "provision/working.hpp"

namespace tuckwright::provisioning {

namespace {

double water(const Trip& trip, Working& working)
{
    constexpr double ml_per_l = 1000;
    const double each = rounded(trip.water_each_ml, 1, Toward::more);
    return working.line({"Water to boil", "people x days x boils a day x ml for each / 1000",
                         fmt::format("{} x {} x {} x {} / 1000", trip.people, trip.days, trip.boils, figure(each)),
                         trip.people * trip.days * trip.boils * each / ml_per_l, 3, "l"},
                        Toward::more);
}

double boiling_point(const Trip& trip, Working& working, std::vector<std::string>& assumed)
{
    if (trip.boils_at_c) {
        return working.line({"Water boils at", "as the kit says", "", *trip.boils_at_c, 2, "°C"}, Toward::more);
    }
    if (!trip.altitude_m) {
        assumed.push_back("the sea's level, where water boils hottest, since no altitude is given");
    }
    const double altitude = rounded(trip.altitude_m.value_or(0), 0, Toward::less);
    const double pressure =
        working.line({fmt::format("Air pressure at {} m", figure(altitude)),
                      "by the standard atmosphere: 1013.25 hPa at the sea, 6.5 °C colder each km",
                      fmt::format("{} x (1 - {} x {} / {}) ^ {}", figure(sea_level_hpa), figure(lapse_k_per_m),
                                  figure(altitude), figure(sea_level_k), figure(pressure_exponent)),
                      air_pressure_hpa(altitude), 1, "hPa"},
                     Toward::more);
    return working.line({"Water boils there at", "by the vapour pressure of water, log to the base 10",
                         fmt::format("{} / ({} - log({} / 1000)) - {}", figure(antoine_b), figure(antoine_a),
                                     figure(pressure), figure(-antoine_c)),
                         boiling_c(pressure), 2, "°C"},
                        Toward::more);
}

/// kJ for a litre, which counts as a kilogram.
double heat_of_a_litre(const Trip& trip, double boils_at, Working& working, std::vector<std::string>& assumed)
{
    const double start = rounded(trip.start_c, 1, Toward::less);
    const double warming =
        working.line({"To heat a litre", "kJ for a litre and degree x (boiling point - start)",
                      fmt::format("{} x ({} - {})", figure(specific_heat), figure(boils_at), figure(start)),
                      specific_heat * (boils_at - start), 1, "kJ"},
                     Toward::more);
    if (!trip.boils_away) {
        assumed.push_back(
            fmt::format("{:g} % of the water to boil away, since the kit says nothing", 100 * usual_boils_away));
    }
    const double share = rounded(trip.boils_away.value_or(usual_boils_away), 4, Toward::more);
    if (share == 0) {
        return warming;
    }
    const double steam = working.line(
        {"To boil a litre away", "kJ at 100 °C, and more for each degree below",
         fmt::format("{} + {} x (100 - {})", figure(steam_heat), figure(steam_heat_per_degree), figure(boils_at)),
         steam_heat + steam_heat_per_degree * (100 - boils_at), 0, "kJ"},
        Toward::more);
    return working.line({"For a litre in all", "heating + share that boils away x boiling away",
                         fmt::format("{} + {} x {}", figure(warming), figure(share), figure(steam)),
                         warming + share * steam, 1, "kJ"},
                        Toward::more);
}

} // namespace

void work_out_heat(const Trip& trip, Provision& answer)
{
    Working working;
    answer.water_l = water(trip, working);
    answer.boils_at_c = boiling_point(trip, working, answer.assumed);
    const double litre = heat_of_a_litre(trip, answer.boils_at_c, working, answer.assumed);
    answer.heat_kj =
        working.line({"Heat that must reach the water", "litres x kJ for a litre",
                      fmt::format("{} x {}", figure(answer.water_l), figure(litre)), answer.water_l * litre, 1, "kJ"},
                     Toward::more);
    const double share = rounded(trip.fuel.heat_share, 4, Toward::less);
    const double burnt =
        working.line({"Heat that the fuel gives for it", "that / share that reaches the water",
                      fmt::format("{} / {}", figure(answer.heat_kj), figure(share)), answer.heat_kj / share, 1, "kJ"},
                     Toward::more);
    const double reserve = rounded(trip.fuel.reserve, 4, Toward::more);
    answer.fuel_kj =
        working.line({"With the reserve", "that x (1 + reserve)",
                      fmt::format("{} x (1 + {})", figure(burnt), figure(reserve)), burnt * (1 + reserve), 1, "kJ"},
                     Toward::more);
    answer.heat = working.lines();
}

} // namespace tuckwright::provisioning
