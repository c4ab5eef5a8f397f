// SPDX-License-Identifier: GPL-3.0-or-later
#include "bench/trace.hpp"

#include <algorithm>

namespace tuckwright::bench {

std::optional<double> seconds_to(const Trace& trace, double value)
{
    const auto found =
        std::find_if(trace.begin(), trace.end(), [value](const Point& point) { return point.value <= value; });
    return found == trace.end() ? std::nullopt : std::optional<double>(found->seconds);
}

Trace borne_out(const Trace& trace, double final_value, double seconds)
{
    Trace sound;
    for (const Point& point : trace) {
        if (point.seconds < seconds) {
            sound.push_back({point.seconds, std::max(point.value, final_value)});
        }
    }
    sound.push_back({seconds, final_value});
    return sound;
}

} // namespace tuckwright::bench
