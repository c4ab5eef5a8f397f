// SPDX-License-Identifier: GPL-3.0-or-later
#include "properties/sampling_judge.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

namespace sampling {

using namespace tuckwright;

namespace {

constexpr Real two_pi = 2 * std::numbers::pi_v<Real>;
constexpr Real nowhere = -std::numeric_limits<Real>::infinity();

/// Calls visit(point) all over the body, a little within its surface; more points near the surface than in the middle.
template <class Visit> void each_inner_point(const Body& body, Visit visit)
{
    static constexpr Real levels[] = {-0.995L, -0.9L, -0.6L, -0.2L, 0.2L, 0.6L, 0.9L, 0.995L};
    for (const Real w : levels) {
        if (!body.round) {
            for (const Real u : levels) {
                for (const Real v : levels) {
                    visit(body.world({u * body.half[0], v * body.half[1], w * body.half[2]}));
                }
            }
            continue;
        }
        for (const Real ring : {0.0L, 0.5L, 0.9L, 0.995L}) {
            for (int turn = 0; turn < (ring == 0 ? 1 : 24); ++turn) {
                const Real r = ring * body.half[0], angle = two_pi * turn / 24;
                visit(body.world({r * std::cos(angle), r * std::sin(angle), w * body.half[2]}));
            }
        }
    }
}

/// Corners of a box, points of a cylinder's rims.
template <class Visit> void each_rim_point(const Body& body, Visit visit)
{
    for (const Real side : {-1.0L, 1.0L}) {
        for (int turn = 0; turn < (body.round ? 180 : 4); ++turn) {
            const Real angle = two_pi * turn / 180;
            const Real u = body.round ? std::cos(angle) : turn % 2 == 0 ? 1 : -1;
            const Real v = body.round ? std::sin(angle) : turn < 2 ? 1 : -1;
            visit(body.world({u * body.half[0], v * body.half[1], side * body.half[2]}));
        }
    }
}

Real support(const Body& body, const Point& n)
{
    const Real x = dot(n, body.axis[0]), y = dot(n, body.axis[1]), z = dot(n, body.axis[2]);
    return dot(n, body.center) + body.half[2] * std::abs(z) +
           (body.round ? body.half[0] * std::hypot(x, y) : body.half[0] * std::abs(x) + body.half[1] * std::abs(y));
}

} // namespace

std::vector<Body> bodies_of(const PlacedItem& item)
{
    std::vector<Body> bodies;
    for (const auto& solid : item.solids) {
        bodies.push_back(body_of(solid.shape, solid.pose));
    }
    return bodies;
}

Real common_depth(const Body& a, const Body& b)
{
    const Real away = std::hypot(a.center[0] - b.center[0], a.center[1] - b.center[1], a.center[2] - b.center[2]);
    if (away > a.radius() + b.radius()) {
        return nowhere;
    }
    Real deepest = nowhere;
    const auto look = [&](const Point& p) { deepest = std::max(deepest, std::min(a.depth(p), b.depth(p))); };
    each_inner_point(a, look);
    each_inner_point(b, look);
    return deepest;
}

Beyond beyond(const Body& body, const Body& room)
{
    Beyond most{nowhere, nowhere, nowhere};
    each_rim_point(body, [&](const Point& p) {
        const Point q = room.local(p);
        const Real side = room.round ? std::hypot(q[0], q[1]) - room.half[0]
                                     : std::max(std::abs(q[0]) - room.half[0], std::abs(q[1]) - room.half[1]);
        most.walls = std::max(most.walls, side);
        most.floor = std::max(most.floor, -q[2] - room.half[2]);
        most.top = std::max(most.top, q[2] - room.half[2]);
    });
    return most;
}

Real depth_on_the_way(const Body& mover, const Point& direction, const Body& obstacle)
{
    const Real length = std::sqrt(dot(direction, direction)), far = 2 * (mover.radius() + obstacle.radius());
    Real deepest = nowhere;
    for (int step = 1; step <= 40; ++step) {
        Body there = mover;
        for (std::size_t k = 0; k < 3; ++k) {
            there.center[k] -= far * step / 40 * direction[k] / length;
        }
        deepest = std::max(deepest, common_depth(there, obstacle));
    }
    return deepest;
}

Real apart_along(const Body& a, const Body& b, const Point& direction)
{
    const Real length = std::sqrt(dot(direction, direction));
    const Point n{direction[0] / length, direction[1] / length, direction[2] / length};
    const Point back{-n[0], -n[1], -n[2]};
    return -support(b, back) - support(a, n);
}

} // namespace sampling
