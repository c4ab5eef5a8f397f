// SPDX-License-Identifier: GPL-3.0-or-later
#include "packing/leaning.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "tuckwright/geometry.hpp"

namespace tuckwright::packing {

std::optional<Rod> rod_of(const Body& body)
{
    constexpr double slender = 4; // what is stouter gains nothing by leaning
    if (body.pieces.size() != 1 || body.hollow || body.upright) {
        return std::nullopt;
    }
    Rod best;
    for (const Form form : {Form::standing, Form::on_end, Form::on_side}) {
        const Piece p = piece_at(body, 0, {outermost, form, 0, 0, 0, 1, 0}, 0);
        const bool disc = p.kind == PieceKind::disc;
        const double x = disc ? p.radius : p.a, y = disc ? p.radius : p.b;
        if (p.half_height > best.along) {
            best = {p.half_height, std::min(x, y), std::max(x, y), form, x > y};
        }
    }
    return best.along >= slender * best.aside ? std::optional(best) : std::nullopt;
}

double tilt_by_width(const Rod& rod, const Room& room, double c, double s)
{
    double half = 0;
    if (room.round) {
        const double radius = room.tapers() ? room.foot : room.radius;
        half = radius > rod.aside ? std::sqrt(radius * radius - rod.aside * rod.aside) : 0;
    } else {
        constexpr double none = 1e-9;
        const double x = room.half_length - rod.aside * std::abs(s), y = room.half_width - rod.aside * std::abs(c);
        half = std::min(std::abs(c) > none ? x / std::abs(c) : 1e300, std::abs(s) > none ? y / std::abs(s) : 1e300);
    }
    // along sin t + across cos t = half
    const double whole = std::hypot(rod.along, rod.across);
    return std::asin(std::clamp(half / whole, 0.0, 1.0)) - std::atan2(rod.across, rod.along);
}

double tilt_by_height(const Rod& rod, double height)
{
    // along cos t + across sin t = height / 2
    const double whole = std::hypot(rod.along, rod.across);
    return std::atan2(rod.across, rod.along) + std::acos(std::clamp(height / 2 / whole, 0.0, 1.0));
}

bool may_lean_in(const Body& body, const Room& room)
{
    const auto rod = rod_of(body);
    if (!rod) {
        return false;
    }
    constexpr double upright = 0.02, generous = 0.005; // a share of its length; the search finds the exact slant, or not
    const double x = std::max(0.0, room.half_length - rod->aside), y = std::max(0.0, room.half_width - rod->aside);
    const double long_way = std::hypot(x, y);
    const bool has_corners = !room.round && long_way > 0;
    const std::array<std::array<double, 2>, 3> ways{
        {{1, 0}, {0, 1}, {has_corners ? x / long_way : 1, has_corners ? y / long_way : 0}}};
    for (const auto& [c, s] : ways) {
        for (const double tilt : {tilt_by_width(*rod, room, c, s), tilt_by_height(*rod, room.height)}) {
            Place place{outermost, Form::leaning, 0, 0, 0, c, s, 0, std::cos(tilt), std::sin(tilt)};
            place.z = piece_at(body, 0, place, 0).half_height;
            if (tilt > upright && excess(piece_at(body, 0, place, 0), room) <= generous * rod->along) {
                return true;
            }
        }
    }
    return false;
}

namespace {

struct Axes {
    std::array<Vec3, 3> of;
};

Axes axes_of(const Piece& p)
{
    if (p.kind != PieceKind::leaning) {
        return {{Vec3{p.c, p.s, 0}, Vec3{-p.s, p.c, 0}, Vec3{0, 0, 1}}};
    }
    return {{Vec3{p.tilt_c * p.c, p.tilt_c * p.s, -p.tilt_s}, Vec3{-p.s, p.c, 0},
             Vec3{p.tilt_s * p.c, p.tilt_s * p.s, p.tilt_c}}};
}

/// The middle line of a piece: what round sides are round about, the long way of the others.
struct Line {
    Vec3 middle, half;
};

Line line_of(const Piece& p)
{
    const Vec3 middle{p.x, p.y, p.z};
    switch (p.kind) {
    case PieceKind::leaning: return {middle, p.along * axes_of(p).of[2]};
    case PieceKind::disc: return {middle, {0, 0, p.half_height}};
    case PieceKind::lying: return {middle, p.a * axes_of(p).of[0]};
    case PieceKind::rectangle: break;
    }
    return {middle, p.half_height > p.a ? Vec3{0, 0, p.half_height} : p.a * axes_of(p).of[0]};
}

/// From the point of one line that is nearest to the other to that one's.
Vec3 nearest(const Line& p, const Line& q)
{
    const Vec3 between = p.middle - q.middle;
    const double a = dot(p.half, p.half), b = dot(p.half, q.half), e = dot(q.half, q.half);
    const double c = dot(p.half, between), f = dot(q.half, between), square = a * e - b * b;
    double s = square > 1e-12 ? std::clamp((b * f - c * e) / square, -1.0, 1.0) : 0;
    double t = e > 0 ? std::clamp((b * s + f) / e, -1.0, 1.0) : 0;
    s = a > 0 ? std::clamp((b * t - c) / a, -1.0, 1.0) : 0;
    return q.middle + t * q.half - p.middle - s * p.half;
}

class BestLean {
public:
    BestLean(const Piece& p, const Piece& q) : p_(p), q_(q), between_{q.x - p.x, q.y - p.y, q.z - p.z} {}

    void offer(Vec3 n)
    {
        const double length = norm(n);
        if (length < 1e-9) {
            return;
        }
        n = ((dot(n, between_) < 0 ? -1 : 1) / length) * n;
        const double distance = -piece_support(q_, -n.x, -n.y, -n.z) - piece_support(p_, n.x, n.y, n.z);
        if (distance > best_.distance + 1e-12) {
            best_ = {distance, n.x, n.y, n.z, true};
        }
    }
    const Contact& best() const { return best_; }
    bool apart() const { return best_.distance >= 0; }

private:
    const Piece& p_;
    const Piece& q_;
    Vec3 between_;
    Contact best_{-1e300, 0, 0, 1, true};
};

} // namespace

Contact slanted_contact(const Piece& p, const Piece& q)
{
    BestLean best(p, q);
    const Axes a = axes_of(p), b = axes_of(q);
    for (const Vec3& u : a.of) {
        best.offer(u);
        for (const Vec3& v : b.of) {
            best.offer(cross(u, v));
        }
    }
    for (const Vec3& v : b.of) {
        best.offer(v);
    }
    best.offer(nearest(line_of(p), line_of(q)));
    return best.best();
}

double slanted_overlap(const Piece& p, const Piece& q)
{
    BestLean best(p, q);
    best.offer(nearest(line_of(p), line_of(q))); // mostly the one that parts them
    if (best.apart()) {
        return 0;
    }
    const Axes a = axes_of(p), b = axes_of(q);
    for (const Axes* own : {&a, &b}) {
        for (const Vec3& u : own->of) {
            best.offer(u);
            if (best.apart()) {
                return 0;
            }
        }
    }
    for (const Vec3& u : a.of) {
        for (const Vec3& v : b.of) {
            best.offer(cross(u, v));
        }
    }
    return std::max(0.0, -best.best().distance);
}

} // namespace tuckwright::packing
