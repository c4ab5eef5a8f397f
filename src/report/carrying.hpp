// SPDX-License-Identifier: GPL-3.0-or-later
/// The rules of carrying that the bundle keeps, in words.
#pragma once
#include <string>

#include "tuckwright/bundle.hpp"

namespace tuckwright::report {

/// An empty line and a paragraph for what keeps apart, within and out, each where there is such a rule: "Kept apart:
/// Spirit bottle from Bag of oats and Cup (fuel keeps apart from food)."; then the usual rules that the kit does
/// without. Empty without any of these.
std::string carrying(const Bundle& bundle);

} // namespace tuckwright::report
