// SPDX-License-Identifier: GPL-3.0-or-later
/// Compaction of a layout by linear programs under its contacts, and settling under gravity.
#pragma once
#include <functional>

#include "packing/layout.hpp"

namespace tuckwright::packing {

/// Upper limits of the outermost cell, in the measures of Envelope; infinite where there is none.
struct EnvelopeLimits {
    double radius = 1e9, half_length = 1e9, half_width = 1e9, height = 1e9;
};

struct PolishOptions {
    EnvelopeLimits limits;
    double curved_gap = 1.2e-3; ///< mm kept where curved or turned surfaces meet
    double flat_gap = 0;        ///< mm kept where flat faces along the axes meet
    double wall_gap = 1e-5;     ///< mm kept to the side walls of cavities, as far as there is play
    bool turning = true;        ///< whether bodies may turn about their cell's axis
    int iterations = 12;
    bool coarse = false;        ///< whether it may leave violations of up to coarse_violation
    std::function<bool()> stop = nullptr; ///< asked before each step; then it only removes what overlaps
};

/// Lets the envelope shrink to a local least volume while all contacts hold, starting from a layout with little or no
/// overlap. Dimensions over their limit come first. Ensures: true and a layout whose overlaps and excesses are below 2e-8 mm and gaps kept; or false, and the
/// layout as it was. Source: sequential linear programming with a trust region; contacts with fixed normals as linear
/// rows after Z. Li and V. Milenkovic, European J. Operational Research 84 (1995).
bool compact(Layout& layout, const PolishOptions& options);

/// Lowers everything as far as it goes, keeping the envelope. Same promise.
bool settle(Layout& layout, const PolishOptions& options);

/// Largest overlap, missing gap or excess in mm, with the gaps of the options; limits do not count.
double worst_violation(const Layout& layout, const PolishOptions& options);

/// What compact() lowers: the logarithm of the volume, and dearly what is over a limit.
double burden(const Envelope& envelope, const EnvelopeLimits& limits);

/// The direction that is up in the world, in the frame of a cell.
Vec3 up_in_cell(const Layout& layout, int cell);

} // namespace tuckwright::packing
