// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/form_reading.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <variant>

#include "kit/cavity_reading.hpp"
#include "kit/words.hpp"
#include "tuckwright/units.hpp"

namespace tuckwright::reading
{

namespace
{

constexpr std::array<std::string_view, 5> part_keys{"cylinder", "box", "at", "up", "axis"};
constexpr std::array<std::string_view, 1> needed_of_part{"at"};
constexpr KnownFields part_fields{part_keys, "- {box: {length: 30, width: 12, height: 60}, at: right, up: 15}",
                                  needed_of_part};
constexpr std::array<std::string_view, 6> side_words{"top", "under", "right", "left", "back", "front"};
constexpr std::array<std::string_view, 3> axis_words{"x", "y", "z"};
constexpr std::array<std::string_view, 6> sheet_keys{"length", "width", "thickness", "roll", "folds", "springy"};
constexpr std::array<std::string_view, 3> needed_of_sheet{"length", "width", "thickness"};
constexpr KnownFields sheet_fields{sheet_keys, "sheet: {length: 500, width: 140, thickness: 0.3, roll: 60}",
                                   needed_of_sheet};
constexpr std::array<std::string_view, 2> cloth_keys{"volume", "thickness"};
constexpr KnownFields cloth_fields{cloth_keys, "cloth: {volume: 300 ml, thickness: 8}", cloth_keys};
constexpr std::array<std::string_view, 3> pouch_keys{"girth", "length", "thickness"};
constexpr KnownFields pouch_fields{pouch_keys, "pouch: {girth: 300, length: 120, thickness: 1}", pouch_keys};
constexpr std::array<std::string_view, 6> form_keys{"name", "how", "cylinder", "box", "inside", "parts"};
constexpr std::array<std::string_view, 1> needed_of_form{"name"};
constexpr KnownFields form_fields{form_keys, "- {name: handle folded in, how: fold the handle in, parts: []}",
                                  needed_of_form};
constexpr std::size_t most_parts = 12, most_forms = 12;

/// Half extents of a part along the item's axes.
Vec3 half_extents(const Shape& shape, Axis axis)
{
    if (const auto* c = std::get_if<Cylinder>(&shape)) {
        const double r = c->diameter / 2, h = c->height / 2;
        return {axis == Axis::x ? h : r, axis == Axis::y ? h : r, axis == Axis::z ? h : r};
    }
    const auto& b = std::get<Box>(shape);
    return {b.length / 2, b.width / 2, b.height / 2};
}

/// The middle of a part that touches a side of the item from outside, `up` mm above the bottom.
Vec3 beside(std::size_t side, const Vec3& part, const Shape& outside, double up)
{
    const Vec3 item = half_extents(outside, Axis::z);
    const double height = up + part.z;
    switch (side) {
    case 0: return {0, 0, 2 * item.z + part.z};
    case 1: return {0, 0, -part.z};
    case 2: return {item.x + part.x, 0, height};
    case 3: return {-item.x - part.x, 0, height};
    case 4: return {0, item.y + part.y, height};
    default: return {0, -item.y - part.y, height};
    }
}

/// Three lengths in brackets, which may be below zero.
std::optional<Vec3> read_point(Reading& reading, const Node& node)
{
    const std::string remedy = "write the middle of the part as [x, y, z] in mm, from the middle of the item's bottom";
    if (node.items.size() != 3) {
        reading.problems.add(node.place, "at holds " + std::to_string(node.items.size()) + " numbers", remedy);
        return std::nullopt;
    }
    std::array<double, 3> mm{};
    bool sound = true;
    for (std::size_t k = 0; k < 3; ++k) {
        const auto length = read_length(reading, node.items[k], "at", AtLeast::negative);
        sound = sound && length;
        mm[k] = length ? snap(length->mm_down()) : 0;
    }
    return sound ? std::optional(Vec3{mm[0], mm[1], mm[2]}) : std::nullopt;
}

/// Where a part is; reports `up` where the place is told otherwise.
std::optional<Vec3> read_at(Reading& reading, Fields& fields, const Shape& shape, Axis axis,
                            const std::optional<SizedShape>& outside)
{
    const Node* up_node = fields.find("up");
    const auto up = up_node != nullptr ? read_length(reading, *up_node, "up", AtLeast::zero) : std::nullopt;
    const Node* at = fields.need("at", "say where it is: right, left, back, front, top, under, or [x, y, z]");
    if (at == nullptr) {
        return std::nullopt;
    }
    if (at->kind == NodeKind::list) {
        if (fields.given("up")) {
            fields.refuse("up", "the height is given twice", "delete 'up', for [x, y, z] tells it already");
        }
        return read_point(reading, *at);
    }
    const auto side = read_word(reading, *at, "at", side_words);
    if (side && *side < 2 && fields.given("up")) {
        fields.refuse("up", "what is " + std::string(side_words[*side]) + " has its height from that",
                      "delete 'up', or write [x, y, z]");
    }
    if (!side || !outside) {
        return std::nullopt;
    }
    return beside(*side, half_extents(shape, axis), outside->rounded_up(), up ? up->mm_up() : 0);
}

std::optional<Part> read_part(Reading& reading, const Node& node, const std::optional<SizedShape>& outside)
{
    Fields fields(reading, node, "a part", part_fields);
    const auto shape = read_plain_outside(reading, fields);
    Part part;
    if (const Node* axis = fields.find("axis")) {
        const auto word = read_word(reading, *axis, "axis", axis_words);
        part.axis = word ? static_cast<Axis>(*word) : Axis::z;
        if (shape && shape->kind == ShapeKind::box) {
            fields.refuse("axis", "a box has its sides along the item's", "delete 'axis', and give the sides as they lie");
        }
    }
    part.shape = shape ? shape->rounded_up() : Shape{Cylinder{1, 1}};
    const auto at = read_at(reading, fields, part.shape, part.axis, outside);
    if (!shape || !at) {
        return std::nullopt;
    }
    part.at = *at;
    part.off = shape->spread();
    return part;
}

/// Whether a value is a list of at most so many entries; reports it if not.
bool is_short_list(Reading& reading, const Node& node, const std::string& key, std::size_t most, const char* remedy)
{
    if (node.kind != NodeKind::list) {
        reading.problems.add(node.place, key + " is " + kind_name(node) + ", not a list", remedy);
        return false;
    }
    if (node.items.size() > most) {
        reading.problems.add(node.place,
                             key + " holds " + std::to_string(node.items.size()) + " entries, but may hold at most " +
                                 std::to_string(most),
                             "leave some out");
        return false;
    }
    return true;
}

} // namespace

std::optional<SizedShape> read_plain_outside(Reading& reading, Fields& fields)
{
    const bool round = fields.given("cylinder"), square = fields.given("box");
    if (round && square) {
        fields.refuse("box", fields.subject() + " is a cylinder or a box, not both", "keep one of the two");
    }
    if (!round && !square && fields.is_map()) {
        reading.problems.add(fields.place(), fields.subject() + " has no size", "give a cylinder or a box");
    }
    std::optional<SizedShape> outside;
    for (const ShapeKind kind : {ShapeKind::cylinder, ShapeKind::box}) {
        if (const Node* node = fields.find(word_of(kind))) {
            outside = read_shape(reading, *node, kind);
        }
    }
    return round && square ? std::nullopt : outside;
}

std::vector<Part> read_parts(Reading& reading, const Node& node, const std::optional<SizedShape>& outside)
{
    std::vector<Part> parts;
    if (!is_short_list(reading, node, "parts", most_parts, "start each part with '- {box: ..., at: right}'")) {
        return parts;
    }
    for (const Node& entry : node.items) {
        if (const auto part = read_part(reading, entry, outside)) {
            parts.push_back(*part);
        }
    }
    return parts;
}

std::optional<Sheet> read_sheet(Reading& reading, const Node& node)
{
    Fields fields(reading, node, "a sheet", sheet_fields);
    const auto size = [&](std::string_view key, bool needed) {
        const Node* value = needed ? fields.need(key, "a sheet has a length, a width and a thickness") : fields.find(key);
        const auto length =
            value != nullptr ? read_length(reading, *value, std::string(key), AtLeast::micrometre) : std::nullopt;
        return length ? std::optional(length->mm_up()) : std::nullopt;
    };
    const auto is_so = [&](std::string_view key) {
        const Node* value = fields.find(key);
        return value != nullptr && read_yes_or_no(reading, *value, std::string(key)).value_or(false);
    };
    const auto length = size("length", true), width = size("width", true), thickness = size("thickness", true);
    Sheet sheet{length.value_or(1), width.value_or(1), thickness.value_or(1), size("roll", false), is_so("folds"),
                is_so("springy")};
    return length && width && thickness ? std::optional(sheet) : std::nullopt;
}

std::optional<Cloth> read_cloth(Reading& reading, const Node& node)
{
    Fields fields(reading, node, "a cloth", cloth_fields);
    const std::string remedy = "press it together as you would pack it, and measure its volume and how thin it can lie";
    const Node* volume = fields.need("volume", remedy);
    const auto ml = volume != nullptr ? read_volume(reading, *volume, "volume") : std::nullopt;
    const Node* thickness = fields.need("thickness", remedy);
    const auto thin =
        thickness != nullptr ? read_length(reading, *thickness, "thickness", AtLeast::micrometre) : std::nullopt;
    if (!ml || !thin) {
        return std::nullopt;
    }
    const Cloth cloth{*ml, thin->mm_up()};
    if (cloth.thickness > std::cbrt(cloth.volume_ml * 1000)) {
        reading.problems.add(thickness->place, "that thickness leaves no box of that volume",
                             "no side can be less than the thickness: measure both again");
        return std::nullopt;
    }
    return cloth;
}

std::optional<Pouch> read_pouch(Reading& reading, const Node& node)
{
    Fields fields(reading, node, "a pouch", pouch_fields);
    const auto size = [&](const std::string& key, const std::string& remedy) {
        const Node* value = fields.need(key, remedy);
        return value != nullptr ? read_length(reading, *value, key, AtLeast::micrometre) : std::nullopt;
    };
    const auto girth = size("girth", "measure round its inside, such as 'girth: 300': laid flat, twice its width");
    const auto length = size("length", "measure inside from its bottom to where it is drawn shut");
    const auto thickness = size("thickness", "say how thick its wall is, such as 'thickness: 1'");
    if (!girth || !length || !thickness) {
        return std::nullopt;
    }
    const Pouch pouch{girth->mm_down(), length->mm_down(), thickness->mm_up()};
    // Walls thicker than that would make a stiff box, or are mistyped.
    constexpr double least_turns = 8;
    if (least_turns * pouch.thickness > pouch.girth || 2 * pouch.thickness > pouch.length) {
        reading.problems.add(
            fields.entry("thickness")->place, "a wall so thick leaves hardly any pouch",
            "measure the wall, girth and length again; a stiff cover is a box or cylinder with an 'inside'");
        return std::nullopt;
    }
    return pouch;
}

Shape flat(const Sheet& sheet) { return Box{sheet.length, sheet.width, sheet.thickness}; }

Shape flat(const Pouch& pouch)
{
    const double side = snap_up(pouch.girth / 2);
    return Box{std::max(side, pouch.length), std::min(side, pouch.length), 2 * pouch.thickness};
}

Shape first_pad(const Cloth& cloth)
{
    // About three times as wide as high: what people make of it if nothing else is asked.
    const double height = snap_up(std::max(cloth.thickness, std::cbrt(cloth.volume_ml * 1000 / 9)));
    const double side = snap_up(std::sqrt(cloth.volume_ml * 1000 / height) * (1 + 1e-12));
    return Box{side, side, height};
}

std::vector<Stowage> read_forms(Reading& reading, const Node& node, const Item& item,
                                const std::optional<SizedShape>& outside)
{
    std::vector<Stowage> forms;
    if (!is_short_list(reading, node, "forms", most_forms, "start each form with '- name:'")) {
        return forms;
    }
    for (const Node& entry : node.items) {
        Fields fields(reading, entry, "a form", form_fields);
        Stowage form{"", "", item.outside, item.parts, item.inside, false, item.outside_off};
        if (const Node* name = fields.need("name", "name the form, such as 'name: handles folded in'")) {
            form.name = read_text(reading, *name, "name").value_or("");
        }
        if (const Node* how = fields.find("how")) {
            form.how = read_text(reading, *how, "how").value_or("");
        }
        const bool own = fields.given("cylinder") || fields.given("box");
        const auto size = own ? read_plain_outside(reading, fields) : outside;
        if (own && size) {
            form.outside = size->rounded_up();
            form.outside_off = size->spread();
            form.inside.reset(); // an inside belongs to its outside
            form.parts.clear();
        }
        if (const Node* inside = fields.find("inside")) {
            form.inside = read_cavity(reading, *inside, size);
        }
        if (const Node* parts = fields.find("parts")) {
            form.parts = read_parts(reading, *parts, size);
        }
        const auto is_called_so = [&](const Stowage& other) { return other.name == form.name; };
        if (!form.name.empty() && std::any_of(forms.begin(), forms.end(), is_called_so)) {
            reading.problems.add(fields.entry("name")->place, "two forms are called " + in_quotes(form.name),
                                 "give each form of a thing a name of its own");
        }
        forms.push_back(std::move(form));
    }
    return forms;
}

} // namespace tuckwright::reading
