// SPDX-License-Identifier: GPL-3.0-or-later
// Pairs in a circle of radius R. Two convex things are apart if and only if some line has one on each side. So let T be
// the least x to which a thing can reach that lies in the circle, to the left: two fit if and only if their T sum to no
// more than 0. For a disc of radius r, T = 2 r - R. A rectangle of sides A and B is in the circle, and what counts of it
// is narrower by d at both ends of its sides B. Put its rightmost corner at 0 and its sides A along (-sin a, cos a), B
// along (-cos a, -sin a): then -T is the largest x of the circle's centre, plus d cos a. Let s(X) = sqrt(R^2 - X^2 / 4) and
// C = B - d. The ends of the far side A are in the circle: if sin a <= A / 2R, then
//     -T <= (s(A) - C) cos a - (A / 2) sin a,   else   -T <= R - C cos a - A sin a;
// those of the far side B: if cos a <= B / 2R, then -T <= (s(B) - A) sin a - (B / 2 - d) cos a.
// The first, where its factor is negative, and the second are convex in a, so largest at their ends; the third likewise.
// Where the first ends it is (s/R)(s - C) - A^2 / 4R with s = s(A), which is at most s - C: if s >= C at once, else since
// C <= 2 s, as the rectangle fits the circle. So -T is at most the largest of
//     s(A) - C (a = 0),   s(B) - A (a quarter turn),   R - C B / 2R - A s(B) / R (where cos a = B / 2R),
// and the first two are reached. For d = 0 the third is never the largest, as A and B may be exchanged.
//
// Beside a part of something that leans: a line of length L at the distance d from the centre has both ends within R - r,
// so d^2 is at most D^2 = (R - r)^2 - L^2 / 4. What is apart from the discs of radius r along a part S of the line has T
// for itself: there is a direction in which S, and r more, goes no farther than -T. The least that S goes in some
// direction is minus its distance from the centre, 0 if that is on S. So S must be T + r from the centre. It is farthest
// from it where the line is, d = D, with S at one end: sqrt((L / 2 - S)^2 + D^2) while S is at most L / 2, else D. (Nearer
// to the centre the line has more room at its ends, half of it h = sqrt((R - r)^2 - d^2), but then the square of the
// distance is (R - r)^2 + S^2 - 2 S h, which falls as h grows.)
//
// Pairs in a rectangle, square to it: opposite corners are the best places; quarter turns are tried. Three rectangles: of
// the three pairs two are apart along the same side, say a from b and b from c along x. If b is between them, they are in
// a row; else a line has b on one side and the others on the other, and these are apart along x or y.
//
// Three discs: of minimal circles round them, either two discs span the diameter and the third has room beside, or all
// three touch the circle. In both cases the angles at the centre between discs that touch it and each other sum to at
// most a full turn; and each of these angles falls as the circle grows. So that condition is necessary and sufficient.
#include "nesting/plan_sets.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <numbers>

#include "nesting/tiny.hpp"

namespace tuckwright::nesting {

namespace {

/// T of the above for a thing that fits the circle.
double least_reach(const Lying& one, double radius)
{
    const Footprint& f = one.whole;
    if (one.footprint.disc) {
        return 2 * one.footprint.half_length - radius;
    }
    const double a = 2 * f.half_length, b = 2 * f.half_width, c = f.half_width + one.footprint.half_width;
    const double s_a = std::sqrt(std::max(0.0, radius * radius - a * a / 4));
    const double s_b = std::sqrt(std::max(0.0, radius * radius - b * b / 4));
    return -std::max({s_a - c, s_b - a, radius - (c * b / 2 + a * s_b) / radius});
}

/// The disc in it, which turns as it likes.
Footprint disc_in(const Footprint& f) { return {true, f.inner(), f.inner()}; }

/// Half sides along the plan's own.
struct Sides {
    double x, y;
};
Sides sides(const Footprint& f, bool quarter)
{
    return quarter ? Sides{f.half_width, f.half_length} : Sides{f.half_length, f.half_width};
}

bool lies_within(const Sides& s, const Plan& plan) { return s.x <= plan.half_length + hair && s.y <= plan.half_width + hair; }

/// Whether they are apart with their middles so far from each other, given as x and y.
bool apart(const Footprint& f, const Sides& fs, const Footprint& g, const Sides& gs, double x, double y)
{
    if (f.disc && g.disc) {
        return std::hypot(std::max(0.0, x), std::max(0.0, y)) + hair >= fs.x + gs.x;
    }
    if (f.disc || g.disc) {
        const double r = f.disc ? fs.x : gs.x, dx = x - (f.disc ? gs.x : fs.x), dy = y - (f.disc ? gs.y : fs.y);
        return std::max(dx, dy) + hair >= r || (dx > 0 && dy > 0 && std::hypot(dx, dy) + hair >= r);
    }
    return x + hair >= fs.x + gs.x || y + hair >= fs.y + gs.y;
}

/// In opposite corners, in all quarter turns.
bool fit_in_rectangle(const Lying& f, const Lying& g, const Plan& plan)
{
    for (const bool f_quarter : {false, true}) {
        const Sides f_whole = sides(f.whole, f_quarter);
        for (const bool g_quarter : {false, true}) {
            const Sides g_whole = sides(g.whole, g_quarter);
            if (lies_within(f_whole, plan) && lies_within(g_whole, plan) &&
                apart(f.footprint, sides(f.footprint, f_quarter), g.footprint, sides(g.footprint, g_quarter),
                      2 * plan.half_length - f_whole.x - g_whole.x, 2 * plan.half_width - f_whole.y - g_whole.y)) {
                return true;
            }
        }
    }
    return false;
}

/// As it counts in a rectangle.
Lying told(const Lying& one)
{
    return one.turned == Turned::square ? one : Lying{disc_in(one.footprint), disc_in(one.footprint), Turned::square};
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
        const Footprint& f = one.whole;
        return (f.disc ? f.half_length : std::hypot(f.half_length, f.half_width)) <= plan.half_length + hair;
    }
    const Footprint f = told(one).whole;
    return lies_within(sides(f, false), plan) || lies_within(sides(f, true), plan);
}

bool fit_side_by_side(const Lying& one, const Lying& other, const Plan& plan)
{
    if (!fits_alone(one, plan) || !fits_alone(other, plan)) {
        return false;
    }
    if (plan.round) {
        return least_reach(one, plan.half_length) + least_reach(other, plan.half_length) <= hair;
    }
    return fit_in_rectangle(told(one), told(other), plan);
}

bool fit_beside_standing_out(const Lying& standing_out, const RoundVessel& vessel, const Lying& other, const Plan& plan)
{
    const double reach = least_reach(standing_out, vessel.cavity); // from the vessel's axis
    if (plan.round) {
        return reach - (plan.half_length - vessel.outside) + least_reach(other, plan.half_length) <= hair;
    }
    // The vessel in one corner, the other in the opposite one, and between them a line whose normal is anyhow between the
    // plan's sides.
    const Footprint f = told(other).footprint;
    for (const bool quarter : {false, true}) {
        const Sides whole = sides(told(other).whole, quarter), s = sides(f, quarter);
        const double x = 2 * plan.half_length - vessel.outside - whole.x - (f.disc ? 0 : s.x);
        const double y = 2 * plan.half_width - vessel.outside - whole.y - (f.disc ? 0 : s.y);
        const double most = x > 0 && y > 0 ? std::hypot(x, y) : std::max(x, y);
        if (lies_within(whole, plan) && reach + (f.disc ? s.x : 0) <= most + hair) {
            return true;
        }
    }
    return false;
}

double longest_beside_leaning(const Leaning& leaning, const Lying& other, double radius)
{
    constexpr double whole = std::numeric_limits<double>::infinity();
    const double half = leaning.length / 2, room = radius - leaning.thick;
    const double aside = std::sqrt(std::max(0.0, room * room - half * half));
    const double lacks = least_reach(other, radius) + leaning.thick;
    constexpr double slack = 1e-6; // mm; a root of a small difference loses half of the digits
    if (half <= 0 || lacks <= aside + slack) {
        return whole;
    }
    return std::max(0.0, half - std::sqrt(lacks * lacks - aside * aside)) + slack;
}

bool three_discs_fit(double r, double s, double t, double radius)
{
    const double sum = angle_between(r, s, radius) + angle_between(s, t, radius) + angle_between(t, r, radius);
    constexpr double rounding = 1e-7; // radians; an arc cosine near -1 loses half of the digits
    return sum <= 2 * std::numbers::pi + rounding;
}

namespace {

/// Of what counts in three_fit_rectangle().
Sides square_sides(const Lying& one, bool quarter)
{
    const Footprint f = told(one).footprint;
    const double half = f.inner() / std::numbers::sqrt2;
    return f.disc ? Sides{half, half} : sides(f, quarter);
}

/// Whether one is beside the other two, which are beside each other in either way, along x or along y.
bool one_beside_two(const Sides& a, const Sides& b, const Sides& c, const Plan& plan)
{
    const auto along = [](double ax, double bx, double cx, double by, double cy, double half_x, double half_y) {
        return (ax + std::max(bx, cx) <= half_x + hair && by + cy <= half_y + hair) || ax + bx + cx <= half_x + hair;
    };
    return along(a.x, b.x, c.x, b.y, c.y, plan.half_length, plan.half_width) ||
           along(a.y, b.y, c.y, b.x, c.x, plan.half_width, plan.half_length);
}

} // namespace

bool three_fit_rectangle(const Lying& one, const Lying& other, const Lying& third, const Plan& plan)
{
    for (unsigned turns = 0; turns < 8; ++turns) {
        const Sides a = square_sides(one, (turns & 1) != 0), b = square_sides(other, (turns & 2) != 0),
                    c = square_sides(third, (turns & 4) != 0);
        if (lies_within(a, plan) && lies_within(b, plan) && lies_within(c, plan) &&
            (one_beside_two(a, b, c, plan) || one_beside_two(b, c, a, plan) || one_beside_two(c, a, b, plan))) {
            return true;
        }
    }
    return false;
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
