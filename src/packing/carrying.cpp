// SPDX-License-Identifier: GPL-3.0-or-later
// Outline. Of every piece that a small drop would press into, some points of both outlines and of the rings round their
// mouths are tried: one of them must lie well within both and over neither mouth.
#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <optional>
#include <vector>

#include "packing/drop.hpp"
#include "tuckwright/geometry.hpp"
#include "tuckwright/tolerance.hpp"

namespace tuckwright::packing {

namespace {

using Point = std::array<double, 2>;

/// A disc or a turned rectangle in plan.
struct Outline {
    bool round = true;
    double x = 0, y = 0, radius = 0, a = 0, b = 0, c = 1, s = 0;

    /// mm inside the edge; negative outside.
    double depth(const Point& p) const
    {
        const double dx = p[0] - x, dy = p[1] - y;
        if (round) {
            return radius - std::sqrt(dx * dx + dy * dy);
        }
        return std::min(a - std::abs(dx * c + dy * s), b - std::abs(dy * c - dx * s));
    }

    Point at_own(double u, double v) const { return {x + u * c - v * s, y + u * s + v * c}; }

    /// Points all round, so many mm within the edge.
    void add_points(double within, std::vector<Point>& points) const
    {
        constexpr int around = 48;
        if (round) {
            for (int k = 0; k < around && radius > within; ++k) {
                const double angle = 2 * std::numbers::pi * k / around;
                points.push_back({x + (radius - within) * std::cos(angle), y + (radius - within) * std::sin(angle)});
            }
            return;
        }
        constexpr int parts = 12;
        const double u = std::max(0.0, a - within), v = std::max(0.0, b - within);
        for (int k = 0; k < parts; ++k) {
            const double t = -1 + 2.0 * k / parts;
            points.push_back(at_own(t * u, -v));
            points.push_back(at_own(u, t * v));
            points.push_back(at_own(-t * u, v));
            points.push_back(at_own(-u, -t * v));
        }
    }
};

constexpr double sure = 0.1; ///< mm within the material

Outline outline_of(const Piece& piece)
{
    Outline made{piece.kind == PieceKind::disc, piece.x, piece.y, piece.radius, piece.a, piece.b, piece.c, piece.s};
    if (piece.kind == PieceKind::lying) { // of a round one, what a small drop presses in
        made.b = std::max(sure, 0.7 * std::sqrt(2 * piece.radius * tolerance::rest_drop));
    }
    return made;
}

/// The open end of a body's hollow on the side that a piece turns up or down, round the piece's own middle.
std::optional<Outline> mouth_of(const Layout& layout, const Piece& piece, bool top)
{
    const Body& body = layout.stowed(piece.owner);
    const Form form = layout.place(piece.owner).form;
    if (piece.further || !body.hollow || (form != Form::standing && form != Form::upside_down)) {
        return std::nullopt;
    }
    const bool own_top = top == (form == Form::standing);
    if (!(own_top ? body.hollow->open_top : body.hollow->open_bottom)) {
        return std::nullopt;
    }
    Outline made{true, piece.x, piece.y, 0, 0, 0, piece.c, piece.s};
    if (const auto* round = std::get_if<Cylinder>(&body.hollow->shape)) {
        made.radius = round->diameter / 2 + body.hollow->clearance;
    } else {
        const auto& box = std::get<Box>(body.hollow->shape);
        made.round = false;
        made.a = box.length / 2 + body.hollow->clearance;
        made.b = box.width / 2 + body.hollow->clearance;
    }
    return made;
}

/// A piece as it is, not as the closed forms take it. Requires: it does not lean.
Hull hull_of(const Piece& p)
{
    Hull hull;
    hull.center = {p.x, p.y, p.z};
    if (p.kind == PieceKind::lying) { // its own z along its plan's direction
        hull.shape = Cylinder{2 * p.radius, 2 * p.a};
        hull.rotation = {{{-p.s, 0, p.c}, {p.c, 0, p.s}, {0, 1, 0}}};
        return hull;
    }
    if (p.kind == PieceKind::disc) {
        hull.shape = Cylinder{2 * p.radius, 2 * p.half_height};
    } else {
        hull.shape = Box{2 * p.a, 2 * p.b, 2 * p.half_height};
    }
    hull.rotation = {{{p.c, -p.s, 0}, {p.s, p.c, 0}, {0, 0, 1}}};
    return hull;
}

/// Whether a small drop presses a piece into another on a slope: the closed forms take some edges for nearer than they
/// are.
bool presses_in(const Layout& layout, const Piece& upper, const Piece& lower)
{
    constexpr double deep = 1e-3; // mm
    if (upper.kind == PieceKind::leaning || lower.kind == PieceKind::leaning) {
        return true;
    }
    layout.count_work(50);
    Hull lowered = hull_of(upper);
    lowered.center.z -= tolerance::rest_drop;
    return separation(lowered, hull_of(lower)).distance < -deep;
}

bool share_material(const Layout& layout, const Piece& upper, const Piece& lower)
{
    const Outline above = outline_of(upper), below = outline_of(lower);
    const auto bore = mouth_of(layout, upper, false), mouth = mouth_of(layout, lower, true);
    std::vector<Point> points{{above.x, above.y}, {below.x, below.y}};
    above.add_points(2 * sure, points);
    below.add_points(2 * sure, points);
    for (const auto& [hole, solid] : {std::pair(&bore, &above), std::pair(&mouth, &below)}) {
        if (*hole) { // the middle of the ring round it
            const double wall =
                solid->round ? solid->radius - (*hole)->radius : std::min(solid->a - (*hole)->a, solid->b - (*hole)->b);
            (*hole)->add_points(-std::max(0.0, wall) / 2, points);
        }
    }
    if (upper.kind == PieceKind::lying && lower.kind == PieceKind::lying) {
        const double sine = above.c * below.s - above.s * below.c;
        if (std::abs(sine) > 1e-3) {
            const double along = ((below.x - above.x) * below.s - (below.y - above.y) * below.c) / sine;
            points.push_back(above.at_own(along, 0));
        } else { // side by side along a line: any common point of it
            const double from = (below.x - above.x) * above.c + (below.y - above.y) * above.s;
            points.push_back(above.at_own(std::clamp(from, -above.a, above.a), 0));
        }
    }
    return std::any_of(points.begin(), points.end(), [&](const Point& p) {
        constexpr double enough = 0.9 * sure;
        return above.depth(p) > enough && below.depth(p) > enough && (!bore || bore->depth(p) < -enough) &&
               (!mouth || mouth->depth(p) < -enough);
    });
}

} // namespace

namespace {

/// Whether a small drop of what lies in a vessel that does not stand presses it into that one's wall or something else.
bool is_stopped(const Layout& layout, int body, const Place& place, const Vec3& down)
{
    constexpr double drop = 0.95 * tolerance::rest_drop, sure_excess = 1e-3;
    Place lower = place;
    lower.x += drop * down.x, lower.y += drop * down.y, lower.z += drop * down.z;
    bool stopped = false;
    layout.each_level_at(body, lower, [&](int cell, int vessel, const std::vector<Piece>& pieces) {
        for (const Piece& p : pieces) {
            stopped = stopped || excess(p, layout.room(cell)) > sure_excess;
            for (const int other : layout.inside(cell)) {
                for (const Piece& q : layout.visible(other)) {
                    stopped = stopped || (other != vessel && overlap(p, q) > sure_excess);
                }
            }
        }
    });
    return stopped;
}

} // namespace

bool is_carried(const Layout& layout, int body, const Place& place)
{
    constexpr double near = tolerance::rest_drop / 2;
    constexpr double steepest = 0.25; // upward part of a normal: on a steeper slope a small drop goes past
    if (layout.scene().stowed(body, place.way).pressed || place.form == Form::leaning) {
        return true; // a spring, or what it leans on
    }
    if (const Vec3 up = up_in_cell(layout, place.cell); std::abs(up.z) < 0.5) {
        return is_stopped(layout, body, place, {-up.x, -up.y, -up.z});
    }
    layout.count_work(10 + layout.inside(place.cell).size() / 8);
    bool carried = false;
    layout.each_level_at(
        body, place,
        [&](int cell, int vessel, const std::vector<Piece>& pieces) {
            const Room& room = layout.room(cell);
            for (const Piece& p : pieces) {
                if (carried || p.owner != body) {
                    continue;
                }
                const double low = p.z - p.half_height;
                carried = (room.floor && low < near) ||
                          (p.further && !room.ceiling && std::abs(low - room.height) < near) || room.tapers();
                for (const int other : layout.inside(cell)) {
                    if (carried || other == vessel || layout.bound(other).high < low - near) {
                        continue;
                    }
                    for (const Piece& q : layout.visible(other)) {
                        const double dx = q.x - p.x, dy = q.y - p.y, reach = p.reach + q.reach;
                        if (q.z + q.half_height < low - near || q.z - q.half_height > p.z + p.half_height ||
                            dx * dx + dy * dy > reach * reach) {
                            continue;
                        }
                        const Contact c = contact(p, q);
                        if (c.nz < -steepest && c.distance < -0.95 * c.nz * tolerance::rest_drop) {
                            carried = carried || (c.nz > -0.99 ? presses_in(layout, p, q) : share_material(layout, p, q));
                        }
                    }
                }
            }
        },
        near);
    return carried;
}

} // namespace tuckwright::packing
