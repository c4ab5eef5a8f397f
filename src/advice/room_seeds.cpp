// SPDX-License-Identifier: GPL-3.0-or-later
#include "advice/room_seeds.hpp"

#include <algorithm>
#include <cmath>

#include "advice/upright_pair.hpp"

namespace tuckwright::advice {

namespace {

constexpr double thinnest = 0.5; ///< mm: radius or height of a seed

/// A span of heights along the place's upright.
struct Span {
    double low = 0, high = 0;
};

Span span_along(const Hull& hull, Vec3 up) { return {-support(hull, -1.0 * up), support(hull, up)}; }

/// What may lie between all walls, by their extents.
Hull walls_hull(const Walls& walls, bool endless)
{
    constexpr double far = 2e4;
    const double height = endless ? far : 2 * walls.half[2];
    const Shape shape = walls.round ? Shape(Cylinder{2 * walls.half[0], height})
                                    : Shape(Box{2 * walls.half[0], 2 * walls.half[1], height});
    return {shape, walls.center, walls.frame.axes, {}};
}

/// The place's heights and the plan of its own walls.
class Plan {
public:
    explicit Plan(const Space& space) : space_(space), up_(space.frame.axis(2))
    {
        whole_ = {-1e9, 1e9};
        for (const Walls& walls : space.around) {
            Span span = span_along(walls_hull(walls, false), up_);
            const bool along = std::abs(dot(walls.frame.axis(2), up_)) > 0.999;
            if (along && !walls.floor) {
                span.low = -1e9;
            }
            if (along && !walls.top) {
                span.high = 1e9;
            }
            whole_ = {std::max(whole_.low, span.low), std::min(whole_.high, span.high)};
        }
        for (const Obstacle& obstacle : space.obstacles) {
            spans_.push_back(span_along(obstacle.hull, up_));
        }
    }

    Span whole() const { return whole_; }
    const std::vector<Span>& spans() const { return spans_; }

    /// Air from a point to the nearest wall that goes upright here.
    double to_walls(Vec3 at) const
    {
        double air = 1e9;
        for (const Walls& walls : space_.around) {
            if (std::abs(dot(walls.frame.axis(2), up_)) < 0.999) {
                continue;
            }
            const Vec3 from = at - walls.center;
            const double u = dot(from, walls.frame.axis(0)), v = dot(from, walls.frame.axis(1));
            air = std::min(air, walls.round ? walls.half[0] - std::hypot(u, v)
                                            : std::min(walls.half[0] - std::abs(u), walls.half[1] - std::abs(v)));
        }
        return air;
    }

    /// Air in plan from a point to an obstacle.
    double to_obstacle(Vec3 at, std::size_t k) const
    {
        const double middle = (whole_.low + whole_.high) / 2;
        const Hull needle{Cylinder{1e-3, 4e3}, at + (middle - dot(at, up_)) * up_, space_.frame.axes, {}};
        const Hull& other = space_.obstacles[k].hull;
        const auto normal = upright_normal(needle, other);
        return normal ? -support(other, -1.0 * *normal) - support(needle, *normal) : separation(needle, other).distance;
    }

private:
    const Space& space_;
    Vec3 up_;
    Span whole_;
    std::vector<Span> spans_;
};

/// A grid point with its air all round.
struct Point {
    double x = 0, y = 0;
    double wall = 0;
    std::vector<double> air;
};

std::vector<Point> grid_of(const Space& space, const Plan& plan, int points, double& mesh)
{
    const Walls& own = space.around.front();
    const Vec3 x = space.frame.axis(0), y = space.frame.axis(1);
    const double area = own.round ? 3.14 * own.half[0] * own.half[0] : 4 * own.half[0] * own.half[1];
    mesh = std::max(0.5, std::sqrt(area / points));
    const int wide = static_cast<int>(own.half[0] / mesh), deep = static_cast<int>(own.half[1] / mesh);
    std::vector<Point> grid;
    for (int i = -wide; i <= wide; ++i) {
        for (int j = -deep; j <= deep; ++j) {
            const Vec3 at = own.center + (i * mesh) * x + (j * mesh) * y;
            Point point{dot(at, x), dot(at, y), plan.to_walls(at), {}};
            if (point.wall <= 0) {
                continue;
            }
            for (std::size_t k = 0; k < space.obstacles.size(); ++k) {
                point.air.push_back(plan.to_obstacle(at, k));
            }
            grid.push_back(std::move(point));
        }
    }
    return grid;
}

/// Floors or ceilings, each once.
std::vector<double> levels(std::vector<double> heights, Span whole)
{
    std::sort(heights.begin(), heights.end());
    std::vector<double> kept;
    for (const double z : heights) {
        if (z >= whole.low - 1e-9 && z <= whole.high + 1e-9 && (kept.empty() || z > kept.back() + 0.02)) {
            kept.push_back(z);
        }
    }
    return kept;
}

/// The widest seeds between a floor and a ceiling, none near a wider one.
void add_widest(const std::vector<Point>& grid, const std::vector<Span>& spans, double low, double high, double mesh,
                std::vector<Seed>& seeds)
{
    constexpr std::size_t most = 4;
    constexpr double hair = 1e-6;
    std::vector<std::size_t> between;
    for (std::size_t k = 0; k < spans.size(); ++k) {
        if (spans[k].high > low + hair && spans[k].low < high - hair) {
            between.push_back(k);
        }
    }
    std::vector<Seed> here;
    for (const Point& point : grid) {
        double radius = point.wall;
        for (const std::size_t k : between) {
            radius = std::min(radius, point.air[k]);
        }
        if (radius > thinnest) {
            here.push_back({point.x, point.y, low, high, radius});
        }
    }
    std::stable_sort(here.begin(), here.end(), [](const Seed& a, const Seed& b) { return a.radius > b.radius; });
    const std::size_t begin = seeds.size();
    for (const Seed& seed : here) {
        const bool near = std::any_of(seeds.begin() + static_cast<std::ptrdiff_t>(begin), seeds.end(), [&](const Seed& s) {
            return std::hypot(s.x - seed.x, s.y - seed.y) < std::max(2.5 * mesh, s.radius);
        });
        if (!near) {
            seeds.push_back(seed);
        }
        if (seeds.size() - begin == most) {
            break;
        }
    }
}

/// Whether two seeds are much the same air.
bool alike(const Seed& a, const Seed& b)
{
    const double apart = std::hypot(a.x - b.x, a.y - b.y), height = std::max(a.high - a.low, b.high - b.low);
    return apart < 0.2 * std::min(a.radius, b.radius) &&
           std::min(a.high, b.high) - std::max(a.low, b.low) > 0.9 * height;
}

/// Half of them by volume, half by their upright section, for things that are long and thin.
std::vector<Seed> chosen(std::vector<Seed> seeds, std::size_t most)
{
    std::vector<Seed> kept;
    const auto take = [&](auto worth, std::size_t up_to) {
        std::stable_sort(seeds.begin(), seeds.end(), [&](const Seed& a, const Seed& b) { return worth(a) > worth(b); });
        for (const Seed& seed : seeds) {
            if (kept.size() >= up_to) {
                break;
            }
            if (std::none_of(kept.begin(), kept.end(), [&](const Seed& other) { return alike(seed, other); })) {
                kept.push_back(seed);
            }
        }
    };
    take([](const Seed& s) { return s.radius * s.radius * (s.high - s.low); }, (most + 1) / 2);
    take([](const Seed& s) { return s.radius * (s.high - s.low); }, most);
    return kept;
}

} // namespace

std::vector<Seed> seeds_of(const Space& space, int points, std::size_t most)
{
    const Walls& own = space.around.front();
    if (own.half[0] < thinnest || own.half[1] < thinnest) {
        return {}; // the clearance takes all of it
    }
    const Plan plan(space);
    const Span whole = plan.whole();
    double mesh = 0;
    const std::vector<Point> grid = grid_of(space, plan, points, mesh);
    std::vector<double> floors{whole.low}, ceilings{whole.high};
    for (const Span& span : plan.spans()) {
        floors.push_back(span.high);
        ceilings.push_back(span.low);
    }
    std::vector<Seed> seeds;
    for (const double low : levels(floors, whole)) {
        for (const double high : levels(ceilings, whole)) {
            if (high - low > 2 * thinnest) {
                add_widest(grid, plan.spans(), low, high, mesh, seeds);
            }
        }
    }
    return chosen(std::move(seeds), most);
}

Draft draft_in(const Seed& seed, const Space& space, Posing posing, double angle)
{
    constexpr double a_little_smaller = 0.97;
    const Axes& frame = space.frame;
    Draft draft;
    draft.posing = posing;
    draft.angle = angle;
    draft.center = seed.x * frame.axis(0) + seed.y * frame.axis(1) + ((seed.low + seed.high) / 2) * frame.axis(2);
    const double r = a_little_smaller * seed.radius, h = a_little_smaller * (seed.high - seed.low) / 2;
    switch (posing) {
    case Posing::standing: draft.half = {r, h, 0}; break;
    case Posing::lying: {
        const double round = std::min(h, 0.6 * r);
        draft.half = {round, std::sqrt(r * r - round * round), 0};
        break;
    }
    case Posing::box: draft.half = {0.7 * r, 0.7 * r, h}; break;
    }
    return draft;
}

} // namespace tuckwright::advice
