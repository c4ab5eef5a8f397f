// SPDX-License-Identifier: GPL-3.0-or-later
/// Random pairs of solids that all but touch: what the check calls apart has no common inner point, and what a given
/// plane keeps apart is called so.
#include <catch2/catch.hpp>
#include <cmath>

#include "judge.hpp"
#include "proof_support.hpp"
#include "support/handmade_bundles.hpp"

using namespace tuckwright;

namespace {

Quaternion some_turn(Engine& engine)
{
    std::uniform_int_distribution<std::int64_t> part(-9, 9);
    Quaternion turn{0, 0, 0, 0};
    while (turn == Quaternion{0, 0, 0, 0}) {
        turn = {part(engine), part(engine), part(engine), part(engine)};
    }
    return engine() % 4 == 0 ? Quaternion{1, 0, 0, 0} : turn;
}

Shape some_shape(Engine& engine)
{
    if (engine() % 2 == 0) {
        return Cylinder{between(engine, 5, 60), between(engine, 5, 60)};
    }
    return Box{between(engine, 5, 60), between(engine, 5, 60), between(engine, 5, 60)};
}

std::array<std::int64_t, 3> some_normal(Engine& engine)
{
    std::uniform_int_distribution<std::int64_t> part(-20, 20);
    std::array<std::int64_t, 3> n{0, 0, 0};
    while (n == std::array<std::int64_t, 3>{0, 0, 0}) {
        n = {part(engine), part(engine), part(engine)};
    }
    return n;
}

/// Reach of a body from its centre along a unit vector.
judge::Real reach(const judge::Body& body, const judge::Point& n)
{
    std::array<judge::Real, 3> along{};
    for (std::size_t k = 0; k < 3; ++k) {
        along[k] = std::abs(n[0] * body.axis[k][0] + n[1] * body.axis[k][1] + n[2] * body.axis[k][2]);
    }
    return body.half[2] * along[2] + (body.round ? body.half[0] * std::hypot(along[0], along[1])
                                                 : body.half[0] * along[0] + body.half[1] * along[1]);
}

/// Two solids whose gap along the normal of the only plane in the certificate is `gap`, but for the grid.
Bundle pair_with_gap(Engine& engine, double gap)
{
    const auto whole = some_normal(engine);
    judge::Point n{static_cast<judge::Real>(whole[0]), static_cast<judge::Real>(whole[1]),
                   static_cast<judge::Real>(whole[2])};
    const judge::Real length = std::hypot(n[0], n[1], n[2]);
    for (auto& part : n) {
        part /= length;
    }
    Solid first{some_shape(engine), {{500, 500, 500}, some_turn(engine)}};
    Solid second{some_shape(engine), {{500, 500, 500}, some_turn(engine)}};
    const judge::Real reaches =
        reach(judge::body_of(first.shape, first.pose), n) + reach(judge::body_of(second.shape, second.pose), n);
    // Beside the normal's way as well, so that it is not always the way between the centres.
    const Vec3 slide{between(engine, -6, 6), between(engine, -6, 6), between(engine, -6, 6)};
    const judge::Real along = n[0] * slide.x + n[1] * slide.y + n[2] * slide.z;
    const auto place = [&](double start, double by, std::size_t k) {
        return snap(start + by + static_cast<double>((reaches + gap - along) * n[k]));
    };
    auto& center = second.pose.center;
    center = {place(500, slide.x, 0), place(500, slide.y, 1), place(500, slide.z, 2)};
    auto bundle = handmade::bundle("A pair", Box{1000, 1000, 1000},
                                   {handmade::item("one", first), handmade::item("other", second)});
    bundle.certificate.planes.push_back({0, 0, 1, 0, whole});
    return bundle;
}

judge::Real overlap_of(const Bundle& bundle)
{
    const auto body = [&](std::size_t i) {
        return judge::body_of(bundle.items[i].solids[0].shape, bundle.items[i].solids[0].pose);
    };
    return judge::common_depth(body(0), body(1), 8);
}

} // namespace

TEST_CASE("pairs called apart have no common inner point, and a plane that parts them is seen")
{
    Engine engine(31415);
    const std::array<double, 8> gaps{-16, -8, -4, -1, -0.01, -1e-5, 1e-5, 1e-3};
    int apart = 0, together = 0, overlapping = 0;
    for (int trial = 0; trial < 4000; ++trial) {
        const double gap = gaps[engine() % gaps.size()];
        const Bundle bundle = pair_with_gap(engine, gap);
        const bool proved = !objects_by(bundle, "apart");
        const auto depth = overlap_of(bundle);
        INFO("trial " << trial << ", gap " << gap << ", sampled depth " << static_cast<double>(depth));
        if (proved && depth > 1e-9L) {
            FAIL_CHECK("called apart, but they have a point in common");
        }
        if (gap > 0 && !proved) {
            FAIL_CHECK("the plane was given, and not seen");
        }
        ++(proved ? apart : together);
        overlapping += depth > 1e-9L ? 1 : 0;
    }
    CHECK(apart >= 1200);
    CHECK(together >= 1000);
    CHECK(overlapping >= 700);
}

TEST_CASE("a withdrawal that the check allows meets nothing on its way")
{
    Engine engine(2718);
    int allowed = 0, refused = 0;
    for (int trial = 0; trial < 1500; ++trial) {
        Bundle bundle = pair_with_gap(engine, 0.01);
        auto direction = some_normal(engine);
        direction[2] = -std::abs(direction[2]);
        if (direction == std::array<std::int64_t, 3>{0, 0, 0}) {
            continue;
        }
        bundle.steps = {{1, {0, 0, -1}, ""}, {0, direction, ""}};
        const bool possible = !objects_by(bundle, "step");
        ++(possible ? allowed : refused);
        if (!possible) {
            continue;
        }
        const auto& still = bundle.items[1].solids[0];
        const auto obstacle = judge::body_of(still.shape, still.pose);
        auto mover = judge::body_of(bundle.items[0].solids[0].shape, bundle.items[0].solids[0].pose);
        const judge::Point start = mover.center;
        for (int back = 0; back < 12; ++back) {
            for (std::size_t k = 0; k < 3; ++k) {
                mover.center[k] = start[k] - static_cast<judge::Real>(direction[k]) * back / 3;
            }
            if (judge::common_depth(mover, obstacle, 6) > 1e-9L) {
                FAIL_CHECK("trial " << trial << ": they meet on the way");
            }
        }
    }
    CHECK(allowed >= 400);
    CHECK(refused >= 200);
}
