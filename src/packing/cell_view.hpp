// SPDX-License-Identifier: GPL-3.0-or-later
/// Who is seen from where: the pieces that each cell has to keep apart and within its walls, and the air that the polish
/// wants between them and these walls.
#pragma once
#include <array>
#include <vector>

#include "packing/layout.hpp"
#include "packing/polish.hpp"

namespace tuckwright::packing {

/// A body in the chain from a seen piece out to the cell it is seen from, with the turn of its frame.
struct Link {
    int body;
    double c, s;
};

/// A piece in the frame of the cell that it is seen from.
struct Seen {
    int vessel; ///< the body of that cell which is, or holds, the piece's owner
    Piece piece;
    bool main;               ///< the first piece of a body in its own cell: the one that must reach into it
    std::vector<Link> chain; ///< the owner first
};

/// Margin of each_level() that makes every piece seen from every cell further out: without turning, in the last
/// polish, nothing may come to light only when something sinks.
inline constexpr double everywhere = 1e9;

/// A cell with all that is seen from it.
struct CellView {
    int cell;
    Room room;
    std::vector<Seen> seen;
};

/// The view from each cell, the outermost first. What comes within `margin` mm of standing out is seen further out too.
std::vector<CellView> views(const Layout& layout, double margin);

/// mm kept to the side wall of a round cavity, as far as there is play; none to the outermost wall.
double gap_to_round_wall(const CellView& view, const Piece& piece, const PolishOptions& options);

/// The same along both directions of a box cavity: a vessel that is turned has its walls off the grid.
std::array<double, 2> gaps_to_flat_walls(const CellView& view, const Piece& piece, const PolishOptions& options);

/// The room as the violation sees it: half the gap is given to the program's tolerance.
Room kept(const CellView& view, const Piece& piece, const PolishOptions& options);

/// Largest overlap, missing gap or excess in mm that is seen from the cell.
double violation(const CellView& view, const PolishOptions& options);

} // namespace tuckwright::packing
