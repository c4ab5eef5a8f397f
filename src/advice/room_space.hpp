// SPDX-License-Identifier: GPL-3.0-or-later
/// The surroundings of one more thing in a place of a bundle: the walls that hold it and what is in its way.
#pragma once
#include <array>
#include <optional>
#include <vector>

#include "advice/room_draft.hpp"
#include "tuckwright/bundle.hpp"

namespace tuckwright::advice {

/// The inside of a container less the clearance, its side walls going on for ever past an open end.
struct Walls {
    Vec3 center;
    Axes frame;
    bool round = true;
    std::array<double, 3> half{}; ///< radius, radius, half the height; or half of each side
    double foot = 0;              ///< radius at the lower end where it tapers; as `half` where it does not
    bool floor = true, top = true;

    bool tapers() const { return foot < half[0]; }
    /// mm by which the radius grows with each mm of height.
    double slope() const { return (half[0] - foot) / (2 * half[2]); }
};

/// What stands in the way, and the box round it.
struct Obstacle {
    Hull hull;
    Extent box;
    bool beside = false; ///< it lies in the same place, however deep within something there
};

/// A limit to the way round the outline of everything, seen from above.
struct Girth {
    double most = 0;
    std::vector<Solid> others; ///< what it goes round besides
    std::vector<double> reach; ///< how far these reach along each of the directions
};

struct Space {
    Axes frame;                 ///< of the place itself
    std::vector<Walls> around;   ///< its own walls first, the envelope last
    std::optional<Walls> neck;   ///< a narrow opening that the thing passes
    bool enters_top = false, enters_bottom = false; ///< open ends of its own, below or above which it has to reach
    std::vector<Obstacle> obstacles;
    std::optional<Girth> girth;
};

/// mm that a thing must reach into an open end to be called in it.
inline constexpr double least_depth = 1;

/// Directions in which a girth is measured.
inline constexpr std::size_t girth_directions = 120;
Vec3 girth_direction(std::size_t k);

/// Requires: a lodging of the bundle. Things on which nothing, or not any weight, may lie are in the way a little above
/// their top too.
Space space_of(const Bundle& bundle, const std::optional<Lodging>& in);

/// The same for a thing that goes in last of all in its place: it can be under nothing there.
Space under_nothing(Space space);

/// Cavities that take things, in the order of the items: not those that contents fill.
std::vector<Lodging> cavities_of(const Bundle& bundle);

} // namespace tuckwright::advice
