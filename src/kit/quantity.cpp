// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/quantity.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <limits>
#include <optional>
#include <span>
#include <vector>

#include "kit/words.hpp"
#include "tuckwright/contract.hpp"
#include "tuckwright/units.hpp"

namespace tuckwright::reading
{

namespace
{

constexpr int kept_decimals = 18;
constexpr int kept_digits = 9;
constexpr Wide steps_per_one = 1'000'000'000'000'000'000;

struct UnitFact {
    Unit unit;
    std::string_view name;
    Measure measure;
    std::int64_t factor; // nanometres for a length; grams or millilitres times 10^decimals otherwise
    int decimals = 0;
};

// Inch, pound and ounce are exact: International yard and pound agreement of 1959; NIST Special Publication 811 (2008),
// appendix B.8. The ounce is a sixteenth of the pound. The US fluid ounce is 231/128 cubic inches (the same appendix).
constexpr std::array<UnitFact, 11> unit_facts{{
    {Unit::mm, "mm", Measure::length, 1'000'000},
    {Unit::cm, "cm", Measure::length, 10'000'000},
    {Unit::m, "m", Measure::length, 1'000'000'000},
    {Unit::in, "in", Measure::length, 25'400'000},
    {Unit::g, "g", Measure::weight, 1},
    {Unit::kg, "kg", Measure::weight, 1000},
    {Unit::oz, "oz", Measure::weight, 28'349'523'125, 9},
    {Unit::lb, "lb", Measure::weight, 45'359'237, 5},
    {Unit::ml, "ml", Measure::volume, 1},
    {Unit::l, "l", Measure::volume, 1000},
    {Unit::fl_oz, "fl oz", Measure::volume, 2'957'352'956, 8},
}};

struct Synonym {
    std::string_view word, unit;
};
constexpr std::array<Synonym, 23> synonyms{{
    {"inch", "in"},       {"inches", "in"},      {"\"", "in"},          {"''", "in"},          {"lbs", "lb"},
    {"pound", "lb"},      {"pounds", "lb"},      {"ounce", "oz"},       {"ounces", "oz"},      {"gram", "g"},
    {"grams", "g"},       {"gr", "g"},           {"kilo", "kg"},        {"kilogram", "kg"},    {"kilograms", "kg"},
    {"millimetre", "mm"}, {"millimetres", "mm"}, {"millimeters", "mm"}, {"centimetres", "cm"}, {"centimeters", "cm"},
    {"litre", "l"},       {"litres", "l"},       {"floz", "fl oz"},
}};

const UnitFact& fact(Unit unit)
{
    return *std::find_if(unit_facts.begin(), unit_facts.end(), [&](const auto& f) { return f.unit == unit; });
}

constexpr std::array<std::string_view, 4> length_words{"mm", "cm", "m", "in"};
constexpr std::array<std::string_view, 4> weight_words{"g", "kg", "oz", "lb"};
constexpr std::array<std::string_view, 3> volume_words{"ml", "l", "fl oz"};

std::span<const std::string_view> unit_words(Measure measure)
{
    switch (measure) {
    case Measure::length: return length_words;
    case Measure::weight: return weight_words;
    case Measure::volume: return volume_words;
    }
    require(false, "a measure is one of the three");
    return {};
}

std::string_view name_of(Measure measure)
{
    return measure == Measure::length ? "length" : measure == Measure::weight ? "weight" : "volume";
}

/// The unit of this measure that a mistyped word stands for, be it short or written out.
std::optional<std::string_view> meant_unit(std::string_view word, Measure measure)
{
    const auto units = unit_words(measure);
    std::vector<std::string_view> words(units.begin(), units.end());
    for (const Synonym& s : synonyms) {
        if (std::find(units.begin(), units.end(), s.unit) != units.end()) {
            words.push_back(s.word);
        }
    }
    const auto meant = mistyped(word, words);
    const auto written_out =
        std::find_if(synonyms.begin(), synonyms.end(), [&](const Synonym& s) { return meant && s.word == *meant; });
    return written_out == synonyms.end() ? meant : written_out->unit;
}

Problem fault(std::string what, std::string remedy) { return {"", 0, 0, std::move(what), std::move(remedy)}; }

bool is_digit(char c) { return c >= '0' && c <= '9'; }

bool contains(std::string_view text, std::string_view part) { return text.find(part) != std::string_view::npos; }

/// Without spaces at either end; hard spaces, which come in with pasted text, count too.
std::string_view trimmed(std::string_view text)
{
    constexpr std::array<std::string_view, 4> spaces{" ", "\t", "\u00A0", "\u202F"};
    for (bool again = true; again;) {
        again = false;
        for (const auto space : spaces) {
            if (text.starts_with(space)) {
                text.remove_prefix(space.size());
                again = true;
            } else if (text.ends_with(space)) {
                text.remove_suffix(space.size());
                again = true;
            }
        }
    }
    return text;
}

/// A number's text taken apart: digits before and after the point, and what follows.
struct NumberText {
    bool negative = false;
    std::string_view whole, decimals, rest;
};

std::string_view taken_digits(std::string_view& text)
{
    const auto end = std::find_if_not(text.begin(), text.end(), is_digit);
    const auto digits = text.substr(0, static_cast<std::size_t>(end - text.begin()));
    text.remove_prefix(digits.size());
    return digits;
}

NumberText take_apart(std::string_view text)
{
    NumberText parts;
    if (text.starts_with('-') || text.starts_with('+')) {
        parts.negative = text.front() == '-';
        text.remove_prefix(1);
    }
    parts.whole = taken_digits(text);
    if (text.starts_with('.')) {
        text.remove_prefix(1);
        parts.decimals = taken_digits(text);
    }
    parts.rest = trimmed(text);
    while (parts.whole.starts_with('0')) {
        parts.whole.remove_prefix(1);
    }
    while (parts.decimals.ends_with('0')) {
        parts.decimals.remove_suffix(1);
    }
    return parts;
}

bool says_not_finite(std::string_view text)
{
    while (text.starts_with('-') || text.starts_with('+') || text.starts_with('.')) {
        text.remove_prefix(1);
    }
    return text.size() <= 8 &&
           (edit_distance(text, "nan") == 0 || edit_distance(text, "inf") == 0 || edit_distance(text, "infinity") == 0);
}

/// What is wrong with a text that does not start with a plain decimal number, or goes on in another notation.
std::optional<Problem> notation_fault(std::string_view text, const NumberText& parts)
{
    const std::string shown = in_quotes(text);
    const auto first_digit = std::find_if(text.begin(), text.end(), is_digit);
    if (says_not_finite(text)) {
        return fault(shown + " is not a finite number", "write a decimal number");
    }
    if (contains(text, "/") || contains(text, "½") || contains(text, "¼") || contains(text, "¾")) {
        return fault(shown + " is a fraction", "write it as a decimal number, such as 0.5 for a half");
    }
    const std::string_view signless = text.starts_with('-') || text.starts_with('+') ? text.substr(1) : text;
    const bool starts_well = signless.starts_with('.') ? signless.size() > 1 && is_digit(signless[1])
                                                       : !signless.empty() && is_digit(signless[0]);
    if (first_digit == text.end() || !starts_well) {
        return fault(shown + " is not a number", "write a decimal number, with a unit if need be");
    }
    const std::string_view rest = parts.rest;
    if (rest.starts_with(',') && rest.size() > 1 && is_digit(rest[1])) {
        return fault(shown + " has a comma in its number", comma_remedy);
    }
    if (!rest.empty() && is_digit(rest[0])) {
        return fault(shown + " has a space in its number", "write it without");
    }
    if (rest.size() > 1 && (rest[0] == 'e' || rest[0] == 'E') &&
        (is_digit(rest[1]) || rest[1] == '-' || rest[1] == '+')) {
        return fault(shown + " has an exponent", "write it out as a decimal number");
    }
    if (parts.decimals.size() > kept_decimals) {
        return fault(shown + " has more than 18 decimals", "round it; a nanometre is all that counts");
    }
    if (parts.whole.size() > kept_digits) {
        return fault(shown + " is too large a number", "check the number and its unit");
    }
    return std::nullopt;
}

struct Quantity {
    Wide steps = 0; // 1e-18 of the unit
    Unit unit{};
};

/// In 1e-18. Requires: no notation_fault().
Wide steps_of(const NumberText& parts)
{
    Wide steps = 0;
    for (const char digit : parts.whole) {
        steps = steps * 10 + (digit - '0');
    }
    for (std::size_t i = 0; i < kept_decimals; ++i) {
        steps = steps * 10 + (i < parts.decimals.size() ? parts.decimals[i] - '0' : 0);
    }
    return parts.negative ? -steps : steps;
}

struct Fraction {
    Wide steps = 0; // 1e-18 of the unit, exactly
    std::string_view rest;
};

/// "4 3/8 in" or "1/2 in", as rulers in inches are marked: halves down to sixty-fourths. Nothing for any other text.
std::optional<Fraction> ruler_fraction(std::string_view text)
{
    constexpr std::size_t most_digits = 5;
    std::string_view whole, above = taken_digits(text);
    if (text.starts_with(' ')) {
        whole = above;
        text = trimmed(text);
        above = taken_digits(text);
    }
    if (above.empty() || above.size() > most_digits || whole.size() > most_digits || !text.starts_with('/')) {
        return std::nullopt;
    }
    text.remove_prefix(1);
    const std::string_view below = taken_digits(text);
    constexpr std::array<std::string_view, 6> marks{"2", "4", "8", "16", "32", "64"};
    const auto mark = std::find(marks.begin(), marks.end(), below);
    const bool goes_on = text.starts_with('/') || text.starts_with('.') || text.starts_with(',');
    if (mark == marks.end() || goes_on || (text.starts_with(' ') && is_digit(trimmed(text).front()))) {
        return std::nullopt;
    }
    const Wide parts = Wide{2} << (mark - marks.begin());
    const auto number = [](std::string_view digits) {
        Wide value = 0;
        for (const char digit : digits) {
            value = value * 10 + (digit - '0');
        }
        return value;
    };
    return Fraction{(number(whole) * parts + number(above)) * (steps_per_one / parts), trimmed(text)};
}

/// What stands behind the number: its unit, as a rule.
std::string_view behind_number(std::string_view text)
{
    const auto fraction = ruler_fraction(text);
    return fraction ? fraction->rest : take_apart(text).rest;
}

Result<Quantity> parse_quantity(std::string_view text, Measure measure, Unit plain)
{
    text = trimmed(text);
    NumberText parts = take_apart(text);
    const auto fraction = ruler_fraction(text);
    if (const auto wrong = fraction ? std::nullopt : notation_fault(text, parts)) {
        return *wrong;
    }
    parts.rest = fraction ? fraction->rest : parts.rest;
    Quantity quantity{fraction ? fraction->steps : steps_of(parts), plain};
    if (!parts.rest.empty()) {
        const Result<Unit> unit = parse_unit(parts.rest, measure);
        if (!unit) {
            return unit.problems().front();
        }
        quantity.unit = *unit;
    }
    return quantity;
}

Wide floor_divided(Wide a, Wide b) { return a / b - (a % b < 0 ? 1 : 0); }

std::string digits(Wide number)
{
    std::string text;
    for (Wide left = number < 0 ? -number : number; left > 0 || text.empty(); left /= 10) {
        text += static_cast<char>('0' + static_cast<int>(left % 10));
    }
    std::reverse(text.begin(), text.end());
    return (number < 0 ? "-" : "") + text;
}

} // namespace

Length Length::of_nanometres(std::int64_t nm) { return {nm * steps_per_one}; }

std::int64_t Length::nanometres_down() const
{
    const Wide nm = floor_divided(steps, steps_per_one);
    require(nm < std::numeric_limits<std::int64_t>::max() && nm > std::numeric_limits<std::int64_t>::min(),
            "a length on the grid fits into 64 bits");
    return static_cast<std::int64_t>(nm);
}

std::int64_t Length::nanometres_up() const { return -Length{-steps}.nanometres_down(); }
double Length::mm_down() const { return from_nanometres(nanometres_down()); }
double Length::mm_up() const { return from_nanometres(nanometres_up()); }

std::string to_string(Length length)
{
    constexpr Wide steps_per_mm = steps_per_one * 1'000'000;
    constexpr std::size_t places = kept_decimals + 6;
    const Wide steps = length.steps < 0 ? -length.steps : length.steps;
    std::string decimals = digits(steps % steps_per_mm);
    decimals.insert(0, places - decimals.size(), '0');
    decimals.erase(decimals.find_last_not_of('0') + 1);
    return (length.steps < 0 ? "-" : "") + digits(steps / steps_per_mm) + (decimals.empty() ? "" : "." + decimals) +
           " mm";
}

Result<Unit> parse_unit(std::string_view word, Measure measure)
{
    const std::string wanted = "use " + listed(unit_words(measure), "or");
    for (const UnitFact& f : unit_facts) {
        if (f.name == word) {
            if (f.measure == measure) {
                return f.unit;
            }
            const bool volume_for_weight = f.measure == Measure::volume && measure == Measure::weight;
            return fault(in_quotes(word) + " is a unit of " + std::string(name_of(f.measure)) + ", but a " +
                             std::string(name_of(measure)) + " is wanted",
                         volume_for_weight ? "give the weight, in " + listed(weight_words, "or") : wanted);
        }
    }
    for (const Synonym& s : synonyms) {
        if (s.word == word) {
            return fault("unknown unit " + in_quotes(word), "write " + in_quotes(s.unit));
        }
    }
    const auto meant = meant_unit(word, measure);
    return fault("unknown unit " + in_quotes(word), meant ? wanted + "; did you mean " + in_quotes(*meant) + "?" : wanted);
}

Result<Length> parse_length(std::string_view text, Unit plain)
{
    const auto quantity = parse_quantity(text, Measure::length, plain);
    if (!quantity) {
        return quantity.problems();
    }
    return Length{quantity->steps * fact(quantity->unit).factor};
}

MeasuredText take_tolerance_off(std::string_view text)
{
    constexpr std::array<std::string_view, 3> signs{"±", "+/-", "+-"};
    for (const std::string_view sign : signs) {
        const auto at = text.find(sign);
        if (at == std::string_view::npos) {
            continue;
        }
        std::string size(trimmed(text.substr(0, at))), off(trimmed(text.substr(at + sign.size())));
        const std::string_view unit = behind_number(size), unit_off = behind_number(off);
        const bool has_number = std::any_of(off.begin(), off.end(), is_digit);
        if (unit.empty() && !size.empty() && has_number && !unit_off.empty()) {
            size += " " + std::string(unit_off);
        } else if (unit_off.empty() && !off.empty()) {
            off += " " + std::string(unit);
        }
        return {size, off};
    }
    return {std::string(text), std::nullopt};
}

namespace
{

double nearest_double(Wide number, int decimals)
{
    const std::string exact = digits(number) + "e-" + std::to_string(decimals);
    double nearest = 0;
    std::from_chars(exact.data(), exact.data() + exact.size(), nearest);
    return nearest;
}

/// In the base unit of the measure, as the double nearest to the exact number.
Result<double> parse_double(std::string_view text, Measure measure, Unit plain)
{
    const auto quantity = parse_quantity(text, measure, plain);
    if (!quantity) {
        return quantity.problems();
    }
    const UnitFact& unit = fact(quantity->unit);
    return nearest_double(quantity->steps * unit.factor, kept_decimals + unit.decimals);
}

} // namespace

Result<double> parse_weight(std::string_view text, Unit plain) { return parse_double(text, Measure::weight, plain); }

Result<double> parse_volume(std::string_view text, Unit plain) { return parse_double(text, Measure::volume, plain); }

Result<Figure> parse_figure(std::string_view text)
{
    text = trimmed(text);
    const NumberText parts = take_apart(text);
    const auto stroke = text.find('/');
    const bool in_unit = stroke != std::string_view::npos && stroke > 0 && !is_digit(text[stroke - 1]); // "kg/l"
    if (const auto wrong = notation_fault(in_unit ? text.substr(0, stroke) : text, parts)) {
        return *wrong;
    }
    return Figure{nearest_double(steps_of(parts), kept_decimals), std::string(parts.rest)};
}

} // namespace tuckwright::reading
