// SPDX-License-Identifier: GPL-3.0-or-later
/// The room inside a cavity or the envelope, and how pieces stand to its walls, floor and top.
#pragma once
#include "proof/piece.hpp"

namespace tuckwright::proof {

/// The inside of a cylinder or box; its mouths are at the ends of its third axis.
struct Room {
    Piece space; ///< with the side walls moved in by the clearance
    bool open_bottom = false, open_top = false;
    bool wide_enough = true; ///< whether the clearance leaves anything
};

/// A cavity as a room. `clearance` is taken from the side walls, but where they taper: what goes in has air all round
/// until it is seated.
Room room_of(const Piece& cavity, const Rational& clearance, bool open_bottom, bool open_top);

/// A piece against one boundary of a room. Neither may be proved when a root lies between its two bounds.
struct Fit {
    bool inside = false;  ///< proved to keep within
    bool outside = false; ///< proved to reach out
    double excess_nm = 0; ///< about how far it reaches out; negative: room left
};

/// A piece in a room whose side walls go on for ever.
Fit against_walls(const Piece& piece, const Room& room);
Fit against_bottom(const Piece& piece, const Room& room);
Fit against_top(const Piece& piece, const Room& room);

/// Whether the piece is proved to keep within the walls and, where they taper, within the prism that goes on past the
/// rim: what tapers itself may be wider beyond the rim.
bool keeps_to_prism(const Piece& piece, const Room& room);

/// Whether the piece is proved to lie beyond the room's top, all of it.
bool lies_beyond_top(const Piece& piece, const Room& room);

/// Whether the piece is proved to have a point below the room's top, or above its bottom.
bool begins_below_top(const Piece& piece, const Room& room);
bool ends_above_bottom(const Piece& piece, const Room& room);

} // namespace tuckwright::proof
