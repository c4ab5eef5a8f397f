// SPDX-License-Identifier: GPL-3.0-or-later
/// Where an item lies among its neighbours, as a person sees it who puts it there.
#pragma once
#include <optional>
#include <vector>

#include "stacking/replay.hpp"
#include "tuckwright/geometry.hpp"

namespace tuckwright::stacking {

/// Air between an item and the sides of an upright rectangular room, mm: left is low x, front low y, in the world.
struct Sides {
    double left = 0, right = 0, front = 0, back = 0;
};

struct Neighbour {
    std::size_t item = 0;
    double air = 0; ///< mm
};

/// How a thing leans: from its lower end to its upper one, seen from the axis of its container.
struct Lean {
    Vec3 foot, head;        ///< middles of its ends, mm; z is the height above the container's floor
    double top = 0;         ///< mm from that floor up to its highest point
    double degrees = 0;     ///< from the upright
};

/// Where the two ends of a long thing are that lies level in a round vessel.
struct Span {
    struct End {
        double bearing = 0; ///< degrees from x, seen from the axis
        double air = 0;     ///< mm to the wall
    };
    End first, second;     ///< the first is nearer to the wall
    double middle_air = 0; ///< mm to the wall from the middle of its long side that faces it
};

struct Surroundings {
    bool on_floor = false;       ///< of its cavity, or of the bundle, for a sleeve of what the sleeve stands in
    std::vector<std::size_t> on; ///< what has been placed and carries it, when the floor does not
    std::vector<std::size_t> rims; ///< of these, open vessels that carry it on their rim
    bool in_middle = false;      ///< of its cavity or, with more latitude, of the bundle
    double off_axis = 0;         ///< mm from its centre to the axis of the cavity or bundle
    bool alone = false;          ///< no other item of the same container at its height, now or later
    bool all_round = false;      ///< a cylinder that stands in a round cavity: the same air all round, if in the middle
    std::optional<double> wall_air;  ///< mm to the nearest wall; nothing in the bundle, which has no walls
    std::optional<double> edge_air;  ///< mm to the edge of a round bundle, directly in that
    std::optional<Sides> sides;      ///< in a box bundle: of that, or of a cavity that stands square in it
    bool clock = false;              ///< in an upright room that has no sides: hours tell directions
    double bearing = 0;              ///< with a clock: degrees from x of its centre, seen from the axis
    std::optional<double> long_side; ///< with sides or a clock: degrees from x, 0 up to 180, of what is clearly longer than wide
    bool is_axis = false;            ///< that is the axis of a cylinder that lies and is wider than long
    std::optional<double> mouth;     ///< with sides or a clock: degrees from x of the open end of a vessel that lies
    std::optional<double> part;      ///< the same of what is fixed to the side of an upright cylinder, if it is one thing
    std::optional<Span> span; ///< with a clock, in a round vessel: of what lies level and is far longer than wide
    std::optional<Lean> lean;        ///< of what leans in a container that stands
    std::vector<Neighbour> beside;   ///< placed before, at its height, in the same container, not carriers; the
                                     ///< nearest, and a second one if that is near enough too; in the
                                     ///< bundle the nearest however far it is
    std::optional<std::size_t> opposite; ///< directly in a round bundle: what lies there beyond the middle
};

/// Requires: the replay stands just before the item's step; the item is not a shut lid.
Surroundings surroundings_of(const Replay& before, std::size_t item);

} // namespace tuckwright::stacking
