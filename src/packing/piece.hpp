// SPDX-License-Identifier: GPL-3.0-or-later
/// A convex piece as it lies in the frame of a cell: a plan outline (disc or turned rectangle) and a height span. A
/// lying cylinder is a rectangle in plan with a round cross-section; what leans is taken with the rectangle round it in
/// plan where it meets walls, and as it is where it meets others. Overlap depths and contacts in closed form.
#pragma once
#include <cmath>

namespace tuckwright::packing {

enum class PieceKind { disc, rectangle, lying, leaning };

struct Piece {
    PieceKind kind = PieceKind::disc;
    int owner = 0;             ///< the body it belongs to
    double x = 0, y = 0, z = 0;
    double half_height = 0;    ///< along z
    double radius = 0;         ///< of the disc, or of the lying cylinder
    double a = 0, b = 0;       ///< half extents of the rectangle along its own direction and across it
    double c = 1, s = 0;       ///< that direction
    double reach = 0;          ///< radius of the circle round the plan outline
    double foot = 0;           ///< of a disc that tapers: its radius at the lower end; else 0
    double tilt_c = 1, tilt_s = 0;   ///< of what leans: its long axis is (tilt_s c, tilt_s s, tilt_c)
    double along = 0, across = 0;    ///< its half lengths, along and across in the plane of the tilt; across that: b
    bool sunk = false;         ///< in its own cell it must not stand out of an open top
    bool further = false;      ///< not a body's first piece: it may lie beyond a rim that is too narrow for it
    bool half_in = false;      ///< half of it has to be in its own cell: a springy roll that the vessel holds together
};

/// The room that pieces must stay in; its frame has the floor's centre as origin and z up to the opening.
struct Room {
    bool round = true;
    double radius = 0;                   ///< round, side clearance already taken off
    double half_length = 0, half_width = 0;
    double height = 0;
    bool floor = true, ceiling = true;   ///< whether the ends are closed
    double foot = 0;                     ///< round and tapering: the radius at the floor; else 0

    bool tapers() const { return foot > 0; }
    /// How much wider it gets for each mm of height.
    double slope() const { return tapers() ? (radius - foot) / height : 0; }
    /// Radius at a height above the floor, that of the rim above it.
    double radius_at(double z) const;
};

/// How far two pieces overlap, in mm: 0 when they are apart or touch. The depth is the least of those along z, the
/// plan's directions and the round cross-sections, so that 0 always means apart; a lying cylinder's rim is taken as if
/// its ends were as high as its middle, which only errs towards overlap.
double overlap(const Piece& p, const Piece& q);
/// The same for two pieces that are near: `high` is their overlap along z, which is positive.
double near_overlap(const Piece& p, const Piece& q, double high);

inline double overlap(const Piece& p, const Piece& q)
{
    const double high = p.half_height + q.half_height - std::abs(p.z - q.z);
    if (high <= 0) {
        return 0;
    }
    const double dx = q.x - p.x, dy = q.y - p.y, reach = p.reach + q.reach;
    return dx * dx + dy * dy >= reach * reach ? 0 : near_overlap(p, q, high);
}

/// How far a piece stands out of a room, summed over the walls, in mm. A further piece may instead lie beyond the rim of
/// an open top.
double excess(const Piece& p, const Room& room);

/// mm of a piece that must be below the rim of an open room (and above the foot of a sleeve) for it to count as in it.
inline constexpr double least_depth = 0.5;

/// Radius of a disc at its upper end, or at the rim of a tapering room where it goes past that: beyond, it may be wider.
double top_radius(const Piece& piece, const Room& room);

/// mm by which a piece must rise to come free of the tapering wall, if rising helps; 0 where the wall is straight.
double rise_to_fit(const Piece& piece, const Room& room);

/// The same for this piece: half its height at most, and just that for what has to be half in.
double depth_of(const Piece& piece);

/// By how much a piece misses that depth, in mm.
double shallow(const Piece& piece, const Room& room);

/// The direction along which two pieces are farthest apart (or overlap least), from the first to the second.
struct Contact {
    double distance = 0;
    double nx = 0, ny = 0, nz = 0;
    bool curved = false; ///< a curved or turned surface takes part, so that exact touching can't be proved
};
Contact contact(const Piece& p, const Piece& q);

/// Largest of n . x over the piece, for a unit normal.
inline double piece_support(const Piece& p, double nx, double ny, double nz)
{
    const double centre = p.x * nx + p.y * ny + p.z * nz;
    const double along = std::abs(nx * p.c + ny * p.s), cross = std::abs(ny * p.c - nx * p.s);
    switch (p.kind) {
    case PieceKind::disc: return centre + p.radius * std::sqrt(nx * nx + ny * ny) + p.half_height * std::abs(nz);
    case PieceKind::rectangle: return centre + p.a * along + p.b * cross + p.half_height * std::abs(nz);
    case PieceKind::lying: return centre + p.a * along + p.radius * std::sqrt(cross * cross + nz * nz);
    case PieceKind::leaning: {
        const double level = nx * p.c + ny * p.s; // in the plane of the tilt
        const double rod = std::abs(p.tilt_s * level + p.tilt_c * nz), over = p.tilt_c * level - p.tilt_s * nz;
        const double wide = p.radius > 0 ? p.radius * std::sqrt(over * over + cross * cross)
                                         : p.across * std::abs(over) + p.b * cross;
        return centre + p.along * rod + wide;
    }
    }
    return centre;
}

} // namespace tuckwright::packing
