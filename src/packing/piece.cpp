// SPDX-License-Identifier: GPL-3.0-or-later
#include "packing/piece.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "packing/leaning.hpp"

namespace tuckwright::packing {

namespace {

/// Signed distance (negative inside) from a point to a rectangle of half extents a, b round the origin.
double rectangle_distance(double u, double v, double a, double b)
{
    const double du = std::abs(u) - a, dv = std::abs(v) - b;
    if (du > 0 && dv > 0) {
        return std::sqrt(du * du + dv * dv);
    }
    return std::max(du, dv);
}

double disc_rectangle_depth(const Piece& disc, const Piece& rect)
{
    const double dx = disc.x - rect.x, dy = disc.y - rect.y;
    return disc.radius - rectangle_distance(dx * rect.c + dy * rect.s, dy * rect.c - dx * rect.s, rect.a, rect.b);
}

/// Least overlap along the two directions of one rectangle.
double along_own(const Piece& own, const Piece& other, double dx, double dy)
{
    const double cosine = std::abs(own.c * other.c + own.s * other.s);
    const double sine = std::abs(own.c * other.s - own.s * other.c);
    const double u = own.a + other.a * cosine + other.b * sine - std::abs(dx * own.c + dy * own.s);
    const double v = own.b + other.a * sine + other.b * cosine - std::abs(dy * own.c - dx * own.s);
    return std::min(u, v);
}

double plan_depth(const Piece& p, const Piece& q)
{
    const double dx = q.x - p.x, dy = q.y - p.y;
    if (p.kind == PieceKind::disc && q.kind == PieceKind::disc) {
        return p.radius + q.radius - std::sqrt(dx * dx + dy * dy);
    }
    if (p.kind == PieceKind::disc) {
        return disc_rectangle_depth(p, q);
    }
    if (q.kind == PieceKind::disc) {
        return disc_rectangle_depth(q, p);
    }
    const double first = along_own(p, q, dx, dy);
    return first <= 0 ? first : std::min(first, along_own(q, p, dx, dy));
}

/// Half extent of a piece across a lying cylinder's axis, in plan.
double across(const Piece& axis, const Piece& other)
{
    if (other.kind == PieceKind::disc) {
        return other.radius;
    }
    const double cosine = std::abs(axis.c * other.c + axis.s * other.s);
    const double sine = std::abs(axis.c * other.s - axis.s * other.c);
    return other.a * sine + other.b * cosine;
}

/// Overlap of a lying cylinder's round cross-section with another piece's shadow along the cylinder's axis.
double round_depth(const Piece& lying, const Piece& other)
{
    const double u = (other.y - lying.y) * lying.c - (other.x - lying.x) * lying.s;
    const double w = other.z - lying.z;
    if (other.kind == PieceKind::lying) {
        // The other's shadow lies within a stadium: a segment as long as its slanted axis, as thick as its radius.
        const double half = other.a * std::abs(lying.c * other.s - lying.s * other.c);
        const double past = std::max(0.0, std::abs(u) - half);
        return lying.radius + other.radius - std::sqrt(past * past + w * w);
    }
    return lying.radius - rectangle_distance(u, w, across(lying, other), other.half_height);
}

} // namespace

double near_overlap(const Piece& p, const Piece& q, double high)
{
    double depth = std::min(high, plan_depth(p, q));
    if (depth > 0 && (p.kind == PieceKind::leaning || q.kind == PieceKind::leaning)) {
        return slanted_overlap(p, q);
    }
    if (depth > 0 && p.kind == PieceKind::lying) {
        depth = std::min(depth, round_depth(p, q));
    }
    if (depth > 0 && q.kind == PieceKind::lying) {
        depth = std::min(depth, round_depth(q, p));
    }
    return std::max(0.0, depth);
}

double Room::radius_at(double z) const
{
    return tapers() ? foot + (radius - foot) * std::clamp(z / height, 0.0, 1.0) : radius;
}

double top_radius(const Piece& p, const Room& room)
{
    const double above = p.z + p.half_height - room.height;
    if (above <= 0 || p.foot == 0 || !room.tapers()) {
        return p.radius;
    }
    return p.radius - (p.radius - p.foot) * std::min(1.0, above / (2 * p.half_height));
}

namespace {

/// How far a piece reaches through the side walls.
double side_excess(const Piece& p, const Room& room)
{
    if (!room.round) {
        double ex = p.radius, ey = p.radius;
        if (p.kind == PieceKind::leaning) {
            ex = piece_support(p, 1, 0, 0) - p.x;
            ey = piece_support(p, 0, 1, 0) - p.y;
        } else if (p.kind != PieceKind::disc) {
            ex = p.a * std::abs(p.c) + p.b * std::abs(p.s);
            ey = p.a * std::abs(p.s) + p.b * std::abs(p.c);
        }
        return std::max(0.0, std::abs(p.x) + ex - room.half_length) +
               std::max(0.0, std::abs(p.y) + ey - room.half_width);
    }
    const double off = std::sqrt(p.x * p.x + p.y * p.y), low = room.radius_at(p.z - p.half_height);
    if (off + p.reach <= low) {
        return 0;
    }
    if (p.kind == PieceKind::disc) { // the wall is straight or bends inwards, so that the two ends tell
        const double foot = p.foot > 0 ? p.foot : p.radius;
        const double at_top = room.tapers() ? room.radius_at(p.z + p.half_height) : low;
        return std::max({0.0, off + foot - low, off + top_radius(p, room) - at_top});
    }
    const double u = std::abs(p.x * p.c + p.y * p.s) + p.a, v = std::abs(p.y * p.c - p.x * p.s) + p.b;
    return std::max(0.0, std::sqrt(u * u + v * v) - low);
}

} // namespace

double excess(const Piece& p, const Room& room)
{
    double sum = 0;
    if (room.floor) {
        sum += std::max(0.0, p.half_height - p.z);
    }
    if (room.ceiling || p.sunk) {
        sum += std::max(0.0, p.z + p.half_height - room.height);
    }
    const double side = side_excess(p, room);
    const bool may_clear = p.further && !room.ceiling;
    return sum + (may_clear ? std::min(side, std::max(0.0, room.height - p.z + p.half_height)) : side);
}

double rise_to_fit(const Piece& p, const Room& room)
{
    return room.tapers() ? side_excess(p, room) / room.slope() : 0;
}

double depth_of(const Piece& piece) { return piece.half_in ? piece.half_height : std::min(least_depth, piece.half_height); }

double shallow(const Piece& piece, const Room& room)
{
    double sum = 0;
    const double least = depth_of(piece);
    if (!room.ceiling) {
        sum += std::max(0.0, piece.z - piece.half_height + least - room.height);
    }
    if (!room.floor) {
        sum += std::max(0.0, least - piece.z - piece.half_height);
    }
    return sum;
}

namespace {

/// Keeps the direction with the largest distance between the two pieces.
class BestWitness {
public:
    BestWitness(const Piece& p, const Piece& q) : p_(p), q_(q) { best_.distance = -std::numeric_limits<double>::infinity(); }

    void offer(double nx, double ny, double nz, bool curved)
    {
        const double length = std::sqrt(nx * nx + ny * ny + nz * nz);
        if (length < 1e-12) {
            return;
        }
        nx /= length, ny /= length, nz /= length;
        if (nx * (q_.x - p_.x) + ny * (q_.y - p_.y) + nz * (q_.z - p_.z) < 0) {
            nx = -nx, ny = -ny, nz = -nz;
        }
        const double distance = -piece_support(q_, -nx, -ny, -nz) - piece_support(p_, nx, ny, nz);
        if (distance > best_.distance + 1e-12) { // the earlier (flatter) direction wins ties
            best_ = {distance, nx, ny, nz, curved};
        }
    }
    const Contact& best() const { return best_; }

private:
    const Piece& p_;
    const Piece& q_;
    Contact best_;
};

void offer_plan(BestWitness& best, const Piece& p, const Piece& q)
{
    for (const Piece* own : {&p, &q}) {
        if (own->kind != PieceKind::disc) {
            const bool turned = own->c * own->s != 0;
            best.offer(own->c, own->s, 0, turned);
            best.offer(-own->s, own->c, 0, turned);
        }
    }
    const Piece* disc = p.kind == PieceKind::disc ? &p : q.kind == PieceKind::disc ? &q : nullptr;
    const Piece* other = disc == &p ? &q : &p;
    if (disc == nullptr) {
        return;
    }
    double tx = other->x, ty = other->y; // nearest point of the other outline's core to the disc's centre
    if (other->kind != PieceKind::disc) {
        const double dx = disc->x - other->x, dy = disc->y - other->y;
        const double u = std::clamp(dx * other->c + dy * other->s, -other->a, other->a);
        const double v = std::clamp(dy * other->c - dx * other->s, -other->b, other->b);
        tx += u * other->c - v * other->s, ty += u * other->s + v * other->c;
    }
    best.offer(disc->x - tx, disc->y - ty, 0, true);
}

/// The direction across a lying cylinder from its axis to the nearest point of the other's shadow.
void offer_round(BestWitness& best, const Piece& lying, const Piece& other)
{
    const double u = (other.y - lying.y) * lying.c - (other.x - lying.x) * lying.s, w = other.z - lying.z;
    double half = across(lying, other), high = other.half_height;
    if (other.kind == PieceKind::lying) {
        half = other.a * std::abs(lying.c * other.s - lying.s * other.c);
        high = 0;
    }
    const double du = u - std::clamp(u, -half, half), dw = w - std::clamp(w, -high, high);
    best.offer(-du * lying.s, du * lying.c, dw, true);
}

} // namespace

Contact contact(const Piece& p, const Piece& q)
{
    if (p.kind == PieceKind::leaning || q.kind == PieceKind::leaning) {
        return slanted_contact(p, q);
    }
    BestWitness best(p, q);
    best.offer(0, 0, 1, false);
    offer_plan(best, p, q);
    if (p.kind == PieceKind::lying) {
        offer_round(best, p, q);
    }
    if (q.kind == PieceKind::lying) {
        offer_round(best, q, p);
    }
    return best.best();
}

} // namespace tuckwright::packing
