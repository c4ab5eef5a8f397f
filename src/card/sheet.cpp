// SPDX-License-Identifier: GPL-3.0-or-later
#include "card/sheet.hpp"

#include <algorithm>
#include <memory>

namespace tuckwright::card {

Block text_block(const std::string& text, TextStyle style, double width)
{
    style.wrap = width;
    return {Canvas::extent(text, style).height,
            [text, style](Canvas& canvas, Spot corner) { canvas.write(text, corner, style); }};
}

Block stacked(std::vector<Block> blocks, double gap)
{
    double height = blocks.empty() ? 0 : -gap;
    for (const Block& block : blocks) {
        height += block.height + gap;
    }
    return {height, [blocks = std::move(blocks), gap](Canvas& canvas, Spot corner) {
                for (const Block& block : blocks) {
                    block.draw(canvas, corner);
                    corner.y += block.height + gap;
                }
            }};
}

Sheet::Sheet(PageSize paper, bool is_dry) : paper_(paper), is_dry_(is_dry), canvas_(paper) {}

void Sheet::draw(const Block& block, Spot corner)
{
    if (!is_dry_) {
        block.draw(canvas_, corner);
    }
}

double Sheet::column(std::size_t columns) const
{
    const auto n = static_cast<double>(columns);
    return (width() - (n - 1) * gutter) / n;
}

void Sheet::next_page()
{
    canvas_.add_page();
    y_ = margin;
    if (on_page) {
        on_page(canvas_, canvas_.pages());
    }
}

void Sheet::keep_together(double height)
{
    if (y_ > margin && y_ + height > bottom()) {
        next_page();
    }
}

void Sheet::add(const Block& block)
{
    keep_together(block.height);
    draw(block, {margin, y_});
    y_ += block.height;
}

void Sheet::add_row(const std::vector<Block>& blocks, std::size_t columns)
{
    double height = 0;
    for (const Block& block : blocks) {
        height = std::max(height, block.height);
    }
    keep_together(height);
    Spot corner{margin, y_};
    for (const Block& block : blocks) {
        draw(block, corner);
        corner.x += column(columns) + gutter;
    }
    y_ += height;
}

namespace {

/// How many blocks, from `first` on, the columns take that are so high; each column's blocks are counted.
std::vector<std::size_t> filled(const std::vector<Block>& blocks, std::size_t first, std::size_t columns, double gap,
                                double height)
{
    std::vector<std::size_t> counts;
    for (; counts.size() < columns; first += counts.back()) {
        double used = 0;
        std::size_t count = 0;
        while (first + count < blocks.size() && (used == 0 || used + blocks[first + count].height <= height)) {
            used += blocks[first + count].height + gap;
            ++count;
        }
        counts.push_back(count);
    }
    return counts;
}

std::size_t sum(const std::vector<std::size_t>& counts)
{
    std::size_t all = 0;
    for (const std::size_t count : counts) {
        all += count;
    }
    return all;
}

} // namespace

void Sheet::add_columns(const std::vector<Block>& blocks, std::size_t columns, double gap)
{
    constexpr double step = 1; // mm
    for (std::size_t first = 0; first < blocks.size();) {
        keep_together(blocks[first].height);
        const double room = bottom() - y_;
        double height = blocks[first].height;
        auto counts = filled(blocks, first, columns, gap, height);
        while (sum(counts) < blocks.size() - first && height + step <= room) {
            height += step;
            counts = filled(blocks, first, columns, gap, height);
        }
        double used = 0;
        Spot corner{margin, y_};
        for (const std::size_t count : counts) {
            double y = y_;
            for (std::size_t i = 0; i < count; ++i, ++first) {
                draw(blocks[first], {corner.x, y});
                y += blocks[first].height + gap;
            }
            used = std::max(used, y - y_ - gap);
            corner.x += column(columns) + gutter;
        }
        y_ += used;
        if (first < blocks.size()) {
            next_page();
        }
    }
}

} // namespace tuckwright::card
