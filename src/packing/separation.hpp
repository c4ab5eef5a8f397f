// SPDX-License-Identifier: GPL-3.0-or-later
/// Guided local search that drives the overlap of a layout to nothing.
#pragma once
#include <functional>
#include <optional>
#include <vector>

#include "packing/layout.hpp"
#include "packing/random.hpp"

namespace tuckwright::packing {

/// How hard to try.
struct SeparationEffort {
    int passes = 12;      ///< passes without progress before a strike
    int strikes = 2;      ///< strikes before giving up
    int samples = 24;     ///< sampled places for each move
    int relaxing = 20;    ///< steps in which all are pushed apart together, after each pass
    std::function<bool()> stop = nullptr; ///< asked before each move; then it gives up
};

/// Overlap in mm that counts as none, for the scene: the polish removes it.
double negligible_overlap(const Scene& scene);

/// Moves bodies until the layout is free of overlap, within the effort. Ensures: true and a layout whose total overlap
/// is negligible, or false and the layout with the least overlap met.
bool separate(Layout& layout, Random& random, const SeparationEffort& effort);

/// A cell that a body may enter, in which form, and stowed in which way.
struct Door {
    int cell = outermost;
    Form form = Form::standing;
    int way = 0;
};
/// Every door that the body has now.
std::vector<Door> doors(const Layout& layout, int body);

/// A random place behind a door, likely to touch something. Requires: a door of the body.
Place sample_place(const Layout& layout, int body, const Door& door, Random& random);

/// Of `samples` random places behind the doors, that where the body overlaps least; nothing without doors.
std::optional<Place> least_overlapping(const Layout& layout, int body, const std::vector<Door>& open, int samples,
                                       Random& random);

/// Improves a place by steps along the axes and turns, shrinking from `step` to `finest` mm. Returns its cost.
double descend(const Layout& layout, int body, Place& place, const Weights& weights, double step, double finest,
               Random& random);

} // namespace tuckwright::packing
