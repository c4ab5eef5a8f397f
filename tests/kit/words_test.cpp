// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/words.hpp"

#include <array>
#include <catch2/catch.hpp>

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

TEST_CASE("a mistyped word is recognised, the first of several that are as near")
{
    CHECK(mistyped("wieght", keys) == std::string_view("weight"));
    CHECK(mistyped("contens", keys) == std::string_view("contents"));
    CHECK(mistyped("Weight", keys) == std::string_view("weight"));
    constexpr std::array<std::string_view, 2> alike{"bat", "cat"};
    CHECK(mistyped("at", alike) == std::string_view("bat"));
    CHECK_FALSE(mistyped("pot", std::span<const std::string_view>{}));
}

TEST_CASE("what is near to nothing is not guessed at")
{
    CHECK_FALSE(mistyped("zzzzz", keys));
    CHECK_FALSE(mistyped("", keys));
    CHECK_FALSE(mistyped(std::string(1'000'000, 'x'), keys));
    constexpr std::array<std::string_view, 4> yes_and_no{"yes", "no", "true", "false"};
    CHECK_FALSE(mistyped("maybe", yes_and_no));
    constexpr std::array<std::string_view, 2> shapes{"cylinder", "box"};
    CHECK_FALSE(mistyped("sphere", shapes));
    constexpr std::array<std::string_view, 2> short_ones{"g", "id"};
    CHECK_FALSE(mistyped("x", short_ones));
    CHECK(mistyped("G", short_ones) == std::string_view("g"));
}

TEST_CASE("a slip is asked about, anything else gets the list")
{
    CHECK(suggestion("wieght", keys) == "did you mean 'weight'?");
    CHECK(suggestion("photo", keys) == "known here: weight, count, contents and closes");
    CHECK(suggestion("photo", std::span(keys).first(1)) == "write 'weight'");
}

TEST_CASE("quotes stay short and on one line")
{
    CHECK(in_quotes("pot") == "'pot'");
    CHECK(in_quotes("a\nb\tc") == "'a b c'");
    CHECK(in_quotes(std::string(40, 'x')) == "'" + std::string(40, 'x') + "'");
    CHECK(in_quotes(std::string(41, 'x')) == "'" + std::string(40, 'x') + "...'");
    CHECK(in_quotes("théière") == "'théière'");
}

TEST_CASE("words are listed")
{
    CHECK(listed(keys) == "weight, count, contents and closes");
    CHECK(listed(std::span(keys).first(2), "or") == "weight or count");
    CHECK(listed(std::span(keys).first(1)) == "weight");
}
