// SPDX-License-Identifier: GPL-3.0-or-later
/// Which item can be seen where on a part of the page, on a grid: so that labels stand on what they name.
#pragma once
#include <optional>
#include <vector>

#include "tuckwright/canvas.hpp"

namespace tuckwright::drawing {

class SeenCells {
public:
    static constexpr double cell = 0.5; ///< mm of paper
    explicit SeenCells(const Frame& frame);

    /// From now on this item is seen there; nobody where no item is named. Text may stand on it if `for_text`, but not
    /// across its edges.
    void paint(const Path& area, std::optional<std::size_t> item, bool for_text = true);

    /// From now on no text stands across these lines.
    void keep_off(const Path& lines);

    /// The place within what is seen of an item, the nearest to the middle of that, for a rectangle of this size.
    std::optional<Frame> room_for(std::size_t item, double width, double height) const;

    /// The spot of the item that is farthest from all others; nothing where none of it is seen.
    std::optional<Spot> best_spot(std::size_t item) const;

    /// Whether any item is seen within a rectangle.
    bool shows_anything(const Frame& place) const;

    /// Cells of the item.
    std::size_t count(std::size_t item) const;

private:
    static constexpr int nobody = -1;
    struct Owner {
        int item = nobody;
        bool for_text = false;
    };
    /// The cells from left and top to right and bottom, these left out, that hold all of an item's; and how many those are.
    struct Range {
        int left, top, right, bottom, count;
    };
    Range range_of(std::size_t item) const;
    /// Does this to each cell that the lines of a path go through.
    template <class Do> void along(const Path& path, const Do& act);
    const Owner& at(int x, int y) const { return owner_[static_cast<std::size_t>(y * columns_ + x)]; }
    Spot middle(int x, int y) const { return {frame_.x + (x + 0.5) * cell, frame_.y + (y + 0.5) * cell}; }

    Frame frame_;
    int columns_, rows_;
    std::vector<Owner> owner_;
};

/// The path's outlines as corners, curves in short pieces.
std::vector<std::vector<Spot>> flattened(const Path& path);

} // namespace tuckwright::drawing
