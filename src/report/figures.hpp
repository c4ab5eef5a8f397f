// SPDX-License-Identifier: GPL-3.0-or-later
/// Figures that follow from the rest of a bundle; printed for people and programs, and checked when read back.
#pragma once
#include <optional>
#include <string>

#include "tuckwright/bundle.hpp"

namespace tuckwright::report
{

struct Weights {
    double total = 0, empty = 0, contents = 0; ///< grams; empty: without what items hold loose
};
Weights weights_of(const Bundle& bundle);

/// Millilitres of the outsides of all items added up: what they would take one by one.
double outsides_ml(const Bundle& bundle);

/// The gap, or nothing where there is no bundle or no positive bound.
std::optional<double> gap_of(const Bundle& bundle);

/// Where an item goes: its container's label, a shut lid's vessel, or "bundle".
std::string into_of(const Bundle& bundle, std::size_t item);

} // namespace tuckwright::report
