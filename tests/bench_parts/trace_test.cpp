// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "bench/trace.hpp"

using namespace tuckwright::bench;

TEST_CASE("a trace tells when a value was reached first")
{
    const Trace trace{{0.5, 120}, {1.5, 101}, {4, 100}};
    CHECK(seconds_to(trace, 130) == 0.5);
    CHECK(seconds_to(trace, 110) == 1.5);
    CHECK(seconds_to(trace, 101) == 1.5);
    CHECK(seconds_to(trace, 100.5) == 4.0);
    CHECK_FALSE(seconds_to(trace, 99).has_value());
    CHECK_FALSE(seconds_to({}, 99).has_value());
}

TEST_CASE("what was better on the way than the proved end does not count")
{
    const Trace sound = borne_out({{0.5, 120}, {1, 90}, {3, 80}}, 100, 2);
    REQUIRE(sound.size() == 3); // nothing comes after the end
    CHECK(sound[0].value == 120);
    CHECK(sound[1].value == 100);
    CHECK(seconds_to(sound, 100) == 1.0);
    CHECK_FALSE(seconds_to(sound, 95).has_value());
}

TEST_CASE("an end that no point of the way had is reached at the end")
{
    const Trace sound = borne_out({{0.5, 120}}, 100, 2);
    CHECK(seconds_to(sound, 120) == 0.5);
    CHECK(seconds_to(sound, 100) == 2.0);
    CHECK(seconds_to(borne_out({}, 100, 2), 100) == 2.0);
}
