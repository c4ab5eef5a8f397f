// SPDX-License-Identifier: GPL-3.0-or-later
#include "proof/deepest.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

namespace judge {

namespace {

/// A point, and how far back on its way the mover is.
constexpr std::size_t unknowns = 4;
using Vector = std::array<Real, unknowns>;

/// A depth and the direction in which it grows.
struct Slope {
    Real depth = std::numeric_limits<Real>::infinity();
    Point rise{};

    void lower(Real value, const Point& direction)
    {
        if (value < depth) {
            depth = value;
            rise = direction;
        }
    }
};

Point times(Real factor, const Point& p) { return {factor * p[0], factor * p[1], factor * p[2]}; }

Slope slope_in(const Body& body, const Point& world)
{
    const Point p = body.local(world);
    const auto inwards = [&](std::size_t k) { return times(p[k] > 0 ? -1 : 1, body.axis[k]); };
    Slope slope;
    slope.lower(body.half[2] - std::abs(p[2]), inwards(2));
    if (!body.round) {
        slope.lower(body.half[0] - std::abs(p[0]), inwards(0));
        slope.lower(body.half[1] - std::abs(p[1]), inwards(1));
        return slope;
    }
    const Real out = std::hypot(p[0], p[1]);
    Point rise{};
    for (std::size_t k = 0; k < 3 && out > 0; ++k) {
        rise[k] = -(p[0] * body.axis[0][k] + p[1] * body.axis[1][k]) / out;
    }
    slope.lower(body.half[0] - out, rise);
    return slope;
}

/// An ellipsoid in which the deepest point lies, and which gets smaller.
class Ellipsoid
{
public:
    Ellipsoid(const Vector& middle, Real wide, Real long_way, std::size_t size) : middle_(middle), size_(size)
    {
        for (std::size_t k = 0; k < size; ++k) { // round all that is so wide, and so long
            matrix_[k][k] = 2 * (k < 3 ? wide * wide : long_way * long_way);
        }
    }

    const Vector& middle() const { return middle_; }

    /// How far it reaches along `rise`.
    Real reach(const Vector& rise) const { return std::sqrt(std::max(Real{0}, product(rise, applied(rise)))); }

    /// Keeps the half in which `rise` points, seen from the middle.
    void cut(const Vector& rise)
    {
        const Vector image = applied(rise);
        const Real length = reach(rise), n = static_cast<Real>(size_);
        for (std::size_t k = 0; k < size_; ++k) {
            middle_[k] += image[k] / length / (n + 1);
        }
        for (std::size_t k = 0; k < size_; ++k) {
            for (std::size_t j = 0; j < size_; ++j) {
                matrix_[k][j] -= 2 / (n + 1) * image[k] * image[j] / (length * length);
                matrix_[k][j] *= n * n / (n * n - 1);
            }
        }
    }

private:
    Vector applied(const Vector& v) const
    {
        Vector result{};
        for (std::size_t k = 0; k < size_; ++k) {
            for (std::size_t j = 0; j < size_; ++j) {
                result[k] += matrix_[k][j] * v[j];
            }
        }
        return result;
    }
    Real product(const Vector& a, const Vector& b) const
    {
        Real sum = 0;
        for (std::size_t k = 0; k < size_; ++k) {
            sum += a[k] * b[k];
        }
        return sum;
    }

    Vector middle_;
    std::array<Vector, unknowns> matrix_{};
    std::size_t size_;
};

/// Searches among points, and how far back the mover is on its way where `size` is 4.
Real deepest(const Body& a, const Point& ahead, const Body& b, std::size_t size)
{
    constexpr Real near_enough = 1e-5L; // mm
    const Real wide = b.radius(), away = 2 * (a.radius() + b.radius()) + std::abs(dot(minus(a.center, b.center), ahead));
    Vector start{b.center[0], b.center[1], b.center[2], 0};
    Ellipsoid left(start, wide, away, size);
    Real best = -std::numeric_limits<Real>::infinity();
    for (int turn = 0; turn < 2000; ++turn) {
        const Vector& x = left.middle();
        Vector rise{};
        if (x[3] < 0) { // beyond its place
            rise[3] = 1;
            if (!(left.reach(rise) > near_enough)) {
                break;
            }
            left.cut(rise);
            continue;
        }
        const Point p{x[0], x[1], x[2]};
        Point in_mover = p;
        for (std::size_t k = 0; k < 3; ++k) {
            in_mover[k] += x[3] * ahead[k];
        }
        const Slope first = slope_in(a, in_mover), second = slope_in(b, p);
        const Slope& least = first.depth < second.depth ? first : second;
        if (!std::isfinite(least.depth)) { // the ellipsoid became too thin for the numbers
            break;
        }
        best = std::max(best, least.depth);
        std::copy(least.rise.begin(), least.rise.end(), rise.begin());
        rise[3] = size == unknowns && first.depth < second.depth ? dot(first.rise, ahead) : 0;
        const Real reach = left.reach(rise);
        if (!(reach > near_enough) || least.depth + reach < 0) { // as deep as it gets, or nowhere in both
            break;
        }
        left.cut(rise);
    }
    return best;
}

} // namespace

Real deepest_common(const Body& a, const Body& b)
{
    const Point between = minus(a.center, b.center);
    if (std::sqrt(dot(between, between)) > a.radius() + b.radius()) {
        return -std::numeric_limits<Real>::infinity();
    }
    return deepest(a, {0, 0, 0}, b, 3);
}

Real deepest_on_the_way(const Body& mover, const Point& direction, const Body& obstacle)
{
    const Real length = std::sqrt(dot(direction, direction));
    return deepest(mover, times(1 / length, direction), obstacle, unknowns);
}

} // namespace judge
