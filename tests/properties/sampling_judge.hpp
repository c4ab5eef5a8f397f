// SPDX-License-Identifier: GPL-3.0-or-later
/// A judge by dense sampling in long double that shares nothing with the exact check. It only ever errs towards "fine":
/// each of its figures is a true lower bound of how wrong something is.
#pragma once
#include <vector>

#include "support/sampled_body.hpp"
#include "tuckwright/bundle.hpp"

namespace sampling {

using namespace tuckwright::sampled;

/// The depth of a point that lies in both bodies, as deep as sampling finds one; negative where it finds none.
Real common_depth(const Body& a, const Body& b);

/// The farthest that points of the body's edges and rims lie beyond the side walls of a room, beyond its floor, its top.
struct Beyond {
    Real walls = 0, floor = 0, top = 0;
};
Beyond beyond(const Body& body, const Body& room);

/// The largest common depth while the mover comes in along `direction` from afar to its place.
Real depth_on_the_way(const Body& mover, const Point& direction, const Body& obstacle);

/// How far the two bodies are apart along a direction, at most by rounding wrong: negative where they overlap along it.
Real apart_along(const Body& a, const Body& b, const Point& direction);

std::vector<Body> bodies_of(const tuckwright::PlacedItem& item);

} // namespace sampling
