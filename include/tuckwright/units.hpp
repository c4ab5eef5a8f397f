// SPDX-License-Identifier: GPL-3.0-or-later
/// The numbers of the program: millimetres, grams, millilitres, and the nanometre grid they lie on.
#pragma once
#include <cstdint>

namespace tuckwright {

/// Grid steps in a millimetre: every length and coordinate that leaves the program is a whole number of nanometres.
inline constexpr double nanometres_per_millimetre = 1e6;

/// The longest length the program works with, in millimetres (10 m): exact as a double on the grid with room to spare.
inline constexpr double longest_length_mm = 10000.0;

/// The grid point nearest to a length in millimetres, counted in nanometres. Requires: |mm| at most 1e9.
std::int64_t to_nanometres(double mm);

/// The double nearest to a whole number of nanometres, in millimetres. Ensures: to_nanometres gives the number back.
double from_nanometres(std::int64_t nm);

/// The grid point nearest to, not below, not above a length in millimetres. Ensures: a value within 1e-9 mm of a
/// grid point counts as being on it, so that sums of grid points stay where they are.
double snap(double mm);
double snap_up(double mm);
double snap_down(double mm);

} // namespace tuckwright
