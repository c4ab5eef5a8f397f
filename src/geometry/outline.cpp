// SPDX-License-Identifier: GPL-3.0-or-later
// The way round a convex outline is the integral of its reach over all directions (Cauchy's formula). Here it is that of
// the polygon with edges along evenly spread directions that encloses it, which is never less.
#include <algorithm>
#include <cmath>
#include <numbers>

#include "tuckwright/geometry.hpp"

namespace tuckwright {

double outline_girth(const std::vector<Solid>& solids)
{
    constexpr int directions = 2048; // a disc is overstated by a share of 8e-7
    constexpr double step = 2 * std::numbers::pi / directions;
    std::vector<Hull> hulls;
    for (const Solid& solid : solids) {
        hulls.push_back(hull_of(solid));
    }
    double sum = 0;
    for (int k = 0; k < directions && !hulls.empty(); ++k) {
        const Vec3 along{std::cos(k * step), std::sin(k * step), 0};
        double reach = -1e300;
        for (const Hull& hull : hulls) {
            reach = std::max(reach, support(hull, along));
        }
        sum += reach;
    }
    return sum * 2 * std::tan(step / 2);
}

} // namespace tuckwright
