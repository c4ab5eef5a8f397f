// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "proof/forest.hpp"
#include "proof/rules.hpp"
#include "tuckwright/tolerance.hpp"

namespace tuckwright::proof {

namespace {

/// What an item is made of: its solids less the inner of its cavities.
struct Material {
    std::vector<Piece> solids;
    std::vector<Piece> cavities; ///< with mouths that are no surface to rest on
};

/// The cavity drawn out past its open ends, where nothing of its item is.
Piece with_mouths(const Piece& cavity, Opening opens)
{
    if (opens == Opening::closed) {
        return cavity;
    }
    const Rational& by = cavity.half[2];
    const Vector half{cavity.half[0], cavity.half[1], opens == Opening::both ? 2 * by : by + by / 2};
    const Vector middle = opens == Opening::both ? cavity.center : plus(cavity.center, times(by / 2, cavity.axis[2]));
    return piece_from(cavity.round, half, middle, cavity.axis);
}

/// The air in a narrow opening: from the middle of the cavity up to the rim, and on past it where it is open.
Piece through_neck(const Piece& cavity, const Piece& neck, Opening opens)
{
    const Rational& half = cavity.half[2];
    const Rational high = half + 2 * neck.half[2] + (opens == Opening::closed ? Rational(0) : half);
    return piece_from(neck.round, {neck.half[0], neck.half[1], high / 2},
                      plus(cavity.center, times(high / 2, cavity.axis[2])), cavity.axis);
}

Where where_is_any(const Vector& point, const std::vector<Piece>& pieces)
{
    Where where = Where::outside;
    for (const auto& piece : pieces) {
        where = std::max(where, where_is(point, piece));
    }
    return where;
}

Where where_in(const Vector& point, const Material& material)
{
    const Where solid = where_is_any(point, material.solids), air = where_is_any(point, material.cavities);
    return air == Where::inner ? Where::outside : air == Where::surface ? std::min(solid, Where::surface) : solid;
}

class RestCheck {
public:
    RestCheck(const Scene& scene, Findings& findings)
        : scene_(scene), findings_(findings), drop_(nanometres(tolerance::rest_drop))
    {
    }

    void run()
    {
        std::vector<std::vector<const Rest*>> rests(scene_.size());
        for (const auto& rest : scene_.bundle().certificate.rests) {
            rests[rest.item].push_back(&rest);
        }
        for (std::size_t item = 0; item < scene_.size() && !findings_.full(); ++item) {
            if (const auto vessel = scene_.bundle().items[item].closes) {
                shut_lid(item, *vessel, rests[item]);
            } else if (rests[item].size() != 1) {
                object(item, rests[item].empty() ? "the certificate does not say what it rests on"
                                                 : "the certificate says more than once what it rests on");
            } else if (const auto on = rests[item].front()->on) {
                on_item(item, *on, nanometres(rests[item].front()->point));
            } else if (!scene_.bundle().items[item].pressed) { // else its spring holds it, at any height
                on_container(item);
            }
        }
    }

private:
    void object(std::size_t item, const std::string& what)
    {
        findings_.add("rest", named(scene_.bundle(), item) + ": " + what);
    }

    /// A shut lid rests on its vessel by rule; the certificate may repeat that, and nothing else.
    void shut_lid(std::size_t item, std::size_t vessel, const std::vector<const Rest*>& rests)
    {
        if (std::any_of(rests.begin(), rests.end(), [&](const Rest* rest) { return rest->on != vessel; })) {
            object(item, "a shut lid rests on its vessel, not on what the certificate says");
        }
    }

    /// The item, and the lid shut on it, which is fastened to it, and that lid's own.
    std::vector<std::size_t> lowered_items(std::size_t item) const
    {
        std::vector<std::size_t> parts;
        for (std::optional<std::size_t> part = item; part; part = scene_.lid(*part)) {
            parts.push_back(*part);
        }
        return parts;
    }

    struct Lowered {
        Piece piece;
        bool further = false; ///< not an item's first solid, or a shut lid's: it may lie beyond a rim
    };

    std::vector<Lowered> lowered(std::size_t item) const
    {
        std::vector<Lowered> pieces;
        for (const std::size_t part : lowered_items(item)) {
            for (std::size_t k = 0; k < scene_.solids(part).size(); ++k) {
                pieces.push_back({moved(scene_.solids(part)[k], {0, 0, -drop_}), k > 0 || part != item});
            }
        }
        return pieces;
    }

    Material material(std::size_t item) const
    {
        Material made{scene_.solids(item), {}};
        const auto& cavities = scene_.cavities(item);
        for (std::size_t k = 0; k < cavities.size(); ++k) {
            const Opening opens = scene_.bundle().items[item].cavities[k].opens;
            const auto& neck = scene_.neck({item, k});
            made.cavities.push_back(with_mouths(cavities[k], neck ? Opening::closed : opens));
            if (neck) {
                made.cavities.push_back(through_neck(cavities[k], *neck, opens));
            }
        }
        return made;
    }

    bool hangs_together(std::size_t item, std::size_t on) const
    {
        for (std::optional<std::size_t> at = on; at; at = hangs_on(scene_.bundle().items[*at])) {
            if (*at == item) {
                return true;
            }
        }
        return false;
    }

    void on_item(std::size_t item, std::size_t on, const Vector& point)
    {
        const std::string name = named(scene_.bundle(), on);
        if (on == item) {
            object(item, "it cannot rest on itself");
        } else if (hangs_together(item, on)) {
            object(item, "it cannot rest on " + name + ", which hangs on it");
        } else if (holds(scene_.bundle(), on, item)) {
            object(item, "it is in " + name + "; a rest on a container names no item");
        } else {
            at_point(item, on, point);
        }
    }

    /// Lowered, the item's material must meet that of what it rests on: air rests on nothing, and nothing on air.
    void at_point(std::size_t item, std::size_t on, const Vector& point)
    {
        const std::string name = named(scene_.bundle(), on);
        const std::string lowered_by = "lowered by " + in_mm(approximate(drop_)) + ", it ";
        const Vector raised = plus(point, {0, 0, drop_}); // as the point lies to the item that is lowered
        Where above_solids = Where::outside, above = Where::outside;
        for (const std::size_t part : lowered_items(item)) {
            above_solids = std::max(above_solids, where_is_any(raised, scene_.solids(part)));
            above = std::max(above, where_in(raised, material(part)));
        }
        const Where below = where_in(point, material(on));
        if (where_is_any(point, scene_.solids(on)) == Where::outside) {
            object(item, "the point where it rests on " + name + " is not in " + name);
        } else if (below == Where::outside) {
            object(item, "the point where it rests on " + name + " is in the empty cavity of " + name);
        } else if (above_solids == Where::outside) {
            object(item, lowered_by + "does not reach the point in " + name);
        } else if (above == Where::outside) {
            object(item, lowered_by + "has only its own empty cavity at the point in " + name);
        } else if (below == Where::surface && above == Where::surface) {
            object(item, lowered_by + "would only slide along " + name);
        }
    }

    /// Whether a lowered piece is proved to go through a wall, the floor or a closed top. Beyond the rim there are no
    /// walls for a further solid: it must reach down to it.
    static bool leaves(const Lowered& lowered, const Room& room)
    {
        const Piece& piece = lowered.piece;
        const bool has_walls = !lowered.further || !room.open_top || begins_below_top(piece, room);
        return (!room.open_bottom && against_bottom(piece, room).outside) ||
               (!room.open_top && against_top(piece, room).outside) ||
               (has_walls && against_walls(piece, room).outside);
    }

    void on_container(std::size_t item)
    {
        const auto pieces = lowered(item);
        const auto any_leaves = [&](const Room& room) {
            return std::any_of(pieces.begin(), pieces.end(), [&](const Lowered& piece) { return leaves(piece, room); });
        };
        const auto containers = containers_of(scene_.bundle(), item);
        if (!std::any_of(containers.begin(), containers.end(),
                         [&](const Lodging& where) { return any_leaves(scene_.room(where)); }) &&
            !any_leaves(scene_.envelope())) {
            object(item, "lowered by " + in_mm(approximate(drop_)) +
                             ", it is still inside what it is in, so nothing holds it up");
        }
    }

    const Scene& scene_;
    Findings& findings_;
    Rational drop_;
};

} // namespace

void check_rests(const Scene& scene, Findings& findings) { RestCheck(scene, findings).run(); }

} // namespace tuckwright::proof
