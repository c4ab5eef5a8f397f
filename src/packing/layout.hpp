// SPDX-License-Identifier: GPL-3.0-or-later
/// A layout: a place for every body of a scene, and what it costs in overlap. Bodies move with all that they hold,
/// since places are told in the frame of the cell.
#pragma once
#include <cstdint>
#include <memory>
#include <vector>

#include "packing/scene.hpp"

namespace tuckwright::packing {

/// Weights of guided local search: one for each pair of bodies, and one for each body against walls.
class Weights {
public:
    explicit Weights(std::size_t bodies) : n_(bodies), pair_(bodies * bodies, 1.0) {}
    double& of(int i, int j) { return pair_[static_cast<std::size_t>(i) * n_ + static_cast<std::size_t>(j)]; }
    double of(int i, int j) const { return pair_[static_cast<std::size_t>(i) * n_ + static_cast<std::size_t>(j)]; }
    double wall(int i) const { return of(i, i); }
    std::size_t bodies() const { return n_; }

private:
    std::size_t n_;
    std::vector<double> pair_;
};

/// What pieces lie within: an upright cylinder round them all.
struct Bound {
    double x = 0, y = 0, reach = 0; ///< mm; its axis and radius
    double low = 0, high = 0;
    bool slants = false;            ///< whether any of them leans

    static Bound of(const std::vector<Piece>& pieces);
    /// Whether nothing within the one can overlap anything within the other.
    bool is_clear_of(const Bound& other) const
    {
        constexpr double hair = 1e-9; // so that rounding never says so where overlap() would not
        const double dx = x - other.x, dy = y - other.y, far = reach + other.reach + hair;
        return low > other.high + hair || other.low > high + hair || dx * dx + dy * dy > far * far;
    }
};

class Layout {
public:
    Layout(const Scene& scene, const Envelope& envelope);

    const Scene& scene() const { return *scene_; }
    const Envelope& envelope() const { return envelope_; }
    void set_envelope(const Envelope& envelope);

    std::size_t size() const { return places_.size(); }
    const Place& place(int body) const { return places_[static_cast<std::size_t>(body)]; }
    /// A body as it is stowed now.
    const Body& stowed(int body) const { return scene_->stowed(body, place(body).way); }
    /// Moves a body (with what it holds). Requires: may_enter().
    void put(int body, const Place& place);
    /// Takes a body out of all cells, so that others do not see it, or lets it back in at its place.
    void hide(int body);

    /// Bodies directly in a cell.
    const std::vector<int>& inside(int cell) const { return children_[static_cast<std::size_t>(cell + 1)]; }
    /// Whether the body may lie in the cell in that form, stowed that way (as now, if not told): by the fit table, for
    /// what it holds too, without closing a circle of containers, upright ones in upright vessels only, and in allowed
    /// company.
    bool may_enter(int body, int cell, Form form) const { return may_enter(body, cell, form, place(body).way); }
    bool may_enter(int body, int cell, Form form, int way) const;

    /// Whether the scene's rules of company let the body, with what it holds, lie in the cell.
    bool company_allows(int body, int cell) const;
    /// How many of the vessels that must hold the body would not hold it in that cell.
    int unmet_company(int body, int cell) const;

    /// Pieces of a body, and of what stands out of it, in the frame of its cell.
    const std::vector<Piece>& visible(int body) const { return visible_[static_cast<std::size_t>(body)]; }
    /// The room of a cell as its vessel stands now.
    const Room& room(int cell) const { return rooms_[static_cast<std::size_t>(cell + 1)]; }
    /// Whether all vessels from this cell outward stand upright.
    bool upright(int cell) const;

    /// Weighted overlap and excess of the body, with what it holds, were it at that place; gives up above `enough`.
    double cost_at(int body, const Place& place, const Weights& weights, double enough) const;
    /// Unweighted overlap of two bodies, wherever they lie, counting only their own pieces.
    double overlap_of(int i, int j) const;
    double excess_of(int body) const;
    /// How far a body with these pieces and another bar each other's ways through the narrow opening of their cell.
    double jam_of(const std::vector<Piece>& pieces, int cell, int other) const;
    /// Sum over all pairs and walls.
    double total_overlap() const;

    /// How many pairs of pieces have been measured so far, or work worth as much: the measure of effort. Copies of a
    /// layout count on together, so that work on a copy which is thrown away counts too.
    std::uint64_t measured() const { return *measured_; }
    void count_work(std::uint64_t work) const { *measured_ += work; }
    /// Counts from nothing, apart from the layouts that this one was copied from. To be called where a thread takes over.
    void count_anew() { measured_ = std::make_shared<std::uint64_t>(0); }

    /// Calls visit(cell, vessel, the body's own pieces in that cell's frame) for the body's cell and for each cell
    /// further out into which it stands out; `vessel` is the body of that cell which is, or holds, the body.
    /// What comes within `margin` mm of standing out counts as standing out.
    template <class Visit> void each_level(int body, Visit visit, double margin = 0) const
    {
        std::vector<Piece> pieces = own_pieces(body, place(body));
        int vessel = body;
        for (int cell = place(body).cell;; cell = place(cell).cell) {
            visit(cell, vessel, pieces);
            if (cell == outermost || !outward(cell, pieces, margin)) {
                return;
            }
            vessel = cell;
        }
    }

    /// The same for a body with what stands out of it, were it at that place.
    template <class Visit> void each_level_at(int body, const Place& where, Visit visit, double margin = 0) const
    {
        std::vector<Piece> pieces;
        gather(body, where, pieces);
        int vessel = body;
        for (int cell = where.cell;; cell = place(cell).cell) {
            visit(cell, vessel, pieces);
            if (cell == outermost || !outward(cell, pieces, margin)) {
                return;
            }
            vessel = cell;
        }
    }

    std::vector<Piece> own_pieces(int body, const Place& place) const;
    /// What the visible pieces of a body lie within.
    const Bound& bound(int body) const { return bounds_[at(body)]; }

private:
    void refresh(int body);
    void refresh_room(int body);
    void refresh_protruding(int vessel);
    void gather(int body, const Place& place, std::vector<Piece>& out) const;
    /// Keeps the pieces that stand out of the cell and tells them in the frame of the vessel's own cell; false if none.
    bool outward(int cell, std::vector<Piece>& pieces, double margin) const;
    void to_outer(int vessel, const Place& vessel_place, Piece& piece) const;
    bool stands_out(const Piece& piece, int vessel, double margin) const;
    double closing_excess(int body, const Place& place) const;
    double neck_excess(int body, const Place& place) const;
    bool holds_upright(int body) const;
    /// Column of the fit table for what lies in a cell.
    std::size_t column(int cell) const
    {
        return cell == outermost ? 0 : at(scene_->row(cell, place(cell).way) + 1);
    }

    const Scene* scene_;
    Envelope envelope_;
    std::vector<Place> places_;
    std::vector<std::vector<int>> children_; // by cell + 1
    std::vector<std::vector<Piece>> visible_;
    std::vector<std::vector<Piece>> protruding_; // by cell: what stands out of it, in its own frame
    std::vector<Bound> bounds_; // of these
    std::vector<Room> rooms_;   // by cell + 1; of what has no hollow, nothing that means anything
    std::shared_ptr<std::uint64_t> measured_ = std::make_shared<std::uint64_t>(0);
};

} // namespace tuckwright::packing
