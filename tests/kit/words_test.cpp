// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/words.hpp"

#include <array>
#include <catch2/catch.hpp>

#include "tuckwright/contract.hpp"

using namespace tuckwright;
using namespace tuckwright::reading;

namespace
{
constexpr std::array<std::string_view, 4> keys{"weight", "count", "contents", "closes"};
}

TEST_CASE("edits are counted, a swap of neighbours as one")
{
    CHECK(edit_distance("", "") == 0);
    CHECK(edit_distance("pot", "") == 3);
    CHECK(edit_distance("", "pot") == 3);
    CHECK(edit_distance("pot", "pot") == 0);
    CHECK(edit_distance("Pot", "pOT") == 0);
    CHECK(edit_distance("pto", "pot") == 1);
    CHECK(edit_distance("wieght", "weight") == 1);
    CHECK(edit_distance("kitten", "sitting") == 3); // textbook example, from memory
    CHECK(edit_distance("ca", "abc") == 3); // optimal string alignment, where an edited pair is not edited again
}

TEST_CASE("the nearest word is found, the first of several")
{
    CHECK(nearest("wieght", keys) == "weight");
    CHECK(nearest("contens", keys) == "contents");
    CHECK(nearest("zzzzz", keys) == "count");
    CHECK(nearest(std::string(1'000'000, 'x'), keys) == "weight"); // all equally far
    CHECK_THROWS_AS(nearest("pot", std::span<const std::string_view>{}), ContractBroken);
}

TEST_CASE("a slip is asked about, anything else gets the list")
{
    CHECK(suggestion("wieght", keys) == "did you mean 'weight'?");
    CHECK(suggestion("photo", keys) ==
          "the nearest known word is 'count' (known here: weight, count, contents and closes)");
}

TEST_CASE("quotes stay short and on one line")
{
    CHECK(quoted("pot") == "'pot'");
    CHECK(quoted("a\nb\tc") == "'a b c'");
    CHECK(quoted(std::string(40, 'x')) == "'" + std::string(40, 'x') + "'");
    CHECK(quoted(std::string(41, 'x')) == "'" + std::string(40, 'x') + "...'");
    CHECK(quoted("théière") == "'théière'");
}

TEST_CASE("words are listed")
{
    CHECK(listed(keys) == "weight, count, contents and closes");
    CHECK(listed(std::span(keys).first(2), "or") == "weight or count");
    CHECK(listed(std::span(keys).first(1)) == "weight");
}
