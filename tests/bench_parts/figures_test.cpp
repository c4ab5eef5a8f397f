// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>
#include <cmath>

#include "bench/figures.hpp"

using namespace tuckwright::bench;

TEST_CASE("the median is the middle value, or between the two in the middle")
{
    CHECK(median({3}) == 3);
    CHECK(median({5, 1, 2}) == 2);
    CHECK(median({4, 1, 2, 10}) == 3);
    CHECK_THROWS(median({}));
}

TEST_CASE("a power law gives its exponent")
{
    for (const double exponent : {0.0, 1.0, 1.5, 2.25}) {
        std::vector<std::pair<double, double>> points;
        for (const double n : {50.0, 100.0, 200.0, 400.0}) {
            points.emplace_back(n, 0.003 * std::pow(n, exponent));
        }
        REQUIRE(fitted_exponent(points).has_value());
        CHECK(*fitted_exponent(points) == Approx(exponent).margin(1e-12));
    }
}

TEST_CASE("the exponent is that of least squares on logarithms")
{
    // By hand: ln x = 0, 1, 2 and ln y = 0, 2, 1, so that the slope is (0 + 0 + 1) / 2.
    const double e = std::exp(1.0);
    CHECK(*fitted_exponent({{1, 1}, {e, e * e}, {e * e, e}}) == Approx(0.5));
}

TEST_CASE("one number of items has no exponent, and nought no logarithm")
{
    CHECK_FALSE(fitted_exponent({{50, 1}, {50, 2}}).has_value());
    CHECK_FALSE(fitted_exponent({}).has_value());
    CHECK_THROWS(fitted_exponent({{50, 0}, {100, 1}}));
}
