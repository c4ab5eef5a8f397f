// SPDX-License-Identifier: GPL-3.0-or-later
/// Option values from their text. Each throws CLI::ValidationError, in words, for anything else than it names.
#pragma once
#include <cstdint>
#include <string>

#include "tuckwright/solve.hpp"

namespace tuckwright::cli
{

Effort effort_value(const std::string& text);      ///< quick, normal or thorough
std::uint64_t seed_value(const std::string& text); ///< a whole number from 0
unsigned threads_value(const std::string& text);   ///< 1 to 1024; 0 for as many as the machine has
std::string path_value(const std::string& text);   ///< anything but nothing
double seconds_value(const std::string& text);     ///< above 0, at most a year

} // namespace tuckwright::cli
