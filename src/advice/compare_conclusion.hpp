// SPDX-License-Identifier: GPL-3.0-or-later
/// What follows from a comparison, for somebody who has to decide.
#pragma once
#include <string>

#include "tuckwright/compare.hpp"

namespace tuckwright {

/// How a kit is told from the others: by what was taken where all come from one file, else by its name, and its file
/// where another has the same name.
std::string name_in_words(const Comparison& comparison, std::size_t kit);

/// The smallest and the lightest, by how much, whether that is proved, and how to pack it.
std::string conclusion(const Comparison& comparison);

} // namespace tuckwright
