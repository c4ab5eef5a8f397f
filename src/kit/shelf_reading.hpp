// SPDX-License-Identifier: GPL-3.0-or-later
/// A shelf's file by itself.
#pragma once
#include <map>
#include <memory>
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
    std::shared_ptr<const Node> document;
    std::map<std::string, const Node*> things; ///< entries of the document, by id
    std::vector<Item> items;                   ///< in the file's order, each as far as it can be read by itself
};

/// The shelf; nothing where there is no tree to go on with. Reports everything that is wrong with each thing by itself, as
/// the problems of that file.
std::optional<Shelf> shelf_of(std::string_view text, ProblemList& problems, int file);

/// The tree of a text, if there is one; reports what is no text, no YAML or empty. `what` is what it should hold.
std::optional<Node> tree_of(std::string_view text, ProblemList& problems, const std::string& what);

} // namespace tuckwright::reading
