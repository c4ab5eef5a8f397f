// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include <algorithm>
#include <numbers>

#include "support/stacking_samples.hpp"
#include "tuckwright/stacking.hpp"

// The steps are carried out in small moves, in long double, with points strewn over the solids: no supports, no
// separation, no replay of the program's own.

using namespace tuckwright;

namespace {

struct Point {
    long double x = 0, y = 0, z = 0;
};

std::vector<Point> strewn(const Solid& solid)
{
    const Matrix3 m = rotation_matrix(solid.pose.turn);
    std::vector<Point> points;
    const auto add = [&](long double x, long double y, long double z) {
        const auto row = [&](std::size_t k) { return m[k][0] * x + m[k][1] * y + m[k][2] * z; };
        points.push_back({solid.pose.center.x + row(0), solid.pose.center.y + row(1), solid.pose.center.z + row(2)});
    };
    constexpr int fine = 8;
    for (int i = -fine; i <= fine; ++i) {
        for (int j = -fine; j <= fine; ++j) {
            for (int k = -fine; k <= fine; ++k) {
                if (std::max({std::abs(i), std::abs(j), std::abs(k)}) != fine) {
                    continue; // the surface only
                }
                const long double a = static_cast<long double>(i) / fine, b = static_cast<long double>(j) / fine,
                                  c = static_cast<long double>(k) / fine;
                if (const auto* box = std::get_if<Box>(&solid.shape)) {
                    add(a * box->length / 2, b * box->width / 2, c * box->height / 2);
                } else {
                    const auto& cylinder = std::get<Cylinder>(solid.shape);
                    const long double angle = std::numbers::pi_v<long double> * a;
                    const long double radius = (k == fine || k == -fine ? std::abs(b) : 1) * cylinder.diameter / 2;
                    add(radius * std::cos(angle), radius * std::sin(angle), c * cylinder.height / 2);
                }
            }
        }
    }
    return points;
}

/// How deep a point lies in a solid (positive within).
long double depth(const Solid& solid, const Matrix3& m, const Point& point)
{
    const long double p[3] = {point.x - solid.pose.center.x, point.y - solid.pose.center.y,
                              point.z - solid.pose.center.z};
    long double own[3] = {};
    for (std::size_t k = 0; k < 3; ++k) {
        own[k] = p[0] * m[0][k] + p[1] * m[1][k] + p[2] * m[2][k];
    }
    if (const auto* box = std::get_if<Box>(&solid.shape)) {
        return std::min({box->length / 2 - std::abs(own[0]), box->width / 2 - std::abs(own[1]),
                         box->height / 2 - std::abs(own[2])});
    }
    const auto& c = std::get<Cylinder>(solid.shape);
    return std::min(c.diameter / 2 - std::sqrt(own[0] * own[0] + own[1] * own[1]), c.height / 2 - std::abs(own[2]));
}

/// The deepest that any strewn point of one gets into the other on the way.
long double deepest_on_way(const Solid& mover, const Solid& standing, const Step& step)
{
    const Matrix3 moving_frame = rotation_matrix(mover.pose.turn), standing_frame = rotation_matrix(standing.pose.turn);
    const auto of_mover = strewn(mover), of_standing = strewn(standing);
    long double worst = -1e9L;
    for (int k = 0; k <= 60; ++k) {
        const long double way = k < 30 ? k : 30 + (k - 30) * (k - 30) * 0.5L; // mm back along the direction
        const long double x = -way * static_cast<long double>(step.direction[0]),
                          y = -way * static_cast<long double>(step.direction[1]),
                          z = -way * static_cast<long double>(step.direction[2]);
        for (const Point& p : of_mover) {
            worst = std::max(worst, depth(standing, standing_frame, {p.x + x, p.y + y, p.z + z}));
        }
        for (const Point& p : of_standing) {
            worst = std::max(worst, depth(mover, moving_frame, {p.x - x, p.y - y, p.z - z}));
        }
    }
    return worst;
}

bool near_on_the_way(const Solid& mover, const Solid& standing)
{
    const auto radius = [](const Solid& solid) {
        const auto* box = std::get_if<Box>(&solid.shape);
        return box ? std::hypot(box->length, std::hypot(box->width, box->height)) / 2
                   : std::hypot(std::get<Cylinder>(solid.shape).diameter, std::get<Cylinder>(solid.shape).height) / 2;
    };
    return std::hypot(mover.pose.center.x - standing.pose.center.x, mover.pose.center.y - standing.pose.center.y) <
           radius(mover) + radius(standing);
}

} // namespace

TEST_CASE("towers by chance: no step runs into what stands already")
{
    for (std::uint64_t seed = 1; seed <= 8; ++seed) {
        const Bundle bundle = stacking_samples::random_tower(seed, 10);
        const auto order = stacking_order(bundle);
        REQUIRE(order.cycle.empty());
        REQUIRE(order.steps.size() == bundle.items.size());
        std::vector<bool> placed(bundle.items.size());
        for (const Step& step : order.steps) {
            CHECK_FALSE(placed[step.item]);
            const auto& in = bundle.items[step.item].in;
            const bool into_bundle = !in || placed[in->item]; // else it is filled apart, where nothing else stands
            if (into_bundle) {
                CHECK(step.direction == std::array<std::int64_t, 3>{0, 0, -1});
            }
            for (std::size_t mover = 0; into_bundle && mover < bundle.items.size(); ++mover) {
                const auto& held = bundle.items[mover].in;
                if (mover != step.item && !(placed[mover] && held && held->item == step.item)) {
                    continue;
                }
                for (std::size_t other = 0; other < bundle.items.size(); ++other) {
                    const auto& others = bundle.items[other].in;
                    const bool in_group = other == step.item || (others && others->item == step.item);
                    const bool holds = held && held->item == other;
                    const auto &a = bundle.items[mover].solids[0], &b = bundle.items[other].solids[0];
                    if (placed[other] && !in_group && !holds && near_on_the_way(a, b)) {
                        CHECK(static_cast<double>(deepest_on_way(a, b, step)) < 1e-6);
                    }
                }
            }
            placed[step.item] = true;
        }
    }
}

TEST_CASE("the sampled replay itself notices a step through something")
{
    const Bundle bundle = stacking_samples::tin_under_board();
    const Solid &board = bundle.items[0].solids[0], &tin = bundle.items[2].solids[0];
    CHECK(static_cast<double>(deepest_on_way(tin, board, {2, {0, 0, -1}, ""})) > 1);
    CHECK(static_cast<double>(deepest_on_way(board, tin, {0, {0, 0, -1}, ""})) < 1e-6);
}
