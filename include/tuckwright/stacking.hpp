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
/// in a vessel goes in before the vessel itself is placed, then its lid. Steps carry the text for people.
/// Requires: every item inside its container and apart from the others (as check() proves). Reads: items, envelope.
/// Ensures: same bundle, same steps; ties go to the lower and then to the earlier item.
StackingOrder stacking_order(const Bundle& bundle);

} // namespace tuckwright
