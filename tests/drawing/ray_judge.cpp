// SPDX-License-Identifier: GPL-3.0-or-later
#include "drawing/ray_judge.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <set>
#include <utility>

namespace drawing_test {

using namespace tuckwright;
using drawing::Camera;
using drawing::Layer;

namespace {

constexpr double clear_depth = 0.05; ///< mm by which one thing has to be nearer than another to count

/// A ray in a solid's own axes: start + t * way, t being depth.
struct Ray {
    std::array<double, 3> start{}, way{};
};

Ray own_ray(const Solid& solid, const Camera& camera, double x, double y)
{
    const Matrix3 m = rotation_matrix(solid.pose.turn);
    const Vec3 start = x * camera.right + y * camera.up - solid.pose.center;
    Ray ray;
    for (std::size_t k = 0; k < 3; ++k) {
        const Vec3 axis{m[0][k], m[1][k], m[2][k]};
        ray.start[k] = dot(axis, start);
        ray.way[k] = dot(axis, camera.toward);
    }
    return ray;
}

using Span = std::optional<std::pair<double, double>>; ///< depths: from the farther to the nearer

Span within(Span span, double low, double high)
{
    if (!span) {
        return span;
    }
    span->first = std::max(span->first, low);
    span->second = std::min(span->second, high);
    return span->first < span->second ? span : std::nullopt;
}

Span between_planes(Span span, double start, double way, double half)
{
    if (std::abs(way) < 1e-12) {
        return std::abs(start) < half ? span : std::nullopt;
    }
    const double a = (-half - start) / way, b = (half - start) / way;
    return within(span, std::min(a, b), std::max(a, b));
}

/// Where a ray is within a solid.
Span span_of(const Solid& solid, const Ray& ray)
{
    Span span{{-1e6, 1e6}};
    if (const auto* box = std::get_if<Box>(&solid.shape)) {
        const double half[] = {box->length / 2, box->width / 2, box->height / 2};
        for (std::size_t k = 0; k < 3; ++k) {
            span = between_planes(span, ray.start[k], ray.way[k], half[k]);
        }
        return span;
    }
    const auto& round = std::get<Cylinder>(solid.shape);
    span = between_planes(span, ray.start[2], ray.way[2], round.height / 2);
    // x^2 + y^2 = (r + s z)^2
    const double slope = (round.diameter - foot_of(round)) / 2 / round.height;
    const double r0 = (round.diameter + foot_of(round)) / 4 + slope * ray.start[2], r1 = slope * ray.way[2];
    const double a = ray.way[0] * ray.way[0] + ray.way[1] * ray.way[1] - r1 * r1;
    const double b = ray.start[0] * ray.way[0] + ray.start[1] * ray.way[1] - r0 * r1;
    const double c = ray.start[0] * ray.start[0] + ray.start[1] * ray.start[1] - r0 * r0;
    if (std::abs(a) < 1e-12) {
        if (std::abs(b) < 1e-12) {
            return c < 0 ? span : std::nullopt;
        }
        return b > 0 ? within(span, -1e6, -c / (2 * b)) : within(span, -c / (2 * b), 1e6);
    }
    const double disc = b * b - a * c;
    if (a < 0) { // steeper than its side
        if (disc < 0) {
            return span;
        }
        const double low = (-b + std::sqrt(disc)) / a, high = (-b - std::sqrt(disc)) / a;
        const Span before = within(span, -1e6, low), behind = within(span, high, 1e6);
        return before ? before : behind;
    }
    return disc < 0 ? std::nullopt : within(span, (-b - std::sqrt(disc)) / a, (-b + std::sqrt(disc)) / a);
}

/// Something that a ray meets.
struct Met {
    std::size_t at; ///< in the order
    double depth;
};

/// The depth at which a layer is met, if it is.
std::optional<double> depth_of(const Bundle& bundle, const Layer& layer, const Camera& camera, double x, double y)
{
    const PlacedItem& item = bundle.items[layer.item];
    const Solid& solid = item.solids[layer.solid];
    const Span body = span_of(solid, own_ray(solid, camera, x, y));
    if (!body) {
        return std::nullopt;
    }
    if (layer.part == Layer::Part::whole) {
        return body->second;
    }
    // By an open end it comes to the rim or into the cavity, but not to the near side.
    const Ray ray = own_ray(solid, camera, x, y);
    const double half = height_of(solid.shape) / 2, z = ray.start[2] + body->second * ray.way[2];
    bool through_cavity = false, by_an_end = false;
    for (const PlacedCavity& cavity : item.cavities) {
        const Span room = span_of({cavity.shape, cavity.pose}, own_ray({cavity.shape, cavity.pose}, camera, x, y));
        through_cavity = through_cavity || room;
        by_an_end = by_an_end || (cavity.opens != Opening::closed && z > half - 1e-6) ||
                    (cavity.opens == Opening::both && z < -half + 1e-6);
    }
    if (layer.part == Layer::Part::far) {
        return through_cavity ? std::optional(body->first) : std::nullopt;
    }
    return by_an_end ? std::nullopt : std::optional(body->second);
}

std::string named(const Bundle& bundle, const Layer& layer)
{
    const char* part = layer.part == Layer::Part::far ? " (far)" : layer.part == Layer::Part::near ? " (near)" : "";
    return label(bundle, layer.item) + "/" + std::to_string(layer.solid) + part;
}

using Pairs = std::set<std::pair<std::size_t, std::size_t>>; ///< places in the order: the first hides the second

/// What the bundle takes as a camera sees it.
struct Window {
    double low_x = 1e9, high_x = -1e9, low_y = 1e9, high_y = -1e9;
};

Window window_of(const Bundle& bundle, const Camera& camera)
{
    Window w;
    for (const PlacedItem& item : bundle.items) {
        for (const Solid& solid : item.solids) {
            const Hull hull = hull_of(solid);
            w.low_x = std::min(w.low_x, -support(hull, -1.0 * camera.right));
            w.high_x = std::max(w.high_x, support(hull, camera.right));
            w.low_y = std::min(w.low_y, -support(hull, -1.0 * camera.up));
            w.high_y = std::max(w.high_y, support(hull, camera.up));
        }
    }
    return w;
}

/// Adds what hides what along a ray; says whether it met two layers at least.
bool follow_ray(const Bundle& bundle, const Camera& camera, const std::vector<Layer>& order, double x, double y,
                Pairs& hides)
{
    std::vector<Met> met;
    for (std::size_t k = 0; k < order.size(); ++k) {
        if (const auto depth = depth_of(bundle, order[k], camera, x, y)) {
            met.push_back({k, *depth});
        }
    }
    for (const Met& a : met) {
        for (const Met& b : met) {
            const bool same_thing = order[a.at].item == order[b.at].item && order[a.at].solid != order[b.at].solid;
            if (!same_thing && a.depth > b.depth + clear_depth) {
                hides.insert({a.at, b.at});
            }
        }
    }
    return met.size() > 1;
}

/// Whether one leads to another by any number of these pairs.
bool leads_to(const Pairs& pairs, std::size_t from, std::size_t to)
{
    std::set<std::size_t> seen{from};
    std::vector<std::size_t> open{from};
    while (!open.empty()) {
        const std::size_t k = open.back();
        open.pop_back();
        for (const auto& [a, b] : pairs) {
            if (a == k && seen.insert(b).second) {
                open.push_back(b);
            }
        }
    }
    return seen.count(to) > 0;
}

} // namespace

Judgement judge(const Bundle& bundle, const Camera& camera, const std::vector<Layer>& order, int dots)
{
    Judgement result;
    Pairs hides;
    const Window w = window_of(bundle, camera);
    for (int i = 0; i < dots * dots; ++i) {
        const double x = w.low_x + (w.high_x - w.low_x) * (i % dots + 0.5) / dots;
        const double y = w.low_y + (w.high_y - w.low_y) * (i / dots + 0.5) / dots;
        result.rays_that_met += follow_ray(bundle, camera, order, x, y, hides) ? 1 : 0;
    }
    for (const auto& [over, under] : hides) {
        if (over < under && leads_to(hides, under, over)) {
            ++result.excused;
        } else if (over < under) {
            result.faults.push_back(named(bundle, order[over]) + " hides " + named(bundle, order[under]) +
                                    ", but is painted before it");
        }
    }
    return result;
}

} // namespace drawing_test
