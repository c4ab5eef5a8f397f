// SPDX-License-Identifier: GPL-3.0-or-later
/// The one home of every tolerance, each with its unit and meaning.
#pragma once

namespace tuckwright::tolerance {

/// mm: air that the search keeps between curved or turned surfaces, so that a plane with whole numbers separates them.
inline constexpr double provable_gap = 1e-3;

/// mm: an item rests on something if lowering it by this much would push it into a neighbour, a wall or the floor.
inline constexpr double rest_drop = 1e-2;

/// relative: how far a printed volume, weight sum or gap may differ from the exact one (they are rounded for print).
inline constexpr double printed_relative = 1e-9;

/// relative: how far a volume that is proved the smallest may lie above the lower bound. Sides are rounded up to the grid
/// by two nanometres at most.
inline constexpr double proved_best_relative = 1e-7;

/// absolute, per matrix entry: how far a printed rotation matrix may differ from that of its quaternion.
inline constexpr double printed_rotation = 1e-12;

} // namespace tuckwright::tolerance
