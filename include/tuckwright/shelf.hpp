// SPDX-License-Identifier: GPL-3.0-or-later
/// A shelf: things that are measured once and taken along in many kits.
#pragma once
#include <string>
#include <string_view>
#include <vector>

#include "tuckwright/kit.hpp"
#include "tuckwright/result.hpp"

namespace tuckwright {

struct ShelfOfThings {
    std::string title;
    /// Each by itself: what it closes, goes into or keeps apart from is seen to only where a kit takes it. Bags and bands
    /// hold only their id, name and weight.
    std::vector<Item> items;
};

/// Reads a shelf (YAML); `name` stands for the file in problems. Errors: every problem of the file, in order.
Result<ShelfOfThings> read_shelf_text(std::string_view text, const std::string& name);

/// The text of a shelf file, from a table of things in plain CSV (RFC 4180) whose first record names its columns; README
/// lists them. Ensures: read_shelf_text takes what comes out. Errors: every problem of the table, with its line and
/// column. Complexity: linear.
Result<std::string> shelf_from_csv(std::string_view csv, const std::string& name, const std::string& title);

} // namespace tuckwright
