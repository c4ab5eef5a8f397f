// SPDX-License-Identifier: GPL-3.0-or-later
/// A cylinder or box with exact dimensions and the places where the file gives them.
#pragma once
#include <optional>
#include <span>
#include <string_view>
#include <vector>

#include "kit/fields.hpp"
#include "tuckwright/shape.hpp"
#include "tuckwright/spread.hpp"

namespace tuckwright::reading
{

enum class ShapeKind { cylinder, box };

/// "cylinder", "box".
std::string_view word_of(ShapeKind kind);
/// Diameter and height, or length, width and height: the height is always the last.
std::span<const std::string_view> dimensions_of(ShapeKind kind);

struct SizedShape {
    ShapeKind kind = ShapeKind::cylinder;
    std::vector<Length> sizes; ///< as dimensions_of names them
    std::vector<Place> places; ///< of each size
    std::optional<Length> foot; ///< of a cylinder that tapers down: its diameter at the lower end
    Place place;               ///< of the shape
    std::vector<Length> offs;  ///< by how much each size may be off

    Length height() const { return sizes.back(); }
    Shape rounded_up() const;
    Shape rounded_down() const;
    Spread spread() const; ///< rounded up to the grid
};

/// Whether the height may be left out (that of a sleeve's cavity is the sleeve's own).
enum class Height { needed, optional };

/// The cylinder or box under the key of that name. Ensures: all sizes are between 1 µm and 10 m; only the last may be
/// missing, and only where it may be left out.
std::optional<SizedShape> read_shape(Reading& reading, const Node& node, ShapeKind kind,
                                     Height height = Height::needed);

/// A square root rounded up to the grid: the diagonal of a box's plan. Requires: sizes in nanometres up to 10 m.
std::int64_t diagonal_up(std::int64_t length_nm, std::int64_t width_nm);

} // namespace tuckwright::reading
