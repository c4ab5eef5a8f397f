// SPDX-License-Identifier: GPL-3.0-or-later
/// The rule that includes point down the layers only, as a checker.
#pragma once
#include <map>
#include <optional>
#include <set>
#include <string>
#include <vector>

namespace tuckwright::house
{

struct Room {
    int layer = 0;
    std::set<std::string> headers; ///< public ones, without folder and ending
    std::string libraries;         ///< the table's words for what outside libraries it may use
};

/// The table of rooms, as DEVELOPERS.md has it: | layer | room | holds | public headers | outside library |.
std::map<std::string, Room> rooms_from_table(const std::string& developers_text);

/// A file's text, and where it stands from the project's root: src/proof/apart.cpp, include/tuckwright/kit.hpp.
struct Source {
    std::string path, text;
};

/// What is wrong with the file's includes, each as "path:line: why"; empty if nothing is.
std::vector<std::string> objections(const Source& source, const std::map<std::string, Room>& rooms);

} // namespace tuckwright::house
