// SPDX-License-Identifier: GPL-3.0-or-later
#include <CGAL/Exact_predicates_inexact_constructions_kernel.h>
#include <CGAL/convex_hull_2.h>

#include <algorithm>
#include <limits>

#include "tuckwright/geometry.hpp"

namespace tuckwright {

namespace {

using Point = CGAL::Exact_predicates_inexact_constructions_kernel::Point_2;

double distance_to_edge(const Point& a, const Point& b, double x, double y)
{
    const double dx = b.x() - a.x(), dy = b.y() - a.y(), square = dx * dx + dy * dy;
    const double along = square > 0 ? std::clamp(((x - a.x()) * dx + (y - a.y()) * dy) / square, 0.0, 1.0) : 0;
    return std::hypot(x - a.x() - along * dx, y - a.y() - along * dy);
}

} // namespace

double distance_outside(const std::vector<std::array<double, 2>>& points, std::array<double, 2> point)
{
    std::vector<Point> given, hull;
    for (const auto& [x, y] : points) {
        given.emplace_back(x, y);
    }
    CGAL::convex_hull_2(given.begin(), given.end(), std::back_inserter(hull));
    bool inside = hull.size() > 2;
    double nearest = std::numeric_limits<double>::infinity();
    for (std::size_t k = 0; k < hull.size(); ++k) {
        const Point &a = hull[k], &b = hull[(k + 1) % hull.size()];
        inside = inside && CGAL::orientation(a, b, Point(point[0], point[1])) != CGAL::RIGHT_TURN;
        nearest = std::min(nearest, distance_to_edge(a, b, point[0], point[1]));
    }
    return inside ? 0 : nearest;
}

} // namespace tuckwright
