// SPDX-License-Identifier: GPL-3.0-or-later
/// What can lie side by side: known limits, and every random placement that exists must be said to.
#include <array>
#include <catch2/catch.hpp>
#include <cmath>
#include <limits>
#include <numbers>

#include "nesting/plan_sets.hpp"
#include "packing/random.hpp"
#include "support/workload.hpp"

using namespace tuckwright::nesting;
using tuckwright::packing::Random;
using tuckwright::test::count;

namespace {

Lying disc(double radius) { return {{true, radius, radius}, {true, radius, radius}, Turned::square}; }
Lying rectangle(double half_length, double half_width)
{
    return {{false, half_length, half_width}, {false, half_length, half_width}, Turned::square};
}
/// A level of a lying cylinder.
Lying slab(double half_length, double half_width, double radius)
{
    return {{false, half_length, half_width}, {false, half_length, radius}, Turned::square};
}
Plan circle(double radius) { return {true, radius, radius}; }

struct At {
    double x, y, c, s;
};

std::array<std::array<double, 2>, 4> corners(const Footprint& f, const At& at)
{
    std::array<std::array<double, 2>, 4> found{};
    const std::array<std::array<double, 2>, 4> signs{{{1, 1}, {1, -1}, {-1, -1}, {-1, 1}}};
    for (std::size_t k = 0; k < 4; ++k) {
        const double u = signs[k][0] * f.half_length, v = signs[k][1] * f.half_width;
        found[k] = {at.x + u * at.c - v * at.s, at.y + u * at.s + v * at.c};
    }
    return found;
}

bool inside(const Footprint& f, const At& at, const Plan& plan)
{
    if (f.disc) {
        return plan.round ? std::hypot(at.x, at.y) + f.half_length <= plan.half_length
                          : std::abs(at.x) + f.half_length <= plan.half_length &&
                                std::abs(at.y) + f.half_length <= plan.half_width;
    }
    for (const auto& p : corners(f, at)) {
        if (plan.round ? std::hypot(p[0], p[1]) > plan.half_length
                       : std::abs(p[0]) > plan.half_length || std::abs(p[1]) > plan.half_width) {
            return false;
        }
    }
    return true;
}

/// The largest gap between two outlines along any of many directions, by their supports: positive only if they are apart.
bool apart(const Footprint& f, const At& a, const Footprint& g, const At& b)
{
    const auto support = [](const Footprint& one, const At& at, double x, double y) {
        return one.disc ? one.half_length
                        : one.half_length * std::abs(at.c * x + at.s * y) + one.half_width * std::abs(at.c * y - at.s * x);
    };
    for (int k = 0; k < 180; ++k) {
        const double angle = k * std::numbers::pi / 180, x = std::cos(angle), y = std::sin(angle);
        if (std::abs((b.x - a.x) * x + (b.y - a.y) * y) >= support(f, a, x, y) + support(g, b, x, y)) {
            return true;
        }
    }
    return false;
}

Lying random_outline(Random& random)
{
    const double length = random.between(0.1, 0.9), width = random.between(0.02, 0.7);
    switch (random.below(3)) {
    case 0: return disc(width);
    case 1: return rectangle(length, width);
    default: return slab(length, width * random.unit(), width);
    }
}

At random_place(Random& random, const Plan& plan)
{
    const auto turn = random.direction();
    const auto quarter = random.below(2) == 0;
    At at{random.between(-1, 1), random.between(-1, 1), turn[0], turn[1]};
    if (!plan.round || random.chance(0.3)) {
        at.c = quarter ? 0 : 1;
        at.s = quarter ? 1 : 0;
    }
    return at;
}

} // namespace

TEST_CASE("two discs, and a disc and a rectangle, fit a circle as they are known to")
{
    CHECK(fit_side_by_side(disc(1), disc(0.5), circle(1.5)));
    CHECK_FALSE(fit_side_by_side(disc(1), disc(0.5), circle(1.499999)));
    // In a circle of radius sqrt 5 a square of side 2 lies on the diameter; the other half holds a disc of half the radius.
    const double r = std::sqrt(5.0);
    CHECK(fit_side_by_side(rectangle(1, 1), disc(r / 2), circle(r)));
    CHECK_FALSE(fit_side_by_side(rectangle(1, 1), disc(r / 2 + 1e-6), circle(r)));
    // Two equal rectangles, side by side, are one twice as wide.
    CHECK(fit_side_by_side(rectangle(1, 0.5), rectangle(1, 0.5), circle(std::sqrt(2.0))));
    CHECK_FALSE(fit_side_by_side(rectangle(1, 0.5), rectangle(1, 0.5), circle(std::sqrt(2.0) - 1e-6)));
}

TEST_CASE("two things fit a rectangle as they are known to")
{
    const Plan plan{false, 2, 1};
    CHECK(fit_side_by_side(disc(1), disc(1), plan));
    CHECK_FALSE(fit_side_by_side(disc(1), disc(1), {false, 1.999999, 1}));
    CHECK(fit_side_by_side(rectangle(1, 1), disc(1), plan));
    CHECK(fit_side_by_side(rectangle(0.5, 2), rectangle(0.5, 2), plan)); // each turned a quarter
    CHECK_FALSE(fit_side_by_side(rectangle(0.6, 2), rectangle(0.5, 2), plan));
    // Across the corners: 2 discs of radius 1 in a square of side 2 + sqrt 2.
    const double half = 1 + std::sqrt(2.0) / 2;
    CHECK(fit_side_by_side(disc(1), disc(1), {false, half, half}));
    CHECK_FALSE(fit_side_by_side(disc(1), disc(1), {false, half - 1e-6, half - 1e-6}));
    // A narrow level of a lying cylinder is in the middle of it: 0.5 beside it needs as much beyond the cylinder's side.
    CHECK(fit_side_by_side(slab(1, 0, 1), rectangle(1, 0.5), {false, 1, 1}));
    CHECK_FALSE(fit_side_by_side(slab(1, 0, 1), rectangle(1, 0.51), {false, 1, 1}));
}

TEST_CASE("whatever is placed side by side is said to fit")
{
    Random random(5);
    for (const Plan& plan : {circle(1), Plan{false, 1, 0.8}}) {
        int placed = 0;
        for (int trial = 0; trial < count(400000, 40000); ++trial) {
            const Lying f = random_outline(random), g = random_outline(random);
            const At a = random_place(random, plan), b = random_place(random, plan);
            if (inside(f.whole, a, plan)) {
                CHECK(fits_alone(f, plan));
                if (inside(g.whole, b, plan) && apart(f.footprint, a, g.footprint, b)) {
                    ++placed;
                    CHECK(fit_side_by_side(f, g, plan));
                    CHECK(fit_side_by_side(g, f, plan));
                    CHECK(fit_side_by_side({f.footprint, f.whole, Turned::anyhow}, g, plan));
                }
            }
        }
        CHECK(placed > 100);
    }
}

TEST_CASE("what is pushed against opposite walls of a circle is said to fit")
{
    // Tight placements: each outline as far to its own side as it goes, at its own turn.
    Random random(6);
    const Plan plan = circle(1);
    const auto pushed = [&](const Lying& one, At at, double side) {
        at.y = 0;
        for (double low = 0, high = 1; high - low > 1e-9;) {
            at.x = side * (low + high) / 2;
            (inside(one.whole, at, plan) ? low : high) = (low + high) / 2;
        }
        at.x -= side * 1e-9;
        return at;
    };
    int placed = 0;
    for (int trial = 0; trial < count(100000, 10000); ++trial) {
        const Lying f = random_outline(random), g = random_outline(random);
        const At a = pushed(f, random_place(random, plan), -1), b = pushed(g, random_place(random, plan), 1);
        if (inside(f.whole, a, plan) && inside(g.whole, b, plan) && apart(f.footprint, a, g.footprint, b)) {
            ++placed;
            CHECK(fit_side_by_side(f, g, plan));
        }
    }
    CHECK(placed > 100);
}

namespace {

/// How far a point is from an outline, 0 within.
double distance_to(const Footprint& f, const At& at, double x, double y)
{
    const double u = (x - at.x) * at.c + (y - at.y) * at.s, v = (y - at.y) * at.c - (x - at.x) * at.s;
    if (f.disc) {
        return std::max(0.0, std::hypot(u, v) - f.half_length);
    }
    return std::hypot(std::max(0.0, std::abs(u) - f.half_length), std::max(0.0, std::abs(v) - f.half_width));
}

/// The longest part of a line on which discs of that radius are apart from an outline.
double longest_apart(double thick, double length, const At& line, const Footprint& f, const At& at)
{
    constexpr int steps = 200;
    double longest = 0, now = 0;
    for (int k = 0; k <= steps; ++k) {
        const double along = length * (static_cast<double>(k) / steps - 0.5);
        const bool is_apart = distance_to(f, at, line.x + along * line.c, line.y + along * line.s) >= thick + length / steps;
        now = is_apart ? now + length / steps : 0; // between two such points they are apart, too
        longest = std::max(longest, now - length / steps);
    }
    return longest;
}

} // namespace

TEST_CASE("what leans has as much room beside a disc as it is known to")
{
    // A line of 80 with discs of 6 in a circle of 53: its ends are 47 from the centre, so it is 24.67 from it at most.
    const double aside = std::sqrt(47.0 * 47 - 40 * 40);
    CHECK(longest_beside_leaning({6, 80}, disc((53 + aside - 6) / 2 - 1e-4), 53) == std::numeric_limits<double>::infinity());
    CHECK(longest_beside_leaning({6, 80}, disc((53 + aside - 6) / 2 + 1e-4), 53) <= 40);
    // Beyond its end: the part from -40 to -30, a disc on the line through that end and the centre touches both walls.
    const double from_centre = std::hypot(30, aside), radius = (53 + from_centre - 6) / 2;
    CHECK(longest_beside_leaning({6, 80}, disc(radius), 53) == Approx(10).margin(1e-5));
    CHECK(longest_beside_leaning({6, 80}, disc(radius), 53) >= 10);
    CHECK(longest_beside_leaning({6, 80}, disc(52), 53) <= 1e-5);
}

TEST_CASE("what leans and what is placed beside a part of it are said to fit")
{
    Random random(8);
    int placed = 0;
    double nearest = 1;
    for (int trial = 0; trial < count(300000, 20000); ++trial) {
        const double thick = random.between(0.02, 0.2), room = 1 - thick, aside = room * std::sqrt(random.unit());
        const double length = 2 * std::sqrt(room * room - aside * aside);
        const auto turn = random.direction();
        const At line{-turn[1] * aside, turn[0] * aside, turn[0], turn[1]};
        const Lying other = random_outline(random);
        const At at = random_place(random, circle(1));
        if (!inside(other.whole, at, circle(1))) {
            continue;
        }
        const double longest = longest_apart(thick, length, line, other.footprint, at);
        if (longest > 0) {
            ++placed;
            const double allowed = longest_beside_leaning({thick, length}, other, 1);
            CHECK(longest <= allowed);
            nearest = std::min(nearest, allowed - longest);
        }
    }
    CHECK(placed > 100);
    CHECK(nearest < 0.1); // some placements nearly reach it
}

TEST_CASE("three discs fit a circle as they are known to, and wherever they are placed")
{
    const double three = 1 + 2 / std::sqrt(3.0);
    CHECK(three_discs_fit(1, 1, 1, three + 1e-6));
    CHECK_FALSE(three_discs_fit(1, 1, 1, three - 1e-6));
    CHECK(three_discs_fit(1, 1, 2.0 / 3 - 1e-6, 2)); // Descartes: the discs beside two that span a circle
    CHECK_FALSE(three_discs_fit(1, 1, 2.0 / 3 + 1e-5, 2));
    Random random(7);
    int placed = 0;
    for (int trial = 0; trial < count(400000, 40000); ++trial) {
        const Lying f = disc(random.between(0.05, 0.6)), g = disc(random.between(0.05, 0.6)), h = disc(random.between(0.05, 0.6));
        const At a = random_place(random, circle(1)), b = random_place(random, circle(1)), c = random_place(random, circle(1));
        if (inside(f.whole, a, circle(1)) && inside(g.whole, b, circle(1)) && inside(h.whole, c, circle(1)) &&
            apart(f.whole, a, g.whole, b) && apart(g.whole, b, h.whole, c) && apart(f.whole, a, h.whole, c)) {
            ++placed;
            CHECK(three_discs_fit(f.whole.half_length, g.whole.half_length, h.whole.half_length, 1));
        }
    }
    CHECK(placed > 100);
    CHECK(least_circle_round(3) == Approx(three));
    CHECK(least_circle_round(7) == 3);
    for (int k = 1; k < 40; ++k) {
        CHECK(least_circle_round(k) <= least_circle_round(k + 1));
    }
}
