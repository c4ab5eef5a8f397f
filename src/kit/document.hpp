// SPDX-License-Identifier: GPL-3.0-or-later
/// A YAML file as a plain tree with places, guarded: nothing is expanded, nested deeply or silently overwritten.
#pragma once
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "kit/problem_list.hpp"

namespace tuckwright::reading
{

inline constexpr std::size_t largest_file = std::size_t{1024} * 1024; ///< bytes
inline constexpr int deepest_nesting = 32;

inline constexpr auto too_deep_what = "lists and fields are nested more than 32 deep";
inline constexpr auto too_deep_remedy = "a kit file needs no more than six levels";

/// `unusable` stands for something that has been reported already (an alias, a tagged value).
enum class NodeKind { nothing, text, list, map, unusable };

struct Node;
struct Entry;

struct Node {
    NodeKind kind = NodeKind::nothing;
    Place place;
    std::string text;           ///< of a text
    std::vector<Node> items;    ///< of a list
    std::vector<Entry> entries; ///< of a map, each key once
};

/// A text in a document, as if it stood there.
Node text_at(Place place, std::string text);

struct Entry {
    std::string key;
    Place place; ///< of the key
    Node value;
};

/// "a list", "a group of fields", "text", "nothing".
std::string kind_name(const Node& node);

/// Whether the bytes are plain UTF-8 text without control characters, of a size that is read at all, and without long
/// runs of opening brackets; adds a problem if not. Complexity: linear, and constant for a text that is too large.
bool check_text(std::string_view text, ProblemList& problems);

/// The tree of the one document in the text. Adds a problem for each thing that is not taken: syntax errors, several
/// documents, anchors, aliases, tags, keys given twice, keys that are not words. Ensures: nothing only if there is no
/// tree to go on with. Requires: check_text passed. Complexity: linear; aliases are never expanded.
std::optional<Node> parse_document(std::string_view text, ProblemList& problems);

} // namespace tuckwright::reading
