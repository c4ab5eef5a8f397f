// SPDX-License-Identifier: GPL-3.0-or-later
#include "play/group.hpp"

#include <cmath>

namespace tuckwright::play {

std::vector<std::optional<std::size_t>> holders(const Bundle& bundle)
{
    std::vector<std::optional<std::size_t>> found;
    for (const PlacedItem& item : bundle.items) {
        found.push_back(item.closes ? item.closes : item.in ? std::optional(item.in->item) : std::nullopt);
    }
    return found;
}

bool hangs_on(const std::vector<std::optional<std::size_t>>& holders, std::size_t item, std::size_t other)
{
    for (std::optional<std::size_t> at = item; at; at = holders[*at]) {
        if (*at == other) {
            return true;
        }
    }
    return false;
}

Vec3 axis_of(const Matrix3& m, std::size_t k) { return {m[0][k], m[1][k], m[2][k]}; }

void add_outline(const Solid& solid, const Pose& frame, std::vector<PlanCircle>& circles)
{
    constexpr double stands = 1 - 1e-12;
    const Matrix3 m = rotation_matrix(frame.turn), own = rotation_matrix(solid.pose.turn);
    const Vec3 x = axis_of(m, 0), y = axis_of(m, 1), at = solid.pose.center - frame.center;
    const auto* cylinder = std::get_if<Cylinder>(&solid.shape);
    if (cylinder != nullptr && std::abs(dot(axis_of(own, 2), axis_of(m, 2))) > stands) {
        circles.push_back({dot(at, x), dot(at, y), cylinder->diameter / 2});
        return;
    }
    const Box box =
        cylinder != nullptr ? Box{cylinder->diameter, cylinder->diameter, cylinder->height} : std::get<Box>(solid.shape);
    // A lying cylinder's shadow is a rectangle; turned about its own axis, a box's might be larger.
    Vec3 a = axis_of(own, 0), b = axis_of(own, 1);
    if (cylinder != nullptr) {
        const Vec3 across = cross(axis_of(own, 2), axis_of(m, 2));
        a = (1 / norm(across)) * across;
        b = cross(axis_of(own, 2), a);
    }
    for (int corner = 0; corner < 8; ++corner) {
        const auto half = [&](int bit, double size) { return ((corner & bit) != 0 ? 0.5 : -0.5) * size; };
        const Vec3 p = at + half(1, box.length) * a + half(2, box.width) * b + half(4, box.height) * axis_of(own, 2);
        circles.push_back({dot(p, x), dot(p, y), 0});
    }
}

double enclosing_radius(const std::vector<PlanCircle>& circles)
{
    std::vector<std::array<double, 3>> rings;
    for (const PlanCircle& circle : circles) {
        rings.push_back({circle.x, circle.y, circle.r});
    }
    return enclosing_circle(rings)[2];
}

} // namespace tuckwright::play
