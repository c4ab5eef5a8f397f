// SPDX-License-Identifier: GPL-3.0-or-later
#include "packing/scene.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "packing/leaning.hpp"

namespace tuckwright::packing {

double volume(const Envelope& e)
{
    return e.round ? std::numbers::pi * e.radius * e.radius * e.height : 4 * e.half_length * e.half_width * e.height;
}

Room room_of(const Envelope& e) { return {e.round, e.radius, e.half_length, e.half_width, e.height, true, true}; }

namespace {

/// Walls alone.
Room walls_of(const Shape& shape)
{
    Room room;
    room.floor = room.ceiling = false;
    if (const auto* cylinder = std::get_if<Cylinder>(&shape)) {
        room.radius = cylinder->diameter / 2;
        room.foot = cylinder->foot / 2;
    } else {
        const auto& box = std::get<Box>(shape);
        room.round = false;
        room.half_length = box.length / 2;
        room.half_width = box.width / 2;
    }
    return room;
}

} // namespace

Room room_of(const Hollow& hollow, bool stands)
{
    Room room = walls_of(hollow.shape);
    room.height = height_of(hollow.shape);
    room.ceiling = !(hollow.open_top && stands);
    room.floor = !(hollow.open_bottom && stands);
    return room;
}

Room room_of_neck(const Hollow& hollow) { return walls_of(*hollow.neck); }

namespace {

/// `axis` is the cylinder's own axis in the frame of the cell, before the turn about that one's axis.
void shape_cylinder(Piece& piece, const Cylinder& c, Vec3 axis, double cosine, double sine)
{
    piece.radius = c.diameter / 2;
    if (axis.z != 0) {
        piece.kind = PieceKind::disc;
        piece.half_height = c.height / 2;
        piece.reach = piece.radius;
        piece.foot = axis.z > 0 ? c.foot / 2 : 0; // upside down it counts as straight
        return;
    }
    piece.kind = PieceKind::lying;
    piece.half_height = piece.radius;
    piece.a = c.height / 2;
    piece.b = piece.radius;
    piece.c = cosine * axis.x - sine * axis.y;
    piece.s = sine * axis.x + cosine * axis.y;
    piece.reach = std::sqrt(piece.a * piece.a + piece.b * piece.b);
}

void shape_box(Piece& piece, const Box& b, Form form, double cosine, double sine)
{
    piece.kind = PieceKind::rectangle;
    const Vec3 own{b.length / 2, b.width / 2, b.height / 2}, half = form == Form::standing ? own : tipped(form, own);
    piece.a = std::abs(half.x);
    piece.b = std::abs(half.y);
    piece.half_height = std::abs(half.z);
    piece.c = cosine;
    piece.s = sine;
    piece.reach = std::sqrt(piece.a * piece.a + piece.b * piece.b);
}

/// A rod, tilted and then turned with its place.
void lean(Piece& piece, const Rod& rod, bool round, const Place& place)
{
    piece.kind = PieceKind::leaning;
    piece.radius = round ? rod.across : 0;
    piece.along = rod.along;
    piece.across = rod.across;
    piece.tilt_c = place.tilt_c;
    piece.tilt_s = place.tilt_s;
    constexpr double rounding = 3e-6; // mm: its corners are not on the grid
    piece.a = rod.along * place.tilt_s + rod.across * place.tilt_c + rounding;
    piece.b = rod.aside + rounding;
    piece.half_height = rod.along * place.tilt_c + rod.across * place.tilt_s + rounding;
    piece.c = place.c;
    piece.s = place.s;
    piece.reach = std::sqrt(piece.a * piece.a + piece.b * piece.b);
}

} // namespace

Vec3 tipped(Form form, Vec3 v)
{
    switch (form) {
    case Form::standing: return v;
    case Form::on_end: return {v.z, v.y, -v.x};
    case Form::on_side: return {v.x, -v.z, v.y};
    case Form::upside_down: return {v.x, -v.y, -v.z};
    case Form::on_other_end: return {-v.z, v.y, v.x};
    case Form::on_other_side: return {v.x, v.z, -v.y};
    case Form::leaning: break; // by an angle of its own
    }
    return v;
}

namespace {

/// From the table: the same numbers as piece_at() works out without it.
Piece moved(const Body& body, std::size_t index, const Place& place, int owner)
{
    const BodyPiece& source = body.pieces[index];
    const Piece& posed = body.posed[static_cast<std::size_t>(place.form) * body.pieces.size() + index];
    Piece piece = posed;
    piece.owner = owner;
    piece.x = place.x;
    piece.y = place.y;
    piece.z = place.z;
    if (source.offset != 0 || source.x != 0 || source.y != 0) {
        piece.x += place.c * posed.x - place.s * posed.y;
        piece.y += place.s * posed.x + place.c * posed.y;
        piece.z += posed.z;
    }
    if (piece.kind != PieceKind::disc) {
        piece.c = place.c * posed.c - place.s * posed.s;
        piece.s = place.s * posed.c + place.c * posed.s;
    }
    return piece;
}

} // namespace

Piece piece_at(const Body& body, std::size_t index, const Place& place, int owner)
{
    if (!body.posed.empty() && place.form != Form::leaning) {
        return moved(body, index, place, owner);
    }
    const BodyPiece& source = body.pieces[index];
    Piece piece;
    piece.owner = owner;
    piece.further = index > 0;
    piece.sunk = body.pressed;
    piece.half_in = index == 0 && body.held && !body.pressed;
    piece.x = place.x;
    piece.y = place.y;
    piece.z = place.z;
    if (place.form == Form::leaning) {
        if (const auto rod = rod_of(body)) {
            lean(piece, *rod, std::holds_alternative<Cylinder>(source.shape), place);
        }
        return piece;
    }
    if (source.offset != 0 || source.x != 0 || source.y != 0) {
        const Vec3 beside = tipped(place.form, {source.x, source.y, source.offset});
        piece.x += place.c * beside.x - place.s * beside.y;
        piece.y += place.s * beside.x + place.c * beside.y;
        piece.z += beside.z;
    }
    if (const auto* cylinder = std::get_if<Cylinder>(&source.shape)) {
        const Vec3 own = source.turned == Form::standing ? Vec3{0, 0, 1} : tipped(source.turned, {0, 0, 1});
        shape_cylinder(piece, *cylinder, place.form == Form::standing ? own : tipped(place.form, own), place.c,
                       place.s);
    } else {
        shape_box(piece, std::get<Box>(source.shape), place.form, place.c, place.s);
    }
    return piece;
}

void tabulate(Body& body)
{
    body.posed.clear();
    body.heights.clear();
    body.radii.clear();
    std::vector<Piece> posed;
    std::vector<Reach> heights;
    for (const Form form :
         {Form::standing, Form::on_end, Form::on_side, Form::upside_down, Form::on_other_end, Form::on_other_side}) {
        for (std::size_t k = 0; k < body.pieces.size(); ++k) {
            posed.push_back(piece_at(body, k, {outermost, form, 0, 0, 0, 1, 0}, 0));
        }
        heights.push_back(vertical_reach(body, form));
        body.radii.push_back(plan_reach(body, form));
    }
    body.posed = std::move(posed);
    body.heights = std::move(heights);
}

Reach vertical_reach(const Body& body, const Place& place)
{
    if (const auto form = static_cast<std::size_t>(place.form); form < body.heights.size()) {
        return body.heights[form];
    }
    Reach reach{-1e300, -1e300};
    for (std::size_t k = 0; k < body.pieces.size(); ++k) {
        const Piece piece = piece_at(body, k, {outermost, place.form, 0, 0, 0, 1, 0, 0, place.tilt_c, place.tilt_s}, 0);
        reach.below = std::max(reach.below, piece.half_height - piece.z);
        reach.above = std::max(reach.above, piece.half_height + piece.z);
    }
    return reach;
}

Reach vertical_reach(const Body& body, Form form) { return vertical_reach(body, Place{outermost, form}); }

double plan_reach(const Body& body, const Place& place)
{
    if (const auto form = static_cast<std::size_t>(place.form); form < body.radii.size()) {
        return body.radii[form];
    }
    double reach = 0;
    for (std::size_t k = 0; k < body.pieces.size(); ++k) {
        const Piece piece = piece_at(body, k, {outermost, place.form, 0, 0, 0, 1, 0, 0, place.tilt_c, place.tilt_s}, 0);
        reach = std::max(reach, std::sqrt(piece.x * piece.x + piece.y * piece.y) + piece.reach);
    }
    return reach;
}

double plan_reach(const Body& body, Form form) { return plan_reach(body, Place{outermost, form}); }

} // namespace tuckwright::packing
