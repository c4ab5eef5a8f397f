// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/rule_reading.hpp"

#include <algorithm>
#include <array>

#include "kit/sized_shape.hpp"
#include "kit/words.hpp"

namespace tuckwright::reading
{

namespace
{

constexpr std::array<std::string_view, 3> unit_keys{"length", "weight", "volume"};
constexpr std::array<std::string_view, 6> bundle_keys{"shape", "limits", "diameter", "length", "width", "height"};
constexpr std::array<std::string_view, 4> limit_keys{"diameter", "length", "width", "height"};
constexpr KnownFields unit_fields{unit_keys, "units: {length: cm, weight: oz}"};
constexpr std::array<std::string_view, 5> sack_keys{"volume", "litres", "liters", "girth", "bag"};
constexpr KnownFields bundle_fields{bundle_keys,
                                    "bundle: {shape: box}' or, with limits, "
                                    "'bundle: {shape: box, length: 240, width: 120, height: 100}",
                                    {},
                                    sack_keys,
                                    "limits are lengths; a soft sack is an item with its girth and length, measured on it: "
                                    "'- {id: sack, weight: 40, bag: {girth: 560, length: 300, thickness: 1}}'"};
constexpr KnownFields limit_fields{limit_keys, "limits: {height: 100}"};
constexpr std::array<std::string_view, 2> shape_words{"cylinder", "box"};

constexpr std::int64_t widest_clearance_nm = 50'000'000;

void read_unit(Reading& reading, const Fields& fields, std::string_view key, Measure measure, Unit& unit)
{
    const Node* node = fields.find(key);
    const auto word = node != nullptr ? read_text(reading, *node, std::string(key)) : std::nullopt;
    if (!word) {
        return;
    }
    const Result<Unit> known = parse_unit(*word, measure);
    if (known) {
        unit = *known;
    } else {
        reading.problems.add(node->place, std::string(key) + ": " + known.problems().front().what,
                             known.problems().front().remedy);
    }
}

std::optional<double>& limit_of(BundleRule& rule, std::string_view name)
{
    return name == "diameter" ? rule.diameter
           : name == "length" ? rule.length
           : name == "width"  ? rule.width
                              : rule.height;
}

/// Reads the limits among the fields into the rule. The kind is missing where the shape is faulty.
void read_limits(Reading& reading, Fields& fields, std::optional<ShapeKind> kind, BundleRule& rule)
{
    for (const std::string_view name : limit_keys) {
        const Node* node = fields.find(name);
        if (node == nullptr) {
            continue;
        }
        if (kind) {
            const auto own = dimensions_of(*kind);
            if (std::find(own.begin(), own.end(), name) == own.end()) {
                fields.refuse(name,
                              "a bundle that is a " + std::string(word_of(*kind)) + " has no " + std::string(name),
                              "limit its " + listed(own, "or") + ", or change 'shape'");
                continue;
            }
        }
        const auto length = read_length(reading, *node, std::string(name), AtLeast::micrometre);
        if (limit_of(rule, name)) {
            fields.refuse(name, in_quotes(name) + " is limited twice", "keep one of the two");
        } else if (length) {
            limit_of(rule, name) = length->mm_down();
        }
    }
}

} // namespace

Units read_units(Reading& reading, const Node& node)
{
    const Fields fields(reading, node, "units", unit_fields);
    Units units;
    read_unit(reading, fields, "length", Measure::length, units.length);
    read_unit(reading, fields, "weight", Measure::weight, units.weight);
    read_unit(reading, fields, "volume", Measure::volume, units.volume);
    return units;
}

double read_clearance(Reading& reading, const Node& node)
{
    const auto length = read_length(reading, node, "clearance", AtLeast::zero);
    if (!length) {
        return 0;
    }
    if (*length > Length::of_nanometres(widest_clearance_nm)) {
        reading.problems.add(node.place, "clearance is " + to_string(*length) + ", but may be at most 50 mm",
                             "give the air on each side of an item, such as 0.5 mm");
        return 0;
    }
    return length->mm_up();
}

BundleRule read_bundle_rule(Reading& reading, const Node& node)
{
    Fields fields(reading, node, "bundle", bundle_fields);
    BundleRule rule;
    std::optional<ShapeKind> kind = ShapeKind::cylinder;
    if (const Node* shape = fields.find("shape")) {
        const auto word = read_word(reading, *shape, "shape", shape_words);
        kind = word ? std::optional(*word == 0 ? ShapeKind::cylinder : ShapeKind::box) : std::nullopt;
    } else if (fields.given("shape")) {
        kind.reset();
    }
    rule.shape = kind == ShapeKind::box ? BundleShape::box : BundleShape::cylinder;
    read_limits(reading, fields, kind, rule);
    if (const Node* limits = fields.find("limits")) {
        Fields inner(reading, *limits, "limits", limit_fields);
        read_limits(reading, inner, kind, rule);
    }
    return rule;
}

} // namespace tuckwright::reading
