// SPDX-License-Identifier: GPL-3.0-or-later
#include "provision/fuel_need.hpp"

#include <fmt/format.h>

#include "provision/fuels.hpp"
#include "provision/spirit.hpp"
#include "provision/vessels.hpp"
#include "provision/water.hpp"
#include "provision/working.hpp"
#include "tuckwright/contract.hpp"

namespace tuckwright::provisioning {

namespace {

constexpr int density_decimals = 5; // as in the tables of OIML R 22

std::string percent(double share) { return figure(rounded(100 * share, 2, Toward::nearest)) + " %"; }

/// A density from the table, g/ml, and the line that tells it.
double density_of(double strength, Working& working)
{
    return working.line({fmt::format("Spirit of {} vol at 20 °C", percent(strength)), "a ml weighs, by OIML R 22", "",
                         spirit_by_volume(strength).density, density_decimals, "g"},
                        Toward::nearest);
}

/// The share of ethanol by weight, 0 to 1.
double share_by_mass(double strength, double density, Working& working, Toward toward)
{
    const double ethanol = rounded(ethanol_density(), density_decimals, Toward::nearest);
    const double by_volume = rounded(strength, 4, toward);
    return working.line({"Its alcohol by weight",
                         "share by volume x weight of a ml of alcohol / weight of a ml of spirit",
                         fmt::format("{} x {} / {}", figure(by_volume), figure(ethanol), figure(density)),
                         by_volume * ethanol / density, 4, "g in a gram"},
                        toward);
}

struct HeatAndDensity {
    double kj_per_g = 0;
    std::optional<double> density; ///< of a liquid
};

HeatAndDensity spirit_figures(const FuelPlan& plan, Working& working)
{
    const double density = density_of(plan.strength, working);
    const double share = share_by_mass(plan.strength, density, working, Toward::less);
    const double heat =
        working.line({"Net heat of a gram", "alcohol x its net heat - water x what evaporating it takes",
                      fmt::format("{} x {} - (1 - {}) x {}", figure(share), figure(ethanol_heat), figure(share),
                                  figure(water_evaporation)),
                      share * ethanol_heat - (1 - share) * water_evaporation, 2, "kJ"},
                     Toward::less);
    return {heat, density};
}

double gas_heat(const FuelPlan& plan, Working& working, std::vector<std::string>& assumed)
{
    if (!plan.propane) {
        assumed.push_back("gas that is all isobutane, which gives least, since no share of propane is given");
        return working.line({"Net heat of a gram", "isobutane", "", isobutane_heat, 1, "kJ"}, Toward::less);
    }
    const double share = rounded(*plan.propane, 4, Toward::less);
    return working.line({"Net heat of a gram", "propane x its net heat + isobutane x its net heat",
                         fmt::format("{} x {} + (1 - {}) x {}", figure(share), figure(propane_heat), figure(share),
                                     figure(isobutane_heat)),
                         share * propane_heat + (1 - share) * isobutane_heat, 2, "kJ"},
                        Toward::less);
}

HeatAndDensity figures_of(const FuelPlan& plan, Working& working, std::vector<std::string>& assumed)
{
    switch (plan.what) {
    case Fuel::spirit: return spirit_figures(plan, working);
    case Fuel::gas: return {gas_heat(plan, working, assumed), std::nullopt};
    case Fuel::white_spirit: {
        if (!plan.density) {
            assumed.push_back(fmt::format("white spirit of {} kg a litre, which is light, since no density is given",
                                          figure(white_spirit_density)));
        }
        const double density = rounded(plan.density.value_or(white_spirit_density), 4, Toward::less);
        const double heat =
            working.line({"Net heat of a gram", "white spirit", "", white_spirit_heat, 1, "kJ"}, Toward::less);
        return {heat, density};
    }
    case Fuel::tablets: break;
    }
    return {working.line({"Net heat of a gram", "hexamine", "", hexamine_heat, 1, "kJ"}, Toward::less), std::nullopt};
}

std::string words(const FuelPlan& plan)
{
    switch (plan.what) {
    case Fuel::spirit: return "spirit, " + percent(plan.strength) + " vol";
    case Fuel::gas: return "gas";
    case Fuel::white_spirit: return "white spirit";
    case Fuel::tablets: break;
    }
    return "fuel tablets";
}

/// Strong spirit and water for so many grams of the strength wanted.
void work_out_parts(Dilution& dilution, double grams, double share, double strong_share, double strong_density,
                    Working& working)
{
    const auto line = [&](const char* what, const char* words, std::string sum, double value, const char* unit) {
        return working.line({what, words, std::move(sum), value, 1, unit}, Toward::nearest);
    };
    dilution.spirit_g = line("Strong spirit by weight", "grams wanted x its alcohol / alcohol of the strong",
                             fmt::format("{} x {} / {}", figure(grams), figure(share), figure(strong_share)),
                             grams * share / strong_share, "g");
    dilution.spirit_ml = line("The same by volume", "grams / weight of a ml",
                              fmt::format("{} / {}", figure(dilution.spirit_g), figure(strong_density)),
                              dilution.spirit_g / strong_density, "ml");
    dilution.water_g =
        line("Water by weight", "grams wanted - strong spirit",
             fmt::format("{} - {}", figure(grams), figure(dilution.spirit_g)), grams - dilution.spirit_g, "g");
    dilution.water_ml = line("The same by volume", "grams / weight of a ml",
                             fmt::format("{} / {}", figure(dilution.water_g), figure(water_density)),
                             dilution.water_g / water_density, "ml");
    const double poured = line("Poured together", "ml of spirit + ml of water",
                               fmt::format("{} + {}", figure(dilution.spirit_ml), figure(dilution.water_ml)),
                               dilution.spirit_ml + dilution.water_ml, "ml");
    line("So it shrinks by", "that - ml wanted", fmt::format("{} - {}", figure(poured), figure(dilution.mixed_ml)),
         poured - dilution.mixed_ml, "ml");
}

/// One part of water to ten of the strong spirit, as a rule of thumb has it.
void work_out_thumb(Dilution& dilution, double strong_share, double strong_density, Working& working)
{
    constexpr double parts = 10;
    const Mixture mixture = mixed(spirit_by_volume(dilution.from), parts, 1);
    const double from = rounded(100 * dilution.from, 2, Toward::nearest);
    dilution.thumb_plain =
        working.line({"One part of water to ten of it", "if volumes added up",
                      fmt::format("10 x {} / (10 + 1)", figure(from)), parts * from / (parts + 1), 1, "% vol"},
                     Toward::nearest) /
        100;
    const double spirit = parts * strong_density;
    working.line({"Alcohol in that by weight", "alcohol / all",
                  fmt::format("10 x {} x {} / (10 x {} + {})", figure(strong_density), figure(strong_share),
                              figure(strong_density), figure(water_density)),
                  spirit * strong_share / (spirit + water_density), 4, "g in a gram"},
                 Toward::nearest);
    dilution.thumb_true =
        working.line({"Which is in truth", "by OIML R 22", "", 100 * mixture.spirit.by_volume, 1, "% vol"},
                     Toward::nearest) /
        100;
}

Dilution diluted(const FuelPlan& plan, const Need& fuel)
{
    Working working, told; // the strength wanted has been told with the fuel
    Dilution dilution;
    dilution.from = *plan.from;
    dilution.to = plan.strength;
    dilution.mixed_ml = *fuel.ml;
    const double share = share_by_mass(plan.strength, density_of(plan.strength, told), told, Toward::less);
    const double strong_density = density_of(*plan.from, working);
    const double strong_share = share_by_mass(*plan.from, strong_density, working, Toward::nearest);
    work_out_parts(dilution, fuel.grams, share, strong_share, strong_density, working);
    work_out_thumb(dilution, strong_share, strong_density, working);
    dilution.working = working.lines();
    return dilution;
}

} // namespace

void work_out_fuel(const FuelPlan& plan, Provision& answer)
{
    Working working;
    Need& fuel = answer.fuel;
    fuel.what = words(plan);
    const auto [heat, density] = figures_of(plan, working, answer.assumed);
    require(heat > 0, "a fuel gives heat");
    fuel.grams =
        working.line({"Fuel by weight", "heat of the fuel / net heat of a gram",
                      fmt::format("{} / {}", figure(answer.fuel_kj), figure(heat)), answer.fuel_kj / heat, 1, "g"},
                     Toward::more);
    if (density) {
        fuel.ml =
            working.line({"Fuel by volume", "grams / weight of a ml",
                          fmt::format("{} / {}", figure(fuel.grams), figure(*density)), fuel.grams / *density, 1, "ml"},
                         Toward::more);
    }
    if (plan.tablet_g) {
        const double tablet = rounded(*plan.tablet_g, 2, Toward::less);
        const double tablets = working.line({"In whole tablets", "grams / weight of one",
                                             fmt::format("{} / {}", figure(fuel.grams), figure(tablet)),
                                             fuel.grams / tablet, 0, "tablets"},
                                            Toward::more);
        fuel.grams = working.line({"Which weigh", "tablets x weight of one",
                                   fmt::format("{} x {}", figure(tablets), figure(tablet)), tablets * tablet, 1, "g"},
                                  Toward::more);
    }
    fuel.working = working.lines();
    if (plan.from) {
        answer.dilution = diluted(plan, fuel);
    }
    if (density && !plan.headspace && !plan.offers.empty()) {
        answer.assumed.push_back(
            fmt::format("{:g} % of a bottle to stay empty, since no headspace is given", 100 * usual_headspace));
    }
    choose_vessel(fuel, plan.offers, density ? plan.headspace.value_or(usual_headspace) : 0,
                  density ? Filling::shared : Filling::whole);
}

} // namespace tuckwright::provisioning
