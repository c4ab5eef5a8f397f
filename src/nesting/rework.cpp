// SPDX-License-Identifier: GPL-3.0-or-later
#include "nesting/rework.hpp"

#include <algorithm>
#include <vector>

#include "packing/construct.hpp"

namespace tuckwright::nesting {

using namespace packing;

namespace {

/// Two bodies or more, up to about a third of all; of many only a few, or hardly any trial would succeed.
std::vector<int> some_bodies(std::size_t all, Random& random)
{
    const std::size_t count = std::min(all, 2 + random.below(std::clamp<std::size_t>(all / 3, 3, 10)));
    std::vector<int> bodies;
    while (bodies.size() < count) {
        const int body = static_cast<int>(random.below(all));
        if (std::find(bodies.begin(), bodies.end(), body) == bodies.end()) {
            bodies.push_back(body);
        }
    }
    return bodies;
}

} // namespace

bool rebuild_some(Layout& layout, Random& random)
{
    constexpr int samples = 60;
    if (!rebuild(layout, random, some_bodies(layout.size(), random), samples)) {
        return false;
    }
    tighten(layout);
    return true;
}

void rework(Layout& layout, const Envelope& room, Random& random, const ReworkOptions& options)
{
    double least = burden(layout.envelope(), options.aim);
    for (int trial = 0; trial < options.trials && !(options.stop && options.stop()); ++trial) {
        Layout next = layout;
        Envelope wide = room; // as high as it is now: rebuilding makes room on top
        wide.height = layout.envelope().height;
        next.set_envelope(wide);
        if (!rebuild_some(next, random)) {
            continue;
        }
        if (const double now = burden(next.envelope(), options.aim); now <= least) {
            least = now;
            layout = next;
        }
    }
}

} // namespace tuckwright::nesting
