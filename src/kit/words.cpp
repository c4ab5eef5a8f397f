// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/words.hpp"

#include <algorithm>
#include <vector>

namespace tuckwright::reading
{

namespace
{

constexpr std::size_t longest_compared = 64; // bytes: a longer word is near to nothing, and costs time
constexpr std::size_t longest_quoted = 40;   // characters

char lower(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; }

bool starts_character(char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; }

bool is_control(char c) { return static_cast<unsigned char>(c) < 0x20U || c == 0x7F; }

/// How many edits still count as a slip of the finger: none in a word of one letter, which any letter would be near to.
std::size_t slip(std::string_view word) { return word.size() < 2 ? 0 : std::max<std::size_t>(1, word.size() / 3); }

} // namespace

std::size_t edit_distance(std::string_view a, std::string_view b)
{
    std::vector<std::size_t> before(b.size() + 1), last(b.size() + 1), now(b.size() + 1);
    for (std::size_t j = 0; j <= b.size(); ++j) {
        last[j] = j;
    }
    for (std::size_t i = 1; i <= a.size(); ++i) {
        now[0] = i;
        for (std::size_t j = 1; j <= b.size(); ++j) {
            const char x = lower(a[i - 1]), y = lower(b[j - 1]);
            now[j] = std::min({last[j] + 1, now[j - 1] + 1, last[j - 1] + (x == y ? 0U : 1U)});
            if (i > 1 && j > 1 && x == lower(b[j - 2]) && lower(a[i - 2]) == y) {
                now[j] = std::min(now[j], before[j - 2] + 1);
            }
        }
        std::swap(before, last);
        std::swap(last, now);
    }
    return last[b.size()];
}

std::optional<std::string_view> mistyped(std::string_view word, std::span<const std::string_view> known)
{
    if (word.size() > longest_compared) {
        return std::nullopt;
    }
    std::optional<std::string_view> best;
    std::size_t fewest = word.size();
    for (const std::string_view candidate : known) {
        const std::size_t edits = edit_distance(word, candidate);
        if (edits <= slip(candidate) && (!best || edits < fewest)) {
            best = candidate;
            fewest = edits;
        }
    }
    return best;
}

std::string suggestion(std::string_view word, std::span<const std::string_view> known)
{
    if (const auto meant = mistyped(word, known)) {
        return "did you mean " + in_quotes(*meant) + "?";
    }
    return known.size() == 1 ? "write " + in_quotes(known.front()) : "known here: " + listed(known);
}

bool is_id_letter(char c)
{
    return (lower(c) >= 'a' && lower(c) <= 'z') || (c >= '0' && c <= '9') || c == '-' || c == '_';
}

bool is_id(std::string_view text)
{
    return !text.empty() && text.size() <= longest_id && std::all_of(text.begin(), text.end(), is_id_letter);
}

std::string in_quotes(std::string_view text)
{
    std::string shown = "'";
    std::size_t characters = 0;
    for (const char c : text) {
        if (starts_character(c) && ++characters > longest_quoted) {
            return shown + "...'";
        }
        shown += is_control(c) ? ' ' : c;
    }
    return shown + "'";
}

std::string listed(std::span<const std::string_view> words, std::string_view last_word)
{
    std::string text;
    for (std::size_t i = 0; i < words.size(); ++i) {
        if (i > 0) {
            text += i + 1 == words.size() ? " " + std::string(last_word) + " " : ", ";
        }
        text += words[i];
    }
    return text;
}

} // namespace tuckwright::reading
