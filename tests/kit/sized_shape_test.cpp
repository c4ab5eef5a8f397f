// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/sized_shape.hpp"

#include <catch2/catch.hpp>

using namespace tuckwright::reading;

TEST_CASE("a diagonal is exact where it can be, and rounded up where it cannot")
{
    CHECK(diagonal_up(0, 0) == 0);
    CHECK(diagonal_up(3, 4) == 5);
    CHECK(diagonal_up(1, 1) == 2);
    CHECK(diagonal_up(80'000'000, 60'000'000) == 100'000'000);
    CHECK(diagonal_up(80'000'001, 60'000'000) == 100'000'001);
    CHECK(diagonal_up(10'000'000'000, 0) == 10'000'000'000);
}

TEST_CASE("the diagonal is the least grid length whose square is enough, at any size")
{
    std::uint64_t state = 1;
    const auto next = [&state](int bits) { // Knuth's linear congruential generator, the high bits (1981, from memory)
        state = state * 6364136223846793005U + 1442695040888963407U;
        return static_cast<std::int64_t>(state >> (64 - bits));
    };
    for (int i = 0; i < 10'000; ++i) {
        const int bits = 1 + i % 33;
        const Wide a = next(bits), b = next(bits);
        const Wide d = diagonal_up(static_cast<std::int64_t>(a), static_cast<std::int64_t>(b));
        REQUIRE((d * d >= a * a + b * b));
        REQUIRE((d == 0 || (d - 1) * (d - 1) < a * a + b * b));
    }
}
