// SPDX-License-Identifier: GPL-3.0-or-later
/// Things that are kept in a file of their own, and taken from there into a kit. They are put into the kit's tree, where
/// they keep their places, so that it is read as if it had held them.
#pragma once
#include <map>
#include <optional>
#include <string>

#include "kit/references.hpp"

namespace tuckwright::reading {

/// A shelf's file, for the file that names it.
struct ShelfFile {
    std::string text, name;
    Units units;
    std::map<std::string, Absent> left; ///< ids of things that this kit does not take
};

/// Puts the things of the shelf that the document names in the place of the entries that take them, with whatever fields
/// those give instead. Reports what is wrong with the shelf, of which nothing is taken then, and with such entries.
/// `kit_path` is that of the document. Ensures: nothing where the document names no shelf that can be used.
std::optional<ShelfFile> take_from_shelf(ProblemList& problems, Node& document, const std::string& kit_path);

/// Whether a document is a shelf rather than a kit.
bool is_shelf(const Node& document);

} // namespace tuckwright::reading
