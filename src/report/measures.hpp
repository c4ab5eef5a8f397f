// SPDX-License-Identifier: GPL-3.0-or-later
/// How things fit and what rattles, in words.
#pragma once
#include <string>

#include "tuckwright/bundle.hpp"

namespace tuckwright::report {

/// For a bundle in which something has a tolerance: an empty line, each fit as measured and at worst, and the tightest
/// three. Empty for others.
std::string fits_text(const Bundle& bundle);

/// The three tightest fits: "Tightest: Cup in Small pot (0.1 mm all round at worst).". Empty where nothing lies in anything.
std::string tightest_note(const Bundle& bundle);

/// What rattles, and what soft thing could pad it, not wrapped. Empty where nothing rattles.
std::string rattling_note(const Bundle& bundle);

} // namespace tuckwright::report
