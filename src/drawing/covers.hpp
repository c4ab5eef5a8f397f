// SPDX-License-Identifier: GPL-3.0-or-later
/// Where the bands of a bundle run, and what its bag looks like.
#pragma once
#include <optional>
#include <vector>

#include "tuckwright/bundle.hpp"

namespace tuckwright::drawing {

/// The shut lid that a band holds; nothing for a band round everything, or where the lid is not shut.
std::optional<std::size_t> held_lid(const Bundle& bundle, const Band& band);

/// Corners of the closed line in which a band lies, mm: over a lid and under its vessel in an upright plane through the
/// middle of that, along or across it, whichever is shorter; round everything level, where it meets the most things that lie
/// directly in the bundle, as near to half the height as may be. The model says neither: any place does. Ensures: convex,
/// plane, no longer than the band; nothing where it holds a lid that is not shut. Complexity: quadratic in the items.
std::vector<Vec3> loop_of(const Bundle& bundle, const Band& band);

/// The envelope, and the bag round it, as solids where they lie.
Solid envelope_solid(const Bundle& bundle);
Solid bag_solid(const Bundle& bundle);

} // namespace tuckwright::drawing
