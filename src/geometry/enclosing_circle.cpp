// SPDX-License-Identifier: GPL-3.0-or-later
#include <CGAL/Cartesian.h>
#include <CGAL/Min_sphere_of_spheres_d.h>
#include <CGAL/Min_sphere_of_spheres_d_traits_2.h>

#include <algorithm>
#include <cmath>

#include "tuckwright/contract.hpp"
#include "tuckwright/geometry.hpp"

namespace tuckwright
{

std::array<double, 3> enclosing_circle(const std::vector<std::array<double, 3>>& circles)
{
    require(!circles.empty(), "a smallest enclosing circle needs at least one circle");
    using Kernel = CGAL::Cartesian<double>;
    using Traits = CGAL::Min_sphere_of_spheres_d_traits_2<Kernel, double, CGAL::Tag_true>;
    std::vector<Traits::Sphere> spheres;
    spheres.reserve(circles.size());
    for (const auto& [x, y, radius] : circles) {
        require(radius >= 0, "a circle's radius is not negative");
        spheres.emplace_back(Kernel::Point_2(x, y), radius);
    }
    CGAL::Min_sphere_of_spheres_d<Traits> smallest(spheres.begin(), spheres.end());
    const auto* center = smallest.center_cartesian_begin();
    const double x = center[0], y = center[1];
    double reach = 0; // the radius is worked out anew, so that no circle stands out by a rounding of the centre
    for (const auto& [cx, cy, radius] : circles) {
        reach = std::max(reach, std::hypot(cx - x, cy - y) + radius);
    }
    return {x, y, reach};
}

} // namespace tuckwright
