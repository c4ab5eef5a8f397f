// SPDX-License-Identifier: GPL-3.0-or-later
/// Where one more thing may begin to grow.
#pragma once
#include <vector>

#include "advice/room_draft.hpp"
#include "advice/room_space.hpp"

namespace tuckwright::advice {

/// An upright cylinder of air, told along the place's own axes from the bundle's origin, mm.
struct Seed {
    double x = 0, y = 0, low = 0, high = 0, radius = 0;
};

/// Cylinders of air between all pairs of a floor and a ceiling that anything in the place gives, found on a grid of about
/// `points` points across it: the most promising first, at most `most`.
/// Complexity: the points, times the obstacles and the pairs of floors and ceilings.
std::vector<Seed> seeds_of(const Space& space, int points, std::size_t most);

/// A draft of that posing within a seed, at an angle; a little smaller, so that it keeps off everything.
Draft draft_in(const Seed& seed, const Space& space, Posing posing, double angle);

} // namespace tuckwright::advice
