// SPDX-License-Identifier: GPL-3.0-or-later
#include "drawing/random_pictures.hpp"

#include <algorithm>
#include <map>

#include "support/handmade_bundles_parts.hpp"
#include "support/stacking_samples.hpp"

namespace drawing_test {

using namespace tuckwright;

Bundle random_bundle(std::uint64_t seed, int items)
{
    Bundle bundle = stacking_samples::random_tower(seed, std::max(3, items * 3 / 4)); // a third of them hold another
    double radius = 0, height = 0;
    for (const PlacedItem& item : bundle.items) {
        const Extent e = extent(hull_of(item.solids.front()));
        for (const double x : {e.low.x, e.high.x}) {
            for (const double y : {e.low.y, e.high.y}) {
                radius = std::max(radius, std::hypot(x, y));
            }
        }
        height = std::max(height, e.high.z);
    }
    bundle.envelope = Cylinder{2 * radius, height};
    bundle.steps = stacking_order(bundle).steps;
    return bundle;
}

Bundle pot_with_tin()
{
    using namespace handmade;
    auto pot = hollow(item("pot", cylinder(100, 80, {0, 0, 40})), cylinder(92, 76, {0, 0, 42}), Opening::top);
    Bundle made =
        bundle("Tea by the lock", Cylinder{240, 80},
               {pot, in(item("tin", cylinder(50, 40, {10, 0, 24})), 0), item("box", box(40, 30, 60, {80, 0, 30}))});
    for (const std::size_t k : {1U, 0U, 2U}) {
        step(made, k);
    }
    return made;
}

std::vector<std::string> faults_of(const svg::Picture& picture, const Frame& frame)
{
    constexpr double off = 0.5; // mm: half of the heaviest line, and a little
    std::vector<std::string> faults;
    std::map<int, svg::Bounds> texts;
    for (const auto& drawn : picture.paths) {
        if (drawn.lines.empty()) {
            continue;
        }
        const auto b = drawn.bounds();
        if (b.left < frame.x - off || b.top < frame.y - off || b.right > frame.right() + off ||
            b.bottom > frame.bottom() + off) {
            faults.push_back("drawn outside: from " + std::to_string(b.left) + ", " + std::to_string(b.top) + " to " +
                             std::to_string(b.right) + ", " + std::to_string(b.bottom));
        }
        if (drawn.letter) {
            texts[drawn.group].take({b.left, b.top});
            texts[drawn.group].take({b.right, b.bottom});
        }
    }
    for (auto one = texts.begin(); one != texts.end(); ++one) {
        for (auto other = std::next(one); other != texts.end(); ++other) {
            const svg::Bounds &a = one->second, &b = other->second;
            if (a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom) {
                faults.push_back("text on one another at " + std::to_string(a.left) + ", " + std::to_string(a.top));
            }
        }
    }
    return faults;
}

} // namespace drawing_test
