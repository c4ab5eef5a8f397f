// SPDX-License-Identifier: GPL-3.0-or-later
/// Whether a plane keeps two pieces apart, or lets one be drawn away past the other.
#pragma once
#include <optional>
#include <vector>

#include "proof/piece.hpp"

namespace tuckwright::proof {

/// What was found for two pieces: a plane between them, or by how much the best candidate missed.
struct Parting {
    bool proved = false;
    double missed_nm = 0; ///< about; meaningful when nothing is proved
    bool tried = false;   ///< whether any candidate was left to try
};

/// Looks for a plane between the pieces, they may touch it, among the world's axes, the axes of both pieces and the
/// normals given, which point from the first to the second.
/// With a direction, only planes whose normal does not oppose it count: then the first, drawn back against the
/// direction, never meets an inner point of the second.
Parting part(const Piece& first, const Piece& second, const std::vector<Vector>& normals,
             const std::optional<Vector>& direction = std::nullopt);

/// The same for the first on a straight move, seen where it ends, from where it lies `from` beside that: one plane keeps
/// both ends on its side, and so all between.
Parting part_moving(const Piece& first, const Vector& from, const Piece& second, const std::vector<Vector>& normals);

} // namespace tuckwright::proof
