// SPDX-License-Identifier: GPL-3.0-or-later
/// Where an item lies among its neighbours, as a person sees it who puts it there.
#pragma once
#include <optional>
#include <vector>

#include "stacking/replay.hpp"
#include "tuckwright/geometry.hpp"

namespace tuckwright::stacking
{

enum class Posture { standing, upside_down, lying, leaning };

struct Surroundings {
    Posture posture = Posture::standing; ///< against the upright of the container
    bool flat = false;                   ///< much wider than high when it stands
    bool on_end = false;                 ///< a box that lies with its longest side upright
    bool on_floor = false;               ///< of its cavity, or of the bundle
    std::vector<std::size_t> on;         ///< what has been placed and carries it, when the floor does not
    bool in_middle = false;              ///< of its cavity or of the bundle
    bool alone = false;                  ///< no other item of the same container at its height, now or later
    bool wall_is_round = false;          ///< it lies in a cylindrical cavity
    std::optional<double> wall_air;      ///< mm to the nearest wall; nothing in the bundle, which has no walls
    std::optional<std::size_t>
        beside; ///< the nearest item at its height, placed before, in the same container, that does not carry it
    double beside_air = 0; ///< mm to that item
};

/// Requires: the replay stands just before the item's step; the item is not a shut lid.
Surroundings surroundings_of(const Replay& before, std::size_t item);

} // namespace tuckwright::stacking
