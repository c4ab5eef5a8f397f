// SPDX-License-Identifier: GPL-3.0-or-later
// Outline. A sampled place in plan is one beside others: against walls, flush with a neighbour's side along x and with
// one along y, or on a circle round a neighbour. The body falls there from above, and stays if something carries it.
// Guarantee: what is placed last can be taken out first, straight up. Source: own; touching perimeters after "bottom
// left" placement, B. Baker, E. Coffman and R. Rivest, SIAM J. Computing 9 (1980).
#include "packing/pile.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "packing/leaning.hpp"

namespace tuckwright::packing {

namespace {

/// Half extents along x and y.
struct Half {
    double x = 0, y = 0;
    bool square = true; ///< flat faces along the axes, which may touch
};

Half half_of(const Piece& p)
{
    if (p.kind == PieceKind::disc) {
        return {p.radius, p.radius, false};
    }
    const double c = std::abs(p.c), s = std::abs(p.s);
    return {p.a * c + p.b * s, p.a * s + p.b * c, c * s == 0 && p.kind == PieceKind::rectangle};
}

Half half_of(const Layout& layout, int body, const Place& place)
{
    Half all;
    for (const Piece& p : layout.own_pieces(body, place)) {
        const Half one = half_of(p);
        all.x = std::max(all.x, std::abs(p.x - place.x) + one.x);
        all.y = std::max(all.y, std::abs(p.y - place.y) + one.y);
        all.square = all.square && one.square;
    }
    return all;
}

/// One coordinate: at either wall, flush with a side of a neighbour from within or without, or anywhere.
double along(double room_half, double own, double other_middle, double other, double air, bool has_other,
             Random& random)
{
    const double slack = std::max(0.0, room_half - own), draw = random.unit();
    if (!has_other || draw < 0.2) {
        const double side = random.unit();
        return side < 0.4 ? -slack : side < 0.8 ? slack : random.between(-slack, slack);
    }
    const double sign = random.chance(0.5) ? 1 : -1;
    const double value = draw < 0.75 ? other_middle + sign * (other + own + air) : other_middle + sign * (other - own);
    return std::clamp(value, -slack, slack);
}

/// Some visible piece in the cell, of those tried the nearest to a point.
const Piece* neighbour(const Layout& layout, int cell, double x, double y, int tries, Random& random)
{
    const auto& children = layout.inside(cell);
    const Piece* best = nullptr;
    double least = 1e300;
    for (int k = 0; k < tries && !children.empty(); ++k) {
        const auto& pieces = layout.visible(children[random.below(children.size())]);
        const Piece& piece = pieces[random.below(pieces.size())];
        const double dx = piece.x - x, dy = piece.y - y, square = dx * dx + dy * dy;
        if (square < least) {
            least = square;
            best = &piece;
        }
    }
    return best;
}

void quarter_turn(const Layout& layout, int body, Place& place, Random& random)
{
    const bool is_round = place.form == Form::standing && layout.scene().stowed(body, place.way).plan_is_round;
    if (!is_round && random.chance(0.5)) {
        place.c = 0;
        place.s = 1;
    }
}

/// A place in plan that is likely to touch something.
void sample_beside(const Layout& layout, int body, Place& place, const Room& room, Random& random)
{
    constexpr double curved = 3e-3; // mm kept beside what is round or turned
    const double wall = place.cell == outermost ? 0 : building_air.wall;
    const Half own = half_of(layout, body, place);
    const Piece* first = neighbour(layout, place.cell, 0, 0, 1, random);
    const double x = first != nullptr ? first->x : 0, y = first != nullptr ? first->y : 0;
    const Piece* second = neighbour(layout, place.cell, x, y, 4, random);
    if (room.round && random.chance(0.25)) { // at the wall
        const double reach = plan_reach(layout.scene().stowed(body, place.way), place);
        const auto direction = random.direction();
        const double radius = std::max(0.0, room.radius - wall - reach);
        place.x = radius * direction[0];
        place.y = radius * direction[1];
        return;
    }
    if (first != nullptr && !own.square && first->kind == PieceKind::disc && random.chance(0.4)) { // round its middle
        const auto direction = random.direction();
        const double apart = first->reach + plan_reach(layout.scene().stowed(body, place.way), place) + curved;
        place.x = first->x + apart * direction[0];
        place.y = first->y + apart * direction[1];
        return;
    }
    const double half_x = (room.round ? room.radius : room.half_length) - wall;
    const double half_y = (room.round ? room.radius : room.half_width) - wall;
    const Half of_first = first != nullptr ? half_of(*first) : Half{};
    const Half of_second = second != nullptr ? half_of(*second) : Half{};
    const bool swapped = random.chance(0.5); // which of the two stands beside it along x
    const Half &along_x = swapped ? of_second : of_first, &along_y = swapped ? of_first : of_second;
    const Piece *px = swapped ? second : first, *py = swapped ? first : second;
    place.x = along(half_x, own.x, px != nullptr ? px->x : 0, along_x.x, own.square && along_x.square ? 0 : curved,
                    px != nullptr, random);
    place.y = along(half_y, own.y, py != nullptr ? py->y : 0, along_y.y, own.square && along_y.square ? 0 : curved,
                    py != nullptr, random);
}

double top_of(const Layout& layout)
{
    double top = 0;
    for (const int body : layout.inside(outermost)) {
        top = std::max(top, layout.bound(body).high);
    }
    return top;
}

/// From where it falls: above all in the bundle; in a vessel from the rim, for a vessel is filled before it is covered.
double start_height(const Layout& layout, int body, const Place& place, const Room& room, double top)
{
    const Reach reach = vertical_reach(layout.scene().stowed(body, place.way), place);
    if (place.cell != outermost) {
        const Body& stowed = layout.scene().stowed(body, place.way);
        const double in = stowed.held && !stowed.pressed ? (reach.above + reach.below) / 2 : least_depth;
        return room.ceiling ? room.height - reach.above : room.height - in + reach.below;
    }
    return top + reach.below;
}

/// Whether a place in plan is past a side wall, so that falling there is of no use.
bool stands_out(const std::vector<Piece>& pieces, const Room& room)
{
    constexpr double rounding = 1e-9;
    return !room.tapers() && excess(pieces.front(), room) > rounding;
}

/// What the search would rather not have hanging or upside down: mouths that look down, and what leans.
bool is_plain(const Layout& layout, int body, const Door& door)
{
    const Body& stowed = layout.scene().stowed(body, door.way);
    return door.form != Form::leaning && (!stowed.hollow || stowed.pressed || door.form != Form::upside_down);
}

} // namespace

ScoredPlace best_fall(const Layout& layout, int body, const std::vector<Door>& open, Random& random, int samples,
                      const Score& score, ScoredPlace best)
{
    const Weights one(layout.size());
    const double top = top_of(layout);
    std::vector<Door> plain = open;
    std::erase_if(plain, [&](const Door& door) { return !is_plain(layout, body, door); });
    for (int k = 0; k < samples && !plain.empty(); ++k) {
        const Door& door = plain[random.below(plain.size())];
        const Room& room = layout.room(door.cell);
        Place place;
        place.cell = door.cell, place.form = door.form, place.way = door.way;
        quarter_turn(layout, body, place, random);
        if (layout.scene().stowed(body, door.way).pressed) {
            place = sample_place(layout, body, door, random);
        } else {
            sample_beside(layout, body, place, room, random);
            place.z = start_height(layout, body, place, room, top);
            if (stands_out(layout.own_pieces(body, place), room)) {
                continue;
            }
            const Seeing seeing = door.cell == outermost ? Seeing::everything : Seeing::own_cell;
            place.z -= free_way(layout, body, place, {0, 0, -1}, place.z + 10, building_air, seeing);
        }
        const double value = score(place);
        if (value < best.score && keeps_air(layout, body, place, building_air) && is_carried(layout, body, place) &&
            layout.cost_at(body, place, one, 1e-12) <= 0) {
            best = {place, value};
        }
    }
    return best;
}

namespace {

/// Lets a body down in its cell from a place where it keeps the air; nothing unless it is carried where it ends.
std::optional<Place> let_down(const Layout& layout, int body, Place place)
{
    const Vec3 up = up_in_cell(layout, place.cell), down{-up.x, -up.y, -up.z};
    constexpr double far = 1e4;
    const double way = free_way(layout, body, place, down, far, building_air, Seeing::everything);
    place.x += way * down.x, place.y += way * down.y, place.z += way * down.z;
    return is_carried(layout, body, place) ? std::optional(place) : std::nullopt;
}

} // namespace

std::optional<Place> carried_nearby(const Layout& layout, int body)
{
    constexpr int directions = 16, parts = 6;
    constexpr double shortest = 0.05; // mm
    const Place here = layout.place(body);
    const double most = plan_reach(layout.stowed(body), here) + 0.5 * layout.scene().size;
    if (!keeps_air(layout, body, here, building_air) || std::abs(up_in_cell(layout, here.cell).z) < 0.5) {
        return std::nullopt;
    }
    std::optional<Place> nearest;
    double least = 1e300;
    for (int k = 0; k < directions; ++k) {
        const double angle = 2 * std::numbers::pi * k / directions;
        const Vec3 aside{std::cos(angle), std::sin(angle), 0};
        const double way = free_way(layout, body, here, aside, most, building_air, Seeing::everything);
        for (int part = 1; part <= parts && way > shortest && way * part / parts < least; ++part) {
            Place there = here;
            there.x += way * part / parts * aside.x, there.y += way * part / parts * aside.y;
            if (const auto down = let_down(layout, body, there)) {
                nearest = down;
                least = way * part / parts;
            }
        }
    }
    return nearest;
}

std::optional<Place> carried_in_a_gap(const Layout& layout, int body, Random& random, int samples)
{
    const Weights even(layout.size());
    std::vector<Door> open = doors(layout, body);
    std::erase_if(open, [&](const Door& door) { return !is_plain(layout, body, door); });
    const auto outside = std::find_if(open.begin(), open.end(), [](const Door& d) { return d.cell == outermost; });
    for (int k = 0; k < samples && !open.empty(); ++k) { // half of them beside all vessels
        const bool any = outside == open.end() || random.chance(0.5);
        const Door& door = any ? open[random.below(open.size())] : *outside;
        const Place place = sample_place(layout, body, door, random);
        if (layout.cost_at(body, place, even, 1e-12) <= 0 && keeps_air(layout, body, place, building_air)) {
            if (const auto down = let_down(layout, body, place)) {
                return down;
            }
        }
    }
    return std::nullopt;
}

} // namespace tuckwright::packing
