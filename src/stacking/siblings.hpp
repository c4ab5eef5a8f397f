// SPDX-License-Identifier: GPL-3.0-or-later
/// What goes into one container, one after the other, and who bars whose way.
#pragma once
#include <cstdint>
#include <map>
#include <optional>
#include <tuple>
#include <vector>

#include "stacking/direction.hpp"
#include "stacking/narrow.hpp"
#include "stacking/replay.hpp"
#include "tuckwright/geometry.hpp"

namespace tuckwright::stacking {

/// Whether a sleeve that holds something can stand in its container before that goes in: its axis is the way in.
bool can_stand_empty(const Replay& complete, std::size_t item);

/// The items of one container, each with all that moves with it. A sleeve that is opened goes in empty; what it holds
/// follows as a sibling of its own, along the same way.
class Siblings {
public:
    /// Requires: all items are placed in the replay; only sleeves that can stand empty are opened.
    Siblings(const Replay& complete, std::optional<std::size_t> holder, const std::vector<bool>& opened);

    std::size_t count() const { return items_.size(); }
    std::size_t item(std::size_t k) const { return items_[k]; }
    /// The ways in for that sibling, the plainest first.
    const std::vector<Way>& ways(std::size_t k) const { return ways_[k]; }
    /// Whether one sibling lies in the other, which is then an opened sleeve.
    bool lies_in(std::size_t k, std::size_t sleeve) const { return is_within(bundle_, items_[k], items_[sleeve]); }

    /// Whether that way of one, of those that it has, meets the other in its place.
    bool barred(std::size_t mover, std::size_t way, std::size_t other);

    using Rank = std::tuple<int, std::int64_t, double, std::size_t>;
    /// Who goes first among those that may: what is wanted late, and what is wanted soon last; the lower, then the larger, then the earlier.
    const Rank& rank(std::size_t k) const { return ranks_[k]; }

private:
    void add(const Replay& complete, std::size_t item, const std::vector<bool>& opened);
    Rank work_out_rank(std::size_t item, Vec3 down) const;
    bool work_out(std::size_t mover, const Way& way, std::size_t other) const;
    bool meets_on(const Hull& way, std::size_t other) const;

    const Bundle& bundle_;
    double size_;
    std::vector<std::size_t> items_;
    std::vector<std::vector<Way>> ways_;
    std::vector<Rank> ranks_;
    std::vector<std::vector<Solid>> solids_;
    std::vector<std::vector<Extent>> extents_;
    std::map<std::tuple<std::size_t, std::size_t, std::size_t>, bool> barred_;
};

} // namespace tuckwright::stacking
