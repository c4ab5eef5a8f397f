// SPDX-License-Identifier: GPL-3.0-or-later
/// In which order solids are painted, so that what is nearer covers what is farther away.
#pragma once
#include <vector>

#include "drawing/camera.hpp"
#include "tuckwright/bundle.hpp"

namespace tuckwright::drawing {

/// Something that is painted as a whole: a solid, or of a vessel's body the far side, seen from within, or the near side.
struct Layer {
    enum class Part { whole, far, near };
    std::size_t item = 0, solid = 0;
    Part part = Part::whole;
    friend bool operator==(const Layer&, const Layer&) = default;
};

/// The layers of those items of a bundle that are there, from the farthest to the nearest: where the images of two overlap, the one that hides the other
/// comes later. What lies within a vessel comes between its far and its near side. Where solids hide one another all
/// round in a circle, the one comes first of which least is then painted over wrongly.
/// Requires: items apart and in their containers, and one entry an item. Complexity: quadratic in the solids; where there
/// are circles, for each of their layers quadratic in those of the circle.
std::vector<Layer> painting_order(const Bundle& bundle, const Camera& camera, const std::vector<bool>& there);

/// The same of all items.
std::vector<Layer> painting_order(const Bundle& bundle, const Camera& camera);

} // namespace tuckwright::drawing
