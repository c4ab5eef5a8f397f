// SPDX-License-Identifier: GPL-3.0-or-later
/// Blocks that fill a box of unit cells, blocks that can't, and when it is left open.
#include <algorithm>
#include <catch2/catch.hpp>
#include <limits>

#include "packing/grid_fill.hpp"
#include "packing/random.hpp"
#include "support/workload.hpp"

using namespace tuckwright::packing;
using tuckwright::test::count;

namespace {

constexpr std::uint64_t plenty = std::numeric_limits<std::uint64_t>::max();

/// Blocks that may be turned in all ways.
Block blocks(int copies, Cells sides)
{
    std::sort(sides.begin(), sides.end());
    Block block{copies, {}};
    do {
        block.turns.push_back(sides);
    } while (std::next_permutation(sides.begin(), sides.end()));
    return block;
}

GridFill fill(const Cells& room, const std::vector<Block>& given, std::uint64_t work = plenty)
{
    return fill_grid(room, given, work, nullptr);
}

/// Whether each cell of the room is covered once by blocks that were given.
bool is_filling(const Cells& room, const std::vector<Block>& given, const std::vector<PlacedBlock>& placed)
{
    std::vector<int> covered(static_cast<std::size_t>(room[0] * room[1] * room[2]), 0), left;
    for (const Block& block : given) {
        left.push_back(block.count);
    }
    for (const PlacedBlock& block : placed) {
        const auto& turns = given.at(block.block).turns;
        if (--left[block.block] < 0 || std::find(turns.begin(), turns.end(), block.size) == turns.end()) {
            return false;
        }
        for (int x = block.corner[0]; x < block.corner[0] + block.size[0]; ++x) {
            for (int y = block.corner[1]; y < block.corner[1] + block.size[1]; ++y) {
                for (int z = block.corner[2]; z < block.corner[2] + block.size[2]; ++z) {
                    if (std::min({x, y, z}) < 0 || x >= room[0] || y >= room[1] || z >= room[2]) {
                        return false;
                    }
                    ++covered[static_cast<std::size_t>((x * room[1] + y) * room[2] + z)];
                }
            }
        }
    }
    return std::all_of(covered.begin(), covered.end(), [](int times) { return times == 1; });
}

/// A box cut in two, and its parts again, at random: what comes out fills it.
std::vector<Block> cut(const Cells& room, std::size_t parts, Random& random)
{
    std::vector<Cells> cells{room};
    for (int trial = 0; cells.size() < parts && trial < 1000; ++trial) {
        Cells& part = cells[random.below(cells.size())];
        const std::size_t axis = random.below(3);
        if (part[axis] > 1) {
            Cells other = part;
            other[axis] = 1 + static_cast<int>(random.below(static_cast<std::size_t>(part[axis] - 1)));
            part[axis] -= other[axis];
            cells.push_back(other);
        }
    }
    std::vector<Block> made;
    for (const Cells& part : cells) {
        made.push_back(blocks(1, part));
    }
    return made;
}

const std::vector<Block> slabs_and_cubes{blocks(6, {2, 2, 1}), blocks(3, {1, 1, 1})};

} // namespace

TEST_CASE("blocks fill boxes, cubes and flat squares")
{
    const struct {
        Cells room;
        std::vector<Block> given;
    } cases[] = {{{1, 1, 1}, {blocks(1, {1, 1, 1})}},
                 {{3, 3, 3}, slabs_and_cubes},
                 {{2, 9, 4}, {blocks(2, {9, 2, 2})}},
                 {{10, 10, 10}, {blocks(100, {5, 2, 1})}},
                 {{7, 5, 6}, {blocks(35, {1, 2, 3})}}};
    for (const auto& [room, given] : cases) {
        CAPTURE(room[0], room[1], room[2]);
        const GridFill found = fill(room, given);
        REQUIRE(found.end == FillEnd::filled);
        CHECK(is_filling(room, given, found.placed));
        CHECK(found.work > 0);
    }
}

TEST_CASE("boxes cut at random are put together again")
{
    Random random(11);
    for (int trial = 0; trial < count(60, 15); ++trial) {
        const Cells room{2 + static_cast<int>(random.below(9)), 1 + static_cast<int>(random.below(9)),
                         2 + static_cast<int>(random.below(9))};
        const std::vector<Block> given = cut(room, 2 + random.below(6), random);
        const GridFill found = fill(room, given);
        CAPTURE(trial);
        REQUIRE(found.end == FillEnd::filled);
        CHECK(is_filling(room, given, found.placed));
    }
}

TEST_CASE("what can't be filled is proved so")
{
    // The same volume, but a rod that is too long.
    CHECK(fill({3, 3, 3}, {blocks(1, {4, 1, 1}), blocks(23, {1, 1, 1})}).end == FillEnd::impossible);
    // No two of the five squares go side by side with the largest among them.
    CHECK(fill({5, 5, 1}, {{1, {{3, 3, 1}}}, {4, {{2, 2, 1}}}}).end == FillEnd::impossible);
    // Each of the nine layers has nine cells and needs a cube; a rod of two is as good as one in two of them only.
    CHECK(fill({3, 3, 3}, {blocks(6, {2, 2, 1}), blocks(1, {2, 1, 1}), blocks(1, {1, 1, 1})}).end ==
          FillEnd::impossible);
    // Other volumes.
    CHECK(fill({3, 3, 3}, {blocks(26, {1, 1, 1})}).end == FillEnd::impossible);
    CHECK(fill({3, 3, 3}, {blocks(28, {1, 1, 1})}).end == FillEnd::impossible);
}

TEST_CASE("layers whose number of cells can't come out end a search before it begins")
{
    // All fifteen layers have 25 cells. What makes some of them even is the rod alone, in seven.
    const GridFill found = fill({5, 5, 5}, {blocks(15, {4, 2, 1}), blocks(1, {5, 1, 1})});
    CHECK(found.end == FillEnd::impossible);
    CHECK(found.work < 100);
}

TEST_CASE("blocks keep to the turns that they may take")
{
    const std::vector<Block> lying{{2, {{4, 2, 1}, {2, 4, 1}}}};
    CHECK(fill({4, 4, 1}, lying).end == FillEnd::filled);
    CHECK(fill({4, 2, 2}, lying).end == FillEnd::filled);
    CHECK(fill({2, 2, 4}, lying).end == FillEnd::impossible);
    CHECK(fill({2, 1, 8}, lying).end == FillEnd::impossible);
    CHECK(fill({2, 1, 8}, {blocks(2, {4, 2, 1})}).end == FillEnd::filled);
}

TEST_CASE("a filling is left open where the work ends or it is stopped")
{
    const std::vector<Block> given{blocks(27, {4, 2, 1})}; // which do not fill it, but that takes long to see
    for (const std::uint64_t work : {std::uint64_t{0}, std::uint64_t{1'000}, std::uint64_t{50'000}}) {
        const GridFill found = fill({6, 6, 6}, given, work);
        CHECK(found.end == FillEnd::given_up);
        CHECK(found.placed.empty());
        CHECK(found.work <= work + 2'000);
    }
    int asked = 0;
    const GridFill stopped = fill_grid({6, 6, 6}, given, plenty, [&asked] { return ++asked == 3; });
    CHECK(stopped.end == FillEnd::given_up);
    CHECK(asked == 3);
}
