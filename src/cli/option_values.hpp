// SPDX-License-Identifier: GPL-3.0-or-later
/// Option values from their text. Each throws CLI::ValidationError, in words, for anything else than it names.
#pragma once
#include <cstdint>
#include <string>
#include <vector>

#include "cli/draw.hpp"
#include "report/words.hpp"
#include "tuckwright/card.hpp"
#include "tuckwright/kit_reader.hpp"
#include "tuckwright/solve.hpp"

namespace tuckwright::cli
{

Effort effort_value(const std::string& text);      ///< quick, normal or thorough
std::uint64_t seed_value(const std::string& text); ///< a whole number from 0
unsigned threads_value(const std::string& text);   ///< 1 to 1024; 0 for as many as the machine has
std::string path_value(const std::string& text);   ///< anything but nothing
std::size_t most_value(const std::string& text);   ///< 1 to 1000000
std::vector<Taken> taken_value(const std::string& text); ///< "pot=big-pot", or several of these with commas between
PictureFormat picture_format_value(const std::string& text); ///< svg, pdf or png
/// In what answers for people are told.
report::AnswerUnits units_value(const std::string& text);
Paper paper_value(const std::string& text); ///< a4 or letter
double seconds_value(const std::string& text);     ///< above 0, at most a year

} // namespace tuckwright::cli
