// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

#include "geometry/nearest.hpp"
#include "tuckwright/geometry.hpp"

namespace tuckwright
{

namespace
{

using geometry::Middle;
using geometry::Nearest;

constexpr double equally_good = 1e-9; ///< mm: an axis this near to the best direction is taken instead of it
constexpr double shallow = 1e-4;      ///< share of the hulls' size: nearer than this, rounding blurs the direction
/// Shares of the hulls' size that are left between them for another look: the first is tight, so that it gains most;
/// rounding blurs what is seen through it, so that the wider ones have their say before a climb ends.
constexpr std::array<double, 3> airs{1e-5, 1e-4, 1e-3};
constexpr double worth_a_look = 1e-3; ///< share of the overlap that a look must gain to be followed by another
constexpr int most_looks = 30;
constexpr std::size_t most_starts = 3;

/// A unit direction from first to second, and the signed distance along it.
struct Look {
    Vec3 normal;
    double distance = 0;
};

class Pair
{
public:
    Pair(const Hull& first, const Hull& second)
        : first_(geometry::middle_of(first)), second_(geometry::middle_of(second)),
          offset_(second_.center - first_.center), size_(norm(first_.half) + norm(second_.half))
    {
    }

    /// Along a unit direction or its opposite, whichever is better.
    Look look(Vec3 unit) const
    {
        const double between = dot(unit, offset_);
        const double distance = std::abs(between) - geometry::reach(first_, unit) - geometry::reach(second_, unit);
        return {between < 0 ? -1.0 * unit : unit, distance};
    }

    /// The best of the world's axes and both hulls' own.
    Look best_axis() const
    {
        Look best = look({0, 0, 1});
        const auto consider = [&](Vec3 axis) {
            const Look other = look(axis);
            if (other.distance > best.distance + equally_good / 10) {
                best = other;
            }
        };
        consider({1, 0, 0});
        consider({0, 1, 0});
        for (const Middle* hull : {&first_, &second_}) {
            for (std::size_t k = hull->round ? 2 : 0; k < 3; ++k) {
                consider(hull->axes[k]);
            }
        }
        return best;
    }

    Nearest drawn_apart(Vec3 shift, Vec3 start) const { return nearest(first_, second_, offset_ + shift, start); }
    Vec3 point(Vec3 from_middle) const { return first_.center + from_middle; }
    Vec3 deepest(Vec3 normal) const { return first_.center + geometry::reach_point(first_, normal); }
    double size() const { return size_; }
    std::vector<Look> starts(const Look& axis, const Nearest& seen) const;

private:
    Middle first_, second_;
    Vec3 offset_;
    double size_;
};

/// Directions from which a search for the least overlap starts, best first: the axes, their cross products, away from
/// each centre line, and what the distance search saw.
std::vector<Look> Pair::starts(const Look& axis, const Nearest& seen) const
{
    std::vector<Look> looks{axis};
    const auto add = [&](Vec3 direction) {
        const double length = norm(direction);
        if (length > 1e-6) {
            looks.push_back(look((1 / length) * direction));
        }
    };
    std::array<std::vector<Vec3>, 2> lines;
    for (std::size_t side = 0; side < 2; ++side) {
        const Middle& hull = side == 0 ? first_ : second_;
        for (std::size_t k = hull.round ? 2 : 0; k < 3; ++k) {
            add(hull.axes[k]);
            lines[side].push_back(hull.axes[k]);
        }
        const double sweep = norm(hull.half_sweep);
        if (sweep > 0) {
            lines[side].push_back((1 / sweep) * hull.half_sweep);
        }
    }
    for (const Vec3 a : lines[0]) {
        for (const Vec3 b : lines[1]) {
            add(cross(a, b));
        }
    }
    for (std::size_t side = 0; side < 2; ++side) {
        for (const Vec3 line : lines[side]) {
            add((1 / size_) * (offset_ - dot(offset_, line) * line));
        }
    }
    add((1 / size_) * offset_);
    if (!seen.overlap) {
        add(seen.normal);
    }
    std::stable_sort(looks.begin(), looks.end(), [](const Look& a, const Look& b) { return a.distance > b.distance; });
    return looks;
}

/// Climbs from a direction to one that is locally best: the hulls are drawn apart along the direction until there is
/// clear air, and the direction of that air's least width is never worse. (With g the signed distance along a
/// direction and t the way drawn, the second direction e is best for g(e) + t e.d, and e.d <= 1.)
Separation climb(const Pair& pair, Look start)
{
    Separation best{start.distance, start.normal, pair.deepest(start.normal)};
    std::size_t vain = 0; // looks in a row that gained little
    for (int round = 0; round < most_looks; ++round) {
        const double air = (round == 0 ? airs.back() : airs[vain]) * pair.size();
        const double way = std::max(0.0, air - best.distance);
        const Nearest seen = pair.drawn_apart(way * best.normal, best.normal);
        if (seen.overlap) {
            break;
        }
        const Look next = pair.look(seen.normal);
        if (round == 0 || next.distance >= best.distance) {
            best.point = pair.point(seen.on_first);
        }
        const double gain = next.distance - best.distance;
        if (gain > 0) {
            best.distance = next.distance;
            best.normal = next.normal;
        }
        const bool little = gain <= std::max(equally_good / 100, worth_a_look * -best.distance);
        vain = little ? vain + 1 : 0;
        if (vain == airs.size() || (little && std::abs(best.distance) > shallow * pair.size())) {
            break;
        }
    }
    return best;
}

/// The least overlap found from the most promising directions, or the distance of hulls that nearly touch.
Separation shallowest(const Pair& pair, const Look& axis, const Nearest& seen)
{
    const std::vector<Look> looks = pair.starts(axis, seen);
    Separation best = climb(pair, looks.front());
    std::vector<Vec3> tried{looks.front().normal};
    for (const Look& start : looks) {
        if (!seen.overlap || tried.size() >= most_starts) {
            break;
        }
        const bool near_to_tried =
            std::any_of(tried.begin(), tried.end(), [&](Vec3 t) { return dot(t, start.normal) > 0.99; });
        if (near_to_tried) {
            continue;
        }
        tried.push_back(start.normal);
        const Separation other = climb(pair, start);
        if (other.distance > best.distance) {
            best = other;
        }
    }
    return best;
}

} // namespace

Separation separation(const Hull& first, const Hull& second)
{
    const Pair pair(first, second);
    const Look axis = pair.best_axis();
    const Nearest seen = pair.drawn_apart({}, axis.normal);
    Separation found;
    if (seen.overlap || seen.above < shallow * pair.size()) {
        found = shallowest(pair, axis, seen);
    } else {
        found = {seen.below, seen.normal, pair.point(seen.on_first)};
    }
    if (axis.distance >= found.distance - equally_good) {
        found.normal = axis.normal;
    }
    // The very supports that callers use, so that the figures agree to the last digits.
    found.distance = -support(second, -1.0 * found.normal) - support(first, found.normal);
    return found;
}

} // namespace tuckwright
