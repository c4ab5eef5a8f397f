// SPDX-License-Identifier: GPL-3.0-or-later
/// What a bundle says of how its things were measured, how they fit and how far they can move.
#pragma once
#include "tuckwright/bundle.hpp"
#include "tuckwright/kit.hpp"

namespace tuckwright {

/// Gives a bundle of this kit the kit's tolerances and what of it is soft, and works out fits and plays.
/// Requires: the bundle's items are in the kit's order, copy by copy, and check() has no objection.
void measure(const Kit& kit, Bundle& bundle);

} // namespace tuckwright
