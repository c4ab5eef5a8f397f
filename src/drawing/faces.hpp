// SPDX-License-Identifier: GPL-3.0-or-later
/// The faces of cylinders and boxes that a camera sees, with true arcs. mm of the things, y down.
#pragma once
#include <vector>

#include "drawing/camera.hpp"
#include "drawing/shown.hpp"
#include "tuckwright/bundle.hpp"

namespace tuckwright::drawing {

struct Face {
    Path area;
    double light = 1; ///< 1 for what faces up, less for what faces aside
};

/// The faces that are turned to the eye. `top` and `bottom`: whether the ends of its own axis are closed.
std::vector<Face> front_faces(const Solid& solid, const Camera& camera, bool top = true, bool bottom = true);

/// What the eye would see of the inside of a cavity if its near side were not there: its far walls and its floor.
std::vector<Face> inner_faces(const Hollow& hollow, const Camera& camera);

/// Between the outline of a body's upper end and that of the way into it; nothing where that end is turned away.
Path rim(const Solid& body, const Hollow& hollow, const Camera& camera);

} // namespace tuckwright::drawing
