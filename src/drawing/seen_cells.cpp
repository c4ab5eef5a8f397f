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
    for (int y = 0; y < rows_; ++y) {
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

std::size_t SeenCells::count(std::size_t item) const
{
    return static_cast<std::size_t>(std::count_if(
        owner_.begin(), owner_.end(), [&](const Owner& owner) { return owner.item == static_cast<int>(item); }));
}

std::optional<Frame> SeenCells::room_for(std::size_t item, double width, double height) const
{
    // How many cells of the item lie above and to the left of each corner.
    const int w = static_cast<int>(std::ceil(width / cell)), h = static_cast<int>(std::ceil(height / cell));
    if (w > columns_ || h > rows_) {
        return std::nullopt;
    }
    const auto corner = [&](int x, int y) { return static_cast<std::size_t>(y * (columns_ + 1) + x); };
    std::vector<int> sums(static_cast<std::size_t>((columns_ + 1) * (rows_ + 1)), 0);
    double x_sum = 0, y_sum = 0;
    for (int y = 0; y < rows_; ++y) {
        for (int x = 0; x < columns_; ++x) {
            const int mine = at(x, y).item == static_cast<int>(item) && at(x, y).for_text ? 1 : 0;
            sums[corner(x + 1, y + 1)] = sums[corner(x, y + 1)] + sums[corner(x + 1, y)] - sums[corner(x, y)] + mine;
            x_sum += mine * x;
            y_sum += mine * y;
        }
    }
    const int all = sums[corner(columns_, rows_)];
    if (all < w * h) {
        return std::nullopt;
    }
    std::optional<Frame> best;
    double nearest = 0;
    for (int y = 0; y + h <= rows_; ++y) {
        for (int x = 0; x + w <= columns_; ++x) {
            const int mine =
                sums[corner(x + w, y + h)] - sums[corner(x, y + h)] - sums[corner(x + w, y)] + sums[corner(x, y)];
            if (mine < w * h) {
                continue;
            }
            const double off = std::hypot(x + 0.5 * w - x_sum / all, y + 0.5 * h - y_sum / all);
            if (!best || off < nearest - 1e-9) {
                nearest = off;
                best = Frame{frame_.x + x * cell + (w * cell - width) / 2,
                             frame_.y + y * cell + (h * cell - height) / 2, width, height};
            }
        }
    }
    return best;
}

std::optional<Spot> SeenCells::best_spot(std::size_t item) const
{
    // Steps of the king on a chessboard to the nearest cell of another: two passes.
    std::vector<int> steps(owner_.size(), 0);
    const auto value = [&](int x, int y) {
        return x < 0 || y < 0 || x >= columns_ || y >= rows_ ? 0 : steps[static_cast<std::size_t>(y * columns_ + x)];
    };
    for (int y = 0; y < rows_; ++y) {
        for (int x = 0; x < columns_; ++x) {
            steps[static_cast<std::size_t>(y * columns_ + x)] =
                at(x, y).item != static_cast<int>(item)
                    ? 0
                    : 1 + std::min({value(x - 1, y), value(x, y - 1), value(x - 1, y - 1), value(x + 1, y - 1)});
        }
    }
    std::optional<Spot> best;
    int most = 0;
    for (int y = rows_ - 1; y >= 0; --y) {
        for (int x = columns_ - 1; x >= 0; --x) {
            int& mine = steps[static_cast<std::size_t>(y * columns_ + x)];
            mine = std::min(mine,
                            1 + std::min({value(x + 1, y), value(x, y + 1), value(x + 1, y + 1), value(x - 1, y + 1)}));
            if (mine > most) {
                most = mine;
                best = middle(x, y);
            }
        }
    }
    return best;
}

} // namespace tuckwright::drawing
