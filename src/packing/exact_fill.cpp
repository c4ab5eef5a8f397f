// SPDX-License-Identifier: GPL-3.0-or-later
// Outline. All sides of all bodies are told in cells of their greatest common measure. Every box of whole cells within
// the limits whose volume is that of the bodies is an envelope to be tried; fill_grid() does so, each with an even
// share of the work that is left. Where all are alike, straight rows are tried before.
// Guarantee: what comes out has no waste, so that nothing outside of vessels is smaller. A filling that is not found
// may exist only where the work ended, or the room has more than most_cells along a side: every filling has its corners
// at sums of sides, in whole cells.
// Source: own; see packing/grid_fill.cpp.
#include "packing/exact_fill.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "packing/plain_boxes.hpp"
#include "tuckwright/units.hpp"

namespace tuckwright::packing {

namespace {

/// Bodies with the same stances.
struct Alike {
    std::vector<Stance> stances;
    std::vector<int> bodies;
};

std::vector<Alike> groups_of(const Scene& scene)
{
    std::vector<Alike> groups;
    const std::vector<std::vector<Stance>> stances = stances_of_plain_boxes(scene);
    for (std::size_t body = 0; body < stances.size(); ++body) {
        const auto same = std::find_if(groups.begin(), groups.end(),
                                       [&](const Alike& group) { return group.stances == stances[body]; });
        if (same != groups.end()) {
            same->bodies.push_back(static_cast<int>(body));
        } else {
            groups.push_back({stances[body], {static_cast<int>(body)}});
        }
    }
    return groups;
}

std::int64_t common_measure(const std::vector<Alike>& groups)
{
    std::int64_t measure = 0;
    for (const Alike& group : groups) {
        for (const std::int64_t length : group.stances.front().size) {
            measure = std::gcd(measure, length);
        }
    }
    return measure;
}

/// In cells; nothing where a side has more of them than can be worked with.
std::vector<Block> blocks_of(const std::vector<Alike>& groups, std::int64_t measure)
{
    std::vector<Block> blocks;
    for (const Alike& group : groups) {
        Block block{static_cast<int>(group.bodies.size()), {}};
        for (const Stance& stance : group.stances) {
            Cells cells{};
            for (std::size_t axis = 0; axis < 3; ++axis) {
                if (stance.size[axis] / measure > most_cells) {
                    return {};
                }
                cells[axis] = static_cast<int>(stance.size[axis] / measure);
            }
            block.turns.push_back(cells);
        }
        blocks.push_back(std::move(block));
    }
    return blocks;
}

/// Whole cells within the limits.
Cells most_of(const EnvelopeLimits& limits, std::int64_t measure)
{
    constexpr double hair = 1e-7; // mm, as for all limits
    const auto whole = [&](double length) {
        return static_cast<int>(std::min<double>(most_cells, std::floor((length + hair) / from_nanometres(measure))));
    };
    return {whole(2 * limits.half_length), whole(2 * limits.half_width), whole(limits.height)};
}

Lengths lengths_of(const Cells& cells, std::int64_t measure)
{
    return {cells[0] * measure, cells[1] * measure, cells[2] * measure};
}

/// Puts the bodies where the blocks lie.
std::optional<Layout> layout_of(const Scene& scene, const std::vector<Alike>& groups, const Cells& room,
                                std::int64_t measure, const std::vector<PlacedBlock>& placed)
{
    std::vector<PlacedBox> boxes(scene.bodies.size());
    std::vector<std::size_t> used(groups.size(), 0);
    for (const PlacedBlock& block : placed) {
        const Alike& group = groups[block.block];
        const Lengths size = lengths_of(block.size, measure);
        const auto stance = std::find_if(group.stances.begin(), group.stances.end(),
                                         [&](const Stance& s) { return s.size == size; });
        boxes[at(group.bodies[used[block.block]++])] = {lengths_of(block.corner, measure), *stance};
    }
    return layout_of_boxes(scene, lengths_of(room, measure), boxes);
}

std::int64_t volume_of(const Cells& cells) { return std::int64_t{cells[0]} * cells[1] * cells[2]; }

/// Area of half of the walls.
std::int64_t area_of(const Cells& cells)
{
    return std::int64_t{cells[0]} * cells[1] + std::int64_t{cells[1]} * cells[2] + std::int64_t{cells[2]} * cells[0];
}

/// Equal blocks in straight rows, all turned alike, where these fill the room: no search would find that sooner.
std::vector<PlacedBlock> straight_rows(const Cells& room, const Block& block)
{
    std::vector<PlacedBlock> placed;
    const auto turn = std::find_if(block.turns.begin(), block.turns.end(), [&](const Cells& size) {
        return room[0] % size[0] == 0 && room[1] % size[1] == 0 && room[2] % size[2] == 0;
    });
    if (turn == block.turns.end()) {
        return placed;
    }
    const Cells& size = *turn;
    for (int z = 0; z < room[2]; z += size[2]) {
        for (int y = 0; y < room[1]; y += size[1]) {
            for (int x = 0; x < room[0]; x += size[0]) {
                placed.push_back({0, {x, y, z}, size});
            }
        }
    }
    return placed;
}

/// Whether each block by itself has a turn in which it fits.
bool takes_each(const Cells& room, const std::vector<Block>& blocks)
{
    return std::all_of(blocks.begin(), blocks.end(), [&](const Block& block) {
        return std::any_of(block.turns.begin(), block.turns.end(), [&](const Cells& size) {
            return size[0] <= room[0] && size[1] <= room[1] && size[2] <= room[2];
        });
    });
}

} // namespace

std::vector<Cells> envelopes_without_waste(const std::vector<Block>& blocks, const Cells& most)
{
    std::int64_t volume = 0;
    for (const Block& block : blocks) {
        volume += block.count * volume_of(block.turns.front());
    }
    std::vector<Cells> rooms;
    for (int x = 1; x <= most[0]; ++x) {
        for (int y = 1; volume % x == 0 && y <= most[1]; ++y) {
            const std::int64_t section = std::int64_t{x} * y, z = volume / section;
            const bool is_double = x < y && y <= most[0] && x <= most[1];
            if (volume % section == 0 && z <= most[2] && !is_double) {
                const Cells room{x, y, static_cast<int>(z)};
                if (takes_each(room, blocks)) {
                    rooms.push_back(room);
                }
            }
        }
    }
    std::stable_sort(rooms.begin(), rooms.end(),
                     [](const Cells& a, const Cells& b) { return area_of(a) < area_of(b); });
    return rooms;
}

std::optional<Layout> exact_fill(const Scene& scene, const EnvelopeLimits& limits, const FillEffort& effort)
{
    const std::vector<Alike> groups = groups_of(scene);
    if (groups.empty()) {
        return std::nullopt;
    }
    const std::int64_t measure = common_measure(groups);
    const std::vector<Block> blocks = blocks_of(groups, measure);
    const std::vector<Cells> rooms =
        blocks.empty() ? std::vector<Cells>{} : envelopes_without_waste(blocks, most_of(limits, measure));
    std::uint64_t left = effort.work;
    for (std::size_t k = 0; k < rooms.size() && !(effort.stop && effort.stop()); ++k) {
        if (blocks.size() == 1) {
            if (const auto placed = straight_rows(rooms[k], blocks.front()); !placed.empty()) {
                return layout_of(scene, groups, rooms[k], measure, placed);
            }
        }
        const GridFill fill = fill_grid(rooms[k], blocks, left / (rooms.size() - k), effort.stop);
        if (fill.end == FillEnd::filled) {
            return layout_of(scene, groups, rooms[k], measure, fill.placed);
        }
        left -= std::min(left, fill.work);
    }
    return std::nullopt;
}

} // namespace tuckwright::packing
