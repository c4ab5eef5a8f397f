// SPDX-License-Identifier: GPL-3.0-or-later
/// What a file says of how things are carried: the kinds of an item, the items it goes with or not, and the usual rules
/// that the kit does without.
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "kit/fields.hpp"
#include "tuckwright/kit.hpp"

namespace tuckwright::reading
{

/// An item that another one names, by id still.
struct Named {
    std::string id;
    Place place;
};

/// What an item says of others.
struct CarryDraft {
    std::optional<Named> goes_in;
    std::vector<Named> not_in, apart_from, together_with;
};

/// The usual rules that a file waives.
struct Waivers {
    std::vector<std::optional<Place>> places; ///< of each usual rule's waiver; nothing where the rule holds
    std::vector<std::string> words;           ///< in the order of the file, each with its reason

    bool waives(std::size_t rule) const { return rule < places.size() && places[rule]; }
};

/// One word or a list of words. Ensures: no kind twice, in the order of the enumeration.
std::vector<Kind> read_kinds(Reading& reading, const Node& node);
/// The entries `goes-in`, `not-in`, `apart-from` and `together-with` of an item.
CarryDraft read_carry(Reading& reading, const Fields& item);
/// The list under `waive`. A rule whose reason is faulty counts as waived, so that nothing follows from the fault.
Waivers read_waivers(Reading& reading, const Node& node);

} // namespace tuckwright::reading
