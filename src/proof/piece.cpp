// SPDX-License-Identifier: GPL-3.0-or-later
#include "proof/piece.hpp"

namespace tuckwright::proof {

namespace {

/// What shape and pose say in nanometres.
Vector halves(const Shape& shape)
{
    if (const auto* cylinder = std::get_if<Cylinder>(&shape)) {
        const Rational radius = nanometres(cylinder->diameter) / 2;
        return {radius, radius, nanometres(cylinder->height) / 2};
    }
    const auto& box = std::get<Box>(shape);
    return {nanometres(box.length) / 2, nanometres(box.width) / 2, nanometres(box.height) / 2};
}

} // namespace

Piece piece_of(const Shape& shape, const Pose& pose)
{
    Piece piece = piece_from(std::holds_alternative<Cylinder>(shape), halves(shape), nanometres(pose.center),
                             axes_of(pose.turn));
    if (const auto* cylinder = std::get_if<Cylinder>(&shape); cylinder != nullptr && cylinder->foot != 0) {
        piece.foot = nanometres(cylinder->foot) / 2;
    }
    return piece;
}

Piece piece_from(bool round, const Vector& half, const Vector& center, const std::array<Vector, 3>& axis)
{
    Piece piece{round, half, half[0], center, axis, {}, {}};
    for (std::size_t k = 0; k < 3; ++k) {
        Vector world{0, 0, 0};
        world[k] = 1;
        piece.extent[k] = reach(piece, world).above;
        piece.rough.half[k] = approximate(half[k]);
        for (std::size_t j = 0; j < 3; ++j) {
            piece.rough.axis[k][j] = approximate(axis[k][j]);
        }
    }
    return piece;
}

Piece moved(const Piece& piece, const Vector& by)
{
    Piece result = piece;
    result.center = plus(piece.center, by);
    return result;
}

Bounds reach(const Piece& piece, const Vector& n)
{
    const Rational along = dot(n, piece.axis[2]);
    const Rational up = piece.half[2] * magnitude(along);
    if (!piece.round) {
        const Rational exact =
            up + piece.half[0] * magnitude(dot(n, piece.axis[0])) + piece.half[1] * magnitude(dot(n, piece.axis[1]));
        return {exact, exact};
    }
    const Bounds across = root(dot(n, n) - along * along);
    return {up + piece.half[0] * across.below, up + piece.half[0] * across.above};
}

namespace {

Where against(const Rational& value, const Rational& limit)
{
    return value > limit ? Where::outside : value == limit ? Where::surface : Where::inner;
}

} // namespace

Where where_is(const Vector& point, const Piece& piece)
{
    const Vector from = minus(point, piece.center);
    const Rational x = dot(from, piece.axis[0]), y = dot(from, piece.axis[1]), z = dot(from, piece.axis[2]);
    Where where = against(magnitude(z), piece.half[2]);
    if (piece.round) {
        const Rational radius =
            piece.foot + (piece.half[0] - piece.foot) * (z + piece.half[2]) / (2 * piece.half[2]);
        return std::min(where, against(x * x + y * y, radius * radius));
    }
    where = std::min(where, against(magnitude(x), piece.half[0]));
    return std::min(where, against(magnitude(y), piece.half[1]));
}

} // namespace tuckwright::proof
