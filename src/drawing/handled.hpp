// SPDX-License-Identifier: GPL-3.0-or-later
/// A step as it is in one's hands: a vessel that is filled on the table has its mouth up, however it ends.
#pragma once
#include <optional>

#include "tuckwright/bundle.hpp"

namespace tuckwright::drawing {

/// The vessel on the table that a step fills; nothing where it is done in the bundle itself, or all is done.
/// Requires: a step up to the number of steps.
std::optional<std::size_t> filled_at(const Bundle& bundle, std::size_t step);

/// What a picture of the step is drawn from: the bundle without its proof. Where the vessel that the step fills will lie
/// or stand on its head, it is turned until its mouth is up, by the least turn, and what is in it by then, where nothing
/// presses it in and no wall tapers, has slid down as far as it goes; the step's way is turned likewise. In all other
/// steps everything is where it will be. Requires: the same.
Bundle as_handled(const Bundle& bundle, std::size_t step);

enum class Tip { none, onto_its_side, over };

/// Whether what has been filled with its mouth up is put in otherwise in this step, as it is handled.
/// Requires: what as_handled() gave for that step.
Tip tip_at(const Bundle& handled, std::size_t step);

} // namespace tuckwright::drawing
