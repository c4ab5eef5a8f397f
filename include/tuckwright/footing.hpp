// SPDX-License-Identifier: GPL-3.0-or-later
/// Whether things stand by themselves in a packed bundle, or would topple or drop if nobody held them.
#pragma once
#include <vector>

#include "tuckwright/bundle.hpp"

namespace tuckwright {

/// What is right under an item, with its shut lid and all that it holds.
struct Footing {
    bool carried = false; ///< a floor, a wall or the material of another item is under it; false over an empty mouth
    double overhang =
        0; ///< mm by which the centre of its weight lies outside the hull of what carries it; 0: it stands
    /// Degrees by which it may be tilted, the bad way, before it falls over: 90 for what leans, hangs by its lid or lies on
    /// a line, like a rod, which rolls but does not topple.
    double tilt = 90;
};

/// The footing of every item. Weights count as spread evenly over an item's first solid. What lies within a vessel that
/// does not stand is held by the vessel's wall, a shut lid by its vessel, and what is pressed into a vessel by its spring.
/// Neighbours that would stop a fall do not count. Requires: a bundle whose items are apart and in their containers. Ensures: one entry an item, in its order.
/// Complexity: quadratic in the items, times their solids.
std::vector<Footing> footings(const Bundle& bundle);

/// mm of overhang that nobody would notice where little is needed to hold a thing.
inline constexpr double steady_overhang = 1.0;
/// Degrees: what falls over sooner does so at a touch. Common practice, no source.
inline constexpr double steady_tilt = 8.0;

/// Whether it would topple by itself, or at a touch.
inline bool topples(const Footing& footing)
{
    return footing.carried && (footing.overhang > steady_overhang || footing.tilt < steady_tilt);
}

/// Items that are carried but would topple.
std::vector<std::size_t> toppling(const Bundle& bundle);

} // namespace tuckwright
