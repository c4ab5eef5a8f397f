// SPDX-License-Identifier: GPL-3.0-or-later
/// Small linear programs whose optimum is known, and random ones in the plane against all corners.
#include <catch2/catch.hpp>
#include <optional>
#include <vector>

#include "packing/linear_program.hpp"
#include "support/random_solids.hpp"

using namespace tuckwright::packing;
using tuckwright::test::Dice;

TEST_CASE("a linear program finds the known optimum")
{
    // Most of 3x + 5y under x <= 4, 2y <= 12, 3x + 2y <= 18 is 36, at (2, 6). F. S. Hillier, G. J. Lieberman,
    // Introduction to Operations Research, first example of linear programming (from memory; seen from its corners).
    LinearProgram program(1);
    const int x = program.add_columns(2, 0, 100), y = x + 1;
    program.set_cost(x, -3);
    program.set_cost(y, -5);
    program.add(x, -1);
    program.at_least(-4);
    program.add(y, -2);
    program.at_least(-12);
    program.add(x, -3);
    program.add(y, -2);
    program.at_least(-18);
    CHECK(program.rows() == 3);
    REQUIRE(program.solve());
    CHECK(program.value(x) == Approx(2));
    CHECK(program.value(y) == Approx(6));
}

TEST_CASE("bounds alone, fixed columns and negative ranges are kept")
{
    LinearProgram program(1);
    const int x = program.add_columns(3, -2, 7);
    program.set_cost(x, 1);
    program.set_cost(x + 1, -1);
    program.set_cost(x + 2, -1);
    program.fix(x + 2, 3);
    program.add(x, 1); // one row that never binds
    program.at_least(-50);
    REQUIRE(program.solve());
    CHECK(program.value(x) == Approx(-2));
    CHECK(program.value(x + 1) == Approx(7));
    CHECK(program.value(x + 2) == Approx(3));
}

TEST_CASE("terms of one column in a row add up, and may cancel")
{
    LinearProgram program(1);
    const int x = program.add_columns(2, 0, 10);
    program.set_cost(x, 1);
    program.set_cost(x + 1, 1);
    program.add(x, 1);
    program.add(x, 1); // 2x >= 6
    program.at_least(6);
    program.add(x, 5);
    program.add(x + 1, 1);
    program.add(x, -5); // y >= 4
    program.at_least(4);
    REQUIRE(program.solve());
    CHECK(program.value(x) == Approx(3));
    CHECK(program.value(x + 1) == Approx(4));
}

TEST_CASE("a linear program without a solution says so")
{
    LinearProgram program(1);
    const int x = program.add_columns(1, 0, 1);
    program.add(x, 1);
    program.at_least(2);
    CHECK_FALSE(program.solve());
}

TEST_CASE("small units keep their relative accuracy")
{
    LinearProgram program(1e-5);
    const int x = program.add_columns(2, -1e-5, 1e-5);
    program.set_cost(x, 1);
    program.set_cost(x + 1, 1);
    program.add(x, 1);
    program.add(x + 1, 2);
    program.at_least(1.5e-5); // x + y least on x + 2y >= 1.5e-5: y at its bound, x = -5e-6
    REQUIRE(program.solve());
    CHECK(program.value(x) == Approx(-5e-6).epsilon(1e-5));
    CHECK(program.value(x + 1) == Approx(1e-5).epsilon(1e-5));
}

namespace {

struct Row {
    double a, b, least;
};

/// The least cost over all corners of the feasible part of the square, by trying each pair of lines.
std::optional<double> least_over_corners(const std::vector<Row>& rows, double cost_x, double cost_y)
{
    std::optional<double> best;
    for (std::size_t i = 0; i < rows.size(); ++i) {
        for (std::size_t j = i + 1; j < rows.size(); ++j) {
            const double det = rows[i].a * rows[j].b - rows[j].a * rows[i].b;
            if (std::abs(det) < 1e-9) {
                continue;
            }
            const double x = (rows[i].least * rows[j].b - rows[j].least * rows[i].b) / det;
            const double y = (rows[i].a * rows[j].least - rows[j].a * rows[i].least) / det;
            bool feasible = true;
            for (const Row& row : rows) {
                feasible = feasible && row.a * x + row.b * y >= row.least - 1e-9;
            }
            if (feasible && (!best || cost_x * x + cost_y * y < *best)) {
                best = cost_x * x + cost_y * y;
            }
        }
    }
    return best;
}

} // namespace

TEST_CASE("random programs in the plane reach the best of their corners")
{
    Dice dice(31);
    int solved = 0, hopeless = 0;
    for (int trial = 0; trial < 500; ++trial) {
        std::vector<Row> rows{{1, 0, -10}, {0, 1, -10}, {-1, 0, -10}, {0, -1, -10}}; // the columns' bounds
        LinearProgram program(1);
        const int x = program.add_columns(2, -10, 10);
        const double cost_x = dice.between(-1, 1), cost_y = dice.between(-1, 1);
        program.set_cost(x, cost_x);
        program.set_cost(x + 1, cost_y);
        for (int k = dice.below(6); k >= 0; --k) {
            const Row row{dice.between(-1, 1), dice.between(-1, 1), dice.between(-8, 6)};
            rows.push_back(row);
            program.add(x, row.a);
            program.add(x + 1, row.b);
            program.at_least(row.least);
        }
        const auto best = least_over_corners(rows, cost_x, cost_y);
        const bool found = program.solve();
        CAPTURE(trial);
        CHECK(found == best.has_value());
        if (found && best) {
            ++solved;
            const double cost = cost_x * program.value(x) + cost_y * program.value(x + 1);
            CHECK(cost == Approx(*best).margin(1e-5));
        } else {
            ++hopeless;
        }
    }
    CHECK(solved > 100);
    CHECK(hopeless > 20);
}
