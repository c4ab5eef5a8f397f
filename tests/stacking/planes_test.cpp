// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include <algorithm>

#include "support/handmade_bundles.hpp"
#include "support/stacking_samples.hpp"
#include "tuckwright/stacking.hpp"

using namespace tuckwright;

namespace
{

using Normal = std::array<std::int64_t, 3>;

/// Air along the normal, mm, in long double and without the program's supports: the solids' extreme points are summed.
long double air(const Solid& first, const Solid& second, const Normal& normal)
{
    const long double length = std::sqrt(static_cast<long double>(normal[0]) * static_cast<long double>(normal[0]) +
                                         static_cast<long double>(normal[1]) * static_cast<long double>(normal[1]) +
                                         static_cast<long double>(normal[2]) * static_cast<long double>(normal[2]));
    const auto reach = [&](const Solid& solid, int sign) {
        const Matrix3 m = rotation_matrix(solid.pose.turn);
        long double own[3] = {};
        for (std::size_t k = 0; k < 3; ++k) {
            for (std::size_t row = 0; row < 3; ++row) {
                own[k] += static_cast<long double>(normal[row]) / length * m[row][k];
            }
        }
        const Vec3& c = solid.pose.center;
        const long double center =
            (static_cast<long double>(normal[0]) * c.x + static_cast<long double>(normal[1]) * c.y +
             static_cast<long double>(normal[2]) * c.z) /
            length;
        if (const auto* box = std::get_if<Box>(&solid.shape)) {
            return sign * center +
                   (std::abs(own[0]) * box->length + std::abs(own[1]) * box->width + std::abs(own[2]) * box->height) /
                       2;
        }
        const auto& cylinder = std::get<Cylinder>(solid.shape);
        return sign * center +
               (std::sqrt(own[0] * own[0] + own[1] * own[1]) * cylinder.diameter + std::abs(own[2]) * cylinder.height) /
                   2;
    };
    return -reach(second, -1) - reach(first, 1);
}

__extension__ using Wide = __int128;

bool opposes(const Normal& normal, const Normal& direction)
{
    return Wide{normal[0]} * direction[0] + Wide{normal[1]} * direction[1] + Wide{normal[2]} * direction[2] < 0;
}

const Solid& first_of(const Bundle& bundle, const SeparatingPlane& plane)
{
    return bundle.items[plane.first].solids[plane.first_solid];
}
const Solid& second_of(const Bundle& bundle, const SeparatingPlane& plane)
{
    return bundle.items[plane.second].solids[plane.second_solid];
}

} // namespace

TEST_CASE("planes of the steps separate and do not oppose the way")
{
    int planes_seen = 0;
    for (std::uint64_t seed = 1; seed <= 12; ++seed) {
        const Bundle bundle = stacking_samples::random_tower(seed, 14);
        const auto order = stacking_order(bundle);
        REQUIRE(order.cycle.empty());
        for (const SeparatingPlane& plane : step_planes(bundle, order.steps)) {
            ++planes_seen;
            // All these steps go straight down, so that one test serves every plane.
            CHECK_FALSE(opposes(plane.normal, {0, 0, -1}));
            CHECK(static_cast<double>(air(first_of(bundle, plane), second_of(bundle, plane), plane.normal)) > -1e-8);
            const auto most =
                std::max({std::abs(plane.normal[0]), std::abs(plane.normal[1]), std::abs(plane.normal[2])});
            CHECK(most > (std::int64_t{1} << 38));
            CHECK(most <= (std::int64_t{1} << 41));
        }
    }
    CHECK(planes_seen > 50);
}

TEST_CASE("planes of the pairs separate, and the first is below the second")
{
    int planes_seen = 0;
    for (std::uint64_t seed = 1; seed <= 12; ++seed) {
        const Bundle bundle = stacking_samples::random_tower(seed, 14);
        for (const SeparatingPlane& plane : pair_planes(bundle)) {
            ++planes_seen;
            CHECK(plane.first < plane.second);
            CHECK(static_cast<double>(air(first_of(bundle, plane), second_of(bundle, plane), plane.normal)) > -1e-8);
        }
    }
    CHECK(planes_seen > 20);
}

TEST_CASE("pairs that an axis separates get no plane, others get one")
{
    CHECK(pair_planes(handmade::touching_boxes()).empty());
    CHECK(pair_planes(handmade::cup_in_lidded_pot()).empty());
    // Diagonal neighbours: from every side of the world, one stands in front of the other.
    const Bundle two = handmade::bundle("", Box{100, 100, 40},
                                        {handmade::item("a", handmade::cylinder(50, 40, {25, 25, 20})),
                                         handmade::item("b", handmade::cylinder(50, 40, {65, 65, 20}))});
    const auto planes = pair_planes(two);
    REQUIRE(planes.size() == 1);
    const double length = norm({static_cast<double>(planes[0].normal[0]), static_cast<double>(planes[0].normal[1]), 0});
    CHECK(static_cast<double>(planes[0].normal[0]) / length == Approx(std::sqrt(0.5)));
    CHECK(planes[0].normal[2] == 0);
}

TEST_CASE("cylinders that touch along a line get the exact normal")
{
    const Bundle tins = handmade::tangent_cylinders();
    const auto pairs = pair_planes(tins);
    REQUIRE(pairs.size() == 2);
    CHECK(pairs[1].normal == Normal{-3, -4, 0});
    const auto order = stacking_order(tins);
    bool exact = false;
    for (const SeparatingPlane& plane : step_planes(tins, order.steps)) {
        exact = exact || plane.normal == Normal{3, 4, 0} || plane.normal == Normal{-3, -4, 0};
    }
    CHECK(exact);
}

TEST_CASE("overlapping solids, and a way that is barred, get no plane")
{
    using namespace handmade;
    const Bundle overlapping = bundle(
        "", Box{100, 100, 100}, {item("a", cylinder(40, 40, {20, 20, 20})), item("b", cylinder(40, 40, {40, 40, 20}))});
    CHECK(pair_planes(overlapping).empty());
    auto barred = stacking_samples::tin_under_board();
    step(barred, 0);
    step(barred, 1);
    step(barred, 2); // the tin comes last, down through the board
    CHECK(step_planes(barred, barred.steps).empty());
    // In the right order the board's own faces are enough.
    const auto order = stacking_order(barred);
    CHECK(step_planes(barred, order.steps).empty());
}

TEST_CASE("a plane that would separate but oppose the way is not given")
{
    using namespace handmade;
    // The first lies lower and to the side; going down past the second's overhang only a level normal will do.
    const Bundle two =
        bundle("", Box{100, 100, 100},
               {item("lower", cylinder(40, 40, {20, 20, 20})), item("upper", cylinder(40, 40, {49, 49, 60.5}))});
    Bundle late = two;
    step(late, 1);
    step(late, 0);
    const auto planes = step_planes(late, late.steps);
    REQUIRE(planes.size() == 1);
    CHECK(planes[0].first == 0);
    CHECK(planes[0].second == 1);
    CHECK_FALSE(opposes(planes[0].normal, {0, 0, -1}));
    CHECK(static_cast<double>(air(two.items[0].solids[0], two.items[1].solids[0], planes[0].normal)) > 0.9);
    // In the sensible order the level faces between them serve.
    CHECK(step_planes(two, stacking_order(two).steps).empty());
}
