// SPDX-License-Identifier: GPL-3.0-or-later
/// One step of the polish: the linear program around a layout.
#pragma once
#include <array>
#include <vector>

#include "packing/cell_view.hpp"
#include "packing/linear_program.hpp"
#include "packing/polish.hpp"

namespace tuckwright::packing {

/// How much more a dimension over its limit weighs than one within.
inline constexpr double price_over_limit = 20;

/// A body and all that it holds: so many sink when it sinks.
int group_size(const Layout& layout, int body);

/// The columns are the movements of the bodies within the trust region, their turns and the envelope's dimensions; the
/// rows are the contacts and walls, all loosened by one dear elastic variable.
class PolishStep {
public:
    PolishStep(const Layout& layout, const PolishOptions& options, double trust);
    /// The same for what lies directly in one cell, as it is seen from there: nothing else moves, nor turns.
    PolishStep(const Layout& layout, const PolishOptions& options, double trust, const CellView& view);

    void minimise_volume();
    void minimise_heights();

    /// Solves and applies the step to a copy of the layout. Without an aim it only takes back what is violated.
    bool solve(Layout& moved);

private:
    double scale() const { return layout_.scene().size; }
    double reach(int body) const;
    bool turns(int body) const;

    /// Adds n . (movement of the seen piece) with a factor, to the row in the making; (ax, ay) is the offset from the
    /// piece's centre to the point that carries the row, for turning.
    void add_motion(const Seen& seen, double factor, double nx, double ny, double nz, double ax, double ay);
    /// Corner offsets of a piece that are farthest along a direction in plan, or nearly so.
    std::vector<std::array<double, 2>> arms(const Seen& seen, double nx, double ny) const;
    /// By how much such a corner reaches less far than the farthest.
    double piece_lag(const Seen& seen, const std::array<double, 2>& arm, double nx, double ny) const;

    void add_view(const CellView& view);
    void add_pair(const Seen& p, const Seen& q);
    void add_walls(const CellView& view, const Seen& seen);
    /// Row: movement along n at most `room_left` (plus the wall's own movement).
    void add_wall(const Seen& seen, double nx, double ny, double nz, double ax, double ay, double room_left, int wall);
    void add_flat_wall(const Seen& seen, double nx, double ny, double half, int wall);
    void add_round_wall(const Seen& seen, const Room& room, bool outer, double keep);
    void add_tapering_wall(const Seen& seen, const Room& room, double keep);

    const Layout& layout_;
    const PolishOptions& options_;
    double trust_;
    LinearProgram program_;
    std::vector<int> first_, turn_; // columns by body; none is -1
    int across_[2] = {-1, -1};
    int height_ = -1, slack_ = -1;
};

} // namespace tuckwright::packing
