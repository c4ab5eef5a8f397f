// SPDX-License-Identifier: GPL-3.0-or-later
/// Bodies that fall straight down until something stops them, and what they come to rest on.
#pragma once
#include "packing/air.hpp"
#include "packing/layout.hpp"
#include "packing/polish.hpp"

namespace tuckwright::packing {

/// What the polish keeps.
Air air_of(const PolishOptions& options);

/// What counts when a body moves: its surroundings in its own cell, or in all from which it is seen; of a sleeve that slides
/// down along what it holds, only itself.
enum class Seeing { own_cell, everything, sleeve_alone };

/// mm that a body at a place, with all it holds, can move along a unit direction of its cell's frame before something
/// stops it, `most` at most. Requires: it keeps the air there. Ensures: it keeps the air on the whole way.
/// Complexity: near-linear in the bodies of the cells that it is seen from.
/// Source: conservative advancement, B. Mirtich, "Impulse-based dynamic simulation" (1996), from memory.
double free_way(const Layout& layout, int body, const Place& from, const Vec3& direction, double most, const Air& air,
                Seeing seeing);

/// Whether a body at a place keeps the air to all walls and to all others, but for rounding.
bool keeps_air(const Layout& layout, int body, const Place& place, const Air& air);

/// Whether a floor, a wall or the material of another body is right under a body at a place: not only a mouth, nor only its
/// own. Errs towards no.
bool is_carried(const Layout& layout, int body, const Place& place);

/// Lowers everything as far as it goes straight down, one body after the other from the lowest up, until nothing moves.
/// Requires: the layout keeps the air. Ensures: it still does; no body is higher than before.
void drop_all(Layout& layout, const Air& air);

} // namespace tuckwright::packing
