// SPDX-License-Identifier: GPL-3.0-or-later
/// A trip as the kit file tells it: what it needs of fuel and food, and the vessels that may be taken along for that.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "tuckwright/kit.hpp"

namespace tuckwright {

/// A vessel that may be taken along, as often as need be.
struct Offer {
    Item item;        ///< one of them; its contents say what it is for, but weigh nothing yet
    double holds = 0; ///< up to the brim: millilitres of a liquid or of food, grams of gas or tablets
};

enum class Fuel { spirit, gas, white_spirit, tablets };

/// What is burnt, and how well. Shares are of 1.
struct FuelPlan {
    Fuel what = Fuel::spirit;
    double strength = 0;             ///< of spirit: share of ethanol by volume at 20 °C
    std::optional<double> from;      ///< strength of the spirit that is diluted to it
    std::optional<double> propane;   ///< share by weight in gas, the rest being isobutane; nothing: not known
    std::optional<double> density;   ///< of white spirit, g/ml; nothing: not known
    std::optional<double> tablet_g;  ///< weight of one tablet
    double heat_share = 0;           ///< of the fuel's net heat, what reaches the water
    double reserve = 0;              ///< taken along on top
    std::optional<double> headspace; ///< of a bottle, what is left empty; nothing: as usual
    std::vector<Offer> offers;
};

/// Food or drink that each person gets so often a day.
struct Portion {
    std::string what;
    Kind kind = Kind::food; ///< or drink
    double weight_g = 0;
    double a_day = 1;
    double density = 0;        ///< bulk, g/ml
    std::vector<Offer> offers; ///< bags and tins, for this food alone
};

struct Trip {
    int people = 1, days = 1;
    int boils = 1;                    ///< a day
    double water_each_ml = 0;         ///< heated for each person at each boil
    double start_c = 0;               ///< of the water beforehand, °C
    std::optional<double> altitude_m; ///< above the sea
    std::optional<double> boils_at_c; ///< then the altitude counts no longer
    std::optional<double> boils_away; ///< share of the water; nothing: as usual
    FuelPlan fuel;
    std::vector<Portion> portions;
    std::vector<CarryRule> rules; ///< those that name an offered vessel: they hold once it comes along
    bool is_over = false;         ///< it is the way back: food is eaten, and of the fuel only the reserve is left
};

} // namespace tuckwright
