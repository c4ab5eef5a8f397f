// SPDX-License-Identifier: GPL-3.0-or-later
#include <catch2/catch.hpp>

#include "bench/run.hpp"
#include "bench/suites.hpp"

using namespace tuckwright;
using namespace tuckwright::bench;

namespace {

RunOptions quick()
{
    RunOptions options;
    options.effort = Effort::quick;
    options.threads = 1;
    return options;
}

} // namespace

TEST_CASE("an answer's trace ends with the proved bundle, and its row tells how near that is")
{
    const Case two = equal_circles().cases.front();
    const Answer answer = answer_to(two.kit, quick());
    REQUIRE(has_bundle(answer.bundle.status));
    REQUIRE_FALSE(answer.trace.empty());
    CHECK(answer.trace.back().value == volume_ml(answer.bundle.envelope));
    CHECK(answer.trace.back().seconds == answer.seconds);

    const Row row = row_of(two, quick(), answer);
    REQUIRE(row.ours.has_value());
    CHECK(*row.ours == Approx(2).epsilon(1e-5)); // two discs side by side
    CHECK(*row.ours >= 2);
    CHECK(row.bound <= 2);
    CHECK(*row.above == Approx(*row.ours / 2 - 1));
    CHECK(*row.to_10 <= *row.to_1);
    CHECK(*row.to_1 <= *row.to_01);
    CHECK(*row.to_01 <= row.seconds);
    CHECK(row.threads == 1);
}

TEST_CASE("an aim is met by what is near enough and soon enough")
{
    Row row;
    CHECK_FALSE(meets_aim(row).has_value());
    row.what.aim = Aim{0.01};
    CHECK_FALSE(*meets_aim(row)); // nothing was found
    row.above = 0.02;
    CHECK_FALSE(*meets_aim(row));
    row.above = -0.1;
    row.seconds = 5;
    CHECK(*meets_aim(row));
    row.what.aim = Aim{0.01, 4.0};
    CHECK_FALSE(*meets_aim(row));
    row.what.aim = Aim{0.01, 5.0};
    CHECK(*meets_aim(row));
}

TEST_CASE("a text that is no kit is an error, not an answer") { CHECK_THROWS(answer_to("items: 7", quick())); }
