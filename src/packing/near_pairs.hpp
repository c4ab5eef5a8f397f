// SPDX-License-Identifier: GPL-3.0-or-later
/// Which pieces of a cell may touch while all of them move a little.
#pragma once
#include <cmath>
#include <cstddef>
#include <span>
#include <vector>

#include "packing/piece.hpp"

namespace tuckwright::packing {

/// For each piece those behind it in the list that may touch it, in rising order: known anew only when some piece has
/// gone so far that one might be missed.
/// Source: neighbour lists with a skin, L. Verlet, Physical Review 159 (1967).
class NearPairs {
public:
    /// Pieces touch when they come within `air`; one may go half of the `skin` before all are looked at again, in mm.
    NearPairs(double air, double skin) : air_(air), skin_(skin) {}

    /// To be called whenever the pieces have moved. Requires: the same pieces as at first, which only turn and move.
    /// Complexity: linear in the pieces, but for the few times when all are looked at again: by rising x.
    void follow(std::span<const Piece> pieces);

    /// Behind piece i, those that may touch it.
    std::span<const int> of(std::size_t i) const
    {
        return {others_.data() + first_[i], others_.data() + first_[i + 1]};
    }
    /// How many pairs there are.
    std::size_t pairs() const { return others_.size(); }

    /// Whether two pieces are so near that a contact has to be worked out.
    bool may_touch(const Piece& p, const Piece& q) const { return within(p, q, air_); }

private:
    static bool within(const Piece& p, const Piece& q, double air)
    {
        const double dx = q.x - p.x, dy = q.y - p.y, reach = p.reach + q.reach + air;
        return p.half_height + q.half_height + air - std::abs(p.z - q.z) > 0 && dx * dx + dy * dy < reach * reach;
    }
    bool have_gone_far(std::span<const Piece> pieces) const;
    void look_at_all(std::span<const Piece> pieces);

    double air_, skin_;
    std::vector<Piece> then_;        // where they were when all were looked at
    std::vector<std::size_t> first_; // by piece, and one more: where its others begin
    std::vector<int> others_;
};

} // namespace tuckwright::packing
