// SPDX-License-Identifier: GPL-3.0-or-later
// What stands on or beside the things: a name where it fits in, else a number; no two on one another.
#include <algorithm>
#include <array>
#include <cmath>

#include "drawing/palette.hpp"
#include "drawing/stage.hpp"
#include "report/words.hpp"

namespace tuckwright::drawing {

namespace {

constexpr double label_size = 2.7;         ///< mm, of all labels
constexpr double air = 0.5;            ///< mm between a label and the edge of what it stands on
constexpr std::size_t least_cells = 6; ///< of an item for a line to point at

TextStyle style(bool bold) { return {.size = label_size, .bold = bold, .color = palette::ink}; }

class Labels {
public:
    explicit Labels(Stage& stage) : stage_(stage) {}

    void paint()
    {
        std::vector<std::size_t> order, cells(stage_.bundle.items.size());
        for (std::size_t i = 0; i < stage_.bundle.items.size(); ++i) {
            if (stage_.shown.there[i]) {
                order.push_back(i);
                cells[i] = stage_.seen.count(i);
            }
        }
        // The item of the step first, then what has least room for its label.
        std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
            const bool a_now = stage_.shown.item == a, b_now = stage_.shown.item == b;
            return a_now != b_now ? a_now : cells[a] < cells[b];
        });
        std::vector<std::size_t> outside;
        for (const std::size_t i : order) {
            if (!within(i, report::printable(spoken_name(stage_.bundle, i)), false) &&
                !within(i, std::to_string(i + 1), true)) {
                outside.push_back(i);
            }
        }
        for (const std::size_t i : outside) {
            beside(i);
        }
    }

private:
    /// Writes the text on the item, if what is seen of it has room.
    bool within(std::size_t item, const std::string& text, bool bold)
    {
        const auto extent = Canvas::extent(text, style(bold));
        const auto room = stage_.seen.room_for(item, extent.width + 2 * air, extent.height + 2 * air);
        if (!room || !stage_.is_free(*room)) {
            return false;
        }
        if (stage_.shown.item == item) { // on the hatch
            stage_.canvas.draw(Path::rectangle(*room), std::nullopt, Fill{palette::paper});
        }
        stage_.canvas.write(text, {room->x + air, room->y + air}, style(bold));
        take(*room);
        return true;
    }

    void take(const Frame& place)
    {
        stage_.taken.push_back(place);
        stage_.seen.paint(Path::rectangle(place), std::nullopt);
    }

    /// The number at the left or right edge of the frame, with a line to the item; nothing where there is no room.
    void beside(std::size_t item)
    {
        const auto spot = stage_.seen.best_spot(item);
        if (!spot || stage_.seen.count(item) < least_cells) {
            return;
        }
        const std::string text = std::to_string(item + 1);
        const auto extent = Canvas::extent(text, style(true));
        const Frame& f = stage_.frame;
        const bool left_first = spot->x < stage_.window.x + stage_.window.width / 2;
        for (const bool left : {left_first, !left_first}) {
            const double x = left ? f.x + 0.5 : f.right() - extent.width - 0.5;
            for (int k = 0; k < 80; ++k) { // level with the spot, then a little higher and lower by turns
                const double y = spot->y - extent.height / 2 + (k % 2 == 0 ? 1 : -1) * 0.5 * ((k + 1) / 2);
                const Frame place{x, y, extent.width, extent.height};
                const Spot from{left ? place.right() + 0.4 : place.x - 0.4, place.y + place.height / 2};
                if (stage_.is_free(place) && is_clear(from, *spot)) {
                    stage_.canvas.draw(Path::line(from, *spot), Pen{palette::ink, 0.18});
                    stage_.canvas.draw(Path::circle(*spot, 0.5), std::nullopt, Fill{palette::ink});
                    stage_.canvas.write(text, {place.x, place.y}, style(true));
                    take(place);
                    take({spot->x - 0.5, spot->y - 0.5, 1, 1});
                    lines_.push_back({from, *spot});
                    return;
                }
            }
        }
    }

    /// Whether a line meets no label and no other such line.
    bool is_clear(Spot from, Spot to) const
    {
        constexpr int pieces = 60;
        for (int k = 0; k <= pieces; ++k) {
            const double t = static_cast<double>(k) / pieces;
            const Spot at{from.x + t * (to.x - from.x), from.y + t * (to.y - from.y)};
            const bool hit = std::any_of(stage_.taken.begin(), stage_.taken.end(), [&](const Frame& other) {
                return at.x > other.x && at.x < other.right() && at.y > other.y && at.y < other.bottom();
            });
            if (hit) {
                return false;
            }
        }
        const auto side = [](Spot a, Spot b, Spot c) { return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x); };
        return std::none_of(lines_.begin(), lines_.end(), [&](const std::array<Spot, 2>& other) {
            return side(from, to, other[0]) * side(from, to, other[1]) < 0 &&
                   side(other[0], other[1], from) * side(other[0], other[1], to) < 0;
        });
    }

    Stage& stage_;
    std::vector<std::array<Spot, 2>> lines_;
};

} // namespace

void paint_labels(Stage& stage) { Labels(stage).paint(); }

} // namespace tuckwright::drawing
