// SPDX-License-Identifier: GPL-3.0-or-later
#include "drawing/faces.hpp"

#include <algorithm>

namespace tuckwright::drawing {

namespace {

constexpr double edge_on = 1e-6; ///< cosine below which a face is seen from its edge

double light_of(Vec3 normal) { return 0.88 + 0.12 * normal.z; }

/// A cylinder with its own axes chosen so that the second points at the eye as far as it can.
struct Round {
    Vec3 center, axis, first, second;
    double half, upper, lower; ///< half the height, radii at both ends
    double facing;             ///< cosine between axis and eye
    /// The sides that face the eye lie between this parameter and pi less it; more than a quarter turn: all or none do.
    double start;

    Round(const Solid& solid, const Camera& camera)
    {
        const auto& c = std::get<Cylinder>(solid.shape);
        center = solid.pose.center;
        axis = own_axis(solid.pose, 2);
        half = c.height / 2;
        upper = c.diameter / 2;
        lower = foot_of(c) / 2;
        facing = dot(axis, camera.toward);
        const Vec3 level = cross(camera.toward, axis);
        const double sine = norm(level);
        first = sine > edge_on ? unit(level) : own_axis(solid.pose, 0);
        second = cross(axis, first);
        if (dot(second, camera.toward) < 0) {
            first = -1.0 * first;
            second = -1.0 * second;
        }
        const double slope = (upper - lower) / (2 * half);
        // The normal of a tapering side is cos t first + sin t second - slope axis.
        const double turn = sine > edge_on ? slope * facing / sine : std::copysign(2.0, slope * facing);
        start = std::abs(turn) < 1 ? std::asin(turn) : std::copysign(2.0, turn);
    }
    Vec3 end(bool top) const { return center + (top ? half : -half) * axis; }
    double radius(bool top) const { return top ? upper : lower; }
};

/// A vector as it is seen: without the place.
Spot seen(const Camera& camera, Vec3 v) { return camera.project(v); }

Path& arc_of(Path& path, const Round& round, const Camera& camera, bool top, double from, double to)
{
    const double r = round.radius(top);
    return path.arc(camera.project(round.end(top)), seen(camera, r * round.first), seen(camera, r * round.second), from,
                    to);
}

Path end_of(const Round& round, const Camera& camera, bool top)
{
    Path path;
    arc_of(path, round, camera, top, 0, 2 * std::numbers::pi).close();
    return path;
}

/// The side, or the side as it is seen from within, through the nearer one.
Path side_of(const Round& round, const Camera& camera, bool far)
{
    constexpr double pi = std::numbers::pi;
    Path path;
    if (round.start > 1.9 || round.start < -1.9) {
        // Seen along the axis, all of it is turned to the eye or away from it: a ring, or nothing where it is straight.
        const bool all_near = round.start < 0;
        if (all_near != far && round.upper != round.lower) {
            path = end_of(round, camera, true).add(end_of(round, camera, false));
        }
        return path;
    }
    const double from = far ? pi - round.start : round.start, to = far ? 2 * pi + round.start : pi - round.start;
    arc_of(path, round, camera, false, from, to);
    arc_of(path, round, camera, true, to, from).close();
    return path;
}

struct Side {
    Vec3 normal;
    std::array<Vec3, 4> corners;
    int own; ///< 4 for its top, 5 for its bottom
};

std::vector<Side> sides_of(const Solid& solid)
{
    const auto& b = std::get<Box>(solid.shape);
    const double half[] = {b.length / 2, b.width / 2, b.height / 2};
    std::vector<Side> sides;
    for (std::size_t k = 0; k < 3; ++k) {
        const Vec3 axis = own_axis(solid.pose, k);
        const Vec3 u = half[(k + 1) % 3] * own_axis(solid.pose, (k + 1) % 3);
        const Vec3 v = half[(k + 2) % 3] * own_axis(solid.pose, (k + 2) % 3);
        for (const double sign : {1.0, -1.0}) {
            const Vec3 middle = solid.pose.center + (sign * half[k]) * axis;
            sides.push_back({sign * axis,
                             {middle + u + v, middle - u + v, middle - u - v, middle + u - v},
                             static_cast<int>(2 * k) + (sign > 0 ? 0 : 1)});
        }
    }
    return sides;
}

Path path_of(const Side& side, const Camera& camera)
{
    std::vector<Spot> corners;
    for (const Vec3& corner : side.corners) {
        corners.push_back(camera.project(corner));
    }
    return Path::polygon(corners);
}

/// The faces whose outward normals point to the eye, or away from it.
std::vector<Face> faces(const Solid& solid, const Camera& camera, bool far, bool top, bool bottom)
{
    std::vector<Face> found;
    const double sign = far ? -1 : 1;
    if (std::holds_alternative<Box>(solid.shape)) {
        for (const Side& side : sides_of(solid)) {
            const bool closed = side.own == 4 ? top : side.own != 5 || bottom;
            if (closed && sign * dot(side.normal, camera.toward) > edge_on) {
                found.push_back({path_of(side, camera), light_of(sign * side.normal)});
            }
        }
        return found;
    }
    const Round round(solid, camera);
    if (Path side = side_of(round, camera, far); !side.empty()) {
        found.push_back({side, light_of(sign * round.second)});
    }
    for (const bool is_top : {true, false}) {
        const double cosine = sign * (is_top ? round.facing : -round.facing);
        if ((is_top ? top : bottom) && cosine > edge_on) {
            found.push_back({end_of(round, camera, is_top), light_of((is_top ? sign : -sign) * round.axis)});
        }
    }
    return found;
}

/// The outline of a solid's upper end.
Path upper_end(const Solid& solid, const Camera& camera)
{
    if (std::holds_alternative<Cylinder>(solid.shape)) {
        return end_of(Round(solid, camera), camera, true);
    }
    return path_of(sides_of(solid)[4], camera);
}

} // namespace

std::vector<Face> front_faces(const Solid& solid, const Camera& camera, bool top, bool bottom)
{
    return faces(solid, camera, false, top, bottom);
}

std::vector<Face> inner_faces(const Hollow& hollow, const Camera& camera)
{
    return faces(hollow.room, camera, true, !hollow.open_top, !hollow.open_bottom);
}

Path rim(const Solid& body, const Hollow& hollow, const Camera& camera)
{
    const double facing = dot(own_axis(body.pose, 2), camera.toward);
    if (!hollow.open_top || (facing < edge_on && !hollow.open_bottom) || std::abs(facing) < edge_on) {
        return {};
    }
    Solid outer = body, inner = hollow.neck ? *hollow.neck : hollow.room;
    if (facing < 0) { // a sleeve on its head: its other end is the one that is seen
        for (Solid* solid : {&outer, &inner}) {
            solid->pose.center = solid->pose.center - height_of(solid->shape) * own_axis(solid->pose, 2);
        }
    }
    return upper_end(outer, camera).add(upper_end(inner, camera));
}

} // namespace tuckwright::drawing
