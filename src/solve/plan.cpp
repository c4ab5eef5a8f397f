// SPDX-License-Identifier: GPL-3.0-or-later
// Outline of point_between. What is looked for is a region with holes: rings, slivers between a plate's edge and a
// mouth, corners on a rim. Its closure has its corners where edges cross or at corners of rectangles, and its widest
// places lie between such points, or between points of the circles that look towards or away from the other outlines.
// So these are the candidates, with the points half-way between every two of them; the best few are then moved as far
// from all edges as a pattern search gets them.
#include "solve/plan.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace tuckwright {

namespace {

constexpr double upright = 1 - 1e-12, on_grid = 2e-7; // mm: a fifth of a grid step

double rise(const Hull& hull, std::size_t axis) { return std::abs(hull.rotation[2][axis]); }

/// Half of the length, width and height; the radius twice for a cylinder.
std::array<double, 3> halves(const Shape& shape)
{
    if (const auto* c = std::get_if<Cylinder>(&shape)) {
        return {c->diameter / 2, c->diameter / 2, c->height / 2};
    }
    const auto& b = std::get<Box>(shape);
    return {b.length / 2, b.width / 2, b.height / 2};
}

Outline rectangle(const Hull& hull, std::size_t along, double a, double b)
{
    return {false, hull.center.x, hull.center.y, a, b, hull.rotation[0][along], hull.rotation[1][along]};
}

} // namespace

bool is_level(const Hull& hull)
{
    if (std::holds_alternative<Cylinder>(hull.shape)) {
        return rise(hull, 2) > upright || rise(hull, 2) < 1 - upright;
    }
    return std::max({rise(hull, 0), rise(hull, 1), rise(hull, 2)}) > upright;
}

bool has_level_faces(const Hull& hull)
{
    return is_level(hull) && (std::holds_alternative<Box>(hull.shape) || rise(hull, 2) > upright);
}

std::optional<Outline> level_cut(const Hull& hull, double z, bool closed)
{
    const std::array<double, 3> half = halves(hull.shape);
    const double up = std::abs(z - hull.center.z), hair = closed ? on_grid : -on_grid;
    if (std::holds_alternative<Cylinder>(hull.shape)) {
        if (rise(hull, 2) > upright) {
            return up < half[2] + hair ? std::optional(Outline{true, hull.center.x, hull.center.y, half[0], 0, 1, 0})
                                       : std::nullopt;
        }
        return up < half[0] ? std::optional(rectangle(hull, 2, half[2], std::sqrt(half[0] * half[0] - up * up)))
                            : std::nullopt;
    }
    const std::size_t axis = rise(hull, 0) > upright ? 0 : rise(hull, 1) > upright ? 1 : 2;
    const std::size_t first = (axis + 1) % 3, second = (axis + 2) % 3;
    return up < half[axis] + hair ? std::optional(rectangle(hull, first, half[first], half[second])) : std::nullopt;
}

double depth_in(const Outline& o, PlanPoint p)
{
    const double dx = p[0] - o.x, dy = p[1] - o.y;
    if (o.round) {
        return o.a - std::sqrt(dx * dx + dy * dy);
    }
    return std::min(o.a - std::abs(dx * o.c + dy * o.s), o.b - std::abs(dy * o.c - dx * o.s));
}

namespace {

PlanPoint at(const Outline& o, double u, double v) { return {o.x + u * o.c - v * o.s, o.y + u * o.s + v * o.c}; }

/// The edges of a rectangle, each from one corner to the next.
std::array<std::array<PlanPoint, 2>, 4> edges(const Outline& o)
{
    const std::array<PlanPoint, 4> corner{at(o, o.a, o.b), at(o, -o.a, o.b), at(o, -o.a, -o.b), at(o, o.a, -o.b)};
    return {{{corner[0], corner[1]}, {corner[1], corner[2]}, {corner[2], corner[3]}, {corner[3], corner[0]}}};
}

void cross_circles(const Outline& p, const Outline& q, std::vector<PlanPoint>& points)
{
    const double dx = q.x - p.x, dy = q.y - p.y, d2 = dx * dx + dy * dy;
    if (d2 < 1e-18) {
        return;
    }
    const double along = (d2 + p.a * p.a - q.a * q.a) / (2 * d2), h2 = p.a * p.a / d2 - along * along;
    if (h2 < 0) {
        return;
    }
    for (const double h : {std::sqrt(h2), -std::sqrt(h2)}) {
        points.push_back({p.x + along * dx - h * dy, p.y + along * dy + h * dx});
    }
}

void cross_edge_circle(const std::array<PlanPoint, 2>& edge, const Outline& disc, std::vector<PlanPoint>& points)
{
    const double ux = edge[1][0] - edge[0][0], uy = edge[1][1] - edge[0][1], u2 = ux * ux + uy * uy;
    const double fx = edge[0][0] - disc.x, fy = edge[0][1] - disc.y;
    const double middle = -(fx * ux + fy * uy) / u2, h2 = middle * middle - (fx * fx + fy * fy - disc.a * disc.a) / u2;
    if (h2 < 0) {
        return;
    }
    for (const double t : {middle - std::sqrt(h2), middle + std::sqrt(h2)}) {
        if (t >= 0 && t <= 1) {
            points.push_back({edge[0][0] + t * ux, edge[0][1] + t * uy});
        }
    }
}

void cross_edges(const std::array<PlanPoint, 2>& p, const std::array<PlanPoint, 2>& q, std::vector<PlanPoint>& points)
{
    const double ux = p[1][0] - p[0][0], uy = p[1][1] - p[0][1], vx = q[1][0] - q[0][0], vy = q[1][1] - q[0][1];
    const double area = ux * vy - uy * vx, wx = q[0][0] - p[0][0], wy = q[0][1] - p[0][1];
    const double t = (wx * vy - wy * vx) / area, s = (wx * uy - wy * ux) / area;
    if (area != 0 && t >= 0 && t <= 1 && s >= 0 && s <= 1) {
        points.push_back({p[0][0] + t * ux, p[0][1] + t * uy});
    }
}

void add_crossings(const Outline& p, const Outline& q, std::vector<PlanPoint>& points)
{
    if (p.round && q.round) {
        cross_circles(p, q, points);
    } else if (p.round || q.round) {
        for (const auto& edge : edges(p.round ? q : p)) {
            cross_edge_circle(edge, p.round ? p : q, points);
        }
    } else {
        for (const auto& edge : edges(p)) {
            for (const auto& other : edges(q)) {
                cross_edges(edge, other, points);
            }
        }
    }
}

/// Points of an outline's own: corners and middles of sides, or points of the circle, all round and as the others lie.
void add_own_points(const Outline& o, const std::vector<Outline>& all, std::vector<PlanPoint>& points)
{
    points.push_back({o.x, o.y});
    if (!o.round) {
        for (const double u : {-o.a, 0.0, o.a}) {
            for (const double v : {-o.b, 0.0, o.b}) {
                points.push_back(at(o, u, v));
            }
        }
        return;
    }
    const auto both_ways = [&](double dx, double dy) {
        const double length = std::hypot(dx, dy);
        for (const double r : {o.a, -o.a}) {
            if (length > 1e-9) {
                points.push_back({o.x + r * dx / length, o.y + r * dy / length});
            }
        }
    };
    constexpr int around = 12;
    for (int k = 0; k < around / 2; ++k) {
        const double angle = 2 * std::numbers::pi * k / around;
        both_ways(std::cos(angle), std::sin(angle));
    }
    for (const Outline& other : all) {
        both_ways(other.x - o.x, other.y - o.y);
        if (!other.round) {
            both_ways(other.c, other.s);
            both_ways(-other.s, other.c);
        }
    }
}

/// How far a point is from the edges of the region, and whether it is in it at all.
class Region {
public:
    Region(const std::vector<Outline>& within, const std::vector<Outline>& without) : within_(within), without_(without)
    {
    }

    double depth(PlanPoint p) const
    {
        double least = 1e300;
        for (const Outline& o : within_) {
            least = std::min(least, depth_in(o, p));
        }
        for (const Outline& o : without_) {
            least = std::min(least, -depth_in(o, p));
        }
        return least;
    }

    /// Points of the region or its edge: the candidates, and half-way between each two.
    std::vector<PlanPoint> candidates() const
    {
        std::vector<Outline> all = within_;
        all.insert(all.end(), without_.begin(), without_.end());
        std::vector<PlanPoint> points;
        for (std::size_t k = 0; k < all.size(); ++k) {
            add_own_points(all[k], all, points);
            for (std::size_t j = 0; j < k; ++j) {
                add_crossings(all[k], all[j], points);
            }
        }
        const auto beyond = [&](PlanPoint p) { return !(depth(p) > -1e-6); }; // the crossings themselves are rounded
        std::erase_if(points, beyond);
        const std::size_t count = points.size();
        for (std::size_t k = 0; k < count; ++k) {
            for (std::size_t j = 0; j < k; ++j) {
                points.push_back({(points[k][0] + points[j][0]) / 2, (points[k][1] + points[j][1]) / 2});
            }
        }
        return points;
    }

    /// Away from the edges, in ever smaller steps.
    PlanPoint deepened(PlanPoint p) const
    {
        double deepest = depth(p);
        for (double step = 4; step > 1e-5; step *= 0.6) {
            for (int k = 0; k < 16; ++k) {
                const double angle = 2 * std::numbers::pi * k / 16;
                const PlanPoint q{p[0] + step * std::cos(angle), p[1] + step * std::sin(angle)};
                if (depth(q) > deepest) {
                    p = q;
                    deepest = depth(q);
                }
            }
        }
        return p;
    }

private:
    const std::vector<Outline>& within_;
    const std::vector<Outline>& without_;
};

} // namespace

std::optional<PlanPoint> point_between(const std::vector<Outline>& within, const std::vector<Outline>& without,
                                       double least)
{
    const Region region(within, without);
    std::vector<std::pair<double, PlanPoint>> ranked;
    for (const PlanPoint& p : region.candidates()) {
        ranked.push_back({-region.depth(p), p});
    }
    constexpr std::size_t tried = 8;
    std::stable_sort(ranked.begin(), ranked.end(), [](const auto& a, const auto& b) { return a.first < b.first; });
    std::optional<PlanPoint> best;
    double deepest = least;
    for (std::size_t k = 0; k < std::min(tried, ranked.size()); ++k) {
        const PlanPoint p = region.deepened(ranked[k].second);
        if (region.depth(p) > deepest) {
            best = p;
            deepest = region.depth(p);
        }
    }
    return best;
}

} // namespace tuckwright
