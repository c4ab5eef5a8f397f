// SPDX-License-Identifier: GPL-3.0-or-later
/// What is said around the steps: whole sentences, not wrapped; empty where there is nothing to say.
#pragma once
#include <string>

#include "tuckwright/bundle.hpp"

namespace tuckwright::report {

/// What was hot in use and must have cooled before the first step.
std::string cooling_note(const Bundle& bundle);

/// Which way to begin when it is all taken apart.
std::string unpacking_note(const Bundle& bundle);

/// What stands only as long as it is held.
std::string toppling_note(const Bundle& bundle);

/// Several things on one another, and nothing in the kit that keeps them so.
std::string unheld_note(const Bundle& bundle);

} // namespace tuckwright::report
