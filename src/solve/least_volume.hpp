// SPDX-License-Identifier: GPL-3.0-or-later
/// The lower bound of a kit, as far as it is known while the kit is solved.
#pragma once
#include <cstdint>
#include <limits>

#include "tuckwright/kit.hpp"

namespace tuckwright {

/// How many things a kit has, copies counted.
int things_of(const Kit& kit);

/// What no bundle of a kit can be smaller than, as far as it is known by now. The kit must outlive it.
class LeastVolume {
public:
    explicit LeastVolume(const Kit& kit);

    double ml() const { return ml_; }
    /// Whether a volume is as small as can be, up to rounding to the grid.
    bool is_met_by(double volume_ml) const { return volume_ml <= ml_ * (1 + 1e-7); }
    /// Tries to raise it towards the volume of a bundle.
    void raise(double volume_ml, std::uint64_t work);
    /// Whether it is met, with a quick try to raise it where the kit is small.
    bool is_soon_met_by(double volume_ml);

private:
    const Kit& kit_;
    double ml_, tried_ = std::numeric_limits<double>::infinity();
    int things_;
};

} // namespace tuckwright
