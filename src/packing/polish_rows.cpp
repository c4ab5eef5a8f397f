// SPDX-License-Identifier: GPL-3.0-or-later
// The rows of the linear program: contacts and walls around the present layout.
#include <algorithm>
#include <cmath>

#include "packing/polish_step.hpp"

namespace tuckwright::packing {

void PolishStep::add_motion(const Seen& seen, double factor, double nx, double ny, double nz, double ax, double ay)
{
    for (const Link& link : seen.chain) {
        const int column = first_[at(link.body)];
        if (column < 0) {
            continue;
        }
        program_.add(column, factor * (nx * link.c + ny * link.s));
        program_.add(column + 1, factor * (ny * link.c - nx * link.s));
        program_.add(column + 2, factor * nz);
    }
    const int turning = turn_[at(seen.chain.front().body)];
    if (turning >= 0) {
        program_.add(turning, factor * (ny * ax - nx * ay));
    }
}

std::vector<std::array<double, 2>> PolishStep::arms(const Seen& seen, double nx, double ny) const
{
    const Piece& p = seen.piece;
    if (turn_[at(seen.chain.front().body)] < 0 || p.kind == PieceKind::disc) {
        return {{0, 0}};
    }
    std::vector<std::array<double, 2>> found;
    const double b = p.kind == PieceKind::lying ? 0 : p.b;
    double most = -1e300;
    for (const double u : {-p.a, p.a}) {
        for (const double v : {-b, b}) {
            most = std::max(most, nx * (u * p.c - v * p.s) + ny * (u * p.s + v * p.c));
        }
    }
    for (const double u : {-p.a, p.a}) {
        for (const double v : {-b, b}) {
            const double ax = u * p.c - v * p.s, ay = u * p.s + v * p.c;
            if (nx * ax + ny * ay > most - 2 * trust_) {
                found.push_back({ax, ay});
            }
            if (b == 0) {
                break;
            }
        }
    }
    return found;
}

void PolishStep::add_view(const CellView& view)
{
    for (std::size_t i = 0; i < view.seen.size(); ++i) {
        add_walls(view, view.seen[i]);
        for (std::size_t j = i + 1; j < view.seen.size(); ++j) {
            if (view.seen[i].vessel != view.seen[j].vessel) {
                add_pair(view.seen[i], view.seen[j]);
            }
        }
    }
}

void PolishStep::add_pair(const Seen& p, const Seen& q)
{
    const double far = 4 * trust_;
    const double dx = q.piece.x - p.piece.x, dy = q.piece.y - p.piece.y, near = p.piece.reach + q.piece.reach + far;
    if (std::abs(p.piece.z - q.piece.z) > p.piece.half_height + q.piece.half_height + far ||
        dx * dx + dy * dy > near * near) {
        return;
    }
    const Contact k = contact(p.piece, q.piece);
    if (k.distance > far) {
        return;
    }
    const double gap = k.curved ? options_.curved_gap : options_.flat_gap;
    for (const auto& a : arms(p, k.nx, k.ny)) {
        for (const auto& b : arms(q, -k.nx, -k.ny)) {
            // Arms that are not the farthest reach less far by their own lag.
            const double lag = piece_lag(p, a, k.nx, k.ny) + piece_lag(q, b, -k.nx, -k.ny);
            add_motion(p, -1, k.nx, k.ny, k.nz, a[0], a[1]);
            add_motion(q, 1, k.nx, k.ny, k.nz, b[0], b[1]);
            program_.add(slack_, 1);
            program_.at_least(gap - k.distance - lag);
        }
    }
}

double PolishStep::piece_lag(const Seen& seen, const std::array<double, 2>& arm, double nx, double ny) const
{
    const Piece& p = seen.piece;
    if (turn_[at(seen.chain.front().body)] < 0 || p.kind == PieceKind::disc) {
        return 0;
    }
    const double along = std::abs(nx * p.c + ny * p.s) * p.a;
    const double cross = p.kind == PieceKind::lying ? 0 : std::abs(ny * p.c - nx * p.s) * p.b;
    return along + cross - (nx * arm[0] + ny * arm[1]);
}

void PolishStep::add_walls(const CellView& view, const Seen& seen)
{
    const Room& room = view.room;
    const bool outer = view.cell == outermost;
    const Piece& p = seen.piece;
    const double least = depth_of(p);
    if (room.floor) {
        add_wall(seen, 0, 0, -1, 0, 0, p.z - p.half_height, -1);
    } else if (seen.main) {
        add_wall(seen, 0, 0, -1, 0, 0, p.z + p.half_height - least, -1);
    }
    if (room.ceiling || p.sunk) {
        add_wall(seen, 0, 0, 1, 0, 0, room.height - p.z - p.half_height, outer ? height_ : -1);
    } else if (seen.main) {
        add_wall(seen, 0, 0, 1, 0, 0, room.height - p.z + p.half_height - least, -1);
    }
    const bool clears = p.further && !room.ceiling && excess(p, room) >= room.height - p.z + p.half_height - 1e-9 &&
                        room.height - p.z + p.half_height < 4 * trust_;
    if (clears) { // it lies, or had better lie, beyond the rim
        add_wall(seen, 0, 0, -1, 0, 0, p.z - p.half_height - room.height, -1);
    } else if (room.tapers()) {
        add_tapering_wall(seen, room, gap_to_round_wall(view, p, options_));
    } else if (room.round) {
        add_round_wall(seen, room, outer, gap_to_round_wall(view, p, options_));
    } else {
        const auto [gap_x, gap_y] = gaps_to_flat_walls(view, p, options_);
        for (const double sign : {1.0, -1.0}) {
            add_flat_wall(seen, sign, 0, room.half_length - gap_x, outer ? across_[0] : -1);
            add_flat_wall(seen, 0, sign, room.half_width - gap_y, outer ? across_[1] : -1);
        }
    }
}

void PolishStep::add_wall(const Seen& seen, double nx, double ny, double nz, double ax, double ay, double room_left,
                          int wall)
{
    if (room_left > 4 * trust_) {
        return;
    }
    add_motion(seen, -1, nx, ny, nz, ax, ay);
    program_.add(slack_, 1);
    if (wall >= 0) {
        program_.add(wall, 1);
    }
    program_.at_least(-room_left);
}

void PolishStep::add_flat_wall(const Seen& seen, double nx, double ny, double half, int wall)
{
    const double left = half - piece_support(seen.piece, nx, ny, 0);
    for (const auto& arm : arms(seen, nx, ny)) {
        add_wall(seen, nx, ny, 0, arm[0], arm[1], left + piece_lag(seen, arm, nx, ny), wall);
    }
}

void PolishStep::add_tapering_wall(const Seen& seen, const Room& room, double keep)
{
    const Piece& p = seen.piece;
    const double foot = p.kind == PieceKind::disc && p.foot > 0 ? p.foot : p.reach;
    const auto add_end = [&](double z, double radius, double slope) {
        const double left = room.radius_at(z) - keep - radius;
        const double off = std::hypot(p.x, p.y);
        constexpr int around = 12;
        for (int k = 0; k < around; ++k) { // the first towards where it lies
            const double lean = k * 0.5235987755982988, c = std::cos(lean), s = std::sin(lean);
            const double x = off > 1e-9 ? p.x / off : 1, y = off > 1e-9 ? p.y / off : 0;
            const double ux = x * c - y * s, uy = y * c + x * s;
            add_wall(seen, ux, uy, -slope, 0, 0, left - (ux * p.x + uy * p.y), -1);
        }
    };
    const double low = p.z - p.half_height, high = p.z + p.half_height;
    add_end(low, foot, low > 0 && low < room.height ? room.slope() : 0);
    if (p.kind == PieceKind::disc) { // past the rim, it is what lies at the rim that counts, and that narrows as it rises
        const double own = p.foot > 0 ? (p.radius - p.foot) / (2 * p.half_height) : 0;
        add_end(high, top_radius(p, room), high < room.height ? room.slope() : own);
    }
}

void PolishStep::add_round_wall(const Seen& seen, const Room& room, bool outer, double keep)
{
    const Piece& p = seen.piece;
    const int wall = outer ? across_[0] : -1;
    if (p.kind == PieceKind::disc) {
        const double off = std::hypot(p.x, p.y);
        const double left = room.radius - keep - p.radius;
        if (off > 0.25 * left && off > 1e-9) {
            for (const double lean : {0.0, 0.3, -0.3}) { // side cuts keep long steps from leaving the circle
                const double c = std::cos(lean), s = std::sin(lean);
                const double ux = (p.x * c - p.y * s) / off, uy = (p.y * c + p.x * s) / off;
                add_wall(seen, ux, uy, 0, 0, 0, left - (ux * p.x + uy * p.y), wall);
            }
        } else {
            for (int k = 0; k < 12; ++k) {
                const double ux = std::cos(k * 0.5235987755982988), uy = std::sin(k * 0.5235987755982988);
                add_wall(seen, ux, uy, 0, 0, 0, left - (ux * p.x + uy * p.y), wall);
            }
        }
        return;
    }
    for (const double u : {-p.a, p.a}) {
        for (const double v : {-p.b, p.b}) {
            const double ax = u * p.c - v * p.s, ay = u * p.s + v * p.c;
            const double qx = p.x + ax, qy = p.y + ay, far = std::hypot(qx, qy);
            if (far > 1e-9) {
                add_wall(seen, qx / far, qy / far, 0, ax, ay, room.radius - keep - far, wall);
            }
        }
    }
}

} // namespace tuckwright::packing
