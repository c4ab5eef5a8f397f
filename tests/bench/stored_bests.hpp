// SPDX-License-Identifier: GPL-3.0-or-later
/// The best bundles that long searches have found of the generated kits, kept in a CSV file.
#pragma once
#include <cstdint>
#include <map>
#include <string>

#include "tuckwright/result.hpp"

namespace tuckwright::bench {

struct StoredBest {
    double best_ml = 0;
    double minutes = 0;      ///< of processor time that the kit has had in all, whatever the machine
    std::uint64_t seed = 1;  ///< that of the best
    std::uint64_t seeds = 0; ///< so many have been tried, from 1 on
    friend bool operator==(const StoredBest&, const StoredBest&) = default;
};

/// By the case's name.
using StoredBests = std::map<std::string, StoredBest>;

/// "case,best_ml,minutes,seed,seeds" and a line for each, in the order of their names.
std::string csv_of(const StoredBests& bests);

/// Errors: another first line, and lines that are not a name and four numbers; `name` stands for the file in them.
Result<StoredBests> stored_bests(const std::string& text, const std::string& name);

/// The same from a file; a file that is not there holds no bests.
Result<StoredBests> read_stored_bests(const std::string& path);

/// Writes the file anew, whole or not at all. Ensures: whether that could be done.
bool write_stored_bests(const std::string& path, const StoredBests& bests);

} // namespace tuckwright::bench
