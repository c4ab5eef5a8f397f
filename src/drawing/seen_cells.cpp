// SPDX-License-Identifier: GPL-3.0-or-later
#include "drawing/seen_cells.hpp"

#include <algorithm>
#include <cmath>

namespace tuckwright::drawing {

std::vector<std::vector<Spot>> flattened(const Path& path)
{
    constexpr int pieces = 12;
    std::vector<std::vector<Spot>> outlines;
    for (const auto& s : path.segments()) {
        if (s.kind == Path::Kind::move) {
            outlines.push_back({s.to});
        } else if (s.kind == Path::Kind::line) {
            outlines.back().push_back(s.to);
        } else if (s.kind == Path::Kind::curve) {
            const Spot from = outlines.back().back();
            for (int k = 1; k <= pieces; ++k) {
                const double t = static_cast<double>(k) / pieces, u = 1 - t;
                const double a = u * u * u, b = 3 * u * u * t, c = 3 * u * t * t, d = t * t * t;
                outlines.back().push_back({a * from.x + b * s.first.x + c * s.second.x + d * s.to.x,
                                           a * from.y + b * s.first.y + c * s.second.y + d * s.to.y});
            }
        }
    }
    return outlines;
}

SeenCells::SeenCells(const Frame& frame)
    : frame_(frame), columns_(std::max(1, static_cast<int>(frame.width / cell))),
      rows_(std::max(1, static_cast<int>(frame.height / cell))),
      owner_(static_cast<std::size_t>(columns_) * static_cast<std::size_t>(rows_))
{
}

template <class Do> void SeenCells::along(const Path& path, const Do& act)
{
    for (const auto& line : flattened(path)) {
        for (std::size_t i = 0; i < line.size(); ++i) {
            const Spot &from = line[i], &to = line[(i + 1) % line.size()];
            const int pieces = 1 + static_cast<int>(2 * std::hypot(to.x - from.x, to.y - from.y) / cell);
            for (int k = 0; k <= pieces; ++k) {
                const double t = static_cast<double>(k) / pieces;
                const double x = (from.x + t * (to.x - from.x) - frame_.x) / cell;
                const double y = (from.y + t * (to.y - from.y) - frame_.y) / cell;
                if (x >= 0 && y >= 0 && x < columns_ && y < rows_) {
                    act(owner_[static_cast<std::size_t>(static_cast<int>(y) * columns_ + static_cast<int>(x))]);
                }
            }
        }
    }
}

void SeenCells::keep_off(const Path& lines)
{
    along(lines, [](Owner& owner) { owner.for_text = false; });
}

void SeenCells::paint(const Path& area, std::optional<std::size_t> item, bool for_text)
{
    const Owner mine{item ? static_cast<int>(*item) : nobody, for_text}, edge{mine.item, false};
    const auto outlines = flattened(area);
    if (outlines.empty()) {
        return;
    }
    const Frame bounds = area.bounds();
    const int first = static_cast<int>(std::floor((bounds.y - frame_.y) / cell)) - 1;
    const int last = static_cast<int>(std::ceil((bounds.bottom() - frame_.y) / cell)) + 1;
    for (int y = std::max(0, first); y < std::min(rows_, last); ++y) {
        const double level = middle(0, y).y;
        std::vector<double> crossings;
        for (const auto& line : outlines) {
            for (std::size_t k = 0; k < line.size(); ++k) {
                const Spot &a = line[k], &b = line[(k + 1) % line.size()];
                if ((a.y <= level) != (b.y <= level)) {
                    crossings.push_back(a.x + (level - a.y) / (b.y - a.y) * (b.x - a.x));
                }
            }
        }
        std::sort(crossings.begin(), crossings.end());
        for (std::size_t k = 0; k + 1 < crossings.size(); k += 2) {
            const double from = (crossings[k] - frame_.x) / cell - 0.5, to = (crossings[k + 1] - frame_.x) / cell - 0.5;
            for (int x = std::max(0, static_cast<int>(std::ceil(from))); x < columns_ && x < to; ++x) {
                owner_[static_cast<std::size_t>(y * columns_ + x)] = mine;
            }
        }
    }
    along(area, [&](Owner& owner) { owner = edge; });
}

SeenCells::Range SeenCells::range_of(std::size_t item) const
{
    Range range{columns_, rows_, 0, 0, 0};
    for (int y = 0; y < rows_; ++y) {
        for (int x = 0; x < columns_; ++x) {
            if (at(x, y).item == static_cast<int>(item)) {
                range = {std::min(range.left, x), std::min(range.top, y), std::max(range.right, x + 1), y + 1,
                         range.count + 1};
            }
        }
    }
    return range;
}

bool SeenCells::shows_anything(const Frame& place) const
{
    const auto index = [](double from, int last) {
        return std::clamp(static_cast<int>(std::floor(from / cell)), 0, last);
    };
    const int left = index(place.x - frame_.x, columns_ - 1), right = index(place.right() - frame_.x, columns_ - 1);
    const int top = index(place.y - frame_.y, rows_ - 1), bottom = index(place.bottom() - frame_.y, rows_ - 1);
    for (int y = top; y <= bottom; ++y) {
        for (int x = left; x <= right; ++x) {
            if (at(x, y).item != nobody) {
                return true;
            }
        }
    }
    return false;
}

std::size_t SeenCells::count(std::size_t item) const { return static_cast<std::size_t>(range_of(item).count); }

std::optional<Frame> SeenCells::room_for(std::size_t item, double width, double height) const
{
    const Range r = range_of(item);
    const int w = static_cast<int>(std::ceil(width / cell)), h = static_cast<int>(std::ceil(height / cell));
    if (r.count < w * h || r.right - r.left < w || r.bottom - r.top < h) {
        return std::nullopt;
    }
    // How many of its cells for text lie above and to the left of each corner of the range.
    const auto corner = [&](int x, int y) { return static_cast<std::size_t>(y * (r.right - r.left + 1) + x); };
    std::vector<int> sums(corner(0, r.bottom - r.top + 1), 0);
    double x_sum = 0, y_sum = 0;
    for (int y = 0; y < r.bottom - r.top; ++y) {
        for (int x = 0; x < r.right - r.left; ++x) {
            const Owner& owner = at(r.left + x, r.top + y);
            const int mine = owner.item == static_cast<int>(item) && owner.for_text ? 1 : 0;
            sums[corner(x + 1, y + 1)] = sums[corner(x, y + 1)] + sums[corner(x + 1, y)] - sums[corner(x, y)] + mine;
            x_sum += mine * x;
            y_sum += mine * y;
        }
    }
    const double all = sums.back();
    std::optional<Spot> best;
    double nearest = 0;
    for (int y = 0; y + h <= r.bottom - r.top; ++y) {
        for (int x = 0; x + w <= r.right - r.left; ++x) {
            const int mine =
                sums[corner(x + w, y + h)] - sums[corner(x, y + h)] - sums[corner(x + w, y)] + sums[corner(x, y)];
            const double off = std::hypot(x + 0.5 * w - x_sum / all, y + 0.5 * h - y_sum / all);
            if (mine == w * h && (!best || off < nearest - 1e-9)) {
                nearest = off;
                best = Spot{frame_.x + (r.left + x) * cell, frame_.y + (r.top + y) * cell};
            }
        }
    }
    return best ? std::optional(
                      Frame{best->x + (w * cell - width) / 2, best->y + (h * cell - height) / 2, width, height})
                : std::nullopt;
}

std::optional<Spot> SeenCells::best_spot(std::size_t item) const
{
    // Steps of the king on a chessboard to the nearest cell of another: two passes.
    const Range r = range_of(item);
    const int columns = std::max(0, r.right - r.left), rows = std::max(0, r.bottom - r.top);
    std::vector<int> steps(static_cast<std::size_t>(columns * rows), 0);
    const auto value = [&](int x, int y) {
        return x < 0 || y < 0 || x >= columns || y >= rows ? 0 : steps[static_cast<std::size_t>(y * columns + x)];
    };
    for (int y = 0; y < rows; ++y) {
        for (int x = 0; x < columns; ++x) {
            steps[static_cast<std::size_t>(y * columns + x)] =
                at(r.left + x, r.top + y).item != static_cast<int>(item)
                    ? 0
                    : 1 + std::min({value(x - 1, y), value(x, y - 1), value(x - 1, y - 1), value(x + 1, y - 1)});
        }
    }
    std::optional<Spot> best;
    int most = 0;
    for (int y = rows - 1; y >= 0; --y) {
        for (int x = columns - 1; x >= 0; --x) {
            int& mine = steps[static_cast<std::size_t>(y * columns + x)];
            mine = std::min(mine,
                            1 + std::min({value(x + 1, y), value(x, y + 1), value(x + 1, y + 1), value(x - 1, y + 1)}));
            if (mine > most) {
                most = mine;
                best = middle(r.left + x, r.top + y);
            }
        }
    }
    return best;
}

} // namespace tuckwright::drawing
