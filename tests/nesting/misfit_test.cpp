// SPDX-License-Identifier: GPL-3.0-or-later
/// Proofs that no turn of an item is within limits: against turns that are worked out, and a fine grid of directions.
#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <numbers>

#include "nesting/misfit.hpp"
#include "support/random_solids.hpp"
#include "tuckwright/geometry.hpp"

using namespace tuckwright;
using namespace tuckwright::nesting;
using tuckwright::test::Dice;

namespace {

constexpr double nanometre = 1e-6;

Item thing(const Shape& shape, bool upright = false)
{
    Item item;
    item.id = "thing";
    item.outside = shape;
    item.upright = upright;
    return item;
}

BundleRule box_limits(double length, double width, double height)
{
    BundleRule rule;
    rule.shape = BundleShape::box;
    rule.length = length;
    rule.width = width;
    rule.height = height;
    return rule;
}

BundleRule round_limits(double diameter, double height)
{
    BundleRule rule;
    rule.diameter = diameter;
    rule.height = height;
    return rule;
}

bool denied(const Shape& shape, const BundleRule& rule, bool upright = false)
{
    return misfit(thing(shape, upright), rule).has_value();
}

/// How far a cylinder whose unit axis has this component along a direction reaches along that.
double reach(const Cylinder& c, double component)
{
    return c.height * std::abs(component) + c.diameter * std::sqrt(std::max(0.0, 1 - component * component));
}

Vec3 reaches(const Cylinder& c, const Vec3& axis) { return {reach(c, axis.x), reach(c, axis.y), reach(c, axis.z)}; }

/// The diameter seen from above, by points of both rims and the smallest circle round them.
double width_from_above(const Cylinder& c, double sine)
{
    constexpr int points = 240;
    const double cosine = std::sqrt(1 - sine * sine);
    std::vector<std::array<double, 3>> outline;
    for (int end : {-1, 1}) {
        for (int i = 0; i < points; ++i) {
            const double turn = 2 * std::numbers::pi * i / points;
            outline.push_back({end * c.height / 2 * cosine + c.diameter / 2 * sine * std::cos(turn),
                               c.diameter / 2 * std::sin(turn), 0});
        }
    }
    return 2 * enclosing_circle(outline)[2];
}

/// What a turned box reaches along the three axes.
std::array<double, 3> reaches(const Box& box, const Quaternion& turn)
{
    const auto m = rotation_matrix(turn);
    std::array<double, 3> reached{};
    for (std::size_t k = 0; k < 3; ++k) {
        reached[k] = std::abs(m[k][0]) * box.length + std::abs(m[k][1]) * box.width + std::abs(m[k][2]) * box.height;
    }
    return reached;
}

double width_from_above(const Box& box, const Quaternion& turn)
{
    const auto m = rotation_matrix(turn);
    std::vector<std::array<double, 3>> corners;
    for (int i = 0; i < 8; ++i) {
        const double x = (i & 1 ? 1 : -1) * box.length / 2, y = (i & 2 ? 1 : -1) * box.width / 2;
        const double z = (i & 4 ? 1 : -1) * box.height / 2;
        corners.push_back({m[0][0] * x + m[0][1] * y + m[0][2] * z, m[1][0] * x + m[1][1] * y + m[1][2] * z, 0});
    }
    return 2 * enclosing_circle(corners)[2];
}

Cylinder random_cylinder(Dice& dice) { return {dice.between(2, 120), dice.between(2, 200)}; }

/// Whether one of the directions of a grid, a hundredth of a radian wide, brings the cylinder within limits.
bool some_direction_is_within(const Cylinder& c, const Vec3& limits)
{
    constexpr int steps = 160;
    for (int i = 0; i <= steps; ++i) {
        const double up = std::numbers::pi / 2 * i / steps;
        for (int k = 0; k <= steps; ++k) {
            const double round = std::numbers::pi / 2 * k / steps;
            const Vec3 r = reaches(c, {std::cos(up) * std::cos(round), std::cos(up) * std::sin(round), std::sin(up)});
            if (r.x <= limits.x && r.y <= limits.y && r.z <= limits.z) {
                return true;
            }
        }
    }
    return false;
}

} // namespace

TEST_CASE("a pump that no turn brings within a box is denied, in plain words")
{
    CHECK(misfit(thing(Cylinder{29, 186}), box_limits(170, 90, 70)).value_or("none") ==
          "the thing, 186 mm long, fits the limits in no turn, even aslant");
    CHECK(misfit(thing(Box{29, 186, 29}), box_limits(170, 90, 70)).value_or("none") ==
          "the thing, 186 mm long, fits the limits in no turn, even aslant");
    CHECK(misfit(thing(Cylinder{120, 10}), box_limits(100, 100, 100)).value_or("none") ==
          "the thing, 120 mm across, fits the limits in no turn, even aslant");
    CHECK(misfit(thing(Cylinder{12, 148}), round_limits(120, 90)).value_or("none") ==
          "the thing, 148 mm long, fits the limits in no turn, even aslant");
    CHECK(misfit(thing(Cylinder{90, 40}, true), box_limits(200, 50, 100)).value_or("none") ==
          "the thing, 90 mm across, must stand upright, and so does not fit the limits in any turn");
}

TEST_CASE("a rod that just fits aslant is not denied, and a nanometre less is")
{
    // Axis (4, 3, 0) / 5: 100 4/5 + 10 3/5 = 86 and 100 3/5 + 10 4/5 = 68. Turning further widens one of the two.
    const Cylinder rod{10, 100};
    CHECK_FALSE(denied(rod, box_limits(86, 68, 10)));
    CHECK_FALSE(denied(rod, box_limits(10, 86, 68)));
    CHECK(denied(rod, box_limits(86 - nanometre, 68, 10)));
    CHECK(denied(rod, box_limits(86, 68 - nanometre, 10)));
    CHECK(denied(rod, box_limits(86, 68, 10 - nanometre)));
    // Leaning in a round bundle at the same angle: 86 across and 68 high.
    CHECK_FALSE(denied(rod, round_limits(86, 68)));
    CHECK(denied(rod, round_limits(86 - nanometre, 68)));
    CHECK(denied(rod, round_limits(86, 68 - nanometre)));
    // Along the diagonal of no face: axis (2, 2, 1) / 3.
    const Vec3 r = reaches(rod, {2.0 / 3, 2.0 / 3, 1.0 / 3});
    CHECK_FALSE(denied(rod, box_limits(r.x, r.y, r.z)));
    CHECK(denied(rod, box_limits(r.x - nanometre, r.y - nanometre, r.z)));
    CHECK(denied(rod, box_limits(r.x, r.y, r.z - nanometre)));
}

TEST_CASE("a plate that just fits aslant is not denied, and a nanometre less is")
{
    const Cylinder plate{120, 10};
    const double third = reach(plate, 1 / std::sqrt(3));
    CHECK_FALSE(denied(plate, box_limits(third, third, third)));
    CHECK(denied(plate, box_limits(third - nanometre, third - nanometre, third - nanometre)));
    CHECK_FALSE(denied(plate, round_limits(120, 10)));
    CHECK(denied(plate, round_limits(120 - nanometre, 10)));
    CHECK(denied(plate, round_limits(120, 10 - nanometre)));
}

TEST_CASE("what fits as it stands or lies is not denied, however thin it is or long")
{
    for (const double d : {0.001, 0.01, 1.0, 30.0, 1000.0, 10000.0}) {
        for (const double h : {0.001, 0.02, 1.0, 50.0, 9999.0}) {
            CAPTURE(d, h);
            const Cylinder c{d, h};
            CHECK_FALSE(denied(c, round_limits(d, h), true));
            CHECK_FALSE(denied(c, box_limits(d, d, h), true));
            CHECK_FALSE(denied(c, box_limits(h, d, d)));
            CHECK_FALSE(denied(Box{d, h, d}, box_limits(d, h, d), true));
            CHECK_FALSE(denied(Box{d, h, d}, box_limits(h, d, d)));
        }
    }
    CHECK(denied(Cylinder{30, 50}, round_limits(30 - nanometre, 60), true));
    CHECK(denied(Cylinder{50, 30}, box_limits(60, 50 - nanometre, 60), true)); // it would fit on its edge
    CHECK_FALSE(denied(Cylinder{50, 30}, box_limits(60, 50 - nanometre, 60)));
}

TEST_CASE("limits left out do not bind")
{
    BundleRule rule;
    CHECK_FALSE(denied(Cylinder{120, 300}, rule));
    rule.height = 130;
    CHECK_FALSE(denied(Cylinder{120, 300}, rule));
    rule.height = 119;
    CHECK(denied(Cylinder{120, 300}, rule));
    rule = BundleRule{};
    rule.shape = BundleShape::box;
    rule.length = 130;
    rule.width = 125;
    CHECK_FALSE(denied(Cylinder{120, 300}, rule));
    rule.width = 119;
    CHECK(denied(Cylinder{120, 300}, rule));
}

TEST_CASE("a grid of directions and the proof agree for cylinders in a box")
{
    Dice dice(411);
    int proved = 0, open = 0;
    for (int draw = 0; draw < 400; ++draw) {
        const Cylinder c = random_cylinder(dice);
        const Vec3 near = reaches(c, dice.direction());
        const Vec3 limits{near.x * dice.between(0.85, 1.1), near.y * dice.between(0.85, 1.1),
                          near.z * dice.between(0.85, 1.1)};
        CAPTURE(c.diameter, c.height, limits.x, limits.y, limits.z);
        const bool no = denied(c, box_limits(limits.x, limits.y, limits.z));
        // No axis is further than 0.0070 from one of the grid, and none of the reaches grows faster than the diagonal.
        const double slack = 0.0071 * std::hypot(c.diameter, c.height);
        if (no) {
            CHECK_FALSE(some_direction_is_within(c, limits));
        } else {
            CHECK(some_direction_is_within(c, {limits.x + slack, limits.y + slack, limits.z + slack}));
        }
        (no ? proved : open) += 1;
    }
    CHECK(proved >= 100);
    CHECK(open >= 100);
}

TEST_CASE("a row of angles and the proof agree for cylinders in a round bundle")
{
    Dice dice(412);
    int proved = 0, open = 0;
    for (int draw = 0; draw < 200; ++draw) {
        const Cylinder c = random_cylinder(dice);
        const double near = dice.between(0, 1);
        const double diameter = width_from_above(c, near) * dice.between(0.85, 1.1);
        const double height = reach(c, near) * dice.between(0.85, 1.1);
        const double slack = 0.01 * std::hypot(c.diameter, c.height); // of 80 angles, and of 240 points of a rim
        const auto some_angle_is_within = [&](double more) {
            for (int i = 0; i <= 80; ++i) {
                const double sine = std::sin(std::numbers::pi / 2 * i / 80);
                if (reach(c, sine) <= height + more &&
                    width_from_above(c, sine) * (1 + (more > 0 ? 0 : 1e-4)) <= diameter + more) {
                    return true;
                }
            }
            return false;
        };
        CAPTURE(c.diameter, c.height, diameter, height);
        const bool no = denied(c, round_limits(diameter, height));
        CHECK(some_angle_is_within(no ? 0 : slack) != no);
        (no ? proved : open) += 1;
    }
    CHECK(proved >= 50);
    CHECK(open >= 50);
}

TEST_CASE("no turn that is there is denied")
{
    Dice dice(413);
    for (int draw = 0; draw < 3000; ++draw) {
        const Box box{dice.between(1, 200), dice.between(1, 200), dice.between(1, 200)};
        const Quaternion turn = test::random_turn(dice);
        const auto r = reaches(box, turn);
        CAPTURE(box.length, box.width, box.height, turn.w, turn.x, turn.y, turn.z);
        CHECK_FALSE(denied(box, box_limits(r[0], r[1], r[2])));
        CHECK_FALSE(denied(box, round_limits(width_from_above(box, turn) * (1 + 1e-12), r[2])));
        const Cylinder c = random_cylinder(dice);
        const Vec3 along = reaches(c, dice.direction());
        CHECK_FALSE(denied(c, box_limits(along.x, along.y, along.z)));
    }
}
