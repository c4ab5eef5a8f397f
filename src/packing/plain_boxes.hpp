// SPDX-License-Identifier: GPL-3.0-or-later
/// Scenes of nothing but plain boxes in whole nanometres, and layouts made of where they lie along the axes.
#pragma once
#include <array>
#include <cstdint>
#include <optional>
#include <vector>

#include "packing/layout.hpp"

namespace tuckwright::packing {

using Lengths = std::array<std::int64_t, 3>; ///< along x, y and z, in nanometres

/// A size that a body may take along the axes, and how it is turned for that.
struct Stance {
    Lengths size{};
    Form form = Form::standing;
    bool quarter = false; ///< whether it is turned about the upright axis
    friend bool operator==(const Stance&, const Stance&) = default;
};

/// For each body the stances that it may take directly in the bundle, without doubles, in the order of its forms; what
/// leans counts as none. Empty where any body is more than a box, can be stowed in several ways, may not lie in the
/// bundle by itself, or keeps company by rules.
std::vector<std::vector<Stance>> stances_of_plain_boxes(const Scene& scene);

struct PlacedBox {
    Lengths corner{}; ///< the one nearest to the origin, which is a corner of the room's floor
    Stance stance;
};

/// The layout of boxes in a room, one for each body; nothing where a body may not lie so.
std::optional<Layout> layout_of_boxes(const Scene& scene, const Lengths& room, const std::vector<PlacedBox>& boxes);

} // namespace tuckwright::packing
