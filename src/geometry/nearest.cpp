// SPDX-License-Identifier: GPL-3.0-or-later
#include "geometry/nearest.hpp"

#include <cmath>
#include <limits>

namespace tuckwright::geometry
{

Middle middle_of(const Hull& hull)
{
    Middle m;
    m.half_sweep = 0.5 * hull.sweep;
    m.center = hull.center + m.half_sweep;
    for (std::size_t k = 0; k < 3; ++k) {
        m.axes[k] = {hull.rotation[0][k], hull.rotation[1][k], hull.rotation[2][k]};
    }
    if (const auto* box = std::get_if<Box>(&hull.shape)) {
        m.half = {box->length / 2, box->width / 2, box->height / 2};
    } else {
        const auto& cylinder = std::get<Cylinder>(hull.shape);
        m.half = {cylinder.diameter / 2, 0, cylinder.height / 2};
        m.round = true;
    }
    return m;
}

double reach(const Middle& hull, Vec3 direction)
{
    const double u = dot(direction, hull.axes[0]), v = dot(direction, hull.axes[1]),
                 w = std::abs(dot(direction, hull.axes[2]));
    const double across =
        hull.round ? std::sqrt(u * u + v * v) * hull.half.x : std::abs(u) * hull.half.x + std::abs(v) * hull.half.y;
    return across + w * hull.half.z + std::abs(dot(direction, hull.half_sweep));
}

Vec3 reach_point(const Middle& hull, Vec3 direction)
{
    double u = dot(direction, hull.axes[0]), v = dot(direction, hull.axes[1]);
    if (hull.round) {
        const double radial = std::sqrt(u * u + v * v);
        const double scale = radial > 0 ? hull.half.x / radial : 0;
        u *= scale;
        v *= scale;
    } else {
        u = std::copysign(hull.half.x, u);
        v = std::copysign(hull.half.y, v);
    }
    const double w = std::copysign(hull.half.z, dot(direction, hull.axes[2]));
    const Vec3 point = u * hull.axes[0] + v * hull.axes[1] + w * hull.axes[2];
    return dot(direction, hull.half_sweep) < 0 ? point - hull.half_sweep : point + hull.half_sweep;
}

namespace
{

constexpr int most_rounds = 100;
constexpr int most_attempts = 4;
constexpr double origin_share = 1e-13; ///< share of the hulls' size that counts as the origin itself
constexpr double relative_agreement = 1e-11;
constexpr double thin = 1e-20; ///< squared sine under which a triangle or tetrahedron counts as flat

struct Vertex {
    Vec3 at; ///< second - first
    Vec3 on_first;
};

/// At most four vertices with the weights of the point nearest to the origin.
struct Simplex {
    std::array<Vertex, 4> vertices;
    std::array<double, 4> weights{};
    int size = 0;
    Vec3 point;
};

/// Projects the origin on the span of the first vertex and up to three others. False if flat or not within.
bool project(const Simplex& from, const std::array<int, 4>& chosen, int size, Simplex& to)
{
    const Vec3 base = from.vertices[static_cast<std::size_t>(chosen[0])].at;
    std::array<Vec3, 3> edges, upright;
    std::array<double, 3> along{}, squares{};
    double mixed[3][3] = {};
    Vec3 rest = base;
    for (int i = 0; i + 1 < size; ++i) {
        const auto k = static_cast<std::size_t>(i);
        edges[k] = from.vertices[static_cast<std::size_t>(chosen[k + 1])].at - base;
        upright[k] = edges[k];
        for (std::size_t j = 0; j < k; ++j) {
            mixed[k][j] = dot(upright[k], upright[j]) / squares[j];
            upright[k] = upright[k] - mixed[k][j] * upright[j];
        }
        squares[k] = dot(upright[k], upright[k]);
        if (squares[k] <= thin * dot(edges[k], edges[k])) {
            return false;
        }
        along[k] = -dot(rest, upright[k]) / squares[k];
        rest = rest + along[k] * upright[k];
    }
    double first_weight = 1;
    for (int i = size - 2; i >= 0; --i) {
        const auto k = static_cast<std::size_t>(i);
        for (std::size_t j = k + 1; j + 1 < static_cast<std::size_t>(size); ++j) {
            along[k] -= mixed[j][k] * along[j];
        }
        if (along[k] < 0) {
            return false;
        }
        first_weight -= along[k];
    }
    if (first_weight < 0) {
        return false;
    }
    to.size = size;
    to.point = size == 4 ? Vec3{} : rest;
    to.weights[0] = first_weight;
    for (std::size_t k = 0; k < static_cast<std::size_t>(size); ++k) {
        to.vertices[k] = from.vertices[static_cast<std::size_t>(chosen[k])];
        if (k > 0) {
            to.weights[k] = along[k - 1];
        }
    }
    return true;
}

/// The sub-simplex with the newest (last) vertex that lies nearest to the origin.
Simplex nearest_part(const Simplex& simplex)
{
    Simplex best;
    double least = std::numeric_limits<double>::infinity();
    const int newest = simplex.size - 1;
    for (int mask = 0; mask < (1 << newest); ++mask) {
        std::array<int, 4> chosen{newest, 0, 0, 0};
        int size = 1;
        for (int k = 0; k < newest; ++k) {
            if (mask & (1 << k)) {
                chosen[static_cast<std::size_t>(size++)] = k;
            }
        }
        Simplex part;
        if (project(simplex, chosen, size, part)) {
            const double square = dot(part.point, part.point);
            if (square < least) {
                least = square;
                best = part;
            }
        }
    }
    return best;
}

bool holds(const Simplex& simplex, Vec3 at)
{
    for (int k = 0; k < simplex.size; ++k) {
        if (simplex.vertices[static_cast<std::size_t>(k)].at == at) {
            return true;
        }
    }
    return false;
}

Vec3 on_first(const Simplex& simplex)
{
    Vec3 sum;
    for (std::size_t k = 0; k < static_cast<std::size_t>(simplex.size); ++k) {
        sum = sum + simplex.weights[k] * simplex.vertices[k].on_first;
    }
    return sum;
}

/// The descent of one pair.
class Descent
{
public:
    Descent(const Middle& first, const Middle& second, Vec3 offset, Vec3 start)
        : first_(first), second_(second), offset_(offset)
    {
        found_.below = -std::numeric_limits<double>::infinity();
        found_.above = std::numeric_limits<double>::infinity();
        begin(start);
    }
    void restart() { begin(found_.normal); }
    const Nearest& found() const { return found_; }

    /// True when the distance is settled, false when rounding stopped the descent before.
    bool run(double origin)
    {
        for (int round = 0; round < most_rounds; ++round) {
            const double length = norm(simplex_.point);
            if (length <= origin) {
                found_.overlap = true;
                return true;
            }
            const Vertex next = vertex_against(simplex_.point);
            note(length, dot(simplex_.point, next.at) / length);
            if (found_.above - found_.below <= relative_agreement * length) {
                return true;
            }
            if (holds(simplex_, next.at) || !descend(next)) {
                return false;
            }
        }
        return false;
    }

private:
    void begin(Vec3 direction)
    {
        simplex_.size = 1;
        simplex_.weights[0] = 1;
        simplex_.vertices[0] = vertex_against(direction);
        simplex_.point = simplex_.vertices[0].at;
    }
    Vertex vertex_against(Vec3 direction) const
    {
        const Vec3 a = reach_point(first_, direction);
        return {offset_ - a - reach_point(second_, direction), a};
    }
    void note(double length, double below)
    {
        if (below > found_.below) {
            found_.below = below;
            found_.normal = (1 / length) * simplex_.point;
        }
        if (length < found_.above) {
            found_.above = length;
            found_.on_first = on_first(simplex_);
        }
    }
    bool descend(const Vertex& next)
    {
        Simplex wider = simplex_;
        wider.vertices[static_cast<std::size_t>(wider.size++)] = next;
        const Simplex part = nearest_part(wider);
        if (part.size == 0 || (part.size < 4 && dot(part.point, part.point) >= dot(simplex_.point, simplex_.point))) {
            return false;
        }
        simplex_ = part;
        return true;
    }

    const Middle &first_, &second_;
    Vec3 offset_;
    Simplex simplex_;
    Nearest found_;
};

} // namespace

Nearest nearest(const Middle& first, const Middle& second, Vec3 offset, Vec3 start)
{
    const double origin = origin_share * (norm(offset) + norm(first.half) + norm(second.half));
    Descent descent(first, second, offset, start);
    for (int attempt = 0; attempt < most_attempts; ++attempt) {
        if (descent.run(origin)) {
            break;
        }
        // Rounding has spoilt the simplex, which is thin near a curved surface: begin anew from where it led.
        descent.restart();
    }
    return descent.found();
}

} // namespace tuckwright::geometry
