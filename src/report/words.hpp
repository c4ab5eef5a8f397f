// SPDX-License-Identifier: GPL-3.0-or-later
/// Sizes, volumes and weights in words for people, and lines no wider than a window.
#pragma once
#include <string>
#include <string_view>

#include "tuckwright/bundle.hpp"

namespace tuckwright::report
{

/// A length, rounded up to a tenth of a millimetre so that it is never understated: "130.7 mm", "96 mm".
std::string length_in_words(double mm);

/// Room to move, rounded down to a tenth of a millimetre so that it is never overstated. Requires: not negative.
std::string room_in_words(double mm);

/// A volume rounded up or down to three figures or so: "1.42 l", "820 ml".
enum class Rounding { up, down };
std::string volume_in_words(double ml, Rounding rounding);

/// "950 g", "1.234 kg".
std::string weight_in_words(double grams);

/// A share rounded up: "0.4 %", "18 %".
std::string share_in_words(double share);

/// "128 mm across, 96 mm high" or "80 x 60 x 45 mm", measured along the shape's own axes.
std::string size_in_words(const Shape& shape);

/// Seen along its own axis: "144 mm across", "120 mm x 80 mm".
std::string width_in_words(const Shape& shape);

/// "a round bundle 131 mm across and 112 mm high", "a box 300 mm long, 200 mm wide and 90 mm high".
std::string envelope_in_words(const Shape& envelope);

/// The text without characters that would steer a terminal.
std::string printable(std::string_view text);

/// A paragraph wrapped at 100 columns and made printable, each line ending in a newline. The first line starts with
/// `first`, the others are indented as far. Characters are counted, not bytes.
std::string wrapped(std::string_view first, std::string_view text);

} // namespace tuckwright::report
