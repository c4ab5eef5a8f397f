// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>

#include "properties/sampling_judge.hpp"
#include "properties/spoilers.hpp"
#include "tuckwright/report.hpp"

namespace properties {

using namespace tuckwright;
using test::Dice;

namespace {

std::size_t step_of(const Bundle& bundle, std::size_t item)
{
    const auto found =
        std::find_if(bundle.steps.begin(), bundle.steps.end(), [&](const Step& step) { return step.item == item; });
    return static_cast<std::size_t>(found - bundle.steps.begin());
}

/// Moves the step at `from` so that it comes directly after (or before) the one that was at `to`.
void move_step(Bundle& bundle, std::size_t from, std::size_t to)
{
    const Step step = bundle.steps[from];
    bundle.steps.erase(bundle.steps.begin() + static_cast<std::ptrdiff_t>(from));
    bundle.steps.insert(bundle.steps.begin() + static_cast<std::ptrdiff_t>(to), step);
}

/// The lid goes on before what lies in the vessel goes in.
Spoiled lid_first(Bundle bundle, Dice& dice)
{
    const std::size_t lid = any(dice, bundle.items.size()), held = any(dice, bundle.items.size());
    if (!bundle.items[lid].closes || !bundle.items[held].in || bundle.items[held].in->item != *bundle.items[lid].closes) {
        return std::nullopt;
    }
    const std::size_t from = step_of(bundle, lid), to = step_of(bundle, held);
    if (from < to) {
        return std::nullopt;
    }
    move_step(bundle, from, to);
    return to_json(bundle);
}

sampling::Point real(const std::array<std::int64_t, 3>& v)
{
    return {static_cast<long double>(v[0]), static_cast<long double>(v[1]), static_cast<long double>(v[2])};
}

/// Of two in one container, the one that goes in first is put in last, though the other is in its way.
Spoiled through_what_is_in_place(Bundle bundle, Dice& dice)
{
    const std::size_t first = any(dice, bundle.items.size()), last = any(dice, bundle.items.size());
    const auto &a = bundle.items[first], &b = bundle.items[last];
    const std::size_t from = step_of(bundle, first), to = step_of(bundle, last);
    if (first == last || a.in != b.in || a.closes || b.closes || from > to || bundle.steps[from].via) {
        return std::nullopt;
    }
    const auto direction = real(bundle.steps[from].direction);
    long double deepest = -1;
    for (const auto& mover : sampling::bodies_of(a)) {
        for (const auto& obstacle : sampling::bodies_of(b)) {
            deepest = std::max(deepest, sampling::depth_on_the_way(mover, direction, obstacle));
        }
    }
    if (deepest <= clear) {
        return std::nullopt;
    }
    move_step(bundle, from, to);
    return to_json(bundle);
}

/// Up through the floor of the bundle or of the cavity.
Spoiled through_the_floor(Bundle bundle, Dice& dice)
{
    Step& step = bundle.steps[any(dice, bundle.steps.size())];
    const PlacedItem& item = bundle.items[step.item];
    if (item.closes) {
        return std::nullopt;
    }
    if (item.in) {
        const auto& cavity = bundle.items[item.in->item].cavities[item.in->cavity];
        if (cavity.opens == Opening::both) {
            return std::nullopt;
        }
    } else if (step.direction[2] == 0) {
        return std::nullopt; // level: the opposite may be free as well
    }
    for (auto& part : step.direction) {
        part = -part;
    }
    return to_json(bundle);
}

/// Into a cavity, but across its axis: through the wall.
Spoiled through_the_wall(Bundle bundle, Dice& dice)
{
    Step& step = bundle.steps[any(dice, bundle.steps.size())];
    const PlacedItem& item = bundle.items[step.item];
    if (item.closes || !item.in) {
        return std::nullopt;
    }
    std::rotate(step.direction.begin(), step.direction.begin() + 1 + dice.below(2), step.direction.end());
    const auto& cavity = bundle.items[item.in->item].cavities[item.in->cavity];
    const auto axis = sampling::body_of(cavity.shape, cavity.pose).axis[2], way = real(step.direction);
    const long double along = axis[0] * way[0] + axis[1] * way[1] + axis[2] * way[2];
    const long double length = std::sqrt(way[0] * way[0] + way[1] * way[1] + way[2] * way[2]);
    return std::abs(along) < 0.9L * length ? Spoiled(to_json(bundle)) : std::nullopt;
}

Spoiled miscount_steps(Bundle bundle, Dice& dice)
{
    const std::size_t k = any(dice, bundle.steps.size());
    switch (dice.below(4)) {
    case 0: bundle.steps.erase(bundle.steps.begin() + static_cast<std::ptrdiff_t>(k)); break;
    case 1: bundle.steps.push_back(Step(bundle.steps[k])); break;
    case 2: bundle.steps[k].direction = {0, 0, 0}; break;
    default: {
        const std::size_t other = any(dice, bundle.items.size());
        if (other == bundle.steps[k].item) {
            return std::nullopt;
        }
        bundle.steps[k].item = other; // one twice, one never
    }
    }
    return to_json(bundle);
}

/// Whether an axis of the world or of one of the solids keeps the pair apart, or nearly.
bool an_axis_separates(const sampling::Body& a, const sampling::Body& b)
{
    std::vector<sampling::Point> axes{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}};
    axes.insert(axes.end(), a.axis.begin(), a.axis.end());
    axes.insert(axes.end(), b.axis.begin(), b.axis.end());
    return std::any_of(axes.begin(), axes.end(), [&](const sampling::Point& n) {
        return sampling::apart_along(a, b, n) > -1e-5L || sampling::apart_along(b, a, n) > -1e-5L;
    });
}

/// All planes of a pair that nothing else separates are dropped, turned round, or bent.
Spoiled spoil_planes(Bundle bundle, Dice& dice)
{
    auto& planes = bundle.certificate.planes;
    if (planes.empty()) {
        return std::nullopt;
    }
    const SeparatingPlane chosen = planes[any(dice, planes.size())];
    const Solid& first = bundle.items[chosen.first].solids[chosen.first_solid];
    const Solid& second = bundle.items[chosen.second].solids[chosen.second_solid];
    const auto a = sampling::body_of(first.shape, first.pose), b = sampling::body_of(second.shape, second.pose);
    if (an_axis_separates(a, b)) {
        return std::nullopt;
    }
    const auto same_pair = [&](const SeparatingPlane& p) {
        return (p.first == chosen.first && p.first_solid == chosen.first_solid && p.second == chosen.second &&
                p.second_solid == chosen.second_solid) ||
               (p.first == chosen.second && p.first_solid == chosen.second_solid && p.second == chosen.first &&
                p.second_solid == chosen.first_solid);
    };
    const int how = dice.below(3);
    if (how == 0) {
        planes.erase(std::remove_if(planes.begin(), planes.end(), same_pair), planes.end());
        return to_json(bundle);
    }
    for (auto& plane : planes) {
        if (!same_pair(plane)) {
            continue;
        }
        for (auto& part : plane.normal) {
            part = how == 1 ? -part : part;
        }
        if (how == 2) {
            std::rotate(plane.normal.begin(), plane.normal.begin() + 1, plane.normal.end());
        }
        const bool in_order = plane.first == chosen.first && plane.first_solid == chosen.first_solid;
        if (sampling::apart_along(in_order ? a : b, in_order ? b : a, real(plane.normal)) > -1e-3L) {
            return std::nullopt; // still separates
        }
    }
    return to_json(bundle);
}

Spoiled drop_rest(Bundle bundle, Dice& dice)
{
    auto& rests = bundle.certificate.rests;
    const std::size_t item = rests[any(dice, rests.size())].item;
    if (dice.below(2) == 0) {
        std::erase_if(rests, [&](const Rest& rest) { return rest.item == item; });
        return to_json(bundle);
    }
    for (Rest& rest : rests) { // hangs on a point in the empty air
        if (rest.item == item && !rest.on) {
            return std::nullopt;
        }
        if (rest.item == item) {
            rest.point = {1000, 1000, 1000};
        }
    }
    return to_json(bundle);
}

} // namespace

std::vector<Spoiler> handling_spoilers()
{
    return {{"a lid shut before its vessel is filled", lid_first},
            {"a step through what is in place", through_what_is_in_place},
            {"a step through the floor", through_the_floor},
            {"a step through the wall", through_the_wall},
            {"a step missing, doubled or without a way", miscount_steps},
            {"a needed plane dropped, reversed or bent", spoil_planes},
            {"nothing to rest on", drop_rest}};
}

} // namespace properties
