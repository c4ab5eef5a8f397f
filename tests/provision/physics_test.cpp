// SPDX-License-Identifier: GPL-3.0-or-later
/// Spirit, water and heat values against what is published.
#include <catch2/catch.hpp>

#include <cmath>
#include <vector>

#include "provision/fuels.hpp"
#include "provision/spirit.hpp"
#include "provision/water.hpp"

using namespace tuckwright::provisioning;

namespace {

constexpr double molar_evaporation = 44.0; // kJ/mol of water at 25 °C, steam tables, from memory

/// kJ a gram, from kJ/mol gross, g/mol, and moles of water that burning a mole makes.
double net_heat(double gross, double molar_mass, int water) { return (gross - water * molar_evaporation) / molar_mass; }

} // namespace

TEST_CASE("densities and shares by weight are those of OIML R 22 at 20 °C")
{
    struct Row {
        double by_volume, by_mass, density; // %, %, kg/m³
    };
    // OIML R 22 (1975), International alcoholometric tables, at 20 °C.
    const std::vector<Row> table{
        {0, 0.000, 998.20},   {10, 8.015, 984.71},  {20, 16.214, 973.56}, {30, 24.607, 962.21}, {40, 33.300, 948.05},
        {50, 42.426, 930.14}, {60, 52.088, 909.11}, {70, 62.386, 885.56}, {71, 63.456, 883.06}, {72, 64.535, 880.54},
        {73, 65.621, 877.99}, {74, 66.716, 875.40}, {75, 67.820, 872.79}, {76, 68.933, 870.15}, {77, 70.055, 867.48},
        {78, 71.187, 864.78}, {79, 72.328, 862.04}, {80, 73.480, 859.27}, {81, 74.642, 856.46}, {82, 75.815, 853.62},
        {83, 77.000, 850.74}, {84, 78.196, 847.82}, {85, 79.405, 844.85}, {86, 80.627, 841.84}, {87, 81.863, 838.77},
        {88, 83.114, 835.64}, {89, 84.380, 832.45}, {90, 85.665, 829.18}, {91, 86.968, 825.83}, {92, 88.291, 822.39},
        {93, 89.637, 818.85}, {94, 91.008, 815.18}, {95, 92.408, 811.38}, {96, 93.838, 807.42}, {97, 95.305, 803.27},
        {98, 96.815, 798.90}, {99, 98.375, 794.25}, {100, 100.0, 789.24}};
    for (const Row& row : table) {
        CAPTURE(row.by_volume);
        const Spirit spirit = spirit_by_volume(row.by_volume / 100);
        CHECK(std::abs(1000 * spirit.density - row.density) <= 0.0051); // the last digit of the table
        CHECK(std::abs(100 * spirit.by_mass - row.by_mass) <= 0.00051);
        CHECK(std::abs(spirit_by_mass(spirit.by_mass).by_volume - row.by_volume / 100) < 1e-12);
    }
    CHECK(std::abs(water_density - spirit_by_volume(0).density) < 1e-5);
}

TEST_CASE("mixing keeps the mass and loses volume")
{
    // Fifty ml of ethanol and fifty of water make between 96 and 97 ml: textbooks of chemistry, from memory.
    const Mixture halves = mixed(spirit_by_volume(1), 50, 50);
    CHECK(halves.parts > 96);
    CHECK(halves.parts < 97);
    CHECK(halves.plain == Approx(0.5));
    // One part of water to ten of 95 % gives about 85 %: common practice, no source; 86.4 % by plain volumes.
    const Mixture thumb = mixed(spirit_by_volume(0.95), 10, 1);
    CHECK(100 * thumb.plain == Approx(86.36).margin(0.005));
    CHECK(100 * thumb.spirit.by_volume > 87.2); // the contraction makes it stronger
    CHECK(100 * thumb.spirit.by_volume < 87.4);
    for (int q = 50; q <= 100; q += 5) {
        for (int water = 1; water <= 10; ++water) {
            const Spirit strong = spirit_by_volume(q / 100.0);
            const Mixture made = mixed(strong, 10, water);
            CAPTURE(q, water);
            CHECK(made.parts < 10 + water);
            CHECK(made.parts * made.spirit.density ==
                  Approx(10 * strong.density + water * spirit_by_volume(0).density));
            const double ethanol = made.parts * made.spirit.density * made.spirit.by_mass;
            CHECK(ethanol == Approx(10 * strong.density * strong.by_mass)); // none is lost
            CHECK(made.spirit.by_volume > made.plain);
        }
    }
    CHECK(mixed(spirit_by_volume(0.9), 3, 0).parts == Approx(3));
    CHECK_THROWS(mixed(spirit_by_volume(0.9), 0, 0));
    CHECK_THROWS(spirit_by_volume(1.01));
}

TEST_CASE("pressure and boiling point by altitude are those of the standard atmosphere and of steam")
{
    struct Row {
        double altitude, pressure, boils; // m, Pa, °C
    };
    // ISO 2533 (1975) for the pressure; boiling points by IAPWS-IF97 (2007), the saturation line.
    const std::vector<Row> table{{0, 101325.0, 99.97},   {250, 98357.6, 99.14},  {500, 95460.9, 98.31},
                                 {750, 92633.8, 97.48},  {1000, 89874.8, 96.65}, {1250, 87182.7, 95.82},
                                 {1500, 84556.3, 94.98}, {1750, 81994.3, 94.15}, {2000, 79495.5, 93.32},
                                 {2250, 77058.8, 92.48}, {2500, 74682.9, 91.65}, {2750, 72366.7, 90.81},
                                 {3000, 70109.0, 89.97}, {3250, 67908.7, 89.14}, {3500, 65764.6, 88.30},
                                 {3750, 63675.6, 87.46}, {4000, 61640.8, 86.62}, {4250, 59658.9, 85.78},
                                 {4500, 57728.9, 84.94}, {4750, 55849.8, 84.10}, {5000, 54020.5, 83.26}};
    for (const Row& row : table) {
        CAPTURE(row.altitude);
        const double pressure = air_pressure_hpa(row.altitude);
        CHECK(std::abs(100 * pressure - row.pressure) < 1);
        CHECK(std::abs(boiling_c(pressure) - row.boils) < 0.04);
        CHECK(boiling_c(pressure) > row.boils); // the safe direction
    }
    CHECK(boiling_c(sea_level_hpa) == Approx(100).margin(0.001));
}

TEST_CASE("the heats of water are those of steam tables, and not below")
{
    struct Row {
        double celsius, liquid, evaporation; // kJ/kg
    };
    // Steam tables (saturated water), from memory.
    const std::vector<Row> table{{0.01, 0.0, 2500.9}, {10, 42.0, 2477.2},  {20, 83.9, 2453.5},
                                 {80, 335.0, 2308.0}, {90, 377.0, 2282.5}, {100, 419.2, 2256.4}};
    const double boiling = 419.2;
    for (const Row& row : table) {
        CAPTURE(row.celsius);
        if (row.celsius <= 20) {
            const double mean = (boiling - row.liquid) / (100 - row.celsius);
            CHECK(specific_heat >= mean);
            CHECK(specific_heat < 1.005 * mean);
        } else {
            const double line = steam_heat + steam_heat_per_degree * (100 - row.celsius);
            CHECK(line >= row.evaporation);
            CHECK(line < 1.002 * row.evaporation);
        }
    }
    CHECK(std::abs(steam_heat - 2257) < 1); // handbooks, from memory
}

TEST_CASE("net heats follow from the gross ones, rounded down by less than 0.3 %")
{
    // NIST Chemistry WebBook, heats of combustion: ethanol liquid (read), the others from memory.
    struct Row {
        const char* name;
        double used, gross, molar_mass;
        int water;
    };
    const std::vector<Row> table{{"ethanol", ethanol_heat, 1367, 46.07, 3},
                                 {"isobutane", isobutane_heat, 2869, 58.12, 5},
                                 {"propane", propane_heat, 2220, 44.10, 4},
                                 {"hexamine", hexamine_heat, 4200, 140.19, 6}};
    for (const Row& row : table) {
        CAPTURE(row.name);
        const double net = net_heat(row.gross, row.molar_mass, row.water);
        CHECK(row.used <= net);
        CHECK(row.used > 0.997 * net);
    }
    CHECK(water_evaporation >= molar_evaporation / 18.015);
    CHECK(water_evaporation < 1.005 * molar_evaporation / 18.015);
    CHECK(white_spirit_heat >= 43.0); // 43 to 44.5 in handbooks, from memory
    CHECK(white_spirit_heat <= 44.5);
}

TEST_CASE("thirteen ml of 85 % spirit bring 473 ml of water to the boil with two thirds of their heat")
{
    // Common practice, no source: in a small pot with a windscreen; the water at 20 °C, 473 ml being 16 US fl oz.
    const Spirit spirit = spirit_by_volume(0.85);
    const double kj_per_g = spirit.by_mass * ethanol_heat - (1 - spirit.by_mass) * water_evaporation;
    const double share = 0.473 * specific_heat * (100 - 20) / (13 * spirit.density * kj_per_g);
    CHECK(share > 0.5);
    CHECK(share < 0.75);
}
