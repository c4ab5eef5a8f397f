// SPDX-License-Identifier: GPL-3.0-or-later
#include "tuckwright/shape.hpp"

#include <cmath>
#include <numbers>

#include "geometry/whole_numbers.hpp"
#include "tuckwright/contract.hpp"
#include "tuckwright/units.hpp"

namespace tuckwright {

Matrix3 rotation_matrix(const Quaternion& q)
{
    // Scaled first: the numbers may be as large as 2^62, whose squares overflow nothing but lose nothing either.
    const auto w = static_cast<long double>(q.w), x = static_cast<long double>(q.x), y = static_cast<long double>(q.y),
               z = static_cast<long double>(q.z);
    const long double n = w * w + x * x + y * y + z * z;
    require(n > 0, "a rotation's quaternion is not all zero");
    const auto entry = [n](long double numerator) { return static_cast<double>(numerator / n); };
    return {{{entry(w * w + x * x - y * y - z * z), entry(2 * (x * y - w * z)), entry(2 * (x * z + w * y))},
             {entry(2 * (x * y + w * z)), entry(w * w - x * x + y * y - z * z), entry(2 * (y * z - w * x))},
             {entry(2 * (x * z - w * y)), entry(2 * (y * z + w * x)), entry(w * w - x * x - y * y + z * z)}}};
}

Quaternion compose(const Quaternion& a, const Quaternion& b)
{
    using whole::Wide;
    const Wide aw = a.w, ax = a.x, ay = a.y, az = a.z;
    const Wide w = aw * b.w - ax * b.x - ay * b.y - az * b.z;
    const Wide x = aw * b.x + ax * b.w + ay * b.z - az * b.y;
    const Wide y = aw * b.y - ax * b.z + ay * b.w + az * b.x;
    const Wide z = aw * b.z + ax * b.y - ay * b.x + az * b.w;
    const auto lowest = whole::in_lowest_terms<4>({w, x, y, z});
    require(lowest.has_value(), "a composed quaternion stays below 2^62");
    return {(*lowest)[0], (*lowest)[1], (*lowest)[2], (*lowest)[3]};
}

double volume_ml(const Shape& shape)
{
    constexpr double cubic_mm_per_ml = 1000.0;
    if (const auto* c = std::get_if<Cylinder>(&shape)) {
        const double wide = c->diameter, low = foot_of(*c);
        const double square = low == wide ? wide * wide : (wide * wide + wide * low + low * low) / 3;
        return std::numbers::pi / 4 * square * c->height / cubic_mm_per_ml;
    }
    const auto& b = std::get<Box>(shape);
    return b.length * b.width * b.height / cubic_mm_per_ml;
}

Shape lower_part(Shape shape, double height)
{
    if (auto* c = std::get_if<Cylinder>(&shape); c != nullptr && c->foot != 0 && c->height > 0) {
        c->diameter = snap_down(c->foot + (c->diameter - c->foot) * (height / c->height));
    }
    std::visit([&](auto& s) { s.height = height; }, shape);
    return shape;
}

double height_of(const Shape& shape)
{
    return std::visit([](const auto& s) { return s.height; }, shape);
}

} // namespace tuckwright
