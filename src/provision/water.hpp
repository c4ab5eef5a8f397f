// SPDX-License-Identifier: GPL-3.0-or-later
/// Water and air: where water boils, and the heat it takes.
#pragma once

namespace tuckwright::provisioning {

/// Air pressure, hPa, so many metres above the sea. Source: the standard atmosphere, ISO 2533 (1975), up to 11 km.
double air_pressure_hpa(double altitude_m);

/// Boiling point, °C, at a pressure in hPa; good to 0.1 °C from 71 to 101 °C. Source: Antoine equation for 344 to 373 K,
/// NIST Chemistry WebBook, water, after Bridgeman and Aldrich (1964); from memory.
double boiling_c(double pressure_hpa);

/// The constants of both, as they stand in the working.
inline constexpr double sea_level_hpa = 1013.25, lapse_k_per_m = 0.0065, sea_level_k = 288.15,
                        pressure_exponent = 5.25588;
inline constexpr double antoine_a = 5.08354, antoine_b = 1663.125, antoine_c = -227.528; // 45.622 K, to °C

/// kJ per kg and K: 4.18 to 4.19 on the mean from cold to boiling (steam tables, from memory), rounded up.
inline constexpr double specific_heat = 4.2;
/// kJ per kg evaporated at 100 °C, and by how much more each degree below (steam tables, from memory; at 80 °C they have
/// 2308, this line 2309).
inline constexpr double steam_heat = 2257, steam_heat_per_degree = 2.6;
/// g/ml of water at 20 °C. Source: OIML R 22 (1975).
inline constexpr double water_density = 0.9982;

} // namespace tuckwright::provisioning
