// SPDX-License-Identifier: GPL-3.0-or-later
/// A shelf's file by itself.
#pragma once
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "kit/fields.hpp"
#include "tuckwright/kit.hpp"

namespace tuckwright::reading {

struct Shelf {
    std::string title;
    Units units;
    std::map<std::string, const Node*> things; ///< entries of the tree, by id
    std::vector<Item> items;                   ///< in the file's order, each as far as it can be read by itself
};

/// The shelf of a tree. Reports everything that is wrong with it, and with each thing by itself. Requires: the tree
/// outlives it.
Shelf shelf_of(const Node& document, ProblemList& problems);

/// The tree of that text as the file of that number, if there is one.
std::optional<Node> shelf_tree(std::string_view text, ProblemList& problems, int file);

/// The text without a byte-order mark, which is in no place of it; a text that is too large stays as it is.
std::string_view without_mark(std::string_view text);

/// The tree of a text, if there is one; reports what is no text, no YAML or empty. `what` is what it should hold.
/// Requires: no byte-order mark.
std::optional<Node> tree_of(std::string_view text, ProblemList& problems, const std::string& what);

} // namespace tuckwright::reading
