// SPDX-License-Identifier: GPL-3.0-or-later
/// A first layout without overlap, built body by body.
#pragma once
#include <vector>

#include "packing/layout.hpp"
#include "packing/random.hpp"

namespace tuckwright::packing {

/// Puts the bodies in, larger ones first but for some shuffling, each into the lowest of many sampled places, in a
/// vessel rather than beside it with the given eagerness (0..1). The envelope's width is kept and its height grows as
/// needed. Requires: every body fits the envelope's width in some form that its doors allow.
/// Ensures: no overlap; the envelope as high as the highest body.
void construct(Layout& layout, Random& random, double eagerness, int samples);

/// Takes some bodies out, each with what it holds, and puts them in again, as construct() does. Ensures: no overlap if
/// there was none, and the envelope as high as the highest body; or false and a layout that means nothing, where one
/// found no place.
/// Source: ruin and recreate, G. Schrimpf, J. Schneider, H. Stamm-Wilbrandt and G. Dueck, J. Computational Physics 159
/// (2000).
bool rebuild(Layout& layout, Random& random, const std::vector<int>& bodies, int samples);

/// How far a body may have to go.
enum class Going { as_near_as_can_be, into_gaps_only, on_top, out_of_its_vessel };

/// Takes a body, with all it holds, out of a large scene's layout, and puts it where it is carried: nearby, in some gap, or
/// else where it falls to from above, the envelope's height growing as needed; `out_of_its_vessel` anywhere but in the
/// vessel that holds it now. Leaves it where it is, and returns false, if there is no such place.
bool place_anew(Layout& layout, int body, Random& random, int samples, Going going = Going::as_near_as_can_be);

/// Fits the envelope round the layout as it lies, moving all bodies alike. Ensures: nothing stands out of the bundle,
/// and it is no larger than before if nothing stood out.
void tighten(Layout& layout);

} // namespace tuckwright::packing
