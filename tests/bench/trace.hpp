// SPDX-License-Identifier: GPL-3.0-or-later
/// What a search had reached, and when.
#pragma once
#include <optional>
#include <vector>

namespace tuckwright::bench {

/// From `seconds` after the beginning on, the best is `value` (less is better).
struct Point {
    double seconds = 0;
    double value = 0;
};

using Trace = std::vector<Point>;

/// When the trace first had a value of at most `value`; nothing if it never had. Complexity: linear.
std::optional<double> seconds_to(const Trace& trace, double value);

/// The trace as far as the end bears it out: what was smaller than `final_value` on the way could not be proved, and
/// counts as `final_value`; that itself is reached at `seconds` at the latest, and nothing comes after it.
Trace borne_out(const Trace& trace, double final_value, double seconds);

} // namespace tuckwright::bench
