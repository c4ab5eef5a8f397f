// SPDX-License-Identifier: GPL-3.0-or-later
/// Filling a box of unit cells with blocks, exactly. Nothing here knows of bodies.
#pragma once
#include <array>
#include <cstdint>
#include <functional>
#include <vector>

namespace tuckwright::packing {

/// Numbers of cells along x, y and z.
using Cells = std::array<int, 3>;

/// No room is longer than this.
inline constexpr int most_cells = 1023;

/// Equal blocks.
struct Block {
    int count = 1;
    std::vector<Cells> turns; ///< the sizes that such a block may take, each along x, y and z
};

struct PlacedBlock {
    std::size_t block = 0; ///< which of the blocks; there are `count` with the same
    Cells corner{};        ///< the cell of it that is nearest to the origin
    Cells size{};          ///< one of its turns
};

enum class FillEnd {
    filled,
    impossible, ///< proved
    given_up    ///< out of work, or stopped
};

struct GridFill {
    FillEnd end = FillEnd::given_up;
    std::vector<PlacedBlock> placed; ///< all blocks, if filled
    std::uint64_t work = 0;          ///< cells and sums that were looked at
};

/// Fills the room with all blocks. Requires: no side of the room above most_cells; counts and sides positive.
/// Ensures: if filled, every cell is covered once; the same for the same arguments, unless stop() said so.
GridFill fill_grid(const Cells& room, const std::vector<Block>& blocks, std::uint64_t most_work,
                   const std::function<bool()>& stop);

} // namespace tuckwright::packing
