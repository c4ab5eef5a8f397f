// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/fields.hpp"

#include <algorithm>
#include <array>
#include <charconv>

#include "kit/words.hpp"
#include "tuckwright/units.hpp"

namespace tuckwright::reading
{

namespace
{

constexpr std::int64_t least_dimension_nm = 1000;
constexpr std::size_t longest_text = 400; // bytes: names go on cards and into steps
constexpr double heaviest_g = 100'000;
constexpr double largest_ml = 1'000'000;

bool contains(std::span<const std::string_view> words, std::string_view word)
{
    return std::find(words.begin(), words.end(), word) != words.end();
}

/// The text of a value that is written as text; reports anything else.
const std::string* plain_text(Reading& reading, const Node& node, const std::string& subject)
{
    if (node.kind == NodeKind::text) {
        return &node.text;
    }
    if (node.kind != NodeKind::unusable) {
        reading.problems.add(node.place, subject + " is " + kind_name(node) + ", not a plain value",
                             "write a single value after '" + subject + ":'");
    }
    return nullptr;
}

} // namespace

Fields::Fields(Reading& reading, const Node& node, std::string subject, const KnownFields& known)
    : reading_(reading), subject_(std::move(subject)), needed_(known.needed), place_(node.place)
{
    if (node.kind != NodeKind::map) {
        if (node.kind != NodeKind::unusable) {
            reading_.problems.add(node.place, subject_ + " is given as " + kind_name(node) + ", not as a group of fields",
                                  "write it such as '" + std::string(known.example) + "'");
        }
        return;
    }
    map_ = &node;
    for (const Entry& e : node.entries) {
        check_key(e, known);
    }
}

void Fields::check_key(const Entry& entry, const KnownFields& known)
{
    if (contains(known.keys, entry.key)) {
        if (entry.value.kind == NodeKind::nothing && !contains(known.needed, entry.key)) {
            reading_.problems.add(entry.place, in_quotes(entry.key) + " has no value", "give one, or delete the line");
        }
        return;
    }
    const auto colon = entry.key.find(':'); // in braces, 'height:90' is one word to the parser
    const std::string first = entry.key.substr(0, colon);
    if (colon != std::string::npos && contains(known.keys, first)) {
        reading_.problems.add(entry.place, "there is no space after the colon in " + in_quotes(entry.key),
                              "write " + in_quotes(first + ": " + entry.key.substr(colon + 1)));
        return;
    }
    reading_.problems.add(entry.place, "unknown key " + in_quotes(entry.key) + " in " + subject_,
                          contains(known.elsewhere, entry.key) ? std::string(known.where)
                                                               : suggestion(entry.key, known.keys));
}

const Entry* Fields::entry(std::string_view key) const
{
    if (map_ == nullptr) {
        return nullptr;
    }
    const auto found =
        std::find_if(map_->entries.begin(), map_->entries.end(), [&](const Entry& e) { return e.key == key; });
    return found == map_->entries.end() ? nullptr : &*found;
}

const Node* Fields::find(std::string_view key) const
{
    const Entry* e = entry(key);
    const bool usable = e != nullptr && e->value.kind != NodeKind::nothing && e->value.kind != NodeKind::unusable;
    return usable ? &e->value : nullptr;
}

const Node* Fields::need(std::string_view key, const std::string& remedy)
{
    const Entry* e = entry(key);
    const auto is_it_without_space = [&](const Entry& other) { return other.key.starts_with(std::string(key) + ":"); };
    if (is_map() && e == nullptr && std::none_of(map_->entries.begin(), map_->entries.end(), is_it_without_space)) {
        reading_.problems.add(place_, subject_ + " has no " + in_quotes(key), remedy);
    } else if (e != nullptr && e->value.kind == NodeKind::nothing && contains(needed_, key)) {
        reading_.problems.add(e->place, in_quotes(key) + " has no value", remedy);
    }
    return find(key);
}

void Fields::refuse(std::string_view key, const std::string& what, const std::string& remedy)
{
    if (const Entry* e = entry(key)) {
        reading_.problems.add(e->place, what, remedy);
    }
}

std::optional<std::string> read_text(Reading& reading, const Node& node, const std::string& subject)
{
    const std::string* text = plain_text(reading, node, subject);
    if (text == nullptr) {
        return std::nullopt;
    }
    if (text->find_first_not_of(' ') == std::string::npos) {
        reading.problems.add(node.place, subject + " is empty", "write at least one letter");
        return std::nullopt;
    }
    const bool one_line = std::none_of(text->begin(), text->end(),
                                       [](char c) { return static_cast<unsigned char>(c) < 0x20U || c == 0x7F; });
    if (!one_line) {
        reading.problems.add(node.place, subject + " holds a line break or another control character",
                             "write it on one line");
        return std::nullopt;
    }
    if (text->size() > longest_text) {
        reading.problems.add(node.place, subject + " " + in_quotes(*text) + " is longer than 400 bytes", "shorten it");
        return std::nullopt;
    }
    return *text;
}

namespace
{

std::optional<Length> sound_length(Reading& reading, const Node& node, const std::string& text,
                                   const std::string& subject, AtLeast least)
{
    const Result<Length> length = parse_length(text, reading.units_at(node.place).length);
    if (!length) {
        const Problem& problem = length.problems().front();
        reading.problems.add(node.place, subject + ": " + problem.what, problem.remedy);
        return std::nullopt;
    }
    const auto refuse = [&](const std::string& what, const std::string& remedy) {
        reading.problems.add(node.place, subject + " is " + to_string(*length) + ", " + what, remedy);
        return std::nullopt;
    };
    if (least == AtLeast::negative && *length >= Length{0} - Length::of_nanometres(to_nanometres(longest_length_mm)) &&
        *length < Length{0}) {
        return *length;
    }
    if (*length < Length{0}) {
        return refuse("which is below zero", "write it without the minus sign");
    }
    if (least == AtLeast::micrometre && *length < Length::of_nanometres(least_dimension_nm)) {
        return refuse("but must be at least 0.001 mm", "measure it again, and check the unit");
    }
    if (*length > Length::of_nanometres(to_nanometres(longest_length_mm))) {
        return refuse("but may be at most 10 m", "check the number and its unit");
    }
    return *length;
}

} // namespace

std::optional<Length> read_length(Reading& reading, const Node& node, const std::string& subject, AtLeast least)
{
    const std::string* text = plain_text(reading, node, subject);
    if (text == nullptr) {
        return std::nullopt;
    }
    if (take_tolerance_off(*text).off) {
        reading.problems.add(node.place, subject + " is " + in_quotes(*text) + ", but only measured sizes have a tolerance",
                             "write the number alone");
        return std::nullopt;
    }
    return sound_length(reading, node, *text, subject, least);
}

std::optional<Measured> read_measured(Reading& reading, const Node& node, const std::string& subject, AtLeast least,
                                      Length otherwise)
{
    const std::string* text = plain_text(reading, node, subject);
    if (text == nullptr) {
        return std::nullopt;
    }
    const MeasuredText parts = take_tolerance_off(*text);
    const auto size = sound_length(reading, node, parts.size, subject, least);
    if (!size) {
        return std::nullopt; // the tolerance may have the same fault
    }
    const auto off = parts.off ? sound_length(reading, node, *parts.off, "the tolerance of " + subject, AtLeast::zero)
                               : std::optional(otherwise);
    if (!off) {
        return std::nullopt;
    }
    if (*off > Length{0} && *off >= *size) {
        reading.problems.add(node.place,
                             "the tolerance of " + subject + " is " + to_string(*off) + ", as much as the size " +
                                 to_string(*size) + " or more",
                             parts.off ? "measure again, and check the units" : "give it a tolerance of its own");
        return std::nullopt;
    }
    return Measured{*size, *off};
}

std::optional<double> read_weight(Reading& reading, const Node& node, const std::string& subject)
{
    const std::string* text = plain_text(reading, node, subject);
    if (text == nullptr) {
        return std::nullopt;
    }
    const Result<double> grams = parse_weight(*text, reading.units_at(node.place).weight);
    if (!grams) {
        const Problem& problem = grams.problems().front();
        reading.problems.add(node.place, subject + ": " + problem.what, problem.remedy);
        return std::nullopt;
    }
    if (*grams < 0) {
        reading.problems.add(node.place, subject + " is " + in_quotes(*text) + ", which is below zero",
                             "write it without the minus sign");
        return std::nullopt;
    }
    if (*grams > heaviest_g) {
        reading.problems.add(node.place, subject + " is " + in_quotes(*text) + ", but may be at most 100 kg",
                             "check the number and its unit");
        return std::nullopt;
    }
    return *grams;
}

std::optional<double> read_volume(Reading& reading, const Node& node, const std::string& subject)
{
    const std::string* text = plain_text(reading, node, subject);
    if (text == nullptr) {
        return std::nullopt;
    }
    const Result<double> ml = parse_volume(*text, reading.units_at(node.place).volume);
    if (!ml) {
        const Problem& problem = ml.problems().front();
        reading.problems.add(node.place, subject + ": " + problem.what, problem.remedy);
        return std::nullopt;
    }
    if (*ml <= 0 || *ml > largest_ml) {
        reading.problems.add(node.place,
                             subject + " is " + in_quotes(*text) + ", but must be above 0 and at most 1000 l",
                             "check the number and its unit");
        return std::nullopt;
    }
    return *ml;
}

std::optional<bool> read_yes_or_no(Reading& reading, const Node& node, const std::string& subject)
{
    static constexpr std::array<std::string_view, 4> words{"yes", "no", "true", "false"};
    const auto word = read_word(reading, node, subject, words);
    return word ? std::optional(words[*word] == "yes" || words[*word] == "true") : std::nullopt;
}

std::optional<int> read_whole(Reading& reading, const Node& node, const std::string& subject, int low, int high)
{
    const std::string* text = plain_text(reading, node, subject);
    if (text == nullptr) {
        return std::nullopt;
    }
    int number = 0;
    const char* end = text->data() + text->size();
    const auto [stop, error] = std::from_chars(text->data(), end, number);
    if (error != std::errc{} || stop != end || number < low || number > high) {
        const std::string range = low == high
                                      ? std::to_string(low)
                                      : "a whole number from " + std::to_string(low) + " to " + std::to_string(high);
        reading.problems.add(node.place, subject + " is " + in_quotes(*text), "write " + range);
        return std::nullopt;
    }
    return number;
}

std::optional<std::size_t> read_word(Reading& reading, const Node& node, const std::string& subject,
                                     std::span<const std::string_view> known)
{
    const std::string* text = plain_text(reading, node, subject);
    if (text == nullptr) {
        return std::nullopt;
    }
    const auto found = std::find(known.begin(), known.end(), *text);
    if (found == known.end()) {
        reading.problems.add(node.place, "unknown word " + in_quotes(*text) + " for " + subject, suggestion(*text, known));
        return std::nullopt;
    }
    return static_cast<std::size_t>(found - known.begin());
}

} // namespace tuckwright::reading
