// SPDX-License-Identifier: GPL-3.0-or-later
/// Heat values of fuels, kJ a gram at 25 °C, net: the water that burning makes leaves as steam. Rounded down.
#pragma once

namespace tuckwright::provisioning {

/// Ethanol. Source: NIST Chemistry WebBook, liquid, 1367 kJ/mol gross (read); 46.07 g/mol, three moles of water.
inline constexpr double ethanol_heat = 26.8;
/// What evaporating a gram of water at 25 °C takes: 44.0 kJ/mol, steam tables, from memory; rounded up.
inline constexpr double water_evaporation = 2.45;

/// Isobutane: 2869 kJ/mol gross, 58.12 g/mol, five moles of water; propane: 2220 kJ/mol, 44.10 g/mol, four moles. Source:
/// NIST Chemistry WebBook, gases, from memory. The heat that evaporates the liquid comes from the cartridge and the air.
inline constexpr double isobutane_heat = 45.5, propane_heat = 46.3;

/// White spirit and stove petrol, mixtures of light hydrocarbons: 43 to 44.5 in handbooks, from memory; 0.75 to 0.8 g/ml
/// for white spirit, and so more by volume with the lower.
inline constexpr double white_spirit_heat = 43.0, white_spirit_density = 0.75;

/// Hexamine: 4200 kJ/mol gross, 140.2 g/mol, six moles of water (NIST Chemistry WebBook, solid, from memory). Tablets hold
/// a little wax or binder besides.
inline constexpr double hexamine_heat = 28.0;

} // namespace tuckwright::provisioning
