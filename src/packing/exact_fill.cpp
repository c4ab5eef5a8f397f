// SPDX-License-Identifier: GPL-3.0-or-later
// Outline. All sides of all bodies are told in cells of their greatest common measure. Every box of whole cells within
// the limits whose volume is that of the bodies is an envelope to be tried; fill_grid() does so, each with an even share
// of the work that is left.
// Guarantee: what comes out has no waste, so that nothing outside of vessels is smaller. What is not found may exist where
// the work ended, where sides have so small a common measure that the room is longer than most_cells, or off the grid (a
// filling has none of its blocks off it: its corners are sums of sides).
// Source: own; see packing/grid_fill.cpp.
#include "packing/exact_fill.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "tuckwright/units.hpp"

namespace tuckwright::packing {

namespace {

using Lengths = std::array<std::int64_t, 3>; // along x, y and z, in nanometres

/// A size that a body may take along the axes, and how it is turned for that.
struct Stance {
    Lengths size{};
    Form form = Form::standing;
    bool quarter = false; ///< whether it is turned about the upright axis
};

Place place_of(const Stance& stance)
{
    Place place;
    place.form = stance.form;
    place.c = stance.quarter ? 0 : 1;
    place.s = stance.quarter ? 1 : 0;
    return place;
}

/// The sizes that a body may take directly in the bundle, without doubles, in the order of its forms.
std::vector<Stance> stances_of(const Scene& scene, int body)
{
    std::vector<Stance> stances;
    const Body& box = scene.bodies[at(body)];
    for (const Form form : box.forms) {
        if (form == Form::leaning || (scene.fits[at(scene.row(body, 0))][0] & bit(form)) == 0) {
            continue;
        }
        const Piece piece = piece_at(box, 0, place_of({{}, form, false}), body);
        const auto a = to_nanometres(2 * piece.a), b = to_nanometres(2 * piece.b),
                   high = to_nanometres(2 * piece.half_height);
        for (const Stance& stance : {Stance{{a, b, high}, form, false}, Stance{{b, a, high}, form, true}}) {
            if (std::none_of(stances.begin(), stances.end(), [&](const Stance& s) { return s.size == stance.size; })) {
                stances.push_back(stance);
            }
        }
    }
    return stances;
}

/// Whether all that there is to the body is its box.
bool is_plain_box(const Scene& scene, int body)
{
    const Body& one = scene.bodies[at(body)];
    return scene.ways(body) == 1 && one.pieces.size() == 1 && std::holds_alternative<Box>(one.pieces.front().shape) &&
           !one.hollow && !one.held && !one.pressed;
}

/// Bodies with the same stances, and these in cells.
struct Alike {
    std::vector<Stance> stances;
    std::vector<int> bodies;
};

/// All bodies in groups; nothing where one of them is no plain box, or may not lie in the bundle by itself.
std::vector<Alike> groups_of(const Scene& scene)
{
    std::vector<Alike> groups;
    for (int body = 0; body < static_cast<int>(scene.bodies.size()); ++body) {
        std::vector<Stance> stances = is_plain_box(scene, body) ? stances_of(scene, body) : std::vector<Stance>{};
        if (stances.empty()) {
            return {};
        }
        const auto same = std::find_if(groups.begin(), groups.end(), [&](const Alike& group) {
            return std::equal(group.stances.begin(), group.stances.end(), stances.begin(), stances.end(),
                              [](const Stance& s, const Stance& t) { return s.size == t.size && s.form == t.form; });
        });
        if (same != groups.end()) {
            same->bodies.push_back(body);
        } else {
            groups.push_back({std::move(stances), {body}});
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

/// Nothing where a side has more cells than can be worked with.
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

/// Puts the bodies where the blocks lie.
std::optional<Layout> layout_of(const Scene& scene, const std::vector<Alike>& groups, const Cells& room,
                                std::int64_t measure, const std::vector<PlacedBlock>& placed)
{
    const auto length = [&](int cells) { return from_nanometres(cells * measure); };
    Layout layout(scene, Envelope{false, 0, length(room[0]) / 2, length(room[1]) / 2, length(room[2])});
    std::vector<std::size_t> used(groups.size(), 0);
    for (const PlacedBlock& block : placed) {
        const Alike& group = groups[block.block];
        const int body = group.bodies[used[block.block]++];
        const auto stance = std::find_if(group.stances.begin(), group.stances.end(), [&](const Stance& s) {
            return s.size == Lengths{block.size[0] * measure, block.size[1] * measure, block.size[2] * measure};
        });
        Place place = place_of(*stance);
        const Piece piece = piece_at(scene.bodies[at(body)], 0, place, body); // its middle, with the body at the origin
        place.x = length(2 * block.corner[0] + block.size[0] - room[0]) / 2 - piece.x;
        place.y = length(2 * block.corner[1] + block.size[1] - room[1]) / 2 - piece.y;
        place.z = length(2 * block.corner[2] + block.size[2]) / 2 - piece.z;
        if (!layout.may_enter(body, outermost, place.form)) {
            return std::nullopt;
        }
        layout.put(body, place);
    }
    return layout;
}

std::int64_t volume_of(const Cells& cells) { return std::int64_t{cells[0]} * cells[1] * cells[2]; }

/// Area of half of the walls.
std::int64_t area_of(const Cells& cells)
{
    return std::int64_t{cells[0]} * cells[1] + std::int64_t{cells[1]} * cells[2] + std::int64_t{cells[2]} * cells[0];
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
    const std::vector<Alike> groups = scene.company.empty() ? groups_of(scene) : std::vector<Alike>{};
    if (groups.empty()) {
        return std::nullopt;
    }
    const std::int64_t measure = common_measure(groups);
    const std::vector<Block> blocks = blocks_of(groups, measure);
    const std::vector<Cells> rooms =
        blocks.empty() ? std::vector<Cells>{} : envelopes_without_waste(blocks, most_of(limits, measure));
    std::uint64_t left = effort.work;
    for (std::size_t k = 0; k < rooms.size() && !(effort.stop && effort.stop()); ++k) {
        const GridFill fill = fill_grid(rooms[k], blocks, left / (rooms.size() - k), effort.stop);
        if (fill.end == FillEnd::filled) {
            return layout_of(scene, groups, rooms[k], measure, fill.placed);
        }
        left -= std::min(left, fill.work);
    }
    return std::nullopt;
}

} // namespace tuckwright::packing
