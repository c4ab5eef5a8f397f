// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/opening_reading.hpp"

#include <array>

#include "kit/words.hpp"

namespace tuckwright::reading {

namespace {

constexpr std::array<std::string_view, 4> opening_keys{"diameter", "length", "width", "depth"};
constexpr KnownFields opening_fields{opening_keys, "opening: {diameter: 70, depth: 3}"};

bool add_size(Reading& reading, Fields& fields, std::string_view key, SizedShape& shape)
{
    const Node* value = fields.need(key, "an opening has a diameter, or a length and a width");
    const auto size =
        value != nullptr ? read_length(reading, *value, std::string(key), AtLeast::micrometre) : std::nullopt;
    if (size) {
        shape.sizes.push_back(*size);
        shape.places.push_back(value->place);
    }
    return size.has_value();
}

/// A rim has hardly any height of its own where no depth is given.
bool add_depth(Reading& reading, Fields& fields, SizedShape& shape)
{
    const Node* value = fields.find("depth");
    const auto depth = value != nullptr        ? read_length(reading, *value, "depth", AtLeast::zero)
                       : fields.given("depth") ? std::nullopt
                                               : std::optional(Length::of_nanometres(0));
    if (depth) {
        shape.sizes.push_back(*depth);
        shape.places.push_back(value != nullptr ? value->place : fields.place());
    }
    return depth.has_value();
}

} // namespace

std::optional<OpeningDraft> read_narrow_opening(Reading& reading, const Node& node)
{
    Fields fields(reading, node, "an opening", opening_fields);
    if (!fields.is_map()) {
        return std::nullopt;
    }
    const bool round = fields.given("diameter"), square = fields.given("length") || fields.given("width");
    if (round && square) {
        fields.refuse(fields.given("length") ? "length" : "width", "an opening is round or rectangular, not both",
                      "give either a diameter, or a length and a width");
        return std::nullopt;
    }
    OpeningDraft draft{{square ? ShapeKind::box : ShapeKind::cylinder, {}, {}, std::nullopt, node.place, {}}};
    bool whole = add_size(reading, fields, square ? "length" : "diameter", draft.shape);
    if (square) {
        whole = add_size(reading, fields, "width", draft.shape) && whole;
    }
    whole = add_depth(reading, fields, draft.shape) && whole;
    return whole ? std::optional(draft) : std::nullopt;
}

bool check_narrower(Reading& reading, const OpeningDraft& opening, const SizedShape& cavity)
{
    const auto& narrow = opening.shape.sizes;
    const auto& wide = cavity.sizes;
    const bool round = opening.shape.kind == ShapeKind::cylinder;
    bool within = false, all_the_same = false;
    if (cavity.kind == ShapeKind::cylinder) {
        const Length across =
            round ? narrow[0]
                  : Length::of_nanometres(diagonal_up(narrow[0].nanometres_down(), narrow[1].nanometres_down()));
        within = across <= wide[0];
        all_the_same = round && across == wide[0];
    } else {
        const Length length = narrow[0], width = round ? narrow[0] : narrow[1];
        within = length <= wide[0] && width <= wide[1];
        all_the_same = !round && length == wide[0] && width == wide[1];
    }
    if (within && !all_the_same) {
        return true;
    }
    reading.problems.add(opening.shape.places[0],
                         within ? "the opening is as wide as the cavity" : "the opening is wider than the cavity",
                         "delete 'opening' where nothing is narrower than the inside, or measure both again");
    return false;
}

} // namespace tuckwright::reading
