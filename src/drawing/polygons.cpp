// SPDX-License-Identifier: GPL-3.0-or-later
#include "drawing/polygons.hpp"

#include <boost/geometry.hpp>
#include <boost/geometry/geometries/multi_polygon.hpp>
#include <boost/geometry/geometries/point_xy.hpp>
#include <boost/geometry/geometries/polygon.hpp>
#include <cmath>

namespace tuckwright::drawing {

namespace {

namespace plane = boost::geometry;
using Point = plane::model::d2::point_xy<double>;
using Polygon = plane::model::polygon<Point>;
using Polygons = plane::model::multi_polygon<Polygon>;

template <class Ring> std::vector<Spot> corners_of(const Ring& ring)
{
    std::vector<Spot> corners;
    for (std::size_t k = 0; k + 1 < ring.size(); ++k) {
        corners.push_back({ring[k].x(), ring[k].y()});
    }
    return corners;
}

Polygon polygon_of(const std::vector<Spot>& outline)
{
    Polygon polygon;
    for (const Spot& p : outline) {
        plane::append(polygon.outer(), Point(p.x, p.y));
    }
    plane::correct(polygon);
    return polygon;
}

} // namespace

struct Area::Parts {
    Polygons polygons;
};

Area::Area() : parts_(std::make_unique<Parts>()) {}
Area::~Area() = default;

std::vector<Spot> convex_outline(const std::vector<Spot>& points)
{
    // On a grid, for corners that are all but the same upset what is done with the outlines later.
    constexpr double grid = 1e-4; // mm
    plane::model::multi_point<Point> cloud;
    for (const Spot& p : points) {
        plane::append(cloud, Point(grid * std::round(p.x / grid), grid * std::round(p.y / grid)));
    }
    Polygon hull;
    plane::convex_hull(cloud, hull);
    return corners_of(hull.outer());
}

double common_area(const std::vector<Spot>& one, const std::vector<Spot>& other)
{
    if (one.size() < 3 || other.size() < 3) {
        return 0;
    }
    Polygons common;
    plane::intersection(polygon_of(one), polygon_of(other), common);
    return plane::area(common);
}

void Area::add(const std::vector<Spot>& outline)
{
    Polygons joined;
    plane::union_(parts_->polygons, polygon_of(outline), joined);
    parts_->polygons = joined;
}

void Area::remove(const std::vector<Spot>& outline)
{
    if (parts_->polygons.empty()) {
        return;
    }
    Polygons left;
    plane::difference(parts_->polygons, polygon_of(outline), left);
    parts_->polygons = left;
}

Path Area::path() const
{
    Path path;
    for (const Polygon& polygon : parts_->polygons) {
        path.add(Path::polygon(corners_of(polygon.outer())));
        for (const auto& hole : polygon.inners()) {
            path.add(Path::polygon(corners_of(hole)));
        }
    }
    return path;
}

} // namespace tuckwright::drawing
