// SPDX-License-Identifier: GPL-3.0-or-later
/// Sums that are printed: each is rounded as it is shown, and the next goes on with what is shown.
#pragma once
#include <string>
#include <vector>

#include "tuckwright/provision.hpp"

namespace tuckwright::provisioning {

enum class Toward { more, less, nearest };

/// Rounded to so many decimals; what lies within 1e-9 of one is taken for it.
double rounded(double value, int decimals, Toward toward);

/// "0.45", "1200": as few decimals as it takes, six at most.
std::string figure(double value);

class Working {
public:
    /// Adds a line. Returns its rounded value. Requires: the sum, worked out with the figures in it, gives the value.
    double line(WorkingLine line, Toward toward);
    const std::vector<WorkingLine>& lines() const { return lines_; }

private:
    std::vector<WorkingLine> lines_;
};

} // namespace tuckwright::provisioning
