// SPDX-License-Identifier: GPL-3.0-or-later
/// The set of most worth among those that nothing is known against.
#pragma once
#include <cstddef>
#include <optional>
#include <vector>

#include "advice/part_of_kit.hpp"

namespace tuckwright::advice {

/// What a copy of an item counts: priorities first, then the number of things, then their volume.
struct Worth {
    long priority = 0, things = 0;
    double volume = 0; ///< mm^3
    friend auto operator<=>(const Worth&, const Worth&) = default;
};
Worth operator+(const Worth& a, const Worth& b);
Worth operator*(int n, const Worth& worth);

/// What is known about sets of things.
struct SetModel {
    std::vector<Worth> worth;          ///< of a copy of each item
    Counts least, most;                ///< copies of each item in any set
    std::vector<double> stuff;         ///< mm^3 that a copy of each takes up at least, whatever goes into it; not negative
    double room = 0;                   ///< mm^3 for all that
    std::vector<Counts> impossible;    ///< a set with at least so many of each is none
    std::vector<std::vector<std::size_t>> needs; ///< for each item: others of which some copy must be there with it
};

/// Whether the model allows a set.
bool is_allowed(const SetModel& model, const Counts& set);

struct BestSet {
    std::optional<Counts> set; ///< nothing where no set is allowed that is worth more
    bool complete = true;      ///< false where it was given up, and there may be others of more worth
};

/// The allowed set of most worth above a worth, the first in the order of the items among equals. Gives up after some
/// million sets. Complexity: exponential in the items at worst; a bound by the room left cuts most of it.
/// Source: branch and bound with the fractional knapsack's bound, Dantzig 1957, Operations Research 5.
BestSet best_set(const SetModel& model, const std::optional<Worth>& above);

Worth worth_of(const SetModel& model, const Counts& set);

} // namespace tuckwright::advice
