// SPDX-License-Identifier: GPL-3.0-or-later
/// Choices among the items of a file: entries of which one alternative is taken. They are worked out on the tree, so that
/// what is left is a plain kit whose entries keep their places.
#pragma once
#include <map>
#include <string>
#include <vector>

#include "kit/references.hpp"

namespace tuckwright::reading {

/// One way to settle a choice: things that come along together, or nothing.
struct Alternative {
    std::string word;                 ///< how it is called: what it gives as `take`, or the id of its first thing
    std::string first;                ///< id of its first thing; empty for nothing
    std::vector<const Node*> entries; ///< things, as entries of `items`
};

struct Choice {
    std::string name;
    Place place;
    std::size_t entry = 0; ///< index into the list under `items`
    std::vector<Alternative> alternatives;
};

/// For each choice, in the file's order, the index of the alternative that is taken.
using Picks = std::vector<std::size_t>;

/// The choices under `items` of a document; reports what is wrong with them as such. Their things are not looked at but
/// for their ids. Ensures: none twice by name, and no word twice in one, unless that has been reported; a document
/// without choices has none. Requires: the document outlives them.
std::vector<Choice> read_choices(Reading& reading, const Node& document);

/// How many combinations the choices make, or the most that a number can hold.
std::size_t combinations(const std::vector<Choice>& choices);

/// Goes on to the next combination, the last choice changing first; false after the last one.
bool next_picks(const std::vector<Choice>& choices, Picks& picks);

/// The document with these alternatives in the places of their choices. Where an item names a choice, the first thing
/// taken stands for it. A rule of carrying about a thing that does not come along is left out; what closes it, is pressed
/// into it or goes over it is reported. Requires: an alternative picked for each choice.
/// `left` are things known otherwise that do not come along, unless an alternative has that id.
Node settled(Reading& reading, const Node& document, const std::vector<Choice>& choices, const Picks& picks,
             const std::map<std::string, Absent>& left = {});

/// "(pot: big-pot, screen: nothing)": what is taken, after the kit's name.
std::string picks_in_words(const std::vector<Choice>& choices, const Picks& picks);

} // namespace tuckwright::reading
