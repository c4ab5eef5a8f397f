// SPDX-License-Identifier: GPL-3.0-or-later
// Common practice, no source, but for the boiling of doubtful water; what the maker and the place say goes first.
#include "advice/provision_cautions.hpp"

namespace tuckwright::advice {

namespace {

std::string about(Fuel fuel)
{
    switch (fuel) {
    case Fuel::spirit:
        return "Spirit: its flame can hardly be seen by day. Never fill up a burner that may still be alight or hot, "
               "nor fill it from the large bottle beside a flame. What is sold for burning is poisonous to drink: mark the "
               "bottle, and carry none that could be taken for a drink.";
    case Fuel::gas:
        return "Gas: in the cold its pressure falls; isobutane boils at -12 °C, propane at -42 °C, and near the "
               "freezing point a cartridge gives little towards its end. Never warm it over a flame, nor shut it in with the "
               "heat of the stove under a windscreen. Screw it on and off in the open air.";
    case Fuel::white_spirit:
        return "White spirit: only for stoves that are made for it, never for a spirit burner. Its vapour lies on the "
               "ground and catches fire from afar; open and fill in the open air, cold, away from flames.";
    case Fuel::tablets: break;
    }
    return "Fuel tablets: their fumes are poisonous; burn them in the open air only. Wash your hands after touching "
           "them, and keep them dry, shut and away from food and children.";
}

} // namespace

std::vector<std::string> provision_cautions(const Trip& trip)
{
    constexpr double high = 2000; // m
    std::vector<std::string> all{
        about(trip.fuel.what),
        "Carbon monoxide cannot be seen or smelt, and kills: never burn anything in a tent, a closed room or a cabin. "
        "Let flames go out and all cool down before packing.",
        "Trains, ships and planes: ask beforehand what fuel may come along. Planes take no fuel and no gas cartridges, "
        "and often no stove or bottle that smells of fuel.",
        "Water that is not safe to drink: health authorities advise a rolling boil for a minute, three minutes above "
        "2000 m (from memory); that takes more fuel than just bringing it to the boil.",
        "Wind, a cold pot, simmering and melting snow take more fuel than this, and are not counted. Try it at home: "
        "weigh the stove before and after a boil.",
        "The maker's instructions and the rules of the place go first."};
    if (trip.altitude_m.value_or(0) >= high) {
        all.insert(all.begin() + 1,
                   "High up, food takes longer in the cooler boiling water, and stoves burn less well in "
                   "the thin air; ask the maker how yours does.");
    }
    return all;
}

} // namespace tuckwright::advice
