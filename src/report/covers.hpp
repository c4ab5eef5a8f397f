// SPDX-License-Identifier: GPL-3.0-or-later
/// What goes round the whole bundle: bands and the bag, for people and in a bundle's JSON.
#pragma once
#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "report/json_node.hpp"
#include "tuckwright/bundle.hpp"

namespace tuckwright::report {

/// The last steps, for bands round everything first and then for the bag: "Pull Soft bag over it all."
std::vector<std::string> cover_steps(const Bundle& bundle);

/// "pull off Soft bag", or nothing without bag and bands round everything.
std::string first_cover_off(const Bundle& bundle);

/// The bag and the bands round everything, in the order in which they come off: "Soft bag", "Strap".
std::vector<std::string> covers_from_outside(const Bundle& bundle);

/// The bands over a lid, by its place among the items.
std::vector<std::string> bands_over(const Bundle& bundle, std::size_t lid);

/// Parts of their own on the bands that hold lids, and on the bag and the bands round everything, how wide they are and
/// what they hold; empty without them.
std::string covers_text(const Bundle& bundle);

/// null, or the bag with its step.
nlohmann::ordered_json bag_part(const Bundle& bundle);
nlohmann::ordered_json bands_part(const Bundle& bundle);

/// Reads "bag" and "bands", which are null and empty where the status says that there is no bundle.
void read_covers(const Node& root, Bundle& bundle);

/// Tells which of their texts do not name what they are about. Returns whether all are worded as they are today.
bool check_cover_steps(const Node& root, const Bundle& bundle);

} // namespace tuckwright::report
