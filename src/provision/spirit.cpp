// SPDX-License-Identifier: GPL-3.0-or-later
#include "provision/spirit.hpp"

#include <array>

#include "tuckwright/contract.hpp"

namespace tuckwright::provisioning {

namespace {

/// OIML R 22 (1975), general formula: the terms A1 to A12, kg/m³; those with B and C vanish at 20 °C.
constexpr std::array<double, 12> coefficients{9.982012300e2, -1.929769495e2, 3.891238958e2, -1.668103923e3,
                                              1.352215441e4, -8.829278388e4, 3.062874042e5, -6.138381234e5,
                                              7.470172998e5, -5.478461354e5, 2.234460334e5, -3.903285426e4};

} // namespace

double density_by_mass(double share)
{
    double sum = 0;
    for (auto a = coefficients.rbegin(); a != coefficients.rend(); ++a) {
        sum = sum * share + *a;
    }
    return sum / 1000;
}

double ethanol_density() { return density_by_mass(1); }

Spirit spirit_by_mass(double share)
{
    require(share >= 0 && share <= 1, "a share is from 0 to 1");
    const double density = density_by_mass(share);
    return {share * density / ethanol_density(), share, density};
}

Spirit spirit_by_volume(double share)
{
    require(share >= 0 && share <= 1, "a share is from 0 to 1");
    double low = 0, high = 1; // the strength grows with the share by weight
    for (int halving = 0; halving < 60; ++halving) {
        const double middle = (low + high) / 2;
        (spirit_by_mass(middle).by_volume < share ? low : high) = middle;
    }
    Spirit found = spirit_by_mass(high);
    found.by_volume = share;
    return found;
}

Mixture mixed(const Spirit& spirit, double spirit_parts, double water_parts)
{
    require(spirit_parts >= 0 && water_parts >= 0 && spirit_parts + water_parts > 0, "something is mixed");
    const double spirit_mass = spirit_parts * spirit.density, water_mass = water_parts * density_by_mass(0);
    const double mass = spirit_mass + water_mass;
    const Spirit result = spirit_by_mass(spirit_mass * spirit.by_mass / mass);
    return {result, spirit_parts * spirit.by_volume / (spirit_parts + water_parts), mass / result.density};
}

} // namespace tuckwright::provisioning
