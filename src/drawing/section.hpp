// SPDX-License-Identifier: GPL-3.0-or-later
/// Solids cut along an upright plane: what the cut shows, and the outline of what is left behind it.
#pragma once
#include <optional>
#include <vector>

#include "drawing/camera.hpp"
#include "drawing/shown.hpp"
#include "tuckwright/bundle.hpp"

namespace tuckwright::drawing {

/// An upright plane and the eye that looks at it from the side that is taken away.
struct Cut {
    Camera camera;
    double level = 0; ///< the plane's depth, mm
    double angle = 0; ///< degrees by which the eye has gone to the right from the front
};

/// The outline of the part of a solid behind the plane, mm of the things, y down; of the whole solid where there is no plane.
/// Nothing if all of it has been cut away. Ensures: what is round is followed within 0.06 % of its radius.
std::vector<Spot> outline_behind(const Solid& solid, const Camera& camera, std::optional<double> level);

/// Whether the plane goes through a solid, by a hundredth of a millimetre at least.
bool is_cut(const Solid& solid, const Cut& cut);

/// What the plane shows of a solid; empty where it does not meet it.
std::vector<Spot> section_of(const Solid& solid, const Cut& cut);

/// mm^2 of it.
double area_of(const std::vector<Spot>& outline);

/// What the plane shows of an item's material: its solids together, less its hollows; of a shut lid also what hangs into
/// its vessel.
Path material_of(const Bundle& bundle, const Shown& shown, std::size_t item, const Cut& cut);

/// The plane for a picture: through the axis of what is filled, from the front if that shows the item of the step well (of
/// a finished bundle: as many things as any other direction), else turned until it does; in a box by a quarter, and then
/// moved to the item's middle if need be.
Cut cut_for(const Bundle& bundle, const Shown& shown);

} // namespace tuckwright::drawing
