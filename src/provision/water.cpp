// SPDX-License-Identifier: GPL-3.0-or-later
#include "provision/water.hpp"

#include <cmath>

namespace tuckwright::provisioning {

double air_pressure_hpa(double altitude_m)
{
    return sea_level_hpa * std::pow(1 - lapse_k_per_m * altitude_m / sea_level_k, pressure_exponent);
}

double boiling_c(double pressure_hpa)
{
    constexpr double hpa_per_bar = 1000;
    return antoine_b / (antoine_a - std::log10(pressure_hpa / hpa_per_bar)) + antoine_c;
}

} // namespace tuckwright::provisioning
