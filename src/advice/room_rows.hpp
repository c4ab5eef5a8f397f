// SPDX-License-Identifier: GPL-3.0-or-later
/// What keeps one more thing within its place, as linear conditions on how it moves and grows, and how far it fails them.
#pragma once
#include <array>
#include <vector>

#include "advice/room_draft.hpp"
#include "advice/room_space.hpp"

namespace tuckwright::advice {

/// place . move + size . growth + angle * turn <= slack (mm, rad).
struct Row {
    Vec3 place;
    std::array<double, 3> size{};
    double angle = 0;
    double slack = 0;
};

/// A plane between the thing and what is in its way, as far as it may matter.
struct Contact {
    Vec3 normal;       ///< from the thing to the obstacle
    double limit = 0;  ///< how far along the normal the thing may reach
};

/// The planes to all obstacles that are within `near` mm by their extents.
std::vector<Contact> contacts_of(const Draft& draft, const Space& space, double near);

/// The conditions at a draft, for moves and turns so small that no more than `turn` rad matters. Planes hold exactly for
/// whatever grows and moves without turning; where walls are round or the thing turns, to first order.
std::vector<Row> rows_of(const Draft& draft, const Space& space, const std::vector<Contact>& contacts, double turn);

/// The most by which it fails walls, openings and girth, mm; not positive where it keeps them all.
double beyond_walls(const Draft& draft, const Space& space);

/// The most by which it is beyond the planes.
double beyond_contacts(const Draft& draft, const Axes& frame, const std::vector<Contact>& contacts);

} // namespace tuckwright::advice
