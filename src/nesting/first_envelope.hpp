// SPDX-License-Identifier: GPL-3.0-or-later
/// The widths and heights that first layouts are built in.
#pragma once
#include "nesting/kit_scene.hpp"
#include "packing/random.hpp"
#include "packing/scene.hpp"
#include "tuckwright/kit.hpp"

namespace tuckwright::nesting {

/// An envelope at a position from 0, a tower, to 1, a single layer, evenly on a log scale, within the kit's limits.
packing::Envelope first_envelope(const KitScene& kit, const Kit& source, double position, packing::Random& random);

/// Widens a box envelope until every body that can't nest has a form and turn that fits in plan.
void widen(packing::Envelope& envelope, const KitScene& kit);

/// The height of some body in some form, no less than what the bodies need that can't nest: bundles are often just as
/// high as one of their items, and no small step leads there from a higher one.
double natural_height(const KitScene& kit, packing::Random& random);

} // namespace tuckwright::nesting
