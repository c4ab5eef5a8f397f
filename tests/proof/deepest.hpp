// SPDX-License-Identifier: GPL-3.0-or-later
/// The deepest point that two bodies have in common, to some hundredths of a micrometre, in long double.
#pragma once
#include "support/sampled_body.hpp"

namespace judge {

using namespace tuckwright::sampled;

/// The largest depth that a point has in both bodies at once; negative where they are apart. Every figure that is returned
/// is that of a point which was looked at, so that it never says too much. Two bodies that overlap by d along a direction
/// have a common point at most d / 2 deep.
/// Source: the ellipsoid method for concave functions (Grötschel, Lovász, Schrijver 1988, Geometric Algorithms and
/// Combinatorial Optimization, chapter 3, from memory).
Real deepest_common(const Body& a, const Body& b);

/// The same while `mover` comes in straight along `direction`, from afar to its place; to half a micrometre.
Real deepest_on_the_way(const Body& mover, const Point& direction, const Body& obstacle);

} // namespace judge
