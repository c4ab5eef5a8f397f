// SPDX-License-Identifier: GPL-3.0-or-later
/// Long searches, for the stored bests.
#pragma once
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "bench/case.hpp"
#include "bench/stored_bests.hpp"

namespace tuckwright::bench {

/// What the stored best becomes after one more search: `found_ml` is nothing where none was found.
StoredBest after_search(StoredBest before, std::optional<double> found_ml, std::uint64_t seed, double seconds);

/// Searches each case for so many seconds of processor time, at thorough effort, one seed after another from the first
/// that has not been tried, and writes the file after each case; the last search is not cut short. Prints a line a case.
/// Ensures: whether the file could be read and written.
bool record(const std::vector<Case>& cases, const std::string& path, double seconds, unsigned threads);

} // namespace tuckwright::bench
