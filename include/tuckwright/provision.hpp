// SPDX-License-Identifier: GPL-3.0-or-later
/// How much fuel and food a trip needs, worked out line by line, and the vessels chosen for it.
#pragma once
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "tuckwright/result.hpp"
#include "tuckwright/trip.hpp"
#include "tuckwright/way_back.hpp"

namespace tuckwright {

/// One step of the working, to be followed with a pocket calculator.
struct WorkingLine {
    std::string what;  ///< "Water to boil"
    std::string words; ///< the formula in words: "people x days x boils a day x ml for each / 1000"
    std::string sum;   ///< the same in figures: "2 x 3 x 2 x 450 / 1000"; empty for a figure that is given
    double value = 0;  ///< rounded as printed; later lines go on with it
    int decimals = 0;
    std::string unit;
};

/// A vessel that was offered, and how it would do.
struct Considered {
    std::string id, name;
    double holds = 0;       ///< one of them, ml or g
    double usable = 0;      ///< the same less the headspace
    std::int64_t count = 1; ///< so many are enough
    double outside_ml = 0;  ///< of all these together
};

/// What has to come along of one thing.
struct Need {
    std::string what; ///< "spirit, 85 % vol"
    double grams = 0;
    std::optional<double> ml; ///< of a liquid, and of food poured loosely
    std::vector<WorkingLine> working;
    std::vector<Considered> vessels;   ///< in the order of the file
    std::optional<std::size_t> chosen; ///< one of these; nothing where none is offered
    double each = 0;                   ///< ml or g that goes into each chosen vessel
    double each_g = 0;                 ///< its weight
};

/// How spirit is diluted to the strength wanted. Volumes do not add up: the mixture shrinks.
struct Dilution {
    double from = 0, to = 0; ///< strengths, shares by volume
    double spirit_ml = 0, spirit_g = 0, water_ml = 0, water_g = 0;
    double mixed_ml = 0;
    double thumb_plain = 0,
           thumb_true = 0; ///< strengths of one part of water to ten of `from`: volumes added up, and in truth
    std::vector<WorkingLine> working;
};

struct Provision {
    int people = 1, days = 1;
    int boils = 1; ///< in all
    double water_l = 0;
    double boils_at_c = 0;
    double heat_kj = 0; ///< that has to reach the water
    double fuel_kj = 0; ///< net heat of the fuel, reserve included
    std::vector<WorkingLine> heat;
    Need fuel;
    std::optional<Dilution> dilution;
    std::vector<Need> food;
    std::vector<std::string> assumed; ///< what was taken as usual, in words
    std::vector<std::string> sources; ///< of the figures used, in words
};

/// What the trip needs. Fuel, and every figure that it depends on, is rounded in the direction that takes more along; heat
/// values are net, and the water in spirit is evaporated with it. Of the vessels offered for a thing the one with the
/// smallest outside is chosen that holds it all, with headspace for a liquid; if none does, several of one kind, with the
/// smallest outside together. Ensures: a vessel is chosen wherever one is offered.
/// Requires: a trip as the reader lets it through. Complexity: linear in what is offered.
Provision provision(const Trip& trip);

/// The kit with the chosen vessels, filled, behind its own items, and the rules that name them; the trip stays with it.
/// Where the trip is over, the same vessels hold what is left: of the fuel all but what was burnt, the
/// reserve not being burnt, and no food. A kit without a trip,
/// or with vessels of the trip among its items already, is returned as it is. Errors (without a place): more copies than a
/// kit may have.
Result<Kit> with_provisions(Kit kit);

/// The same both ways: of the vessels that may come back, those that are taken along do.
Result<BothWays> with_provisions(BothWays both);

} // namespace tuckwright
