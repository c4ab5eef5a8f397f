// SPDX-License-Identifier: GPL-3.0-or-later
/// How much of the way out can stay as it is on the way back.
#pragma once
#include "advice/carried.hpp"
#include "tuckwright/kit.hpp"

namespace tuckwright::advice {

struct KeptPlaces {
    Carried things; ///< of the kit on the way back: as before, anywhere where that cannot be, or is not known
    Bundle pattern; ///< the bundle of the way out without what is gone or may lie anywhere; items only
};

/// What of the bundle of the way out the kit of the way back can keep as far as its rules tell: of each rule that the
/// old places break, one of the things gives way, the contained one or the smaller. Requires: a bundle with items.
KeptPlaces kept_places(const Bundle& out, const Kit& back);

/// The kit with rules that keep each thing directly in what it was in before, where all of its copies were in the like.
Kit with_vessels_kept(const Kit& back, const KeptPlaces& kept);

/// Whether a thing of a kit has no inside, in whatever form, that something could lie in.
bool holds_nothing(const Item& item);

} // namespace tuckwright::advice
