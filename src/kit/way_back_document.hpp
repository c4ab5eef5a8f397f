// SPDX-License-Identifier: GPL-3.0-or-later
/// What a kit file says of the way back, worked into its tree: what comes of it is read as any kit is, and every value
/// keeps its place.
#pragma once
#include <map>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "kit/references.hpp"

namespace tuckwright::reading {

/// How a file says it, for who wrote something else.
inline constexpr std::string_view way_back_example = "way-back: {empty: oats, gone: tablets, becomes: {pot: sooty}}";

/// What is left of the contents of a thing, as the file says it.
struct LeftOver {
    std::string id;
    Place place;
};

struct WayBackDocument {
    Node document;                       ///< the kit on the way back, as its file would describe it
    std::map<std::string, Absent> gone;  ///< ids of what does not come back
    std::map<std::string, Absent> added; ///< ids of what comes only on the way back
    std::vector<LeftOver> left;          ///< of the contents of things
    std::set<Place> places;              ///< of all that the file says of the way back alone
};

/// The way back that a kit's document describes under `way-back`, with what it takes from a shelf and its choices
/// still open. Reports what is wrong with it; what its things are like shows when the document that comes of it is
/// read. Ensures: as many choices, with as many alternatives, as before. Nothing where the document says nothing of a
/// way back.
std::optional<WayBackDocument> way_back_of(Reading& reading, const Node& document);

} // namespace tuckwright::reading
