// SPDX-License-Identifier: GPL-3.0-or-later
/// Geometry of convex solids in floating point: supports, distance and separation, sweeps, enclosing shapes.
/// The search and the stacking order use it; the exact check does not.
#pragma once
#include <array>
#include <cmath>
#include <vector>

#include "tuckwright/shape.hpp"

namespace tuckwright {

inline Vec3 operator+(Vec3 a, Vec3 b) { return {a.x + b.x, a.y + b.y, a.z + b.z}; }
inline Vec3 operator-(Vec3 a, Vec3 b) { return {a.x - b.x, a.y - b.y, a.z - b.z}; }
inline Vec3 operator*(double s, Vec3 a) { return {s * a.x, s * a.y, s * a.z}; }
inline double dot(Vec3 a, Vec3 b) { return a.x * b.x + a.y * b.y + a.z * b.z; }
inline Vec3 cross(Vec3 a, Vec3 b)
{
    return {a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x};
}
inline double norm(Vec3 a) { return std::sqrt(dot(a, a)); }

/// A solid with its rotation matrix worked out, and optionally a sweep: the solid dragged along the segment from its
/// pose to pose + sweep.
struct Hull {
    Shape shape;
    Vec3 center;
    Matrix3 rotation{};
    Vec3 sweep;
};
Hull hull_of(const Solid& solid, Vec3 sweep = {});

/// The farthest point of a hull along a direction (any length but zero); ties go anywhere on the face.
Vec3 support_point(const Hull& hull, Vec3 direction);
/// The largest dot product of a point of the hull with the direction.
double support(const Hull& hull, Vec3 direction);

/// Two convex solids as they stand to each other.
struct Separation {
    double distance = 0;  ///< mm: positive apart, negative an overlap depth (an upper bound of the true one)
    Vec3 normal;          ///< unit vector from the first to the second along which distance is measured
    Vec3 point;           ///< a point of the first hull nearest to the second (deepest within, when they overlap)
};
/// Signed distance between two hulls. Ensures: normal satisfies
/// -support(second, -normal) - support(first, normal) = distance up to 1e-9 mm; touching gives 0 up to 1e-7 mm.
/// Where an axis of the world or of one of the solids is as good as any other direction up to 1e-9 mm (faces that lie
/// flat on each other, above all), the normal is that axis, so that a proof can use it without rounding.
/// Complexity: constant, some tens of support evaluations; several hundreds when the hulls overlap. Source: Gilbert, Johnson, Keerthi 1988, IEEE J. Robotics
/// and Automation 4(2).
Separation separation(const Hull& first, const Hull& second);

/// The smallest circle that encloses circles given as (x, y, radius). Requires: at least one. Source: CGAL's smallest
/// enclosing sphere of spheres.
std::array<double, 3> enclosing_circle(const std::vector<std::array<double, 3>>& circles);

/// How far a point of the plane lies outside the convex hull of others, in mm: 0 within or on it, infinite where there
/// are none. Source: CGAL's planar convex hull.
double distance_outside(const std::vector<std::array<double, 2>>& points, std::array<double, 2> point);

/// The way round the convex outline of solids seen from above, in mm: never below it, and above it by a share of 1e-6 at
/// most; 0 for none. What tapers counts as straight.
double outline_girth(const std::vector<Solid>& solids);

/// Extent of a hull along the three world axes: low and high corner.
struct Extent {
    Vec3 low, high;
};
Extent extent(const Hull& hull);

} // namespace tuckwright
