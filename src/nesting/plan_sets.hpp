// SPDX-License-Identifier: GPL-3.0-or-later
/// What can lie side by side: outlines of things at one level, in the plan of a bundle or of a cavity.
#pragma once
#include <vector>

namespace tuckwright::nesting {

/// What a level cuts out of a thing that lies along the axes: a disc, or a rectangle (mm, half sides).
struct Footprint {
    bool disc = false;
    double half_length = 0, half_width = 0; ///< of a disc both its radius; a line has no width
    double area() const;
    /// Radius of the largest disc in it.
    double inner() const { return half_length < half_width ? half_length : half_width; }
};

/// The plan of a bundle or of a cavity: a circle (its radius in both), or a rectangle of half sides.
struct Plan {
    bool round = true;
    double half_length = 0, half_width = 0;
    double area() const;
};

/// How outlines are turned in a rectangular plan: square to it, or anyhow. In a round plan they are turned anyhow.
enum class Turned { square, anyhow };

/// What a level cuts out of one thing, as it may lie in a plan. All of the thing, seen from above, is as long as that and
/// has its middle, but may be wider: a lying cylinder.
struct Lying {
    Footprint footprint, whole;
    Turned turned = Turned::square;
};

/// Whether all of it fits the plan alone. Exact, but for rectangles turned anyhow in a rectangle, which count with the disc
/// in them; up to 1e-9 mm too often.
bool fits_alone(const Lying& one, const Plan& plan);

/// Whether what the level cuts out of two things can lie without an inner point in common while all of each is in the
/// plan. Symmetric; exact as above, and for cylinders that lie in a circle slanting to each other up to their middles.
/// Source: in a circle, convex things are apart if and only if a line has each on its own side; see the .cpp.
bool fit_side_by_side(const Lying& one, const Lying& other, const Plan& plan);

/// A round vessel that stands: the radii of its outside and of its cavity, mm.
struct RoundVessel {
    double outside = 0, cavity = 0;
};

/// Whether something that stands out of a round vessel, which stands in the plan, may be beside another thing that does
/// not: never says so too rarely.
bool fit_beside_standing_out(const Lying& standing_out, const RoundVessel& vessel, const Lying& other, const Plan& plan);

/// What leans along a chord of a circle of that radius: discs of radius `thick` with their middles on a line so long.
struct Leaning {
    double thick = 0, length = 0;
};

/// How long a part of the line may be at most, beside which the other thing lies in the same circle: its outline is apart
/// from the discs on that part, not from the rest. Infinite if that may be all of it. Never too short.
double longest_beside_leaning(const Leaning& leaning, const Lying& other, double radius);

/// Whether discs of these radii fit a circle of that radius. Requires: each two of them do. Exact to 1e-9 mm.
bool three_discs_fit(double r, double s, double t, double radius);

/// Whether three fit a rectangular plan. Exact for rectangles square to it; discs, and what is turned anyhow, count with
/// the square in them, levels of lying cylinders without their wider middles.
bool three_fit_rectangle(const Lying& one, const Lying& other, const Lying& third, const Plan& plan);

/// The least radius of a circle round `count` discs of radius 1, or less where the least is not proved. Source: see
/// the .cpp.
double least_circle_round(int count);

} // namespace tuckwright::nesting
