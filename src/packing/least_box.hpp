// SPDX-License-Identifier: GPL-3.0-or-later
/// The least box-shaped bundle of a few boxes, exactly.
#pragma once
#include <cstdint>
#include <functional>
#include <optional>

#include "packing/layout.hpp"
#include "packing/polish.hpp"

namespace tuckwright::packing {

/// With more bodies a search of all their arrangements has no hope.
inline constexpr std::size_t most_boxes = 12;

struct LeastBoxOptions {
    EnvelopeLimits limits;
    double below = 1e300;        ///< mm^3: only what is smaller is of interest
    std::uint64_t work = 0;      ///< pairs of boxes looked at before it gives up, and as much as that
    std::function<bool()> stop = nullptr;
};

struct LeastBox {
    std::optional<Layout> layout; ///< the smallest that was found, in a box envelope, if any
    double volume = 1e300;        ///< mm^3, of that envelope
    /// Whether no arrangement that the search knows of is within the limits and smaller than that, or than `below`, by
    /// more than same_box of its volume.
    bool proved = false;
};

/// What is smaller by no more than this share is not looked for.
inline constexpr double same_box = 1e-9;

/// Looks for the least box of plain boxes, all directly in the bundle. Ensures: the layout is without overlap, within
/// the limits; the same on every machine, unless stop() said so; nothing, and nothing proved, for other bodies or more
/// of them than most_boxes.
LeastBox least_box(const Scene& scene, const LeastBoxOptions& options);

} // namespace tuckwright::packing
