// SPDX-License-Identifier: GPL-3.0-or-later
/// Where items of a file name one another: put right before the file is read as a plain kit.
#pragma once
#include <map>
#include <set>
#include <string>

#include "kit/fields.hpp"

namespace tuckwright::reading {

/// Why a thing that the file knows does not come along, and what to do where that cannot be.
struct Absent {
    std::string what, remedy;
    bool is_on_shelf = false; ///< only rules that come from the shelf may name it
};

/// A thing that comes along, for which another name may stand.
struct StandIn {
    std::string id;
    bool is_vessel = false; ///< whether it has an inside that something can be kept out of
};

/// Names other than the ids of the things that come along.
struct KnownNames {
    std::set<std::string> along;               ///< ids of what comes along
    std::map<std::string, StandIn> stands_for; ///< a name, and what comes along for it
    std::map<std::string, Absent> absent;      ///< ids and names of what does not come along
};

/// Puts ids in the place of names that stand for them, in an entry of `items`. A rule of carrying about something absent
/// is taken out, and so is one that keeps it out of what a name stands for where that is no vessel; where the entry cannot be carried without it, that is reported. Names that are not known stay.
void settle_references(Reading& reading, Node& item, const KnownNames& names);

} // namespace tuckwright::reading
