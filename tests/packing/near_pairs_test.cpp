// SPDX-License-Identifier: GPL-3.0-or-later
/// Pieces that may touch, kept in lists while they move: none is missed, against all pairs looked at one by one.
#include <algorithm>
#include <catch2/catch.hpp>

#include "packing/near_pairs.hpp"
#include "packing/random_pieces.hpp"
#include "support/workload.hpp"

using namespace tuckwright::packing;
using tuckwright::test::count;

namespace {

/// All pairs in the list's order, those behind each piece.
std::vector<std::pair<int, int>> all_that_touch(const std::vector<Piece>& pieces, const NearPairs& near)
{
    std::vector<std::pair<int, int>> found;
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        for (std::size_t j = i + 1; j < pieces.size(); ++j) {
            if (near.may_touch(pieces[i], pieces[j])) {
                found.emplace_back(static_cast<int>(i), static_cast<int>(j));
            }
        }
    }
    return found;
}

std::vector<std::pair<int, int>> listed(const std::vector<Piece>& pieces, const NearPairs& near)
{
    std::vector<std::pair<int, int>> found;
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        for (const int j : near.of(i)) {
            if (near.may_touch(pieces[i], pieces[static_cast<std::size_t>(j)])) {
                found.emplace_back(static_cast<int>(i), j);
            }
        }
    }
    return found;
}

} // namespace

TEST_CASE("no piece that may touch another is missed, however they move")
{
    Dice dice(7);
    for (const double step : {0.01, 0.4, 3.0, 40.0}) { // against a skin of 2 mm
        std::vector<Piece> pieces;
        for (int k = 0; k < 80; ++k) {
            pieces.push_back(random_piece(dice, 60));
        }
        NearPairs near(0.5, 2);
        std::size_t touching = 0;
        for (int turn = 0; turn < count(60, 10); ++turn) {
            near.follow(pieces);
            const auto expected = all_that_touch(pieces, near);
            CHECK(listed(pieces, near) == expected);
            touching += expected.size();
            for (Piece& piece : pieces) {
                piece.x += dice.between(-step, step);
                piece.y += dice.between(-step, step);
                piece.z += dice.between(-step, step);
            }
        }
        CHECK(touching > 0);
    }
}

TEST_CASE("of what stays where it was, or hardly moves, the list is not made anew")
{
    std::vector<Piece> pieces{disc_at(0, 0, 0, 10, 5), disc_at(21, 0, 0, 10, 5), disc_at(60, 0, 0, 10, 5)};
    NearPairs near(0, 2);
    near.follow(pieces);
    CHECK(near.pairs() == 1); // within the skin of each other, though they do not touch
    pieces[2].x = 30;
    near.follow(pieces);
    CHECK(near.pairs() == 2);
    pieces[0].x = -0.9; // less than half of the skin
    near.follow(pieces);
    CHECK(near.pairs() == 2);
    pieces[0].x = -20;
    near.follow(pieces);
    CHECK(near.pairs() == 1);
    NearPairs none(0, 2);
    none.follow({});
    CHECK(none.pairs() == 0);
}
