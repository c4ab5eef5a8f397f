// SPDX-License-Identifier: GPL-3.0-or-later
#include "packing/cell_view.hpp"

#include <algorithm>

namespace tuckwright::packing {

std::vector<CellView> views(const Layout& layout, double margin)
{
    std::vector<CellView> cells(layout.size() + 1);
    for (int cell = outermost; cell < static_cast<int>(layout.size()); ++cell) {
        cells[at(cell + 1)].cell = cell;
        if (cell == outermost || layout.stowed(cell).hollow) {
            cells[at(cell + 1)].room = layout.room(cell);
        }
    }
    for (int body = 0; body < static_cast<int>(layout.size()); ++body) {
        std::vector<Link> chain{{body, 1, 0}};
        layout.each_level(
            body,
            [&](int cell, int vessel, const std::vector<Piece>& pieces) {
                if (vessel != body) { // the frame of what is inside the vessel turns with it
                    const Place& p = layout.place(vessel);
                    for (Link& link : chain) {
                        link = {link.body, p.c * link.c - p.s * link.s, p.s * link.c + p.c * link.s};
                    }
                    chain.push_back({vessel, 1, 0});
                }
                for (const Piece& piece : pieces) {
                    const bool main = vessel == body && &piece == &pieces.front();
                    cells[at(cell + 1)].seen.push_back({vessel, piece, main, chain});
                }
            },
            margin);
    }
    return cells;
}

double gap_to_round_wall(const CellView& view, const Piece& piece, const PolishOptions& options)
{
    const bool fixed = view.cell != outermost && view.room.round;
    return !fixed              ? 0
           : view.room.tapers() ? options.wall_gap
                                : std::clamp(view.room.radius - piece.reach, 0.0, options.wall_gap);
}

std::array<double, 2> gaps_to_flat_walls(const CellView& view, const Piece& piece, const PolishOptions& options)
{
    if (view.cell == outermost || view.room.round) {
        return {0, 0};
    }
    const double x = view.room.half_length - (piece_support(piece, 1, 0, 0) - piece.x);
    const double y = view.room.half_width - (piece_support(piece, 0, 1, 0) - piece.y);
    return {std::clamp(x, 0.0, options.wall_gap), std::clamp(y, 0.0, options.wall_gap)};
}

Room kept(const CellView& view, const Piece& piece, const PolishOptions& options)
{
    Room room = view.room;
    const double gap = gap_to_round_wall(view, piece, options);
    room.radius -= gap / 2;
    room.foot -= room.tapers() ? gap / 2 : 0;
    const auto [gap_x, gap_y] = gaps_to_flat_walls(view, piece, options);
    room.half_length -= gap_x / 2;
    room.half_width -= gap_y / 2;
    return room;
}

} // namespace tuckwright::packing
