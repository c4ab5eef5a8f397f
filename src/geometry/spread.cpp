// SPDX-License-Identifier: GPL-3.0-or-later
#include "tuckwright/spread.hpp"

#include <algorithm>

#include "tuckwright/units.hpp"

namespace tuckwright {

namespace {

template <class Change> Shape changed(Shape shape, Change change)
{
    if (auto* cylinder = std::get_if<Cylinder>(&shape)) {
        *cylinder = {change(cylinder->diameter, 0), change(cylinder->height, 1),
                     cylinder->foot == 0 ? 0 : change(cylinder->foot, 0)};
    } else {
        auto& box = std::get<Box>(shape);
        box = {change(box.length, 0), change(box.width, 1), change(box.height, 2)};
    }
    return shape;
}

} // namespace

bool any(const Spread& spread)
{
    return std::any_of(spread.mm.begin(), spread.mm.end(), [](double mm) { return mm > 0; });
}

std::size_t height_index(const Shape& shape) { return std::holds_alternative<Cylinder>(shape) ? 1 : 2; }

Shape largest(const Shape& shape, const Spread& spread)
{
    return changed(shape, [&](double mm, std::size_t k) { return snap_up(mm + spread.mm[k]); });
}

Shape smallest(const Shape& shape, const Spread& spread)
{
    constexpr double least = 1 / nanometres_per_millimetre;
    return changed(shape, [&](double mm, std::size_t k) { return std::max(least, snap_down(mm - spread.mm[k])); });
}

} // namespace tuckwright
