// SPDX-License-Identifier: GPL-3.0-or-later
#include "packing/sliding.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "packing/cell_view.hpp"
#include "packing/drop.hpp"

namespace tuckwright::packing {

namespace {

constexpr double still = 1e-6; ///< mm: a shorter way is none

struct Slope {
    double steepness; ///< mm inward for each mm down
    double margin;    ///< by how much faster it is left, so that rounding never takes the wall for one that is met
};

/// The longest way down along the wall that any of some directions opens, and whether there was one.
bool slide_once(Layout& layout, int body, const Slope& slope, const Air& air)
{
    // Straight to the middle comes first: what is round then ends seated, with air all round. Aside is a way past others.
    constexpr std::array<double, 5> aside{0, 0.87, -0.87, 1.31, -1.31}; // radians from the way to the middle
    Place place = layout.place(body);
    const double off = std::hypot(place.x, place.y);
    if (off < still) {
        return false;
    }
    for (const double angle : aside) {
        const double inward = slope.steepness * slope.margin / std::cos(angle);
        const double c = std::cos(angle), s = std::sin(angle), ux = -place.x / off, uy = -place.y / off;
        const double length = std::hypot(inward, 1.0);
        const Vec3 direction{inward * (ux * c - uy * s) / length, inward * (uy * c + ux * s) / length, -1 / length};
        const double to_middle = off * std::cos(angle) * length / inward; // further on, it would climb the other side
        const double way = free_way(layout, body, place, direction, to_middle, air, Seeing::everything);
        if (way > still) {
            place.x += way * direction.x, place.y += way * direction.y, place.z += way * direction.z;
            layout.put(body, place);
            return true;
        }
    }
    return false;
}

bool drop_straight(Layout& layout, int body, const Air& air)
{
    constexpr double far = 1e4;
    Place place = layout.place(body);
    const double way = free_way(layout, body, place, {0, 0, -1}, far, air, Seeing::everything);
    place.z -= way;
    layout.put(body, place);
    return way > still;
}

bool slide(Layout& layout, int body, double steepness, const Air& air)
{
    constexpr int rounds = 12;
    bool moved = false;
    for (int round = 0; round < rounds; ++round) {
        bool further = false;
        for (const double margin : {1.02, 1.5, 3.0}) { // corners of what is no disc go inward less than its middle
            further = further || slide_once(layout, body, {steepness, margin}, air);
        }
        if (!further) {
            break;
        }
        drop_straight(layout, body, air);
        moved = true;
    }
    return moved;
}

} // namespace

bool slide_down_walls(Layout& layout, const Air& air)
{
    bool moved = false;
    for (int body = 0; body < static_cast<int>(layout.size()); ++body) {
        const int cell = layout.place(body).cell;
        const bool may_hang = cell != outermost && !layout.stowed(body).pressed && layout.room(cell).tapers() &&
                              layout.room(cell).slope() > 0 && up_in_cell(layout, cell).z > 0.5;
        moved = (may_hang && slide(layout, body, layout.room(cell).slope(), air)) || moved;
    }
    return moved;
}

} // namespace tuckwright::packing
