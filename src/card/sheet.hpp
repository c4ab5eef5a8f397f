// SPDX-License-Identifier: GPL-3.0-or-later
/// Paper that is filled from top to bottom, page after page.
#pragma once
#include <functional>
#include <string>
#include <vector>

#include "tuckwright/canvas.hpp"

namespace tuckwright::card {

/// Something of a known height, drawn into a column.
struct Block {
    double height = 0;                                                 ///< mm
    std::function<void(Canvas&, Spot corner)> draw;                    ///< with its upper left corner there
};

/// One text, wrapped.
Block text_block(const std::string& text, TextStyle style, double width);

/// Several below one another.
Block stacked(std::vector<Block> blocks, double gap);

class Sheet {
public:
    static constexpr double margin = 11, foot = 7, gutter = 5; ///< mm

    /// A dry one only finds out how much room all takes: nothing is drawn.
    explicit Sheet(PageSize paper, bool is_dry = false);

    double width() const { return paper_.width - 2 * margin; }
    /// mm of one of several columns.
    double column(std::size_t columns) const;

    /// Puts it below what is there, on the next page if this one is too full. What is higher than a page is cut off by it.
    void add(const Block& block);
    /// The same for blocks side by side, each in its column; they stay on one page.
    void add_row(const std::vector<Block>& blocks, std::size_t columns);
    /// Blocks in their order down the columns, as evenly as may be; broken between pages where they have to be.
    void add_columns(const std::vector<Block>& blocks, std::size_t columns, double gap);
    void space(double height) { y_ += height; }
    /// Begins the next page unless so much still goes on this one.
    void keep_together(double height);

    Canvas& canvas() { return canvas_; }
    const Canvas& canvas() const { return canvas_; }
    std::size_t pages() const { return canvas_.pages(); }
    /// mm that are left of this page, and that a page has.
    double room() const { return bottom() - y_; }
    double page_room() const { return bottom() - margin; }

    /// Called whenever a page has been begun, with its number from 1.
    std::function<void(Canvas&, std::size_t page)> on_page;

private:
    double bottom() const { return paper_.height - margin - foot; }
    void next_page();
    void draw(const Block& block, Spot corner);

    PageSize paper_;
    bool is_dry_;
    Canvas canvas_;
    double y_ = margin;
};

} // namespace tuckwright::card
