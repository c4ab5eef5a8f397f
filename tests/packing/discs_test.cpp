// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>
#include <cmath>

#include "packing/discs.hpp"

using namespace tuckwright::packing;

namespace {

DiscEffort effort_of(std::uint64_t work)
{
    DiscEffort effort;
    effort.work = work;
    return effort;
}

/// How far any disc overlaps another one or stands out.
double worst_overlap(const std::vector<double>& radii, const DiscPlaces& places)
{
    double worst = 0;
    for (std::size_t i = 0; i < radii.size(); ++i) {
        worst = std::max(worst, std::hypot(places.x[i], places.y[i]) + radii[i] - places.radius);
        for (std::size_t j = 0; j < i; ++j) {
            const double distance = std::hypot(places.x[i] - places.x[j], places.y[i] - places.y[j]);
            worst = std::max(worst, radii[i] + radii[j] - distance);
        }
    }
    return worst;
}

} // namespace

// Source: E. Specht, "The best known packings of equal circles in a circle", table of radii; proved for n <= 13 and 19.
TEST_CASE("equal discs come to lie in the smallest circles that are known")
{
    const struct {
        std::size_t discs;
        double radius;
    } known[] = {{2, 2}, {3, 2.154700538379252}, {5, 2.701301616704079}, {7, 3}, {12, 4.029601930} , {19, 4.863703305}};
    for (const auto& [discs, radius] : known) {
        const std::vector<double> radii(discs, 10.0);
        Random random(1);
        const DiscsFound found = discs_in_circle(radii, random, effort_of(100'000));
        REQUIRE(found.places);
        CHECK(found.places->radius == Approx(10 * radius).epsilon(1e-7));
        CHECK(worst_overlap(radii, *found.places) <= 1e-9 * found.places->radius);
    }
}

// Source: T. Ye, W. Huang, Z. Lü, "Iterated tabu search algorithm for packing unequal circles in a circle",
// arXiv:1306.0694 (2013), Table 4.
TEST_CASE("discs of radius 1 to n come to lie in the smallest circles that are known")
{
    const struct {
        int discs;
        double radius;
    } known[] = {{5, 9.00139774}, {8, 16.22174667}, {10, 22.00019301}, {13, 31.54586701}};
    for (const auto& [discs, radius] : known) {
        std::vector<double> radii;
        for (int k = 1; k <= discs; ++k) {
            radii.push_back(k);
        }
        Random random(1);
        const DiscsFound found = discs_in_circle(radii, random, effort_of(1'000'000));
        REQUIRE(found.places);
        CHECK(found.places->radius == Approx(radius).epsilon(1e-7));
        CHECK(worst_overlap(radii, *found.places) <= 1e-9 * radius);
    }
}

TEST_CASE("one disc lies in a circle of its own size")
{
    Random random(1);
    const DiscsFound found = discs_in_circle({3}, random, effort_of(1000));
    REQUIRE(found.places);
    CHECK(found.places->radius == Approx(3));
}

TEST_CASE("discs that overlap entirely at first are parted")
{
    Random random(1);
    const DiscsFound found = discs_in_circle({5, 5}, random, effort_of(1000));
    REQUIRE(found.places);
    CHECK(found.places->radius == Approx(10));
}

TEST_CASE("no circle of discs is told of that is not smaller than asked for")
{
    Random random(1);
    DiscEffort effort = effort_of(50'000);
    effort.below = 29.99; // seven of radius 10 need 30
    CHECK_FALSE(discs_in_circle(std::vector<double>(7, 10.0), random, effort).places);
    effort.below = 30.01;
    CHECK(discs_in_circle(std::vector<double>(7, 10.0), random, effort).places);
}

TEST_CASE("the search for places of discs ends by its work, or when it is stopped")
{
    Random random(1);
    const DiscsFound found = discs_in_circle(std::vector<double>(20, 1.0), random, effort_of(5000));
    CHECK(found.work >= 5000);
    CHECK(found.work < 60'000); // it still lets the circle shrink round what it has
    DiscEffort stopped = effort_of(1'000'000'000);
    int asked = 0;
    stopped.stop = [&asked] { return ++asked > 100; };
    CHECK(discs_in_circle(std::vector<double>(20, 1.0), random, stopped).work < 1'000'000);
}

TEST_CASE("the same random numbers give the same places of discs")
{
    const std::vector<double> radii{1, 2, 3, 4, 5, 6, 7};
    Random one(4), other(4);
    const auto a = discs_in_circle(radii, one, effort_of(20'000)), b = discs_in_circle(radii, other, effort_of(20'000));
    REQUIRE(a.places);
    CHECK(a.places->x == b.places->x);
    CHECK(a.places->y == b.places->y);
}
