// SPDX-License-Identifier: GPL-3.0-or-later
#include "proof/disc.hpp"

#include <cmath>

namespace tuckwright::proof {

namespace {

Rational dot(const Flat& a, const Flat& b) { return a[0] * b[0] + a[1] * b[1]; }

/// The disc's farthest point from the origin, worked out in floating point: the multiplier that proves it, less
/// radius^2, and where the point is. With m = b + A w the condition of a maximum is (multiplier - A) w = b, and seen in
/// the ellipse's own axes A is diagonal: radius^2 along the level direction, radius^2 slope^2 across it.
struct Farthest {
    double multiplier = 0;
    double a = 1, b = 0; ///< a point of the unit circle, in terms of u and v
};

/// The slope of the bound in the multiplier is zero where along^2/d^2 + across^2/(d + spread)^2 = 1; it falls with d.
double best_multiplier(double along, double across, double spread)
{
    double low = 0, high = std::abs(along) + std::abs(across);
    for (int i = 0; i < 200 && low < high; ++i) {
        const double d = low + (high - low) / 2;
        if (d == low || d == high) {
            break;
        }
        const double p = along / d, q = across / (d + spread);
        (p * p + q * q > 1 ? low : high) = d;
    }
    return high;
}

Farthest farthest(const SlantedDisc& disc)
{
    const double r = approximate(disc.radius), slope = approximate(disc.slope);
    const double ux = approximate(disc.u[0]), uy = approximate(disc.u[1]);
    const double vx = approximate(disc.v[0]), vy = approximate(disc.v[1]);
    const double bu = r * approximate(dot(disc.center, disc.u)), bv = r * approximate(dot(disc.center, disc.v));
    // The level direction in terms of u and v is the larger half axis: the top eigenvector of their products.
    const double uu = ux * ux + uy * uy, vv = vx * vx + vy * vy, uv = ux * vx + uy * vy;
    const double angle = 0.5 * std::atan2(2 * uv, uu - vv);
    const double c = std::cos(angle), s = std::sin(angle);
    const double along = bu * c + bv * s, across = bv * c - bu * s;
    const double spread = r * r * (1 - slope * slope);
    const double d = best_multiplier(along, across, spread);
    double q = d + spread > 0 ? across / (d + spread) : 0;
    double p = d > 0 ? along / d : 0;
    if (const double rest = 1 - q * q; p * p < rest) { // the centre lies on the smaller half axis: two such points
        p = std::copysign(std::sqrt(rest), p);
    }
    const double norm = std::hypot(p, q);
    p /= norm;
    q /= norm;
    return {d, p * c - q * s, p * s + q * c};
}

/// An exact point of the unit circle next to the given one.
Flat on_unit_circle(double a, double b)
{
    if (a < 0) {
        const Flat opposite = on_unit_circle(-a, -b);
        return {-opposite[0], -opposite[1]};
    }
    const Rational t(b / (1 + a)); // tangent of half the angle, within [-1, 1]
    const Rational n = 1 + t * t;
    return {(1 - t * t) / n, 2 * t / n};
}

} // namespace

bool multiplier_proves(const SlantedDisc& disc, const Rational& circle, const Rational& multiplier)
{
    // The difference is a form in (1, a, b); it is nowhere negative if no principal minor is.
    const Rational r2 = disc.radius * disc.radius;
    const Rational m00 = circle * circle - dot(disc.center, disc.center) - multiplier;
    const Rational m01 = -disc.radius * dot(disc.center, disc.u), m02 = -disc.radius * dot(disc.center, disc.v);
    const Rational m11 = multiplier - r2 * dot(disc.u, disc.u), m22 = multiplier - r2 * dot(disc.v, disc.v);
    const Rational m12 = -r2 * dot(disc.u, disc.v);
    if (m00 < 0 || m11 < 0 || m22 < 0) {
        return false;
    }
    const Rational lower = m11 * m22 - m12 * m12;
    if (lower < 0 || m00 * m11 < m01 * m01 || m00 * m22 < m02 * m02) {
        return false;
    }
    return m00 * lower - m01 * (m01 * m22 - m12 * m02) + m02 * (m01 * m12 - m11 * m02) >= 0;
}

Fit within_circle(const SlantedDisc& disc, const Rational& circle)
{
    const Farthest far = farthest(disc);
    const Flat w = on_unit_circle(far.a, far.b);
    const Rational x = disc.center[0] + disc.radius * (w[0] * disc.u[0] + w[1] * disc.v[0]);
    const Rational y = disc.center[1] + disc.radius * (w[0] * disc.u[1] + w[1] * disc.v[1]);
    const Rational square = x * x + y * y;
    Fit fit;
    fit.excess_nm = std::sqrt(approximate(square)) - approximate(circle);
    fit.outside = circle < 0 || square > circle * circle;
    const Rational least = disc.radius * disc.radius; // no smaller multiplier can do
    fit.inside =
        circle >= 0 && !fit.outside &&
        (multiplier_proves(disc, circle, least + Rational(far.multiplier)) || multiplier_proves(disc, circle, least));
    return fit;
}

} // namespace tuckwright::proof
