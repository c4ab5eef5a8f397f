// SPDX-License-Identifier: GPL-3.0-or-later
#include "proof/room.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "proof/disc.hpp"

namespace tuckwright::proof {

namespace {

/// Height of the piece's centre above the room's.
Rational height(const Piece& piece, const Room& room)
{
    return dot(minus(piece.center, room.space.center), room.space.axis[2]);
}

/// A reach at `distance` from the middle against a limit.
Fit compare(const Rational& distance, const Bounds& reach, const Rational& limit)
{
    return {distance + reach.above <= limit, distance + reach.below > limit,
            approximate(distance + reach.above - limit)};
}

Fit worse(const Fit& a, const Fit& b)
{
    return {a.inside && b.inside, a.outside || b.outside, std::max(a.excess_nm, b.excess_nm)};
}

/// What is seen of a vector along the room's axis.
Flat seen(const Vector& vector, const Room& room)
{
    return {dot(vector, room.space.axis[0]), dot(vector, room.space.axis[1])};
}

Flat sum(const Flat& a, const Rational& s, const Flat& b) { return {a[0] + s * b[0], a[1] + s * b[1]}; }

Fit point_in_circle(const Flat& point, const Rational& circle)
{
    const Rational square = point[0] * point[0] + point[1] * point[1];
    const bool inside = circle >= 0 && square <= circle * circle;
    return {inside, !inside, std::sqrt(approximate(square)) - approximate(circle)};
}

/// A box, or a cylinder lying across the room's axis, is seen as the hull of its corners.
Fit corners_in_circle(const Flat& center, const std::array<Flat, 3>& sides, const Rational& circle)
{
    Fit fit{true, false, -std::numeric_limits<double>::infinity()};
    for (int corner = 0; corner < 8; ++corner) {
        Flat point = center;
        for (std::size_t k = 0; k < 3; ++k) {
            point = sum(point, (corner >> k) % 2 == 0 ? 1 : -1, sides[k]);
        }
        fit = worse(fit, point_in_circle(point, circle));
    }
    return fit;
}

Fit upright_disc_in_circle(const Flat& center, const Rational& radius, const Rational& circle)
{
    Fit fit = point_in_circle(center, circle - radius);
    fit.excess_nm =
        std::sqrt(approximate(center[0] * center[0] + center[1] * center[1])) + approximate(radius - circle);
    return fit;
}

/// Radius of the wall at a height above the room's centre; that of the rim above the room, of the foot below it.
Rational radius_at(const Room& room, const Rational& z)
{
    const Piece& space = room.space;
    const Rational up = std::max(Rational(0), std::min(Rational(2 * space.half[2]), Rational(z + space.half[2])));
    return space.foot + (space.half[0] - space.foot) * up / (2 * space.half[2]);
}

/// A cylinder upright in it, as far as it is below the rim: its two ends there tell, since both sides are straight.
/// Beyond the rim it may be wider.
Fit ends_in_tapering_walls(const Piece& piece, const Room& room, const Flat& center)
{
    const Rational bottom = height(piece, room) - piece.half[2], whole = 2 * piece.half[2];
    const Rational below = std::max(Rational(0), std::min(whole, Rational(room.space.half[2] - bottom)));
    const Rational radius = piece.foot + (piece.half[0] - piece.foot) * below / whole; // at its top, or at the rim
    return worse(upright_disc_in_circle(center, piece.foot, radius_at(room, bottom)),
                 upright_disc_in_circle(center, radius, radius_at(room, bottom + below)));
}

Fit in_round_walls(const Piece& piece, const Room& room)
{
    const bool tapers = room.space.foot != room.space.half[0];
    // What does not stand straight keeps within the wall where that is narrowest for it.
    const Rational circle =
        tapers ? radius_at(room, height(piece, room) - reach(piece, room.space.axis[2]).above) : room.space.half[0];
    const Flat center = seen(minus(piece.center, room.space.center), room);
    std::array<Flat, 3> axis{seen(piece.axis[0], room), seen(piece.axis[1], room), seen(piece.axis[2], room)};
    if (!piece.round) {
        for (std::size_t k = 0; k < 3; ++k) {
            axis[k] = {piece.half[k] * axis[k][0], piece.half[k] * axis[k][1]};
        }
        return corners_in_circle(center, axis, circle);
    }
    const Rational& radius = piece.half[0];
    const Flat up = {piece.half[2] * axis[2][0], piece.half[2] * axis[2][1]};
    const Rational slope = dot(piece.axis[2], room.space.axis[2]);
    if (axis[2][0] == 0 && axis[2][1] == 0) {
        if (tapers && slope > 0) {
            return ends_in_tapering_walls(piece, room, center);
        }
        return upright_disc_in_circle(center, radius, circle);
    }
    if (slope == 0) { // the axis seen is a unit vector, and so is the one at right angles
        return corners_in_circle(center, {up, Flat{-radius * axis[2][1], radius * axis[2][0]}, Flat{0, 0}}, circle);
    }
    return worse(within_circle({sum(center, 1, up), axis[0], axis[1], radius, slope}, circle),
                 within_circle({sum(center, -1, up), axis[0], axis[1], radius, slope}, circle));
}

} // namespace

Room room_of(const Piece& cavity, const Rational& clearance, bool open_bottom, bool open_top)
{
    if (cavity.foot != cavity.half[0]) {
        return {cavity, open_bottom, open_top, true};
    }
    const Vector half{cavity.half[0] - clearance, cavity.half[1] - clearance, cavity.half[2]};
    return {piece_from(cavity.round, half, cavity.center, cavity.axis), open_bottom, open_top,
            half[0] > 0 && half[1] > 0};
}

Fit against_walls(const Piece& piece, const Room& room)
{
    if (!room.wide_enough) {
        return {false, true, approximate(-std::min(room.space.half[0], room.space.half[1]))};
    }
    if (room.space.round) {
        return in_round_walls(piece, room);
    }
    Fit fit{true, false, -std::numeric_limits<double>::infinity()};
    const Vector from = minus(piece.center, room.space.center);
    for (std::size_t k = 0; k < 2; ++k) {
        const Vector& axis = room.space.axis[k];
        fit = worse(fit, compare(magnitude(dot(from, axis)), reach(piece, axis), room.space.half[k]));
    }
    return fit;
}

Fit against_bottom(const Piece& piece, const Room& room)
{
    return compare(-height(piece, room), reach(piece, room.space.axis[2]), room.space.half[2]);
}

Fit against_top(const Piece& piece, const Room& room)
{
    return compare(height(piece, room), reach(piece, room.space.axis[2]), room.space.half[2]);
}

bool keeps_to_prism(const Piece& piece, const Room& room)
{
    if (!against_walls(piece, room).inside) {
        return false;
    }
    Room prism = room;
    prism.space.foot = room.space.half[0];
    return room.space.foot == room.space.half[0] || against_walls(piece, prism).inside;
}

bool lies_beyond_top(const Piece& piece, const Room& room)
{
    return height(piece, room) - reach(piece, room.space.axis[2]).above >= room.space.half[2];
}

bool begins_below_top(const Piece& piece, const Room& room)
{
    return height(piece, room) - reach(piece, room.space.axis[2]).below < room.space.half[2];
}

bool ends_above_bottom(const Piece& piece, const Room& room)
{
    return height(piece, room) + reach(piece, room.space.axis[2]).below > -room.space.half[2];
}

} // namespace tuckwright::proof
