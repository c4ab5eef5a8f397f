// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include <algorithm>

#include "support/random_solids.hpp"
#include "tuckwright/geometry.hpp"

using namespace tuckwright;
using test::Dice;

namespace
{

/// How far a point stands out of a solid dragged by `sweep`, in the largest of its own coordinates; worked out in long
/// double without supports. The point is held against the nearest place of the drag, found by thirds.
long double stands_out(const Solid& solid, Vec3 sweep, Vec3 point)
{
    const Matrix3 m = rotation_matrix(solid.pose.turn);
    const auto at = [&](long double t) {
        const long double p[3] = {point.x - solid.pose.center.x - t * sweep.x,
                                  point.y - solid.pose.center.y - t * sweep.y,
                                  point.z - solid.pose.center.z - t * sweep.z};
        long double own[3] = {};
        for (std::size_t k = 0; k < 3; ++k) {
            own[k] = p[0] * m[0][k] + p[1] * m[1][k] + p[2] * m[2][k];
        }
        if (const auto* box = std::get_if<Box>(&solid.shape)) {
            return std::max({std::abs(own[0]) - box->length / 2, std::abs(own[1]) - box->width / 2,
                             std::abs(own[2]) - box->height / 2});
        }
        const auto& c = std::get<Cylinder>(solid.shape);
        return std::max(std::sqrt(own[0] * own[0] + own[1] * own[1]) - c.diameter / 2, std::abs(own[2]) - c.height / 2);
    };
    long double low = 0, high = 1;
    for (int k = 0; k < 200 && !(sweep == Vec3{}); ++k) {
        const long double a = low + (high - low) / 3, b = high - (high - low) / 3;
        (at(a) <= at(b) ? high : low) = at(a) <= at(b) ? b : a;
    }
    return at(low);
}

/// The point of the solid nearest to the given one: its own coordinates are cut off at the solid's ends.
Vec3 nearest_of(const Solid& solid, Vec3 point)
{
    const Matrix3 m = rotation_matrix(solid.pose.turn);
    const Vec3 p = point - solid.pose.center;
    double own[3] = {};
    for (std::size_t k = 0; k < 3; ++k) {
        own[k] = p.x * m[0][k] + p.y * m[1][k] + p.z * m[2][k];
    }
    if (const auto* box = std::get_if<Box>(&solid.shape)) {
        own[0] = std::clamp(own[0], -box->length / 2, box->length / 2);
        own[1] = std::clamp(own[1], -box->width / 2, box->width / 2);
        own[2] = std::clamp(own[2], -box->height / 2, box->height / 2);
    } else {
        const auto& c = std::get<Cylinder>(solid.shape);
        const double radial = std::hypot(own[0], own[1]);
        const double scale = radial > c.diameter / 2 ? c.diameter / 2 / radial : 1;
        own[0] *= scale;
        own[1] *= scale;
        own[2] = std::clamp(own[2], -c.height / 2, c.height / 2);
    }
    return {solid.pose.center.x + own[0] * m[0][0] + own[1] * m[0][1] + own[2] * m[0][2],
            solid.pose.center.y + own[0] * m[1][0] + own[1] * m[1][1] + own[2] * m[1][2],
            solid.pose.center.z + own[0] * m[2][0] + own[1] * m[2][1] + own[2] * m[2][2]};
}

/// The identity that the header promises.
void check_identity(const Hull& first, const Hull& second, const Separation& found)
{
    CHECK(std::abs(norm(found.normal) - 1) < 1e-12);
    CHECK(std::abs(-support(second, -1.0 * found.normal) - support(first, found.normal) - found.distance) < 1e-9);
}

/// The best signed distance over sampled directions, the best of them refined by shrinking random steps.
double sampled_distance(const Hull& first, const Hull& second, Dice& dice)
{
    const auto along = [&](Vec3 d) { return -support(second, -1.0 * d) - support(first, d); };
    std::vector<std::pair<double, Vec3>> looks;
    for (int k = 0; k < 2000; ++k) {
        const Vec3 d = dice.direction();
        looks.emplace_back(along(d), d);
    }
    std::sort(looks.begin(), looks.end(), [](const auto& a, const auto& b) { return a.first > b.first; });
    double best = looks.front().first;
    for (std::size_t start = 0; start < 6; ++start) {
        auto [value, d] = looks[start];
        for (double step = 0.1; step > 1e-8;) {
            bool better = false;
            for (int k = 0; k < 10; ++k) {
                Vec3 e = d + step * dice.direction();
                e = (1 / norm(e)) * e;
                if (const double other = along(e); other > value) {
                    value = other;
                    d = e;
                    better = true;
                }
            }
            step = better ? step : step * 0.6;
        }
        best = std::max(best, value);
    }
    return best;
}

Solid standing(Shape shape, Vec3 center) { return {shape, {center, {}}}; }
constexpr Quaternion along_x{1, 0, 1, 0};
constexpr Quaternion along_y{1, -1, 0, 0};

} // namespace

// A point of the first with a point of the second at the distance found bounds the true distance from above; the
// supports along the normal bound it from below. Where both agree, the distance is proved.
TEST_CASE("random solids apart: the distance is met from both sides")
{
    Dice dice(31);
    int apart = 0;
    for (int k = 0; k < 6000; ++k) {
        const bool along_axes = k % 3 == 0, swept = k % 4 == 0;
        const Solid a = test::random_solid(dice, k % 2 == 0 ? 150 : 400, along_axes);
        const Solid b = test::random_solid(dice, 150, along_axes);
        const Vec3 sweep = swept ? dice.between(1, 500) * dice.direction() : Vec3{};
        const Hull first = hull_of(a, sweep), second = hull_of(b);
        const Separation found = separation(first, second);
        check_identity(first, second, found);
        if (found.distance > 0) {
            ++apart;
            CHECK(static_cast<double>(stands_out(a, sweep, found.point)) < 1e-8);
            CHECK(norm(nearest_of(b, found.point) - found.point) < found.distance + 2e-8);
        }
    }
    CHECK(apart > 2000);
}

TEST_CASE("random solids: no sampled direction is better when apart, hardly one when they overlap")
{
    Dice dice(32);
    int apart = 0, overlapping = 0, beaten = 0;
    for (int k = 0; k < 400; ++k) {
        const bool along_axes = k % 2 == 0;
        const Hull first = hull_of(test::random_solid(dice, 60, along_axes));
        const Hull second = hull_of(test::random_solid(dice, 60, along_axes));
        const Separation found = separation(first, second);
        const double sampled = sampled_distance(first, second, dice);
        if (found.distance >= 0) {
            ++apart;
            CHECK(found.distance >= sampled - 1e-8);
            CHECK(found.distance <= 1.02 * sampled + 0.05); // random steps stall on creases
        } else {
            ++overlapping;
            CHECK(sampled < 1e-8);
            CHECK(found.distance > 1.2 * sampled - 1e-6);
            beaten += found.distance < 1.001 * sampled - 1e-6 ? 1 : 0;
        }
    }
    CHECK(apart > 50);
    CHECK(overlapping > 50);
    CHECK(beaten < overlapping / 20);
}

TEST_CASE("the second pair of a swap has the same distance and the opposite normal")
{
    Dice dice(33);
    for (int k = 0; k < 500; ++k) {
        const Hull first = hull_of(test::random_solid(dice, 150, false));
        const Hull second = hull_of(test::random_solid(dice, 150, false));
        const Separation there = separation(first, second), back = separation(second, first);
        if (there.distance > 0) {
            CHECK(back.distance == Approx(there.distance).margin(1e-8));
            CHECK(dot(there.normal, back.normal) < -1 + 1e-6);
        }
    }
}

TEST_CASE("parallel cylinders side by side: centre distance less the radii")
{
    const Separation s =
        separation(hull_of(standing(Cylinder{40, 100}, {0, 0, 50})), hull_of(standing(Cylinder{60, 80}, {60, 80, 40})));
    CHECK(s.distance == Approx(50).margin(1e-9));
    CHECK(s.normal.x == Approx(0.6).margin(1e-6));
    CHECK(s.normal.y == Approx(0.8).margin(1e-6));
}

TEST_CASE("crossed cylinders, apart and overlapping")
{
    const auto at_height = [](double z) {
        return separation(hull_of({Cylinder{30, 200}, {{3, 5, 0}, along_x}}),
                          hull_of({Cylinder{50, 300}, {{-7, 1, z}, along_y}}));
    };
    CHECK(at_height(42).distance == Approx(2).margin(1e-9));
    CHECK(at_height(42).normal.z == 1);
    CHECK(at_height(40).distance == Approx(0).margin(1e-9));
    CHECK(at_height(35).distance == Approx(-5).margin(1e-9));
    CHECK(at_height(-35).normal.z == -1);
}

TEST_CASE("a cylinder that lies over the edge of a turned box")
{
    // The box stands on an edge (turned by 45 degrees about y up to 1e-12): its top edge is at 50 sqrt(2) / 2.
    const Quaternion eighth{2414213562373, 0, 1000000000000, 0};
    const double edge = 50 * std::sqrt(2.0) / 2;
    const Hull box = hull_of({Box{50, 70, 50}, {{0, 0, 0}, eighth}});
    const Separation above = separation(box, hull_of({Cylinder{20, 40}, {{0, 0, edge + 13}, along_y}}));
    CHECK(above.distance == Approx(3).margin(1e-8));
    const Separation beside = separation(box, hull_of({Cylinder{20, 40}, {{30, 0, edge + 40}, along_y}}));
    CHECK(beside.distance == Approx(40).margin(1e-8));
    CHECK(beside.normal.x == Approx(0.6).margin(1e-6));
    CHECK(beside.point.z == Approx(edge).margin(1e-8));
}

TEST_CASE("box corner to box corner, box edge to box edge, and a rim to a corner")
{
    const Separation corners =
        separation(hull_of(standing(Box{10, 10, 10}, {0, 0, 0})), hull_of(standing(Box{20, 20, 20}, {17, 18, 21})));
    CHECK(corners.distance == Approx(7).margin(1e-9)); // (2, 3, 6)
    CHECK(corners.normal.x == Approx(2.0 / 7).margin(1e-7));
    CHECK(corners.normal.y == Approx(3.0 / 7).margin(1e-7));
    CHECK(corners.point == Vec3{5, 5, 5});
    const Separation edges =
        separation(hull_of(standing(Box{10, 10, 10}, {0, 0, 0})), hull_of(standing(Box{20, 20, 20}, {18, 19, 1})));
    CHECK(edges.distance == Approx(5).margin(1e-9));
    const Separation rim =
        separation(hull_of(standing(Cylinder{20, 10}, {0, 0, 0})), hull_of(standing(Box{4, 4, 4}, {11, 14, 11})));
    // The corner (9, 12, 9) is 5 beyond the radius 10 and 4 above the top at 5.
    CHECK(rim.distance == Approx(std::sqrt(41.0)).margin(1e-9));
}

TEST_CASE("flat faces that touch or nearly touch give the axis itself")
{
    const Hull table = hull_of(standing(Box{100, 80, 20}, {0, 0, 0}));
    for (const double gap : {0.0, 1e-6, 1e-3, 0.5, 40.0, -1e-6, -0.25}) {
        const Hull can = hull_of(standing(Cylinder{30, 60}, {12, -9, 40 + gap}));
        const Separation s = separation(table, can);
        CHECK(s.normal == Vec3{0, 0, 1});
        CHECK(s.distance == Approx(gap).margin(1e-9));
        CHECK(std::abs(s.point.z - 10) < 1e-6);
        CHECK(std::hypot(s.point.x - 12, s.point.y + 9) <= 15 + 1e-6);
    }
    // Both turned alike: the face's normal is an axis of the boxes, not of the world.
    const Quaternion turn{7, 2, -3, 1};
    const Hull first = hull_of({Box{10, 20, 30}, {{1, 2, 3}, turn}});
    const Vec3 axis{first.rotation[0][1], first.rotation[1][1], first.rotation[2][1]};
    const Hull second = hull_of({Box{5, 6, 7}, {Vec3{1, 2, 3} + 13.0 * axis, turn}});
    const Separation s = separation(first, second);
    CHECK(std::abs(s.distance) < 1e-9);
    CHECK(dot(s.normal, axis) > 1 - 1e-15);
}

TEST_CASE("touching in a point, along a line and at rims is distance nothing up to 1e-7")
{
    Dice dice(34);
    for (int k = 0; k < 2000; ++k) {
        // Pushed together along the normal of the distance found, two hulls touch; twice, since the first push may
        // miss by the square of the normal's error.
        const Solid a = test::random_solid(dice, 150, k % 2 == 0);
        Solid b = test::random_solid(dice, 150, k % 2 == 0);
        const Separation apart = separation(hull_of(a), hull_of(b));
        if (apart.distance <= 0) {
            continue;
        }
        b.pose.center = b.pose.center - apart.distance * apart.normal;
        const Separation again = separation(hull_of(a), hull_of(b));
        b.pose.center = b.pose.center - again.distance * again.normal;
        const Separation touching = separation(hull_of(a), hull_of(b));
        check_identity(hull_of(a), hull_of(b), touching);
        CHECK(std::abs(touching.distance) < 1e-7);
        CHECK(static_cast<double>(stands_out(a, {}, touching.point)) < 1e-6);
        // A hair apart is a hair of air; a hair too deep is at most that, for at a corner another way out is shorter.
        for (const double hair : {1e-7, 1e-5}) {
            Solid c = b;
            c.pose.center = b.pose.center + hair * apart.normal;
            CHECK(std::abs(separation(hull_of(a), hull_of(c)).distance - hair) < 2e-7);
            c.pose.center = b.pose.center - hair * apart.normal;
            const double deep = separation(hull_of(a), hull_of(c)).distance;
            CHECK(deep > -hair - 1e-7);
            CHECK(deep < 1e-7);
        }
    }
    const Separation parallel =
        separation(hull_of(standing(Cylinder{40, 100}, {0, 0, 50})), hull_of(standing(Cylinder{60, 80}, {30, 40, 40})));
    CHECK(std::abs(parallel.distance) < 1e-9);
    CHECK(parallel.normal.x == Approx(0.6).margin(1e-6));
}

TEST_CASE("one solid deep within another: the least way out")
{
    const Separation s =
        separation(hull_of(standing(Cylinder{10, 10}, {3, 0, 0})), hull_of(standing(Box{100, 200, 300}, {0, 0, 0})));
    CHECK(s.distance == Approx(-52).margin(1e-9)); // out through the side at x = 50, by 50 - 3 + 5
    CHECK(s.normal.x == -1);
    const Separation same =
        separation(hull_of(standing(Cylinder{10, 30}, {0, 0, 0})), hull_of(standing(Cylinder{10, 30}, {0, 0, 0})));
    CHECK(same.distance == Approx(-10).margin(1e-6));
}

TEST_CASE("a long sweep past a neighbour touches nothing when the way is free, and hits when it is not")
{
    const Hull falling = hull_of(standing(Cylinder{30, 40}, {0, 0, 20}), {0, 0, 2000});
    CHECK(separation(falling, hull_of(standing(Cylinder{50, 10}, {40, 0, 500}))).distance == Approx(0).margin(1e-7));
    CHECK(separation(falling, hull_of(standing(Cylinder{50, 10}, {40.25, 0, 500}))).distance ==
          Approx(0.25).margin(1e-8));
    CHECK(separation(falling, hull_of(standing(Cylinder{50, 10}, {39.9, 0, 500}))).distance < -0.05);
    const Separation floor = separation(falling, hull_of(standing(Box{80, 80, 2}, {0, 0, -1})));
    CHECK(floor.distance == Approx(0).margin(1e-9));
    CHECK(floor.normal == Vec3{0, 0, -1});
}
