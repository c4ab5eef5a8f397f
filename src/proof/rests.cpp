// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "proof/forest.hpp"
#include "proof/rules.hpp"
#include "tuckwright/tolerance.hpp"

namespace tuckwright::proof {

namespace {

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
            } else {
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

    /// The item's own solids and those of the lid shut on it, which is fastened to it, and of that lid's own.
    std::vector<Piece> lowered(std::size_t item) const
    {
        std::vector<Piece> pieces;
        for (std::optional<std::size_t> part = item; part; part = scene_.lid(*part)) {
            for (const auto& solid : scene_.solids(*part)) {
                pieces.push_back(moved(solid, {0, 0, -drop_}));
            }
        }
        return pieces;
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

    static Where where_is_any(const Vector& point, const std::vector<Piece>& pieces)
    {
        Where where = Where::outside;
        for (const auto& piece : pieces) {
            where = std::max(where, where_is(point, piece));
        }
        return where;
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
            const Where below = where_is_any(point, scene_.solids(on)), above = where_is_any(point, lowered(item));
            if (below == Where::outside) {
                object(item, "the point where it rests on " + name + " is not in " + name);
            } else if (above == Where::outside) {
                object(item, "lowered by " + in_mm(approximate(drop_)) + ", it does not reach the point in " + name);
            } else if (below == Where::surface && above == Where::surface) {
                object(item, "lowered by " + in_mm(approximate(drop_)) + ", it would only slide along " + name);
            }
        }
    }

    /// Whether a lowered piece is proved to go through a wall, the floor or a closed top.
    static bool leaves(const Piece& piece, const Room& room)
    {
        return (!room.open_bottom && against_bottom(piece, room).outside) ||
               (!room.open_top && against_top(piece, room).outside) || against_walls(piece, room).outside;
    }

    void on_container(std::size_t item)
    {
        const auto pieces = lowered(item);
        const auto any_leaves = [&](const Room& room) {
            return std::any_of(pieces.begin(), pieces.end(), [&](const Piece& piece) { return leaves(piece, room); });
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
