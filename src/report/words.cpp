// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <regex>
#include <set>
#include <vector>

#include "tuckwright/units.hpp"

namespace tuckwright::report
{

namespace
{

constexpr std::size_t columns = 100;
constexpr std::size_t deepest_indent = 60;

std::string decimal(double value, int decimals)
{
    std::string text = fmt::format("{:.{}f}", value, decimals);
    if (text.find('.') != std::string::npos) {
        text.erase(text.find_last_not_of('0') + 1);
        if (text.back() == '.') {
            text.pop_back();
        }
    }
    return text;
}

double rounded(double value, double unit, Rounding rounding)
{
    constexpr double hair = 1e-9; // a value meant to lie on a whole unit stays there
    const double units = value / unit;
    // Nought is added so that a small negative share of a unit becomes no negative zero.
    return unit * (rounding == Rounding::up ? std::ceil(units - hair) : std::floor(units + hair)) + 0.0;
}

AnswerUnits& units_of_answers()
{
    static AnswerUnits units = AnswerUnits::metric;
    return units;
}

bool in_us_units() { return units_of_answers() == AnswerUnits::us_customary; }

/// Whole steps of so many nanometres, as a decimal number with so many places.
std::string in_steps(std::int64_t nm, std::int64_t step, Rounding rounding, int places)
{
    const std::int64_t steps = nm / step + (rounding == Rounding::up && nm % step > 0 ? 1 : 0);
    const std::int64_t one = places == 1 ? 10 : 100;
    std::string text = fmt::format("{}.{:0{}}", steps / one, std::abs(steps % one), places);
    text.erase(text.find_last_not_of('0') + 1);
    return text.back() == '.' ? text.substr(0, text.size() - 1) : text;
}

constexpr std::int64_t tenth_of_mm = 100'000, hundredth_of_inch = 254'000; // nanometres; the inch is 25.4 mm

std::string length(double mm, Rounding rounding)
{
    const std::int64_t nm = to_nanometres(mm);
    return in_us_units() ? in_steps(nm, hundredth_of_inch, rounding, 2) + " in"
                         : in_steps(nm, tenth_of_mm, rounding, 1) + " mm";
}

// US fluid ounce and avoirdupois ounce: NIST Special Publication 811 (2008), appendix B.8.
constexpr double ml_per_fluid_ounce = 29.5735295625, grams_per_ounce = 28.349523125, mm_per_inch = 25.4;

std::string us_weight(double grams)
{
    constexpr int tenths_per_pound = 160;
    const auto tenths = static_cast<std::int64_t>(std::llround(grams / grams_per_ounce * 10));
    const std::string ounces = decimal(static_cast<double>(tenths % tenths_per_pound) / 10, 1) + " oz";
    return tenths < tenths_per_pound ? ounces : fmt::format("{} lb {}", tenths / tenths_per_pound, ounces);
}

/// "27" to the nearest tenth of an inch, "1.6" rounded down to a hundredth.
std::string one_in_inches(const std::string& mm)
{
    const double inches = std::stod(mm) / mm_per_inch;
    return mm.find('.') == std::string::npos ? decimal(inches, 1) : decimal(rounded(inches, 0.01, Rounding::down), 2);
}

/// One or several with crosses between, "122 x 61 x 40". The text is what stands before " mm".
std::string in_inches(const std::string& mm)
{
    std::string text;
    for (std::size_t start = 0; start < mm.size();) {
        const auto end = std::min(mm.find(" x ", start), mm.size());
        text += (text.empty() ? "" : " x ") + one_in_inches(mm.substr(start, end - start));
        start = end + 3;
    }
    return text + " in";
}

bool continues_character(char c) { return (static_cast<unsigned char>(c) & 0xC0U) == 0x80U; }

std::size_t characters(std::string_view text)
{
    return static_cast<std::size_t>(
        std::count_if(text.begin(), text.end(), [](char c) { return !continues_character(c); }));
}

/// Whether a word is a unit that must not be parted from the number before it.
bool belongs_to_number(const std::string& word, const std::string& before)
{
    const auto bare = word.substr(0, word.find_last_not_of(".,;:)") + 1);
    const bool unit = bare == "mm" || bare == "l" || bare == "ml" || bare == "g" || bare == "kg" || bare == "%" ||
                      (in_us_units() && (bare == "in" || bare == "fl" || bare == "oz" || bare == "lb"));
    return unit && before.find_first_not_of("0123456789.") == std::string::npos;
}

/// Words, those too long for a line cut into pieces.
std::vector<std::string> words_of(std::string_view text, std::size_t widest)
{
    std::vector<std::string> words;
    std::string word;
    std::size_t width = 0;
    const auto end_word = [&] {
        if (!words.empty() && belongs_to_number(word, words.back())) {
            words.back() += " " + word;
        } else if (!word.empty()) {
            words.push_back(std::move(word));
        }
        word.clear();
        width = 0;
    };
    for (const char c : text) {
        if (c == ' ') {
            end_word();
            continue;
        }
        if (!continues_character(c) && ++width > widest) {
            end_word();
            width = 1;
        }
        word += c;
    }
    end_word();
    return words;
}

} // namespace

void answer_in(AnswerUnits units) { units_of_answers() = units; }
AnswerUnits answer_units() { return units_of_answers(); }

TableUnits table_units()
{
    return in_us_units() ? TableUnits{ml_per_fluid_ounce, grams_per_ounce, mm_per_inch, "fl oz", "oz", "in"}
                         : TableUnits{1, 1, 1, "ml", "g", "mm"};
}

double told_step() { return from_nanometres(in_us_units() ? hundredth_of_inch : tenth_of_mm); }

std::string in_answer_units(std::string text, const Bundle& bundle)
{
    if (!in_us_units()) {
        return text;
    }
    std::set<std::string> names; // those that could be taken for lengths are hidden meanwhile
    for (std::size_t i = 0; i < bundle.items.size(); ++i) {
        const std::string name = spoken_name(bundle, i);
        if (name.find("mm") != std::string::npos) {
            names.insert(name);
        }
    }
    static const std::regex length_text("([0-9]+(?:\\.[0-9]+)?(?: x [0-9]+(?:\\.[0-9]+)?)*) mm\\b");
    std::string result;
    for (std::size_t at = 0; at < text.size();) {
        const auto named = std::find_if(names.rbegin(), names.rend(),
                                        [&](const std::string& name) { return text.compare(at, name.size(), name) == 0; });
        std::smatch found;
        if (named != names.rend()) {
            result += *named;
            at += named->size();
        } else if (std::regex_search(text.cbegin() + static_cast<std::ptrdiff_t>(at), text.cend(), found, length_text,
                                     std::regex_constants::match_continuous)) {
            result += in_inches(found[1]);
            at += static_cast<std::size_t>(found.length());
        } else {
            result += text[at++];
        }
    }
    return result;
}

std::string length_in_words(double mm) { return length(mm, Rounding::up); }
std::string room_in_words(double mm) { return length(mm, Rounding::down); }

std::string volume_in_words(double ml, Rounding rounding)
{
    if (in_us_units()) {
        const double ounces = ml / ml_per_fluid_ounce;
        return decimal(rounded(ounces, ounces < 1 ? 0.01 : 0.1, rounding), 2) + " fl oz";
    }
    if (rounded(ml, 1, rounding) < 1000) {
        return ml < 10 ? decimal(rounded(ml, 0.01, rounding), 2) + " ml" : decimal(rounded(ml, 1, rounding), 0) + " ml";
    }
    return decimal(rounded(ml / 1000, 0.01, rounding), 2) + " l";
}

std::string weight_in_words(double grams)
{
    return in_us_units() ? us_weight(grams) : grams < 999.5 ? decimal(grams, grams < 10 ? 1 : 0) + " g" : decimal(grams / 1000, 3) + " kg";
}

std::string share_in_words(double share, Rounding rounding)
{
    const double percent = 100 * share;
    return decimal(rounded(percent, percent < 10 ? 0.1 : 1, rounding), 1) + " %";
}

std::string size_in_words(const Shape& shape, Rounding rounding)
{
    const auto told = [&](double mm) { return length(mm, rounding); };
    if (const auto* cylinder = std::get_if<Cylinder>(&shape)) {
        const std::string foot = cylinder->foot == 0 ? "" : fmt::format(", {} at the foot", told(cylinder->foot));
        return fmt::format("{} across{}, {} high", told(cylinder->diameter), foot, told(cylinder->height));
    }
    const auto& box = std::get<Box>(shape);
    const auto bare = [&](double mm) {
        const auto text = told(mm);
        return text.substr(0, text.find(' '));
    };
    return fmt::format("{} x {} x {}", bare(box.length), bare(box.width), told(box.height));
}

std::string width_in_words(const Shape& shape)
{
    if (const auto* c = std::get_if<Cylinder>(&shape)) {
        return length_in_words(c->diameter) + " across";
    }
    const auto& box = std::get<Box>(shape);
    return length_in_words(box.length) + " x " + length_in_words(box.width);
}

std::string envelope_in_words(const Shape& envelope)
{
    if (const auto* cylinder = std::get_if<Cylinder>(&envelope)) {
        return fmt::format("a round bundle {} across and {} high", length_in_words(cylinder->diameter),
                           length_in_words(cylinder->height));
    }
    const auto& box = std::get<Box>(envelope);
    return fmt::format("a box {} long, {} wide and {} high", length_in_words(box.length), length_in_words(box.width),
                       length_in_words(box.height));
}

namespace {

/// Characters U+2028 to U+202E, which end a line or turn the direction of what follows, and U+2066 to U+2069, which turn it
/// too: with them a text can be made to look like another. Source: Unicode Standard Annex 9, 2.1 to 2.5, from memory.
bool turns_the_line(std::string_view three)
{
    return three.size() == 3 && ((three.substr(0, 2) == "\xE2\x80" && three[2] >= '\xA8' && three[2] <= '\xAE') ||
                                 (three.substr(0, 2) == "\xE2\x81" && three[2] >= '\xA6' && three[2] <= '\xA9'));
}

} // namespace

std::string printable(std::string_view text)
{
    std::string result;
    for (std::size_t i = 0; i < text.size(); ++i) {
        const auto c = static_cast<unsigned char>(text[i]);
        const auto next = i + 1 < text.size() ? static_cast<unsigned char>(text[i + 1]) : 0U;
        if (turns_the_line(text.substr(i, 3))) {
            result += ' ';
            i += 2;
        } else if (c < 0x20U || c == 0x7FU) {
            result += ' ';
        } else if (c == 0xC2U && next >= 0x80U && next < 0xA0U) {
            result += ' ';
            ++i;
        } else {
            result += text[i];
        }
    }
    return result;
}

std::string wrapped(std::string_view first, std::string_view text)
{
    const std::size_t indent = std::min(characters(first), deepest_indent);
    std::string result = printable(first);
    std::size_t used = characters(result);
    bool line_start = true;
    for (const auto& word : words_of(printable(text), columns - indent)) {
        const std::size_t width = characters(word);
        if (used + width + (line_start ? 0 : 1) > columns) {
            result += "\n" + std::string(indent, ' ');
            used = indent;
            line_start = true;
        }
        if (!line_start) {
            result += ' ';
            ++used;
        }
        result += word;
        used += width;
        line_start = false;
    }
    return result + "\n";
}

} // namespace tuckwright::report
