// SPDX-License-Identifier: GPL-3.0-or-later
/// A brute-force twin of the search for tiny kits of upright cylinders: every forest, every stacking, exactly.
#pragma once
#include <optional>
#include <vector>

namespace twin {

/// An upright cylinder, maybe a vessel: coaxial cavity, its floor `floor` above the bottom.
struct Tin {
    double diameter = 0, height = 0;
    double cavity = 0;       ///< inner diameter; 0 for a solid one
    double floor = 0;        ///< thickness of the bottom
    bool shut = false;       ///< its own lid is shut, and leaves the cavity `depth` high
    double depth = 0;
};

/// The smallest round envelope, in ml, over all bundles in which things stand upright on one axis in every vessel, and
/// in the bundle on one axis or in two stacks side by side. More is possible to a search, so it must not end above.
double least_volume_ml(const std::vector<Tin>& tins, double clearance);

} // namespace twin
