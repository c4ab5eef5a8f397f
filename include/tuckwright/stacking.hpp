// SPDX-License-Identifier: GPL-3.0-or-later
/// The order in which a bundle is put together.
#pragma once
#include <string>
#include <vector>

#include "tuckwright/bundle.hpp"

namespace tuckwright {

/// The steps, or the items that keep one another from going in.
struct StackingOrder {
    std::vector<Step> steps;             ///< empty when there is no order
    std::vector<std::size_t> cycle;      ///< items of a bundle that block one another, when there is no order
};

/// Finds an order in which each item goes in along a straight line, innermost assemblies first: everything that lies
/// in a vessel goes in before the vessel itself is placed, then its lid. A sleeve that holds something goes in empty
/// and is filled at once, wherever there is an order for that; else it is moved with what it holds. Things go into the
/// bundle from above, and level only where there is no other way. Steps carry the text for people, and a lid's step the band that holds it; in a box, left is
/// low x and front low y.
/// Requires: every item inside its container and apart from the others (as check() proves). Reads: items, clearance, bands.
/// Ensures: same bundle, same steps; ties go to the lower (by tenths of a millimetre), then to the larger, then to the
/// earlier item.
/// Complexity: quadratic in the items of one container, times their solids; some times that where sleeves cannot all be
/// filled in their place.
StackingOrder stacking_order(const Bundle& bundle);

/// For the certificate: planes that show that no step meets what has been placed before. Each is from a solid of what
/// moves to one that stands, does not oppose the step's direction, and has whole numbers of about 2^40. Pairs for which
/// an axis of the world or of one of the two solids does the same are left out, as are pairs that cannot be separated.
/// Requires: steps of this bundle, in order.
std::vector<SeparatingPlane> step_planes(const Bundle& bundle, const std::vector<Step>& steps);

/// For the certificate: planes that show that items are apart of which neither lies within the other, `first` below
/// `second`, for pairs of solids that no axis of the world and no axis of their own separates.
std::vector<SeparatingPlane> pair_planes(const Bundle& bundle);

} // namespace tuckwright
