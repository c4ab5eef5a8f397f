// SPDX-License-Identifier: GPL-3.0-or-later
/// Discs in a circle as small as can be found.
#pragma once
#include <cstdint>
#include <functional>
#include <optional>
#include <vector>

#include "packing/random.hpp"

namespace tuckwright::packing {

/// Where the middles of discs lie in mm, and the radius of the circle about the origin that they lie in.
struct DiscPlaces {
    std::vector<double> x, y;
    double radius = 0;
};

struct DiscEffort {
    double below = 1e300;      ///< mm: only smaller circles are of interest
    std::uint64_t work = 0;    ///< pairs of discs looked at, thirty-two counting as one, before no more runs begin
    std::function<bool()> stop = nullptr;
};

struct DiscsFound {
    std::optional<DiscPlaces> places; ///< nothing where no circle is smaller
    std::uint64_t work = 0;           ///< that it took
};

/// Looks for places of discs of these radii in mm. Requires: at least one, all positive. Ensures: no two discs overlap
/// and none stands out, up to 1e-9 of the radius; the same for the same random numbers, unless stop() said so.
/// Source: monotonic basin hopping, A. Grosso, A. Jamali, M. Locatelli and F. Schoen, J. Global Optimization 47 (2010);
/// overlap as an elastic energy in a circle that is kept too small, W. Huang and T. Ye, European J. Operational Research
/// 210 (2011); swaps of discs about as large, Z. Zeng, X. Yu, K. He, W. Huang and Z. Fu, European J. Operational
/// Research 250 (2016) (the three from memory).
DiscsFound discs_in_circle(const std::vector<double>& radii, Random& random, const DiscEffort& effort);

} // namespace tuckwright::packing
