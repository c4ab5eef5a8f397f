// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/sized_shape.hpp"

#include <array>
#include <cmath>

#include "kit/words.hpp"

namespace tuckwright::reading
{

namespace
{

constexpr std::array<std::string_view, 2> cylinder_dimensions{"diameter", "height"};
constexpr std::array<std::string_view, 3> box_dimensions{"length", "width", "height"};

constexpr std::array<std::string_view, 3> cylinder_keys{"diameter", "height", "foot"};
constexpr KnownFields cylinder_fields{cylinder_keys, "cylinder: {diameter: 110, height: 90}",
                                      cylinder_dimensions};
constexpr KnownFields box_fields{box_dimensions, "box: {length: 140, width: 30, height: 12}", box_dimensions};

Shape shape_of(ShapeKind kind, const std::vector<double>& mm, double foot)
{
    if (kind == ShapeKind::cylinder) {
        return Cylinder{mm[0], mm[1], foot < mm[0] ? foot : 0};
    }
    return Box{mm[0], mm[1], mm[2]};
}

} // namespace

std::string_view word_of(ShapeKind kind) { return kind == ShapeKind::cylinder ? "cylinder" : "box"; }

std::span<const std::string_view> dimensions_of(ShapeKind kind)
{
    if (kind == ShapeKind::cylinder) {
        return cylinder_dimensions;
    }
    return box_dimensions;
}

Shape SizedShape::rounded_up() const
{
    std::vector<double> mm;
    for (const Length size : sizes) {
        mm.push_back(size.mm_up());
    }
    return shape_of(kind, mm, foot ? foot->mm_up() : 0);
}

Shape SizedShape::rounded_down() const
{
    std::vector<double> mm;
    for (const Length size : sizes) {
        mm.push_back(size.mm_down());
    }
    return shape_of(kind, mm, foot ? foot->mm_down() : 0);
}

Spread SizedShape::spread() const
{
    Spread spread;
    for (std::size_t i = 0; i < offs.size(); ++i) {
        spread.mm[i] = offs[i].mm_up();
    }
    return spread;
}

std::optional<SizedShape> read_shape(Reading& reading, const Node& node, ShapeKind kind, Height height)
{
    const auto names = dimensions_of(kind);
    Fields fields(reading, node, "a " + std::string(word_of(kind)),
                  kind == ShapeKind::cylinder ? cylinder_fields : box_fields);
    SizedShape shape{kind, {}, {}, std::nullopt, node.place, {}};
    bool whole = fields.is_map();
    for (const std::string_view name : names) {
        const bool may_lack = name == names.back() && height == Height::optional;
        const Node* value = may_lack && !fields.given(name)
                                ? nullptr
                                : fields.need(name, "a " + std::string(word_of(kind)) + " has " + listed(names));
        const auto size =
            value != nullptr ? read_measured(reading, *value, std::string(name), AtLeast::micrometre,
                                             reading.usual_tolerance)
                             : std::nullopt;
        if (size) {
            shape.sizes.push_back(size->size);
            shape.offs.push_back(size->off);
            shape.places.push_back(value->place);
        } else if (!may_lack || fields.given(name)) {
            whole = false;
        }
    }
    if (const Node* foot = kind == ShapeKind::cylinder ? fields.find("foot") : nullptr) {
        shape.foot = read_length(reading, *foot, "foot", AtLeast::micrometre);
        if (shape.foot && whole && *shape.foot >= shape.sizes.front()) {
            reading.problems.add(foot->place,
                                 "foot is " + to_string(*shape.foot) + ", but a cylinder tapers down from its diameter, " +
                                     to_string(shape.sizes.front()),
                                 "give the narrower diameter at the bottom, or delete 'foot'");
            shape.foot.reset();
        }
    }
    return whole ? std::optional(shape) : std::nullopt;
}

std::int64_t diagonal_up(std::int64_t length_nm, std::int64_t width_nm)
{
    const Wide square = Wide{length_nm} * length_nm + Wide{width_nm} * width_nm;
    auto root = static_cast<std::int64_t>(std::sqrt(static_cast<long double>(square)));
    while (Wide{root} * root < square) {
        ++root;
    }
    while (root > 0 && Wide{root - 1} * (root - 1) >= square) {
        --root;
    }
    return root;
}

} // namespace tuckwright::reading
