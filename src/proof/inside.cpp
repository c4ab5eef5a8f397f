// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "proof/forest.hpp"
#include "proof/rules.hpp"

namespace tuckwright::proof {

namespace {

class InsideCheck {
public:
    InsideCheck(const Scene& scene, Findings& findings) : scene_(scene), findings_(findings) {}

    void run(std::size_t item)
    {
        is_lid_ = scene_.bundle().items[item].closes.has_value();
        const auto containers = containers_of(scene_.bundle(), item);
        if (!containers.empty() && !scene_.bundle().items[item].closes) { // a shut lid counts as its vessel's
            entered(item, containers.front());
        }
        pressed(item);
        for (const auto& where : containers) {
            solids(item, scene_.room_for(item, where), named(scene_.bundle(), where.item));
        }
        solids(item, scene_.envelope(), "the bundle");
    }

private:
    /// A further solid of the item, or its shut lid, may lie beyond an open top that is too narrow for it: the handle of
    /// a mug, its rim.
    bool lies_beyond(std::size_t solid, const Piece& piece, const Room& room) const
    {
        return (solid > 0 || is_lid_) && room.open_top && lies_beyond_top(piece, room);
    }

    /// What is pressed into a cavity is one plain cylinder that fills it from wall to wall, on its axis.
    void pressed(std::size_t item)
    {
        const PlacedItem& placed = scene_.bundle().items[item];
        if (!placed.pressed) {
            return;
        }
        const auto object = [&](const std::string& what) {
            findings_.add("inside",
                          named(scene_.bundle(), item) + " is told to be pressed into what it lies in, but " + what);
        };
        const auto& solids = scene_.solids(item);
        if (!placed.in || placed.closes) {
            object("it lies in no vessel");
        } else if (solids.size() != 1 || !is_straight(solids.front())) {
            object("it is no plain cylinder");
        } else if (const Piece& cavity = scene_.cavities(placed.in->item)[placed.in->cavity];
                   !is_straight(cavity) || scene_.neck(*placed.in)) {
            object("that has no straight round inside");
        } else if (nanometres(*placed.pressed) / 2 <= solids.front().half[0]) {
            object("left to itself it would not be wider");
        } else if (solids.front().half[0] != cavity.half[0]) {
            object("it is not as wide as that is inside");
        } else if (const Vector from = minus(solids.front().center, cavity.center);
                   !parallel(solids.front().axis[2], cavity.axis[2]) ||
                   (from != Vector{0, 0, 0} && !parallel(from, cavity.axis[2]))) {
            object("it does not lie on its axis");
        }
    }

    static bool is_straight(const Piece& piece) { return piece.round && piece.foot == piece.half[0]; }

    void solids(std::size_t item, const Room& room, const std::string& container)
    {
        const auto& pieces = scene_.solids(item);
        for (std::size_t k = 0; k < pieces.size(); ++k) {
            const Piece& solid = pieces[k];
            if (lies_beyond(k, solid, room)) {
                continue; // then it is apart from the container's own solids, by the rule of what is apart
            }
            keep(item, container, against_walls(solid, room), "side wall");
            if (!room.open_bottom) {
                keep(item, container, against_bottom(solid, room), "floor");
            }
            if (!room.open_top) {
                keep(item, container, against_top(solid, room), "top");
            }
        }
    }

    void keep(std::size_t item, const std::string& container, const Fit& fit, const char* through)
    {
        if (!fit.inside) {
            findings_.add("inside", named(scene_.bundle(), item) + " is not inside " + container + ": it stands out " +
                                        in_mm(fit.excess_nm) + " through the " + through);
        }
    }

    /// What does not reach below the rim is not in the cavity at all, but above it.
    void entered(std::size_t item, const Lodging& where)
    {
        const Room& room = scene_.room(where);
        const auto& pieces = scene_.solids(item);
        const auto any = [&](auto enters) {
            return std::any_of(pieces.begin(), pieces.end(), [&](const Piece& piece) { return enters(piece, room); });
        };
        if ((room.open_top && !any(begins_below_top)) || (room.open_bottom && !any(ends_above_bottom))) {
            findings_.add("inside", named(scene_.bundle(), item) + " is not inside " +
                                        named(scene_.bundle(), where.item) + ": all of it lies beyond the rim");
        }
    }

    const Scene& scene_;
    Findings& findings_;
    bool is_lid_ = false; ///< shut, it is a further solid of its vessel, as it were
};

} // namespace

void check_inside(const Scene& scene, Findings& findings)
{
    InsideCheck check(scene, findings);
    for (std::size_t item = 0; item < scene.size() && !findings.full(); ++item) {
        check.run(item);
    }
}

} // namespace tuckwright::proof
