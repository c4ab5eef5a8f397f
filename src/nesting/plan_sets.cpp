// SPDX-License-Identifier: GPL-3.0-or-later
// Pairs in a circle of radius R. Two convex things are apart if and only if some line has one on each side. So let T be
// the least x to which a thing can reach that lies in the circle, to the left: two fit if and only if their T sum to no
// more than 0. For a disc of radius r, T = 2 r - R. For a rectangle of sides A and B, let s(X) = sqrt(R^2 - X^2 / 4);
// then T = min(B - s(A), A - s(B)), the rectangle's side being along the line: no slanting turn reaches less.
// Proof: put the rectangle's rightmost corner at 0 and its sides A along (-sin a, cos a), B along (-cos a, -sin a); the
// circle's centre o is to be as far right as possible. The ends of the far side A must be in the circle: if sin a <=
// A / 2R, then o_x <= (s(A) - B) cos a - (A / 2) sin a, else o_x <= R - B cos a - A sin a; likewise for the far side B
// with cos a. The last expression is convex in a, so largest where sin a = A / 2R or cos a = B / 2R; there the first is
// (s/R)(s - B) - A^2 / 4R with s = s(A), which is at most s - B: if s >= B at once, else since B <= 2 s (the rectangle
// fits the circle). Where s < B the first expression is convex's contrary, so largest at its ends: a = 0 or that point.
//
// Pairs in a rectangle, square to it: opposite corners are the best places; quarter turns are tried.
//
// Three discs: of minimal circles round them, either two discs span the diameter and the third has room beside, or all
// three touch the circle. In both cases the angles at the centre between discs that touch it and each other sum to at
// most a full turn; and each of these angles falls as the circle grows. So that condition is necessary and sufficient.
#include "nesting/plan_sets.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace tuckwright::nesting {

namespace {

constexpr double hair = 1e-9; // mm: what just fits does fit

/// T of the above for a thing that fits the circle.
double least_reach(const Footprint& f, double radius)
{
    if (f.disc) {
        return 2 * f.half_length - radius;
    }
    const double s_length = std::sqrt(std::max(0.0, radius * radius - f.half_length * f.half_length));
    const double s_width = std::sqrt(std::max(0.0, radius * radius - f.half_width * f.half_width));
    return std::min(2 * f.half_width - s_length, 2 * f.half_length - s_width);
}

/// The disc in it, which turns as it likes.
Footprint disc_in(const Footprint& f) { return {true, f.half_width, f.half_width}; }

Footprint told_by(const Lying& one) { return one.turned == Turned::anyhow ? disc_in(one.footprint) : one.footprint; }

bool within(double x, double y, const Plan& plan) { return x <= plan.half_length + hair && y <= plan.half_width + hair; }

/// A disc in one corner and a rectangle of half sides x, y in the opposite one, or two discs.
bool disc_beside(double r, double x, double y, bool other_is_disc, const Plan& plan)
{
    if (other_is_disc) {
        const double dx = std::max(0.0, 2 * plan.half_length - r - x), dy = std::max(0.0, 2 * plan.half_width - r - x);
        return std::hypot(dx, dy) + hair >= r + x;
    }
    const double dx = 2 * plan.half_length - r - 2 * x, dy = 2 * plan.half_width - r - 2 * y;
    return std::max(dx, dy) + hair >= r || (dx > 0 && dy > 0 && std::hypot(dx, dy) + hair >= r);
}

bool fit_in_rectangle(const Footprint& f, const Footprint& g, const Plan& plan)
{
    for (const bool f_turned : {false, true}) {
        const double fx = f_turned ? f.half_width : f.half_length, fy = f_turned ? f.half_length : f.half_width;
        for (const bool g_turned : {false, true}) {
            const double gx = g_turned ? g.half_width : g.half_length, gy = g_turned ? g.half_length : g.half_width;
            if (!within(fx, fy, plan) || !within(gx, gy, plan)) {
                continue;
            }
            const bool apart = f.disc   ? disc_beside(fx, gx, gy, g.disc, plan)
                               : g.disc ? disc_beside(gx, fx, fy, false, plan)
                                        : within(fx + gx, 0, plan) || within(0, fy + gy, plan);
            if (apart) {
                return true;
            }
        }
    }
    return false;
}

/// At the centre of a circle, between two discs that touch it and each other.
double angle_between(double r, double s, double radius)
{
    const double a = radius - r, b = radius - s, c = r + s;
    if (a <= 0 || b <= 0) {
        return 0;
    }
    return std::acos(std::clamp((a * a + b * b - c * c) / (2 * a * b), -1.0, 1.0));
}

} // namespace

double Footprint::area() const
{
    return disc ? std::numbers::pi * half_length * half_length : 4 * half_length * half_width;
}

double Plan::area() const
{
    return round ? std::numbers::pi * half_length * half_length : 4 * half_length * half_width;
}

bool fits_alone(const Lying& one, const Plan& plan)
{
    if (plan.round) {
        const Footprint& f = one.footprint;
        return (f.disc ? f.half_length : std::hypot(f.half_length, f.half_width)) <= plan.half_length + hair;
    }
    const Footprint f = told_by(one);
    return within(f.half_length, f.half_width, plan) || within(f.half_width, f.half_length, plan);
}

bool fit_side_by_side(const Lying& one, const Lying& other, const Plan& plan)
{
    if (!fits_alone(one, plan) || !fits_alone(other, plan)) {
        return false;
    }
    if (plan.round) {
        return least_reach(one.footprint, plan.half_length) + least_reach(other.footprint, plan.half_length) <= hair;
    }
    return fit_in_rectangle(told_by(one), told_by(other), plan);
}

bool three_discs_fit(double r, double s, double t, double radius)
{
    const double sum = angle_between(r, s, radius) + angle_between(s, t, radius) + angle_between(t, r, radius);
    constexpr double rounding = 1e-7; // radians; an arc cosine near -1 loses half of the digits
    return sum <= 2 * std::numbers::pi + rounding;
}

double least_circle_round(int count)
{
    // E. Specht, "The best known packings of equal circles in a circle"; proved for up to 13 by R. L. Graham (1968),
    // U. Pirl (1969), H. Melissen (1994) and F. Fodor (2000, 2003), and for 19 by F. Fodor (1999). Rounded down.
    constexpr std::array<double, 14> proved{0,         1,         2,         2.1547005, 2.4142135, 2.7013016, 3,
                                            3,         3.3047648, 3.6131259, 3.8130256, 3.9238044, 4.0296019, 4.2360679};
    const auto index = static_cast<std::size_t>(std::max(0, count));
    return count >= 19 ? 4.8637033 : index < proved.size() ? proved[index] : proved.back();
}

} // namespace tuckwright::nesting
