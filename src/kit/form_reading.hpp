// SPDX-License-Identifier: GPL-3.0-or-later
/// What an item is beyond one rigid cylinder or box: parts fixed to it, sheets, cloths, and other forms to carry it in.
#pragma once
#include <optional>
#include <vector>

#include "kit/sized_shape.hpp"
#include "tuckwright/kit.hpp"

namespace tuckwright::reading
{

/// The outside under `cylinder` or `box` of a group of fields; reports both at once.
std::optional<SizedShape> read_plain_outside(Reading& reading, Fields& fields);

/// The list under `parts`. `outside` is missing where it is faulty; then a part that is told by a side of it is left
/// out.
std::vector<Part> read_parts(Reading& reading, const Node& node, const std::optional<SizedShape>& outside);

/// The sheet under `sheet`, and the cloth under `cloth`; nothing where a size is faulty.
std::optional<Sheet> read_sheet(Reading& reading, const Node& node);
std::optional<Cloth> read_cloth(Reading& reading, const Node& node);

/// The pouch under `pouch`; nothing where a size is faulty.
std::optional<Pouch> read_pouch(Reading& reading, const Node& node);

/// The box of a flat sheet or of an empty pouch laid flat, and the first shape of a cloth.
Shape flat(const Sheet& sheet);
Shape flat(const Pouch& pouch);
Shape first_pad(const Cloth& cloth);

/// The list under `forms`; what a form does not give is as in the item.
std::vector<Stowage> read_forms(Reading& reading, const Node& node, const Item& item,
                                const std::optional<SizedShape>& outside);

} // namespace tuckwright::reading
