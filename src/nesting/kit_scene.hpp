// SPDX-License-Identifier: GPL-3.0-or-later
/// A kit as bodies and cells: every copy of every item, with its lid shut or carried loose.
#pragma once
#include <optional>
#include <vector>

#include "packing/polish.hpp"
#include "packing/scene.hpp"
#include "tuckwright/kit.hpp"

namespace tuckwright::nesting {

/// One copy of an item of the kit.
struct Copy {
    std::size_t item = 0;
    int copy = 1;
    friend bool operator==(const Copy&, const Copy&) = default;
};

/// What a body of the scene stands for.
struct Origin {
    Copy self;
    std::optional<Copy> lid; ///< shut on it and moving with it
};

struct KitScene {
    packing::Scene scene;
    std::vector<Origin> origins;
};

/// The kit with heights and box sides of an even number of nanometres, outsides rounded up and cavities down, so that
/// both the middle and the flat faces of everything lie on the grid. Proofs about limits and bounds use the kit as given.
Kit on_even_grid(Kit kit);

/// The copies of all lids of the kit, in the kit's order.
std::vector<Copy> lids(const Kit& kit);

/// Which of the lids are shut, in all the ways that are worth a search: all of them, all but one (for the first few),
/// and none. The lid of a full vessel is always shut, and so is one that a band holds.
std::vector<std::vector<bool>> lid_choices(const Kit& kit);

/// Builds the scene. `shut[k]` tells whether the k-th lid of lids() is shut. Requires: one entry for each lid.
/// Ensures: the fit table says for each body, cell and form whether the body fits there alone, and within the limits;
/// nothing fits a vessel that is full.
KitScene kit_scene(const Kit& kit, const std::vector<bool>& shut);

/// The kit's limits in the measures of an envelope; with a bag, what it leaves for what is in it.
packing::EnvelopeLimits envelope_limits(const Kit& kit);

/// The plate of a shut lid, its centre told from the vessel's centre along the vessel's axis.
packing::BodyPiece lid_plate(const Item& lid, const Item& vessel);
/// How much lower the ceiling of the vessel's cavity is under its shut lid: what hangs further down than a neck is high.
double lid_takes(const Item& lid, const Item& vessel);
/// The skirt of a shut lid round the vessel, where there is one.
std::optional<packing::BodyPiece> lid_skirt(const Item& lid, const Item& vessel);

} // namespace tuckwright::nesting
