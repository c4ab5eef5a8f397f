// SPDX-License-Identifier: GPL-3.0-or-later
// Outline. The room is filled from the floor upwards, the longest of its sides being the height. Of the cells that are
// free, the lowest, of these the rearmost, of these the leftmost has nothing free below, behind or to the left of it,
// so that it is a corner of the block which covers it: every block that is left, largest first, in every turn, is tried
// there. Then all below is filled, so that a height for each cell of the plan tells everything, and a flat room is a
// skyline. What has been placed is given up at once where
// (a) the rest of the row, up to the next wall or block, is no sum of sides of different blocks that are left, for it
//     will be covered by blocks beginning in that row; or the height that is left above the block is none;
// (b) some layers of the room have a number of free cells that is no multiple of 2 (3, 5), more than the blocks that
//     are left can make up for: a block changes that remainder only in layers across which its section is no multiple.
// Guarantee: without a bound of work a filling is found if there is one; (a) and (b) give up nothing that leads to one.
// Source: depth-first search by the lowest gap: N. Lesh, J. Marks, A. McMahon, M. Mitzenmacher, "Exhaustive approaches
// to 2D rectangular perfect packings", Information Processing Letters 90 (2004), here with a third dimension; (b)
// carries on the parity of J. H. Conway's puzzle: E. R. Berlekamp, J. H. Conway, R. K. Guy, Winning Ways (1982). From
// memory.
#include "packing/grid_fill.hpp"

#include <algorithm>
#include <cstddef>
#include <numeric>

#include "tuckwright/contract.hpp"

namespace tuckwright::packing {

namespace {

constexpr std::array moduli{2, 3, 5};
using PerModulus = std::array<int, moduli.size()>;

int product(const Cells& cells) { return cells[0] * cells[1] * cells[2]; }

/// How many layers, over all three directions, have another remainder after the block is in them.
PerModulus changed_layers(const Cells& size)
{
    PerModulus changed{};
    for (std::size_t axis = 0; axis < 3; ++axis) {
        const int section = size[(axis + 1) % 3] * size[(axis + 2) % 3];
        for (std::size_t k = 0; k < moduli.size(); ++k) {
            changed[k] += section % moduli[k] != 0 ? size[axis] : 0;
        }
    }
    return changed;
}

/// Blocks of a kind, in the axes that the search works in.
struct Kind {
    std::size_t block = 0; ///< as given
    int left = 0;
    std::vector<Cells> turns;
    std::array<std::vector<int>, 3> sides; ///< along each axis, without doubles
    PerModulus changes{};                  ///< the most layers that one of them can change
};

/// Which lengths, up to one, are sums of what was added: a bit for each.
class Sums {
public:
    explicit Sums(int most) : words_(static_cast<std::size_t>(most) / 64 + 1) { bits_[0] = 1; }

    std::size_t words() const { return words_; }
    bool reach(int length) const { return (bits_[static_cast<std::size_t>(length) / 64] >> (length % 64) & 1) != 0; }

    /// Adds one of the lengths to some of the sums; false if there is no new sum.
    bool add_one_of(const std::vector<int>& lengths)
    {
        const auto before = bits_;
        bool is_new = false;
        for (const int length : lengths) {
            const std::size_t far = static_cast<std::size_t>(length) / 64;
            const int near = length % 64;
            for (std::size_t word = far; word < words_; ++word) {
                std::uint64_t moved = before[word - far] << near;
                moved |= near != 0 && word > far ? before[word - far - 1] >> (64 - near) : 0;
                is_new = is_new || (moved & ~bits_[word]) != 0;
                bits_[word] |= moved;
            }
        }
        return is_new;
    }

private:
    std::size_t words_;
    std::array<std::uint64_t, most_cells / 64 + 1> bits_{};
};

class Filler {
public:
    Filler(const Cells& room, const std::vector<Block>& blocks, std::uint64_t most_work,
           const std::function<bool()>& stop)
        : most_work_(most_work), stop_(stop)
    {
        std::iota(axes_.begin(), axes_.end(), std::size_t{0});
        std::stable_sort(axes_.begin(), axes_.end(), [&](std::size_t a, std::size_t b) { return room[a] > room[b]; });
        std::rotate(axes_.begin(), axes_.begin() + 1, axes_.end()); // the second longest, the shortest, the longest
        room_ = turned(room);
        for (std::size_t k = 0; k < blocks.size(); ++k) {
            add(k, blocks[k]);
        }
        std::stable_sort(kinds_.begin(), kinds_.end(), [](const Kind& a, const Kind& b) {
            return product(a.turns.front()) > product(b.turns.front());
        });
        heights_.assign(static_cast<std::size_t>(room_[0] * room_[1]), 0);
        for (std::size_t axis = 0; axis < 3; ++axis) {
            const int layer = room_[(axis + 1) % 3] * room_[(axis + 2) % 3];
            free_[axis].assign(static_cast<std::size_t>(room_[axis]), layer);
            for (std::size_t k = 0; k < moduli.size(); ++k) {
                uneven_[k] += layer % moduli[k] != 0 ? room_[axis] : 0;
            }
        }
    }

    GridFill run()
    {
        GridFill result;
        const bool may_be = volume_left_ == product(room_) && layers_may_come_out() && is_sum(0, room_[0]) &&
                            is_sum(1, room_[1]) && is_sum(2, room_[2]);
        if (may_be && fill()) {
            result.end = FillEnd::filled;
            result.placed = placed_;
        } else {
            result.end = over_ ? FillEnd::given_up : FillEnd::impossible;
        }
        result.work = work_;
        return result;
    }

private:
    /// Told along the axes that the search works in: along a row, across the rows, upwards.
    Cells turned(const Cells& cells) const { return {cells[axes_[0]], cells[axes_[1]], cells[axes_[2]]}; }
    Cells turned_back(const Cells& cells) const
    {
        Cells back{};
        for (std::size_t k = 0; k < 3; ++k) {
            back[axes_[k]] = cells[k];
        }
        return back;
    }

    void add(std::size_t block, const Block& given)
    {
        Kind kind;
        kind.block = block;
        kind.left = given.count;
        for (const Cells& size : given.turns) {
            kind.turns.push_back(turned(size));
            const PerModulus changed = changed_layers(size);
            for (std::size_t k = 0; k < moduli.size(); ++k) {
                kind.changes[k] = std::max(kind.changes[k], changed[k]);
            }
        }
        for (std::size_t axis = 0; axis < 3; ++axis) {
            for (const Cells& size : kind.turns) {
                auto& sides = kind.sides[axis];
                if (std::find(sides.begin(), sides.end(), size[axis]) == sides.end()) {
                    sides.push_back(size[axis]);
                }
            }
        }
        volume_left_ += std::int64_t{given.count} * product(given.turns.front());
        for (std::size_t k = 0; k < moduli.size(); ++k) {
            changes_left_[k] += given.count * kind.changes[k];
        }
        kinds_.push_back(std::move(kind));
    }

    bool layers_may_come_out() const
    {
        for (std::size_t k = 0; k < moduli.size(); ++k) {
            if (uneven_[k] > changes_left_[k]) {
                return false;
            }
        }
        return true;
    }

    /// Whether a length is a sum of sides along an axis, one of each of some blocks that are left.
    bool is_sum(std::size_t axis, int length)
    {
        Sums sums(length);
        for (const Kind& kind : kinds_) {
            for (int k = 0; k < kind.left && !sums.reach(length); ++k) {
                work_ += kind.sides[axis].size() * sums.words();
                if (!sums.add_one_of(kind.sides[axis])) {
                    break; // nor would another one
                }
            }
        }
        return sums.reach(length);
    }

    bool is_over()
    {
        constexpr std::uint64_t rarely = 1024;
        over_ = over_ || work_ > most_work_ || (++steps_ % rarely == 0 && stop_ && stop_());
        return over_;
    }

    std::size_t cell(int column, int row) const { return static_cast<std::size_t>(row * room_[0] + column); }

    /// How many cells of the row, from a column on, are as high as that one.
    int run_from(int column, int row) const
    {
        int end = column + 1;
        while (end < room_[0] && heights_[cell(end, row)] == heights_[cell(column, row)]) {
            ++end;
        }
        return end - column;
    }

    /// Whether a block can stand there. The work is counted.
    bool has_room(const Cells& size, const Cells& corner, int run)
    {
        if (size[0] > run || size[1] > room_[1] - corner[1] || size[2] > room_[2] - corner[2]) {
            return false;
        }
        for (int row = corner[1] + 1; row < corner[1] + size[1]; ++row) {
            const auto from = heights_.begin() + static_cast<std::ptrdiff_t>(cell(corner[0], row));
            if (std::any_of(from, from + size[0], [&](int height) { return height != corner[2]; })) {
                return false;
            }
        }
        work_ += static_cast<std::uint64_t>(size[0]) * static_cast<std::uint64_t>(size[1]);
        return true;
    }

    /// Puts a block there (sign 1), or takes it away again (-1).
    void put(Kind& kind, const Cells& size, const Cells& corner, int sign)
    {
        kind.left -= sign;
        for (std::size_t k = 0; k < moduli.size(); ++k) {
            changes_left_[k] -= sign * kind.changes[k];
        }
        for (int row = corner[1]; row < corner[1] + size[1]; ++row) {
            const auto from = heights_.begin() + static_cast<std::ptrdiff_t>(cell(corner[0], row));
            std::fill(from, from + size[0], sign > 0 ? corner[2] + size[2] : corner[2]);
        }
        for (std::size_t axis = 0; axis < 3; ++axis) {
            const int section = size[(axis + 1) % 3] * size[(axis + 2) % 3];
            for (int layer = corner[axis]; layer < corner[axis] + size[axis]; ++layer) {
                int& free = free_[axis][static_cast<std::size_t>(layer)];
                for (std::size_t k = 0; k < moduli.size(); ++k) {
                    uneven_[k] += ((free - sign * section) % moduli[k] != 0) - (free % moduli[k] != 0);
                }
                free -= sign * section;
            }
        }
        work_ += static_cast<std::uint64_t>(size[0] + size[1] + size[2]);
    }

    /// Fills what is free; leaves everything as it was if that can't be done.
    bool fill()
    {
        const auto lowest = std::min_element(heights_.begin(), heights_.end());
        work_ += heights_.size();
        if (*lowest == room_[2]) {
            return true;
        }
        const auto index = static_cast<int>(lowest - heights_.begin());
        const Cells corner{index % room_[0], index / room_[0], *lowest};
        const int run = run_from(corner[0], corner[1]);
        for (Kind& kind : kinds_) {
            for (std::size_t turn = 0; kind.left > 0 && turn < kind.turns.size() && !is_over(); ++turn) {
                const Cells& size = kind.turns[turn];
                if (!has_room(size, corner, run)) {
                    continue;
                }
                put(kind, size, corner, 1);
                placed_.push_back({kind.block, turned_back(corner), turned_back(size)});
                if (layers_may_come_out() && is_sum(0, run - size[0]) && is_sum(2, room_[2] - corner[2] - size[2]) &&
                    fill()) {
                    return true;
                }
                placed_.pop_back();
                put(kind, size, corner, -1);
            }
        }
        return false;
    }

    std::uint64_t most_work_, work_ = 0, steps_ = 0;
    const std::function<bool()>& stop_;
    bool over_ = false;
    std::array<std::size_t, 3> axes_{};
    Cells room_{};
    std::vector<Kind> kinds_;
    std::vector<int> heights_; ///< of what stands on each cell of the plan, row by row
    std::array<std::vector<int>, 3> free_; ///< cells in each layer across each axis
    PerModulus uneven_{};                  ///< layers whose free cells are no multiple
    PerModulus changes_left_{};            ///< the most that all blocks which are left can change
    std::int64_t volume_left_ = 0;
    std::vector<PlacedBlock> placed_;
};

} // namespace

GridFill fill_grid(const Cells& room, const std::vector<Block>& blocks, std::uint64_t most_work,
                   const std::function<bool()>& stop)
{
    require(std::all_of(room.begin(), room.end(), [](int side) { return side > 0 && side <= most_cells; }),
            "a room to be filled is no longer than what sums are kept for");
    return Filler(room, blocks, most_work, stop).run();
}

} // namespace tuckwright::packing
