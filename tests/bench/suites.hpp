// SPDX-License-Identifier: GPL-3.0-or-later
/// The suites of the benchmark. All go the way that a user's kit goes; what is published without a unit is told in
/// lengths of a kit.
#pragma once
#include <vector>

#include "bench/case.hpp"
#include "bench/stored_bests.hpp"

namespace tuckwright::bench {

/// 2 to 50 equal discs in the smallest circle; the figure is its radius over theirs.
Suite equal_circles();

/// Discs of radius 1 to n in the smallest circle, n = 5 to 20; the figure is its radius.
Suite circles_of_radii();

/// Boxes whose least bundle is published, and blocks that fill a box exactly; the figure is the volume.
Suite classic_boxes();

/// Rings in rings in a rectangle; the figure is the rectangle's area.
Suite rings();

/// Generated kits of 8, 12, 16, 25 and 40 items, twelve each, against the stored bests.
Suite kits(const StoredBests& bests);

/// Generated kits of 50 to 400 items, two each, for the growth of time with their number.
Suite growth();

/// Generated kits of 16 items, to be run with one thread and with two.
Suite threads();

} // namespace tuckwright::bench
