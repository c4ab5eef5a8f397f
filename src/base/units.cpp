// SPDX-License-Identifier: GPL-3.0-or-later
#include "tuckwright/units.hpp"

#include <cmath>

#include "tuckwright/contract.hpp"

namespace tuckwright {

namespace {
constexpr double on_grid = 1e-3; // nanometres: how near to a grid point counts as on it
}

std::int64_t to_nanometres(double mm)
{
    require(std::abs(mm) <= 1e9, "a length is at most 1e9 mm");
    return std::llround(mm * nanometres_per_millimetre);
}

double from_nanometres(std::int64_t nm)
{
    return static_cast<double>(nm) / nanometres_per_millimetre;
}

double snap(double mm)
{
    return from_nanometres(to_nanometres(mm));
}

double snap_up(double mm)
{
    return std::ceil(mm * nanometres_per_millimetre - on_grid) / nanometres_per_millimetre;
}

double snap_down(double mm)
{
    return std::floor(mm * nanometres_per_millimetre + on_grid) / nanometres_per_millimetre;
}

} // namespace tuckwright
