// SPDX-License-Identifier: GPL-3.0-or-later
/// A kit as somebody told it, answer by answer, and the file that it makes.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "tuckwright/result.hpp"

namespace tuckwright::cli
{

/// What a thing is like, as people sort them.
enum class Sort {
    solid,  ///< nothing goes into it
    pot,    ///< open at the top
    tin,    ///< with a lid of its own, which is shut
    sleeve, ///< open at both ends
    lid,    ///< of another thing
    soft    ///< takes any shape
};

/// One thing. Lengths and weights are texts with their units, as the file has them: "3 1/2 in", "140 g".
struct AskedItem {
    std::string id, name;
    Sort sort = Sort::solid;
    bool is_round = true;
    std::vector<std::string> sizes; ///< diameter and height, or length, width and height
    std::string weight;
    std::string wall, base;           ///< of what is hollow; a sleeve has no base
    std::string contents, amount;     ///< what it holds, and how much; empty for nothing
    std::string closes, adds, intrudes; ///< of a lid: the id of its vessel, and how it shuts
    std::string volume, thickness;    ///< of what is soft
    int count = 1;
    std::vector<std::string> kinds;
};

struct AskedKit {
    std::string name;
    bool is_round = true;
    std::vector<std::string> limits; ///< as sizes, empty where there is none
    std::vector<AskedItem> items;
};

/// The text in quotes of YAML, so that whatever it is does no harm, on one line.
std::string yaml_text(const std::string& text);

/// The kit's file, with comments.
std::string kit_text(const AskedKit& kit);

/// What the reader of kits finds wrong with it first, without a place; nothing if it would read it.
std::optional<Problem> fault_of(const AskedKit& kit);

/// A short name of letters a to z, digits and -, made of that name, that none of the items has.
std::string new_id(const std::string& name, const std::vector<AskedItem>& items);

} // namespace tuckwright::cli
