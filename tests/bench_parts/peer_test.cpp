// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "bench/peer.hpp"

using namespace tuckwright::bench;

TEST_CASE("the solver's output tells the objective")
{
    CHECK(objective_in("volume = 4368;\n", "volume") == 4368.0);
    CHECK(objective_in("circle = 2.5;", "circle") == 2.5);
    CHECK_FALSE(objective_in("volume = 4368", "volume").has_value());
    CHECK_FALSE(objective_in("volumes = 4368;", "volume").has_value());
    CHECK_FALSE(objective_in("box = array1d(1..3, [28, 26, 6]);", "volume").has_value());
    CHECK_FALSE(objective_in("----------", "volume").has_value());
    CHECK_FALSE(objective_in("volume = ;", "volume").has_value());
    CHECK(ends_solution("----------\n"));
    CHECK_FALSE(ends_solution("=====UNKNOWN=====\n"));
    CHECK(ends_search("==========\n"));
    CHECK_FALSE(ends_search("=====UNKNOWN=====\n"));
    CHECK_FALSE(ends_search("----------\n"));
}

TEST_CASE("several traces are merged to what all together had")
{
    const Trace all = merged({{{1, 10}, {4, 7}}, {{2, 12}, {3, 8}, {5, 7}}});
    REQUIRE(all.size() == 3);
    CHECK(all[0].seconds == 1);
    CHECK(all[1].value == 8);
    CHECK(all[2].seconds == 4);
    CHECK(all[2].value == 7);
    CHECK(merged({}).empty());
}
