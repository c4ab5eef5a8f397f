// SPDX-License-Identifier: GPL-3.0-or-later
#include "packing/layout.hpp"

#include <algorithm>
#include <cmath>

#include "packing/neck.hpp"
#include "tuckwright/contract.hpp"

namespace tuckwright::packing {

namespace {

constexpr double exact_enough = 1e-9; ///< mm: what just fills an opening passes it

} // namespace

Bound Bound::of(const std::vector<Piece>& pieces)
{
    if (pieces.size() == 1) {
        const Piece& p = pieces.front();
        return {p.x, p.y, p.reach, p.z - p.half_height, p.z + p.half_height, p.kind == PieceKind::leaning};
    }
    Bound bound{pieces.front().x, pieces.front().y, 0, 1e300, -1e300, false};
    for (const Piece& p : pieces) {
        const double dx = p.x - bound.x, dy = p.y - bound.y;
        bound.reach = std::max(bound.reach, std::sqrt(dx * dx + dy * dy) + p.reach);
        bound.low = std::min(bound.low, p.z - p.half_height);
        bound.high = std::max(bound.high, p.z + p.half_height);
        bound.slants = bound.slants || p.kind == PieceKind::leaning;
    }
    return bound;
}

Layout::Layout(const Scene& scene, const Envelope& envelope)
    : scene_(&scene), envelope_(envelope), places_(scene.bodies.size()), children_(scene.bodies.size() + 1),
      visible_(scene.bodies.size()), protruding_(scene.bodies.size()), bounds_(scene.bodies.size()),
      rooms_(scene.bodies.size() + 1)
{
    rooms_[0] = room_of(envelope);
    for (int body = 0; body < static_cast<int>(size()); ++body) {
        children_[0].push_back(body);
        refresh_room(body);
        refresh(body);
    }
}

void Layout::set_envelope(const Envelope& envelope)
{
    envelope_ = envelope;
    rooms_[0] = room_of(envelope);
}

void Layout::refresh_room(int body)
{
    if (const auto& hollow = stowed(body).hollow) {
        rooms_[at(body + 1)] = room_of(*hollow, place(body).form == Form::standing);
    }
}

bool Layout::upright(int cell) const
{
    for (; cell != outermost; cell = place(cell).cell) {
        if (place(cell).form != Form::standing) {
            return false;
        }
    }
    return true;
}

bool Layout::holds_upright(int body) const
{
    if (scene_->bodies[at(body)].upright) {
        return true;
    }
    const auto& held = inside(body);
    return std::any_of(held.begin(), held.end(), [&](int child) { return holds_upright(child); });
}

bool Layout::may_enter(int body, int cell, Form form, int way) const
{
    const int row = scene_->row(body, way);
    if ((scene_->fits[at(row)][column(cell)] & bit(form)) == 0) {
        return false;
    }
    if (way != place(body).way) {
        const auto& held = inside(body);
        const auto stays = [&](int child) {
            const Place& where = place(child);
            return (scene_->fits[at(scene_->row(child, where.way))][at(row + 1)] & bit(where.form)) != 0;
        };
        if (!held.empty() && !(scene_->stowed(body, way).hollow && std::all_of(held.begin(), held.end(), stays))) {
            return false;
        }
    }
    for (int outer = cell; outer != outermost; outer = place(outer).cell) {
        if (outer == body) {
            return false;
        }
    }
    return (!holds_upright(body) || (form == Form::standing && upright(cell))) && company_allows(body, cell);
}

void Layout::put(int body, const Place& where)
{
    const int left = place(body).cell;
    const bool is_stowed_anew = place(body).way != where.way || place(body).form != where.form;
    places_[at(body)] = where;
    if (is_stowed_anew) {
        refresh_room(body);
    }
    if (scene_->stowed(body, where.way).pressed) { // exactly on the axis, whatever sums have rounded to
        places_[at(body)].x = places_[at(body)].y = 0;
    }
    auto& old_cell = children_[at(left + 1)];
    old_cell.erase(std::remove(old_cell.begin(), old_cell.end(), body), old_cell.end());
    auto& new_cell = children_[at(where.cell + 1)];
    new_cell.insert(std::upper_bound(new_cell.begin(), new_cell.end(), body), body);
    if (left != outermost && left != where.cell) {
        refresh(left);
    }
    refresh(body);
}

void Layout::hide(int body)
{
    auto& cell = children_[at(place(body).cell + 1)];
    cell.erase(std::remove(cell.begin(), cell.end(), body), cell.end());
    if (place(body).cell != outermost) {
        refresh(place(body).cell);
    }
}

void Layout::refresh(int body)
{
    for (; body != outermost; body = place(body).cell) {
        refresh_protruding(body);
        visible_[at(body)].clear();
        gather(body, place(body), visible_[at(body)]);
        bounds_[at(body)] = Bound::of(visible_[at(body)]);
        if (place(body).cell == outermost) {
            return;
        }
    }
}

void Layout::refresh_protruding(int vessel)
{
    std::vector<Piece>& out = protruding_[at(vessel)];
    out.clear();
    for (const int child : inside(vessel)) {
        for (const Piece& piece : visible(child)) {
            if (stands_out(piece, vessel, 0)) {
                out.push_back(piece);
            }
        }
    }
}

bool Layout::stands_out(const Piece& piece, int vessel, double margin) const
{
    const Hollow& hollow = *stowed(vessel).hollow;
    return (hollow.open_top && piece.z + piece.half_height + margin > height_of(hollow.shape)) ||
           (hollow.open_bottom && piece.z - piece.half_height - margin < 0);
}

void Layout::to_outer(int vessel, const Place& at_place, Piece& piece) const
{
    const double x = piece.x, y = piece.y, c = piece.c, s = piece.s;
    piece.sunk = false; // that is about the cell it comes from
    piece.x = at_place.x + at_place.c * x - at_place.s * y;
    piece.y = at_place.y + at_place.s * x + at_place.c * y;
    piece.z += at_place.z + scene_->stowed(vessel, at_place.way).hollow->floor;
    piece.c = at_place.c * c - at_place.s * s;
    piece.s = at_place.s * c + at_place.c * s;
}

void Layout::gather(int body, const Place& where, std::vector<Piece>& out) const
{
    const Body& source = scene_->stowed(body, where.way);
    for (std::size_t k = 0; k < source.pieces.size(); ++k) {
        out.push_back(piece_at(source, k, where, body));
    }
    if (!source.hollow || where.form != Form::standing) {
        return;
    }
    for (Piece piece : protruding_[at(body)]) {
        to_outer(body, where, piece);
        out.push_back(piece);
    }
}

std::vector<Piece> Layout::own_pieces(int body, const Place& where) const
{
    const Body& source = scene_->stowed(body, where.way);
    std::vector<Piece> pieces;
    for (std::size_t k = 0; k < source.pieces.size(); ++k) {
        pieces.push_back(piece_at(source, k, where, body));
    }
    return pieces;
}

bool Layout::outward(int cell, std::vector<Piece>& pieces, double margin) const
{
    if (place(cell).form != Form::standing) {
        return false;
    }
    pieces.erase(std::remove_if(pieces.begin(), pieces.end(),
                                [&](const Piece& piece) { return !stands_out(piece, cell, margin); }),
                 pieces.end());
    for (Piece& piece : pieces) {
        to_outer(cell, place(cell), piece);
    }
    return !pieces.empty();
}

double Layout::closing_excess(int body, const Place& where) const
{
    const Body& source = scene_->stowed(body, where.way);
    if (!source.hollow || where.form == Form::standing) {
        return 0;
    }
    double sum = 0; // a vessel that does not stand lets nothing stand out
    for (const int child : inside(body)) {
        for (const Piece& piece : visible(child)) {
            sum += std::max(0.0, piece.z + piece.half_height - height_of(source.hollow->shape)) +
                   std::max(0.0, piece.half_height - piece.z);
        }
    }
    return sum;
}

double Layout::neck_excess(int body, const Place& where) const
{
    if (where.cell == outermost || !stowed(where.cell).hollow->neck) {
        return 0;
    }
    const Room neck = room_of_neck(*stowed(where.cell).hollow);
    if (neck.round) {
        return 0; // what passes a round opening in some turn passes it in all; the fit table knows
    }
    double left = 0, right = 0, front = 0, back = 0; // it goes in as it is turned in its place, anywhere in the opening
    const std::vector<Piece> pieces = own_pieces(body, where);
    for (std::size_t k = 0; k < pieces.size(); ++k) {
        const auto reach = [&](double x, double y) { return piece_support(pieces[k], x, y, 0); };
        left = k == 0 ? reach(-1, 0) : std::max(left, reach(-1, 0));
        right = k == 0 ? reach(1, 0) : std::max(right, reach(1, 0));
        front = k == 0 ? reach(0, -1) : std::max(front, reach(0, -1));
        back = k == 0 ? reach(0, 1) : std::max(back, reach(0, 1));
    }
    return std::max(0.0, (left + right) / 2 - neck.half_length - exact_enough) +
           std::max(0.0, (front + back) / 2 - neck.half_width - exact_enough);
}

double Layout::jam_of(const std::vector<Piece>& pieces, int cell, int other) const
{
    if (cell == outermost || !stowed(cell).hollow->neck) {
        return 0;
    }
    *measured_ += 6 + 4 * pieces.size() * visible(other).size(); // roughly: each may be tried along three ways
    return jam(*stowed(cell).hollow, pieces, visible(other));
}

double Layout::cost_at(int body, const Place& where, const Weights& weights, double enough) const
{
    thread_local std::vector<Piece> pieces;
    pieces.clear();
    *measured_ += 3; // what a call costs besides its pairs
    gather(body, where, pieces);
    // A vessel that it must lie in and does not is as bad as lying quite outside of that.
    double cost =
        (closing_excess(body, where) + neck_excess(body, where) + unmet_company(body, where.cell) * scene_->size) *
        weights.wall(body);
    int vessel = body;
    for (int cell = where.cell;; cell = place(cell).cell) {
        const Room& walls = room(cell);
        for (const Piece& piece : pieces) {
            cost += excess(piece, walls) * weights.wall(piece.owner);
        }
        if (vessel == body) {
            cost += shallow(pieces.front(), walls) * weights.wall(body);
        }
        const Bound own = Bound::of(pieces);
        for (const int other : inside(cell)) {
            if (other == vessel) {
                continue;
            }
            if (vessel == body) {
                cost += jam_of(pieces, cell, other) * weights.of(body, other);
            }
            const Bound& theirs_all = bounds_[at(other)];
            if (!own.slants && !theirs_all.slants && own.is_clear_of(theirs_all)) {
                *measured_ += pieces.size() * visible(other).size(); // the work is counted as if it were done
                if (cost >= enough) {
                    return cost;
                }
                continue;
            }
            for (const Piece& theirs : visible(other)) {
                for (const Piece& piece : pieces) {
                    const bool slants = piece.kind == PieceKind::leaning || theirs.kind == PieceKind::leaning;
                    *measured_ += slants ? 12 : 1;
                    const double depth = overlap(piece, theirs);
                    if (depth > 0) {
                        cost += depth * weights.of(piece.owner, theirs.owner);
                    }
                }
            }
            if (cost >= enough) {
                return cost;
            }
        }
        if (cell == outermost || !outward(cell, pieces, 0)) {
            return cost;
        }
        vessel = cell;
    }
}

double Layout::overlap_of(int i, int j) const
{
    double sum = 0;
    each_level(i, [&](int cell, int vessel, const std::vector<Piece>& mine) {
        for (const int other : inside(cell)) {
            if (other == vessel) {
                continue;
            }
            if (vessel == i && other == j) {
                sum += jam_of(visible(i), cell, other);
            }
            for (const Piece& theirs : visible(other)) {
                if (theirs.owner == j) {
                    for (const Piece& piece : mine) {
                        ++*measured_;
                        sum += overlap(piece, theirs);
                    }
                }
            }
        }
    });
    return sum;
}

double Layout::excess_of(int body) const
{
    double sum = unmet_company(body, place(body).cell) * scene_->size + neck_excess(body, place(body));
    each_level(body, [&](int cell, int, const std::vector<Piece>& pieces) {
        const Room& walls = room(cell);
        for (const Piece& piece : pieces) {
            sum += excess(piece, walls);
        }
        if (cell == place(body).cell) {
            sum += shallow(pieces.front(), walls);
        }
    });
    return sum;
}

double Layout::total_overlap() const
{
    double sum = 0;
    for (int i = 0; i < static_cast<int>(size()); ++i) {
        sum += excess_of(i);
    }
    for (int i = 0; i < static_cast<int>(size()); ++i) {
        each_level(i, [&](int cell, int vessel, const std::vector<Piece>& mine) {
            const Bound own = Bound::of(mine);
            for (const int other : inside(cell)) {
                if (other == vessel) {
                    continue;
                }
                sum += vessel == i && other > i ? jam_of(visible(i), cell, other) : 0;
                const Bound& theirs_all = bounds_[at(other)];
                const bool is_clear = !own.slants && !theirs_all.slants && own.is_clear_of(theirs_all);
                for (const Piece& theirs : visible(other)) {
                    *measured_ += theirs.owner > i ? mine.size() : 0; // the work is counted as if it were done
                    for (std::size_t k = 0; k < mine.size() && theirs.owner > i && !is_clear; ++k) {
                        sum += overlap(mine[k], theirs);
                    }
                }
            }
        });
    }
    return sum;
}

} // namespace tuckwright::packing
