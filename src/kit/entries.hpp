// SPDX-License-Identifier: GPL-3.0-or-later
/// The entries of a group of fields in a file's tree, found and changed before the file is read as a plain kit.
#pragma once
#include <string>
#include <string_view>

#include "kit/document.hpp"

namespace tuckwright::reading {

/// The word that stands for no value: it takes a field away.
inline constexpr std::string_view nothing_word = "nothing";

/// The entry of that key, or nothing.
const Entry* entry_of(const Node& node, std::string_view key);
Entry* entry_of(Node& node, std::string_view key);

/// The id that an entry of `items` gives; empty where it gives none that can be told.
std::string id_of(const Node& item);

/// Puts the fields that an entry gives in the place of those of a thing; `nothing` takes one away. One outside takes
/// the place of another. `naming` is the key by which the entry names the thing, and changes nothing.
void change(Node& thing, const Node& given, std::string_view naming);

} // namespace tuckwright::reading
