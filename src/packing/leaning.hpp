// SPDX-License-Identifier: GPL-3.0-or-later
/// Long thin bodies that lie at a slant: how far they are tilted, and how they meet others.
#pragma once
#include "packing/scene.hpp"

namespace tuckwright::packing {

/// Half lengths of a body that may lean: along it, across it in the plane of the tilt, and across that plane.
struct Rod {
    double along = 0, across = 0, aside = 0;
    Form base = Form::standing; ///< brings the long side up
    bool quarter = false;       ///< and is then turned a quarter about it, so that the thin side tilts
};

/// The rod that a body is; nothing if it is too stout, hollow or of several pieces to be worth leaning.
std::optional<Rod> rod_of(const Body& body);

/// Angles in radians from the upright at which a rod, in the middle of a room, reaches both side walls, and at which it
/// reaches from the floor to the ceiling; turned in plan to (c, s).
double tilt_by_width(const Rod& rod, const Room& room, double c, double s);
double tilt_by_height(const Rod& rod, double height);

/// Whether a body may fit a room at some slant; by a hair too often, never too rarely.
bool may_lean_in(const Body& body, const Room& room);

/// Signed distance of two pieces of which one leans, and the direction in which it is measured: the best among the axes
/// of both, their cross products and the shortest way between their middle lines. Exact for two boxes; else it may err
/// towards overlap.
Contact slanted_contact(const Piece& p, const Piece& q);
/// How far they overlap by the same directions, in mm; 0 when they are apart.
double slanted_overlap(const Piece& p, const Piece& q);

} // namespace tuckwright::packing
