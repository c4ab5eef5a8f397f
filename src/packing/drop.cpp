// SPDX-License-Identifier: GPL-3.0-or-later
// Outline. A body moves as a whole along a direction. For each piece of another that it may meet, the present contact's
// normal tells a way that is surely free: until the distance along that normal is used up. The least of these ways is
// gone, and the contacts are looked at anew, until the way no longer grows. Flat contacts end in one step, exactly.
// Guarantee: never past a contact; short of one by less than the tolerance. Walls are convex, so that halving finds
// where they end a way.
// Source: conservative advancement, B. Mirtich, "Impulse-based dynamic simulation of rigid body systems" (1996), from
// memory.
#include "packing/drop.hpp"

#include <algorithm>
#include <cmath>

#include "packing/cell_view.hpp"

namespace tuckwright::packing {

namespace {

constexpr double sliver = 1e-11; ///< mm: what rounding may add up to

Piece shifted(const Piece& piece, const Vec3& by, double way)
{
    Piece other = piece;
    other.x += way * by.x;
    other.y += way * by.y;
    other.z += way * by.z;
    return other;
}

double air_between(const Contact& contact, const Air& air) { return contact.curved ? air.curved : air.flat; }

PolishOptions wall_options(const Air& air)
{
    PolishOptions options;
    options.wall_gap = 2 * air.wall; // of which kept() takes half
    return options;
}

/// The moving pieces in one cell, and what they may meet there.
struct Level {
    int cell = outermost;
    bool main = false; ///< whether the first piece is the body's own, in its own cell
    Vec3 direction;
    std::vector<Piece> moving;
    std::vector<std::pair<std::size_t, const Piece*>> near; ///< which moving piece, and the other
};

/// Whether two pieces may come within the air of each other on a way.
bool may_meet(const Piece& p, const Piece& q, const Vec3& direction, double most, double air)
{
    const double aside = most * std::hypot(direction.x, direction.y), along = most * direction.z;
    const double dx = q.x - p.x, dy = q.y - p.y, reach = p.reach + q.reach + air + aside;
    const double low = p.z - p.half_height + std::min(0.0, along), high = p.z + p.half_height + std::max(0.0, along);
    return q.z - q.half_height < high + air && q.z + q.half_height > low - air && dx * dx + dy * dy < reach * reach;
}

/// What lies within the bound may pass through on a way, and the air round it.
Bound swept_by(Bound bound, const Vec3& direction, double most, double air)
{
    bound.reach += most * std::hypot(direction.x, direction.y) + air;
    bound.low += std::min(0.0, most * direction.z) - air;
    bound.high += std::max(0.0, most * direction.z) + air;
    return bound;
}

/// Where on a way from 0 to `end` a convex excess is least.
template <class Out> double lowest(const Out& out, double end)
{
    double low = 0, high = end;
    for (int k = 0; k < 100 && high - low > sliver / 4; ++k) {
        const double first = low + (high - low) / 3, second = high - (high - low) / 3;
        (out(first) <= out(second) ? high : low) = out(first) <= out(second) ? second : first;
    }
    return (low + high) / 2;
}

/// The last point on a way where a convex excess is none; where it always is some, where it is least.
template <class Out> double last_within(const Out& out, double end)
{
    if (out(end) <= sliver) {
        return end;
    }
    double good = out(0.0) <= sliver ? 0 : lowest(out, end), bad = end;
    if (out(good) > sliver) {
        return good;
    }
    for (int k = 0; k < 60 && bad - good > sliver / 4; ++k) {
        const double middle = (good + bad) / 2;
        (out(middle) <= sliver ? good : bad) = middle;
    }
    return good;
}

class Way {
public:
    Way(const Layout& layout, int body, const Place& from, const Vec3& direction, double most, const Air& air,
        Seeing seeing)
        : layout_(layout), air_(air), options_(wall_options(air)), most_(most)
    {
        Vec3 d = direction;
        bool over = false;
        layout.each_level_at(
            body, from,
            [&](int cell, int vessel, const std::vector<Piece>& pieces) {
                if (over) {
                    return;
                }
                if (vessel != body) {
                    const Place& p = layout.place(vessel);
                    d = {p.c * d.x - p.s * d.y, p.s * d.x + p.c * d.y, d.z};
                }
                Level& level = levels_.emplace_back();
                level.cell = cell;
                level.main = vessel == body;
                level.direction = d;
                level.moving = pieces;
                if (seeing == Seeing::sleeve_alone) { // what it holds stays where it is
                    std::erase_if(level.moving, [&](const Piece& piece) { return piece.owner != body; });
                }
                gather_near(level, vessel);
                over = seeing == Seeing::own_cell;
            },
            most); // what is past its vessel's rim on the way, or comes out at a sleeve's foot
    }

    double length() const
    {
        constexpr int enough = 60;
        double way = 0;
        for (int k = 0; k < enough && way < most_; ++k) {
            const double step = free_step(way);
            way += step;
            if (step < sliver) {
                break;
            }
        }
        return std::min(way, most_);
    }

private:
    void gather_near(Level& level, int vessel)
    {
        const double air = std::max(air_.curved, air_.flat) + sliver;
        const Bound swept = swept_by(Bound::of(level.moving), level.direction, most_, air);
        layout_.count_work(10 + layout_.inside(level.cell).size() / 8);
        for (const int other : layout_.inside(level.cell)) {
            if (other == vessel || swept.is_clear_of(layout_.bound(other))) {
                continue;
            }
            for (const Piece& q : layout_.visible(other)) {
                for (std::size_t k = 0; k < level.moving.size(); ++k) {
                    if (may_meet(level.moving[k], q, level.direction, most_, air) &&
                        !passes_beside(level.moving[k], q, level.direction)) {
                        level.near.emplace_back(k, &q);
                    }
                }
            }
        }
    }

    /// Whether a piece that moves straight up or down keeps off another in plan all the way, flush with it maybe: where
    /// level faces come to the same height, the contact alone would not tell.
    bool passes_beside(const Piece& p, const Piece& q, const Vec3& direction) const
    {
        if (direction.x != 0 || direction.y != 0) {
            return false;
        }
        Piece level = p;
        level.z = q.z;
        const Contact c = contact(level, q);
        return std::abs(c.nz) < 1e-12 && c.distance >= air_between(c, air_) - sliver;
    }

    /// A further way that is surely free.
    double free_step(double way) const
    {
        double step = most_ - way;
        for (const Level& level : levels_) {
            layout_.count_work(4 * level.moving.size() + 3 * level.near.size());
            for (const auto& [k, other] : level.near) {
                const Piece p = shifted(level.moving[k], level.direction, way);
                if (!may_meet(p, *other, level.direction, step, std::max(air_.curved, air_.flat) + sliver)) {
                    continue;
                }
                const Contact c = contact(p, *other);
                const double nearing = c.nx * level.direction.x + c.ny * level.direction.y + c.nz * level.direction.z;
                if (nearing > 1e-12) {
                    step = std::min(step, std::max(0.0, c.distance - air_between(c, air_)) / nearing);
                }
            }
            step = within_walls(level, way, step);
            if (step <= 0) {
                return 0;
            }
        }
        return keeping_air(way, step);
    }

    /// mm by which a piece on its way and another have more air than they need.
    double spare(const Level& level, std::size_t moving, const Piece& other, double way) const
    {
        const Contact c = contact(shifted(level.moving[moving], level.direction, way), other);
        return c.distance - air_between(c, air_);
    }

    /// A step along which each contact keeps its air may end where another contact of the same two pieces, which needs
    /// more, is the wider one: then the step is shortened.
    double keeping_air(double way, double step) const
    {
        constexpr double rounding = 1e-10;
        for (const Level& level : levels_) {
            for (const auto& [k, other] : level.near) {
                const std::size_t piece = k;
                const Piece& standing = *other;
                const auto is_kept = [&](double further) {
                    return spare(level, piece, standing, way + further) >= -rounding;
                };
                const Piece there = shifted(level.moving[k], level.direction, way + step);
                if (!may_meet(there, standing, level.direction, 0, air_.curved) || is_kept(step) || !is_kept(0)) {
                    continue;
                }
                double good = 0, bad = step;
                for (int halving = 0; halving < 60 && bad - good > sliver / 4; ++halving) {
                    const double middle = (good + bad) / 2;
                    (is_kept(middle) ? good : bad) = middle;
                }
                step = good;
            }
        }
        return step;
    }

    /// The step, as far as no wall ends it.
    double within_walls(const Level& level, double way, double step) const
    {
        const CellView view{level.cell, layout_.room(level.cell), {}};
        for (std::size_t k = 0; k < level.moving.size(); ++k) {
            const Room room = kept(view, level.moving[k], options_);
            const auto out = [&](double at) {
                const Piece p = shifted(level.moving[k], level.direction, at);
                return excess(p, room) + (level.main && k == 0 ? shallow(p, view.room) : 0.0);
            };
            if (room.floor && level.direction.z < 0) {
                const Piece p = shifted(level.moving[k], level.direction, way);
                step = std::min(step, std::max(0.0, p.z - p.half_height) / -level.direction.z);
            }
            step = last_within([&](double further) { return out(way + further); }, step);
        }
        return step;
    }

    const Layout& layout_;
    Air air_;
    PolishOptions options_;
    double most_;
    std::vector<Level> levels_;
};

} // namespace

Air air_of(const PolishOptions& options) { return {options.curved_gap, options.flat_gap, options.wall_gap}; }

double free_way(const Layout& layout, int body, const Place& from, const Vec3& direction, double most, const Air& air,
                Seeing seeing)
{
    return Way(layout, body, from, direction, most, air, seeing).length();
}

bool keeps_air(const Layout& layout, int body, const Place& place, const Air& air)
{
    constexpr double rounding = 1e-9;
    const PolishOptions options = wall_options(air);
    bool kept_all = true;
    layout.each_level_at(body, place, [&](int cell, int vessel, const std::vector<Piece>& pieces) {
        const CellView view{cell, layout.room(cell), {}};
        for (std::size_t k = 0; k < pieces.size() && kept_all; ++k) {
            const bool main = vessel == body && k == 0;
            kept_all = excess(pieces[k], kept(view, pieces[k], options)) <= rounding &&
                       (!main || shallow(pieces[k], view.room) <= rounding);
        }
        const Bound own = Bound::of(pieces);
        for (const int other : layout.inside(cell)) {
            Bound theirs = layout.bound(other);
            theirs.reach += air.curved, theirs.low -= air.curved, theirs.high += air.curved;
            if (!kept_all || other == vessel || (!own.slants && !theirs.slants && own.is_clear_of(theirs))) {
                continue;
            }
            for (const Piece& q : layout.visible(other)) {
                for (const Piece& p : pieces) {
                    if (may_meet(p, q, {0, 0, 0}, 0, air.curved)) {
                        const Contact c = contact(p, q);
                        kept_all = kept_all && c.distance >= air_between(c, air) - rounding;
                    }
                }
            }
        }
    });
    return kept_all;
}

void drop_all(Layout& layout, const Air& air)
{
    constexpr double far = 1e4, still = 1e-10;
    constexpr int most_rounds = 40;
    std::vector<std::pair<double, int>> order;
    for (int round = 0; round < most_rounds; ++round) {
        order.clear();
        for (int body = 0; body < static_cast<int>(layout.size()); ++body) {
            double depth = 0; // what holds comes before what is held
            for (int cell = layout.place(body).cell; cell != outermost; cell = layout.place(cell).cell) {
                depth += 1e7;
            }
            const Vec3 up = up_in_cell(layout, layout.place(body).cell);
            const Place& p = layout.place(body);
            order.emplace_back(depth + up.x * p.x + up.y * p.y + up.z * p.z -
                                   (up.z > 0.5 ? vertical_reach(layout.stowed(body), p).below : 0),
                               body);
        }
        std::sort(order.begin(), order.end());
        double longest = 0;
        for (const auto& [height, body] : order) {
            if (layout.stowed(body).pressed) {
                continue;
            }
            Place place = layout.place(body);
            const Vec3 up = up_in_cell(layout, place.cell), down{-up.x, -up.y, -up.z};
            const bool is_sleeve = layout.stowed(body).hollow && layout.stowed(body).hollow->open_bottom &&
                                   place.form == Form::standing && up.z > 0.5;
            const Seeing seeing = is_sleeve ? Seeing::sleeve_alone : Seeing::everything;
            const double way = free_way(layout, body, place, down, far, air, seeing);
            if (way < still) {
                continue;
            }
            longest = std::max(longest, way);
            place.x += way * down.x, place.y += way * down.y, place.z += way * down.z;
            layout.put(body, place);
            const std::vector<int> held = is_sleeve ? layout.inside(body) : std::vector<int>{};
            for (const int child : held) { // a sleeve slides down along what it holds
                Place stays = layout.place(child);
                stays.z += way;
                layout.put(child, stays);
            }
        }
        if (longest < still) {
            return;
        }
    }
}

} // namespace tuckwright::packing
