// SPDX-License-Identifier: GPL-3.0-or-later
/// Lengths and weights as the file's text gives them: exact, until they are rounded once to where they are used.
#pragma once
#include <compare>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "tuckwright/result.hpp"

namespace tuckwright::reading
{

__extension__ using Wide = __int128;

enum class Measure { length, weight, volume };
enum class Unit { mm, cm, m, in, g, kg, oz, lb, ml, l, fl_oz };

inline constexpr auto comma_remedy = "write a point before the decimals, nothing between thousands";

/// The units meant by a plain number.
struct Units {
    Unit length = Unit::mm, weight = Unit::g, volume = Unit::ml;
};

/// An exact length: whole multiples of 1e-18 nm. Any number that parse_length lets through fits with room for sums.
struct Length {
    Wide steps = 0;

    static Length of_nanometres(std::int64_t nm);
    /// The grid point not above, not below. Requires: at most 10 m either way, times a few.
    std::int64_t nanometres_down() const;
    std::int64_t nanometres_up() const;
    double mm_down() const;
    double mm_up() const;

    friend auto operator<=>(const Length&, const Length&) = default;
    friend Length operator+(Length a, Length b) { return {a.steps + b.steps}; }
    friend Length operator-(Length a, Length b) { return {a.steps - b.steps}; }
    friend Length operator*(int n, Length a) { return {n * a.steps}; }
};

/// "64 mm", "0.5 mm": exact, with as many decimals as it takes.
std::string to_string(Length length);

/// The unit of this measure with this name, or what is wrong with the word, without a place.
Result<Unit> parse_unit(std::string_view word, Measure measure);

/// A number with or without a unit of length; a plain number is in the default unit. Ensures: exact; below 1e9 of its
/// unit either way. Fractions are those of rulers, "4 3/8 in", down to sixty-fourths.
/// Errors (without a place): no decimal number, a unit unknown or of another measure, any other fraction, an exponent, more than 18 decimals, not finite.
Result<Length> parse_length(std::string_view text, Unit plain);

/// A dimension's text taken apart: the size, and the tolerance behind "±", "+-" or "+/-" where there is one. A unit that
/// only one of the two has counts for both.
struct MeasuredText {
    std::string size;
    std::optional<std::string> off;
};
MeasuredText take_tolerance_off(std::string_view text);

/// The same for a weight, as the double nearest to the exact number of grams.
Result<double> parse_weight(std::string_view text, Unit plain);

/// The same for a volume, in millilitres.
Result<double> parse_volume(std::string_view text, Unit plain);

/// A decimal number as the nearest double, and what follows it.
struct Figure {
    double number = 0;
    std::string unit;
};
/// Takes a number's text apart, whatever its unit. Errors (without a place): those of parse_length but for the unit.
Result<Figure> parse_figure(std::string_view text);

} // namespace tuckwright::reading
