// SPDX-License-Identifier: GPL-3.0-or-later
/// Random pieces, and the same solids as the geometry room sees them.
#pragma once
#include <array>
#include <cmath>
#include <numbers>
#include <vector>

#include "packing/piece.hpp"
#include "support/random_solids.hpp"
#include "tuckwright/geometry.hpp"

namespace tuckwright::packing {

using test::Dice;

inline Piece disc_at(double x, double y, double z, double radius, double half_height)
{
    Piece p;
    p.kind = PieceKind::disc;
    p.x = x, p.y = y, p.z = z;
    p.radius = p.reach = radius;
    p.half_height = half_height;
    return p;
}

inline Piece rectangle_at(double x, double y, double z, double a, double b, double half_height, double angle = 0)
{
    Piece p;
    p.kind = PieceKind::rectangle;
    p.x = x, p.y = y, p.z = z;
    p.a = a, p.b = b;
    p.half_height = half_height;
    p.c = angle == 0 ? 1 : std::cos(angle);
    p.s = angle == 0 ? 0 : std::sin(angle);
    p.reach = std::hypot(a, b);
    return p;
}

inline Piece lying_at(double x, double y, double z, double half_length, double radius, double angle = 0)
{
    Piece p = rectangle_at(x, y, z, half_length, radius, radius, angle);
    p.kind = PieceKind::lying;
    p.radius = radius;
    return p;
}

inline Piece random_piece(Dice& dice, double spread)
{
    const double x = dice.between(-spread, spread), y = dice.between(-spread, spread);
    const double z = dice.between(-spread, spread), a = dice.between(2, 50), b = dice.between(2, 50);
    const double half_height = dice.between(2, 50);
    constexpr double pi = std::numbers::pi;
    const double angle = dice.below(3) == 0 ? 0 : dice.below(4) == 0 ? pi / 2 : dice.between(-pi, pi);
    switch (dice.below(3)) {
    case 0: return disc_at(x, y, z, a, half_height);
    case 1: return rectangle_at(x, y, z, a, b, half_height, angle);
    default: return lying_at(x, y, z, a, b, angle);
    }
}

/// The same solid for the geometry room.
inline Hull hull_of(const Piece& p)
{
    Hull hull;
    hull.center = {p.x, p.y, p.z};
    switch (p.kind) {
    case PieceKind::disc:
        hull.shape = Cylinder{2 * p.radius, 2 * p.half_height};
        hull.rotation = {{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}};
        break;
    case PieceKind::rectangle:
        hull.shape = Box{2 * p.a, 2 * p.b, 2 * p.half_height};
        hull.rotation = {{{p.c, -p.s, 0}, {p.s, p.c, 0}, {0, 0, 1}}};
        break;
    case PieceKind::lying: // own z along (c, s, 0), own x down
        hull.shape = Cylinder{2 * p.radius, 2 * p.a};
        hull.rotation = {{{0, -p.s, p.c}, {0, p.c, p.s}, {-1, 0, 0}}};
        break;
    case PieceKind::leaning: { // own x across in the plane of the tilt, own y level, own z along
        const double c = p.tilt_c, s = p.tilt_s;
        hull.shape = p.radius > 0 ? Shape(Cylinder{2 * p.radius, 2 * p.along}) : Shape(Box{2 * p.across, 2 * p.b, 2 * p.along});
        hull.rotation = {{{c * p.c, -p.s, s * p.c}, {c * p.s, p.c, s * p.s}, {-s, 0, c}}};
        break;
    }
    }
    return hull;
}

/// Points on the edges and rims of a piece, corners among them: it is their convex hull, but for the roundness between.
inline std::vector<Vec3> rim_points(const Piece& p, int turns)
{
    std::vector<Vec3> points;
    const double two_pi = 2 * std::numbers::pi;
    for (const double side : {-1.0, 1.0}) {
        for (int k = 0; k < turns; ++k) {
            const double angle = two_pi * k / turns, u = std::cos(angle), v = std::sin(angle);
            if (p.kind == PieceKind::disc) {
                points.push_back({p.x + p.radius * u, p.y + p.radius * v, p.z + side * p.half_height});
            } else if (p.kind == PieceKind::lying) {
                const double along = side * p.a, across = p.radius * u;
                points.push_back(
                    {p.x + along * p.c - across * p.s, p.y + along * p.s + across * p.c, p.z + p.radius * v});
            }
        }
        for (const double v : {-p.b, p.b}) {
            for (const double h : {-p.half_height, p.half_height}) {
                if (p.kind == PieceKind::rectangle) {
                    points.push_back(
                        {p.x + side * p.a * p.c - v * p.s, p.y + side * p.a * p.s + v * p.c, p.z + h});
                }
            }
        }
    }
    return points;
}

} // namespace tuckwright::packing
