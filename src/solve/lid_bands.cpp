// SPDX-License-Identifier: GPL-3.0-or-later
#include "solve/lid_bands.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

#include "tuckwright/contract.hpp"
#include "tuckwright/stowage.hpp"

namespace tuckwright {

namespace {

/// From side to side along x and y, and from the bottom to the top; 0, 0, 0 is the middle of the vessel's bottom.
struct Reaches {
    Vec3 low{0, 0, 0}, high{0, 0, 0};

    void add(const Shape& shape, Axis axis, const Vec3& at)
    {
        Vec3 half;
        if (const auto* c = std::get_if<Cylinder>(&shape)) {
            const double r = c->diameter / 2, h = c->height / 2;
            half = {axis == Axis::x ? h : r, axis == Axis::y ? h : r, axis == Axis::z ? h : r};
        } else {
            const auto& b = std::get<Box>(shape);
            half = {b.length / 2, b.width / 2, b.height / 2};
        }
        low = {std::min(low.x, at.x - half.x), std::min(low.y, at.y - half.y), std::min(low.z, at.z - half.z)};
        high = {std::max(high.x, at.x + half.x), std::max(high.y, at.y + half.y), std::max(high.z, at.z + half.z)};
    }
};

} // namespace

double way_over(const Item& lid, const Item& vessel)
{
    require(lid.closes.has_value(), "a lid closes its vessel");
    const double rim = height_of(vessel.outside), adds = lid.closes->adds;
    Reaches all;
    all.add(vessel.outside, Axis::z, {0, 0, rim / 2});
    for (const Part& part : vessel.parts) {
        all.add(part.shape, part.axis, part.at);
    }
    Shape plate = lid.outside; // a skirt is as wide as the plate, and hangs no lower than the vessel's bottom
    std::visit([&](auto& shape) { shape.height = adds; }, plate);
    all.add(plate, Axis::z, {0, 0, rim + adds / 2});
    return 2 * (std::min(all.high.x - all.low.x, all.high.y - all.low.y) + all.high.z - all.low.z);
}

std::optional<std::string> lid_band_misfit(const Kit& kit)
{
    constexpr double safety = 1 + 1e-9;
    for (const Band& band : kit.bands) {
        const auto lid = std::find_if(kit.items.begin(), kit.items.end(),
                                      [&](const Item& item) { return item.closes && item.id == band.over; });
        if (lid == kit.items.end()) {
            require(band.over.empty(), "a band goes over a lid of the kit");
            continue;
        }
        const Item& vessel = kit.items[lid->closes->item];
        double least = way_over(*lid, vessel);
        for (std::size_t form = 1; form <= vessel.forms.size(); ++form) {
            least = std::min(least, way_over(*lid, in_form(vessel, form)));
        }
        if (least > band.girth * safety) {
            return fmt::format(
                "it is {:.1f} mm round over the shut {} and under the {}, and the {} is only {:g} mm round",
                std::floor(10 * least) / 10, lid->id, vessel.id, band.id, band.girth);
        }
    }
    return std::nullopt;
}

} // namespace tuckwright
