// SPDX-License-Identifier: GPL-3.0-or-later
/// Larger changes of a layout, after which bodies may overlap: the start of another try.
#pragma once
#include <optional>

#include "nesting/search.hpp"
#include "packing/random.hpp"

namespace tuckwright::nesting {

/// Puts a body, with what it holds, at a random other place that it may enter.
void evict(packing::Layout& layout, int body, packing::Random& random);

/// Puts a body, with what it holds, where it overlaps the others least, of some random places that it may enter.
void rehouse(packing::Layout& layout, int body, packing::Random& random);
/// Puts a body, with what it holds, where there is room for it: the first of a number of random places without overlap.
/// Returns whether there was one.
bool tuck(packing::Layout& layout, int body, packing::Random& random);
/// Two bodies change places, where both may.
void swap(packing::Layout& layout, packing::Random& random);
/// Whether some body is, or can be stowed as, a sleeve.
bool has_sleeves(const packing::Scene& scene);
/// Puts a sleeve, stowed so that it goes round another body, about that one where it lies, and round what is beside it
/// in the way; what it held goes elsewhere. Nothing where none does.
void wrap(packing::Layout& layout, packing::Random& random);
/// About a third of all bodies are thrown about.
void stir(packing::Layout& layout, packing::Random& random);
/// Turns the order of what lies directly in the bundle over, top to bottom; every body keeps its own way up.
void turn_over(packing::Layout& layout);
/// The same layout with one lid that is loose shut on its vessel; nothing where all are shut.
std::optional<Proposal> with_a_lid_shut(const Kit& kit, const Proposal& from, packing::Random& random);

} // namespace tuckwright::nesting
