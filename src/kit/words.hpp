// SPDX-License-Identifier: GPL-3.0-or-later
/// Words in problems: quoting what the file says, lists of words, and the known word that a mistyped one was meant for.
#pragma once
#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace tuckwright::reading
{

/// Edits (insert, delete, replace, swap of neighbours) that turn one word into the other, in bytes, upper and lower
/// case being alike. Complexity: the product of the lengths. Source: optimal string alignment distance.
std::size_t edit_distance(std::string_view a, std::string_view b);

/// The known word that differs by a slip of the finger, with the fewest edits, the first of several; nothing where none
/// is near: one edit in words of two to five letters, one more for each further three.
std::optional<std::string_view> mistyped(std::string_view word, std::span<const std::string_view> known);

/// "did you mean 'weight'?" where few letters differ, else all words that are known. Requires: at least one known word.
std::string suggestion(std::string_view word, std::span<const std::string_view> known);

/// Ids are short names of letters a to z, digits, '-' and '_'.
inline constexpr std::size_t longest_id = 64;
bool is_id_letter(char c);
bool is_id(std::string_view text);

/// The text in quotes, on one line and cut short when long, so that a problem stays readable.
std::string in_quotes(std::string_view text);

/// "a, b and c", with the given word before the last.
std::string listed(std::span<const std::string_view> words, std::string_view last_word = "and");

} // namespace tuckwright::reading
