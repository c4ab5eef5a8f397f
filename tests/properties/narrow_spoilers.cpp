// SPDX-License-Identifier: GPL-3.0-or-later
/// Faults of openings narrower than the cavity, and of the two moves through them.
#include <algorithm>

#include "properties/sampling_judge.hpp"
#include "properties/spoilers.hpp"
#include "tuckwright/report.hpp"
#include "tuckwright/units.hpp"

namespace properties {

using namespace tuckwright;
using test::Dice;

namespace {

/// The cavity with a narrow opening that the item lies in, or null.
PlacedCavity* narrow_cavity_of(Bundle& bundle, std::size_t item)
{
    const auto& in = bundle.items[item].in;
    PlacedCavity* cavity = in ? &bundle.items[in->item].cavities[in->cavity] : nullptr;
    return cavity != nullptr && cavity->neck ? cavity : nullptr;
}

sampling::Body moved(sampling::Body body, const Vec3& via, long double share = 1)
{
    body.center[0] += share * via.x;
    body.center[1] += share * via.y;
    body.center[2] += share * via.z;
    return body;
}

/// Whether an item, moved aside by so much, clearly reaches out of the opening's prism less the clearance.
bool misses_opening(const Bundle& bundle, const PlacedItem& item, const PlacedCavity& cavity, const Vec3& via)
{
    const auto opening = sampling::body_of(*cavity.neck, cavity.pose);
    const auto bodies = sampling::bodies_of(item);
    return std::any_of(bodies.begin(), bodies.end(), [&](const sampling::Body& body) {
        return sampling::beyond(moved(body, via), opening).walls > clear - bundle.clearance;
    });
}

/// No convex thing passes an opening narrower than a ball that it holds.
Spoiled too_narrow(Bundle bundle, Dice& dice)
{
    const std::size_t item = any(dice, bundle.items.size());
    PlacedCavity* cavity = narrow_cavity_of(bundle, item);
    if (cavity == nullptr) {
        return std::nullopt;
    }
    const auto body = sampling::bodies_of(bundle.items[item]).front();
    const long double ball = std::min({body.half[0], body.half[1], body.half[2]});
    const double width = snap(static_cast<double>(2 * (ball - clear * (1 + dice.below(3))) + 2 * bundle.clearance));
    if (auto* round = std::get_if<Cylinder>(&*cavity->neck)) {
        round->diameter = width;
    } else {
        auto& box = std::get<Box>(*cavity->neck);
        (dice.below(2) == 0 ? box.length : box.width) = width;
    }
    return width > 0 ? Spoiled(to_json(bundle)) : std::nullopt;
}

/// The way aside is forgotten, reversed, or changed, so that the first move does not lead through the opening.
Spoiled another_way_aside(Bundle bundle, Dice& dice)
{
    Step& step = bundle.steps[any(dice, bundle.steps.size())];
    const PlacedCavity* cavity = narrow_cavity_of(bundle, step.item);
    if (cavity == nullptr) {
        return std::nullopt;
    }
    const Vec3 old = step.via.value_or(Vec3{});
    switch (dice.below(4)) {
    case 0: step.via.reset(); break;
    case 1: step.via = Vec3{-old.x, -old.y, -old.z}; break;
    case 2: step.via = Vec3{old.y, -old.x, old.z}; break;
    default: {
        const double share = dice.below(300) / 100.0;
        step.via = Vec3{snap(share * old.x), snap(share * old.y), snap(share * old.z)};
    }
    }
    const Vec3 now = step.via.value_or(Vec3{});
    return misses_opening(bundle, bundle.items[step.item], *cavity, now) ? Spoiled(to_json(bundle)) : std::nullopt;
}

/// What has to be let down and pushed aside comes last, through what is in place by then.
Spoiled aside_too_late(Bundle bundle, Dice& dice)
{
    const std::size_t from = any(dice, bundle.steps.size()), to = any(dice, bundle.steps.size());
    const Step step = bundle.steps[from];
    const std::size_t other = bundle.steps[to].item;
    if (from >= to || !step.via || bundle.items[other].in != bundle.items[step.item].in || bundle.items[other].closes) {
        return std::nullopt;
    }
    const sampling::Point way{static_cast<long double>(step.direction[0]), static_cast<long double>(step.direction[1]),
                              static_cast<long double>(step.direction[2])};
    long double deepest = -1;
    for (const auto& mover : sampling::bodies_of(bundle.items[step.item])) {
        for (const auto& obstacle : sampling::bodies_of(bundle.items[other])) {
            deepest = std::max(deepest, sampling::depth_on_the_way(moved(mover, *step.via), way, obstacle));
            for (int k = 0; k <= 20; ++k) {
                deepest = std::max(deepest, sampling::common_depth(moved(mover, *step.via, k / 20.0L), obstacle));
            }
        }
    }
    if (deepest <= clear) {
        return std::nullopt;
    }
    bundle.steps.erase(bundle.steps.begin() + static_cast<std::ptrdiff_t>(from));
    bundle.steps.insert(bundle.steps.begin() + static_cast<std::ptrdiff_t>(to), step);
    return to_json(bundle);
}

/// Aside, though nothing is narrow.
Spoiled aside_without_need(Bundle bundle, Dice& dice)
{
    Step& step = bundle.steps[any(dice, bundle.steps.size())];
    if (bundle.items[step.item].in || bundle.items[step.item].closes) {
        return std::nullopt;
    }
    step.via = Vec3{static_cast<double>(dice.below(3)), static_cast<double>(dice.below(3)), 0};
    return to_json(bundle);
}

/// A neck that ends below the rim or above it.
Spoiled neck_of_another_height(Bundle bundle, Dice& dice)
{
    PlacedCavity* cavity = narrow_cavity_of(bundle, any(dice, bundle.items.size()));
    if (cavity == nullptr || cavity->opens != Opening::top) {
        return std::nullopt;
    }
    const double by = 0.1 * (1 + dice.below(20));
    std::visit([&](auto& shape) { shape.height = snap(shape.height > by ? shape.height - by : shape.height + by); },
               *cavity->neck);
    return to_json(bundle);
}

} // namespace

std::vector<Spoiler> narrow_spoilers()
{
    return {{"an opening too narrow for what lies below it", too_narrow},
            {"a way aside forgotten, reversed or changed", another_way_aside},
            {"a way aside through what is in place", aside_too_late},
            {"a way aside without a narrow opening", aside_without_need},
            {"a neck of another height", neck_of_another_height}};
}

} // namespace properties
