// SPDX-License-Identifier: GPL-3.0-or-later
/// Sizes, volumes and weights in words for people, and lines no wider than a window.
#pragma once
#include <string>
#include <string_view>

#include "tuckwright/bundle.hpp"

namespace tuckwright::report
{

/// What the answers for people are told in: inches, fluid ounces, ounces and pounds, or metric units.
enum class AnswerUnits { metric, us_customary };

/// One setting for the whole program, made once before anything is put into words; metric if it is never made. Saved
/// files are metric whatever it is.
void answer_in(AnswerUnits units);
AnswerUnits answer_units();

/// Units of figures in tables and scales, whose heads name them: what one of them comes to, and its name.
struct TableUnits {
    double ml, grams, mm; ///< of one unit of volume, weight and length
    const char *volume, *weight, *length;
};
/// "ml", "g" and "mm", or "fl oz", "oz" and "in".
TableUnits table_units();

/// The least difference of lengths that are told, mm: a tenth of a millimetre or a hundredth of an inch.
double told_step();

/// The text of a step, or the like, whose lengths are metric, with these in the units of answers: whole millimetres, which
/// tell about where, to the nearest tenth of an inch, tenths of millimetres, which tell of air, rounded down. Names are
/// left as they are.
std::string in_answer_units(std::string text, const Bundle& bundle);

/// A length, rounded up to a tenth of a millimetre so that it is never understated: "130.7 mm", "96 mm"; or to a hundredth
/// of an inch: "5.15 in".
std::string length_in_words(double mm);

/// Room to move, or a limit, rounded down to a tenth of a millimetre, or a hundredth of an inch, so that it is never
/// overstated. Requires: not negative.
std::string room_in_words(double mm);

/// A volume rounded up or down to three figures or so: "1.42 l", "820 ml", "27.8 fl oz".
enum class Rounding { up, down };
std::string volume_in_words(double ml, Rounding rounding);

/// "950 g", "1.234 kg"; "33.5 oz", "2 lb 11.5 oz".
std::string weight_in_words(double grams);

/// A share, rounded up unless it is something to gain: "0.4 %", "18 %".
std::string share_in_words(double share, Rounding rounding = Rounding::up);

/// "128 mm across, 96 mm high" or "80 x 60 x 45 mm", measured along the shape's own axes; rounded up, or down for an inside.
std::string size_in_words(const Shape& shape, Rounding rounding = Rounding::up);

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
