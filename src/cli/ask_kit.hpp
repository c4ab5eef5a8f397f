// SPDX-License-Identifier: GPL-3.0-or-later
/// The dialogue in which somebody tells a kit.
#pragma once
#include <string>

#include "cli/asked_kit.hpp"

namespace tuckwright::cli
{

/// Asks for the kit's name, which is `name` if nothing else is said, for the bundle, and for one thing after the other.
/// Whatever the reader of kits would refuse is told at once, and asked for again. Ensures: fault_of() finds nothing.
/// Throws AnswersEnded.
AskedKit ask_for_kit(const std::string& name);

} // namespace tuckwright::cli
