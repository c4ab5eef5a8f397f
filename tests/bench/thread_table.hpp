// SPDX-License-Identifier: GPL-3.0-or-later
/// One thread against two. Both do the same steps, so that the times' quotient is that of the steps per second.
#pragma once
#include <string>
#include <vector>

#include "bench/run.hpp"

namespace tuckwright::bench {

struct ThreadRow {
    Row one, two;
    bool same_bytes = false; ///< of the saved bundles
};

/// Requires: no limit of time, which would let the answers differ.
ThreadRow with_one_and_two(const Case& what, RunOptions options);

std::string thread_head();
std::string thread_line(const ThreadRow& row);
std::string thread_summary(const std::vector<ThreadRow>& rows);

} // namespace tuckwright::bench
