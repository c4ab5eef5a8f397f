// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/cavity_reading.hpp"

#include <array>

#include "kit/opening_reading.hpp"
#include "kit/words.hpp"

namespace tuckwright::reading
{

namespace
{

constexpr std::array<std::string_view, 7> cavity_keys{"cylinder", "box", "wall", "base", "opens", "lid", "opening"};
constexpr KnownFields cavity_fields{cavity_keys, "inside: {wall: 0.8, base: 1}"};
constexpr std::array<std::string_view, 2> opening_words{"top", "both"};
constexpr std::array<std::string_view, 1> lid_words{"own"};

/// How the cavity opens: `opens`, unless the vessel's own lid shuts it; open at the top where neither is said.
std::optional<Opening> read_opening(Reading& reading, Fields& fields)
{
    const auto word = [&](std::string_view key, std::span<const std::string_view> known) -> std::optional<std::size_t> {
        const Node* value = fields.find(key);
        return value != nullptr ? read_word(reading, *value, std::string(key), known) : std::nullopt;
    };
    const auto lid = word("lid", lid_words);
    const auto opens = word("opens", opening_words);
    if (fields.given("lid") != lid.has_value() || fields.given("opens") != opens.has_value()) {
        return std::nullopt;
    }
    const bool both = opens == std::optional<std::size_t>(1);
    if (lid && both) {
        fields.refuse("lid", "a sleeve, open at both ends, has no lid of its own",
                      "delete 'lid', or write 'opens: top'");
        return std::nullopt;
    }
    return lid ? Opening::closed : both ? Opening::both : Opening::top;
}

/// What the file says about the inner dimensions, before it is known whether they fit.
struct Inner {
    SizedShape shape;
    Opening opens = Opening::top;
};

/// `opens` is missing here and below where it is faulty: then nothing is asked that depends on it.
std::optional<Inner> inner_from_shape(Reading& reading, const Node& node, ShapeKind kind, std::optional<Opening> opens,
                                      const std::optional<SizedShape>& outside)
{
    const bool is_vessel = opens && opens != Opening::both;
    auto shape = read_shape(reading, node, kind, is_vessel ? Height::needed : Height::optional);
    if (!shape || !outside || !opens) {
        return std::nullopt;
    }
    if (shape->sizes.size() < dimensions_of(kind).size()) {
        shape->sizes.push_back(outside->height());
        shape->places.push_back(shape->place);
        shape->offs.push_back(outside->offs.back());
    }
    return Inner{*shape, *opens};
}

struct Thickness {
    Length value, off;
    Place place;
};

std::optional<Thickness> read_thickness(Reading& reading, Fields& fields, const std::string& key, bool needed)
{
    const Node* value =
        needed ? fields.need(key, "give the thickness of the " + key + ", or inner dimensions") : fields.find(key);
    const auto length = value != nullptr ? read_measured(reading, *value, key, AtLeast::micrometre, Length{0}) : std::nullopt;
    return length ? std::optional(Thickness{length->size, length->off, value->place}) : std::nullopt;
}

/// Takes `times` a thickness from one size; reports where nothing is left.
bool shrink(Reading& reading, SizedShape& shape, std::size_t size, int times, const std::string& key,
            const Thickness& by)
{
    const Length whole = shape.sizes[size];
    shape.sizes[size] = whole - times * by.value;
    shape.offs[size] = shape.offs[size] + times * by.off;
    if (shape.sizes[size] >= Length::of_nanometres(1000)) {
        return true;
    }
    reading.problems.add(by.place,
                         key + " is " + to_string(by.value) + ", which leaves no room in a " +
                             std::string(dimensions_of(shape.kind)[size]) + " of " + to_string(whole),
                         "measure the thickness again");
    return false;
}

/// Diameter of a tapering outside at a height above its bottom, rounded down to the grid.
Length foot_above(const SizedShape& outside, Length height)
{
    const Wide wider = outside.sizes.front().nanometres_down() - outside.foot->nanometres_up();
    const Wide more = wider * height.nanometres_down() / outside.height().nanometres_up();
    return Length::of_nanometres(outside.foot->nanometres_down() + static_cast<std::int64_t>(more));
}

std::optional<Inner> inner_from_wall(Reading& reading, Fields& fields, std::optional<Opening> opens,
                                     const std::optional<SizedShape>& outside,
                                     const std::optional<OpeningDraft>& narrow)
{
    const auto wall = read_thickness(reading, fields, "wall", true);
    const auto base = read_thickness(reading, fields, "base", opens && opens != Opening::both);
    if (opens == Opening::both) {
        fields.refuse("base", "what is open at both ends has no base", "delete 'base', or write 'opens: top'");
    }
    if (!wall || !outside || !opens || (opens == Opening::both ? fields.given("base") : !base)) {
        return std::nullopt;
    }
    SizedShape inner = *outside;
    inner.foot.reset();
    const std::size_t height = inner.sizes.size() - 1;
    bool room = true;
    for (std::size_t i = 0; i < height && room; ++i) { // one problem for a wall too thick is enough
        room = shrink(reading, inner, i, 2, "wall", *wall);
    }
    if (base) { // a vessel's own lid is as thick as its base
        room = shrink(reading, inner, height, opens == Opening::closed ? 2 : 1, "base", *base) && room;
    }
    if (narrow) { // the cavity ends where the neck begins
        room = shrink(reading, inner, height, 1, "depth", {narrow->shape.height(), {}, narrow->shape.places.back()}) && room;
    }
    if (room && outside->foot && base) {
        inner.foot = foot_above(*outside, base->value) - 2 * wall->value;
        if (*inner.foot < Length::of_nanometres(1000)) {
            reading.problems.add(wall->place, "wall is " + to_string(wall->value) + ", which leaves no room at the foot",
                                 "measure the thickness again");
            return std::nullopt;
        }
    }
    return room ? std::optional(Inner{inner, *opens}) : std::nullopt;
}

std::optional<Inner> read_inner(Reading& reading, Fields& fields, std::optional<Opening> opens,
                                const std::optional<SizedShape>& outside, const std::optional<OpeningDraft>& narrow)
{
    const bool round = fields.given("cylinder"), square = fields.given("box");
    const bool by_wall = fields.given("wall") || fields.given("base");
    if (round && square) {
        fields.refuse("box", "a cavity is a cylinder or a box, not both", "keep one of the two");
    }
    if ((round || square) && by_wall) {
        fields.refuse(fields.given("wall") ? "wall" : "base", "wall or base is given besides inner dimensions",
                      "give either wall and base, or inner dimensions");
    }
    if (!round && !square && !by_wall) {
        reading.problems.add(fields.place(), "inside has no dimensions", "give a cylinder, a box, or wall and base");
        return std::nullopt;
    }
    if (!round && !square) {
        return inner_from_wall(reading, fields, opens, outside, narrow);
    }
    std::optional<Inner> inner;
    for (const ShapeKind kind : {ShapeKind::cylinder, ShapeKind::box}) {
        if (const Node* node = fields.find(word_of(kind))) {
            inner = inner_from_shape(reading, *node, kind, opens, outside);
        }
    }
    return (round && square) || by_wall ? std::nullopt : inner;
}

/// Checks one inner size against one outer size; the inner must be smaller.
struct SizeCheck {
    Reading& reading;
    bool sound = true;

    void smaller(Length inner, const std::string& inner_name, Length outer, const std::string& outer_name, Place place)
    {
        if (inner >= outer) {
            sound = false;
            reading.problems.add(place,
                                 "inner " + inner_name + " " + to_string(inner) + " is not smaller than outer " +
                                     outer_name + " " + to_string(outer),
                                 "measure both again; the wall lies between them");
        }
    }
};

std::string size_name(const SizedShape& shape, std::size_t size)
{
    return std::string(dimensions_of(shape.kind)[size]);
}

void check_plan(SizeCheck& check, const SizedShape& inner, const SizedShape& outer)
{
    if (inner.kind == outer.kind) {
        for (std::size_t i = 0; i + 1 < inner.sizes.size(); ++i) {
            check.smaller(inner.sizes[i], size_name(inner, i), outer.sizes[i], size_name(outer, i), inner.places[i]);
        }
    } else if (inner.kind == ShapeKind::box) {
        const auto diagonal =
            Length::of_nanometres(diagonal_up(inner.sizes[0].nanometres_down(), inner.sizes[1].nanometres_down()));
        check.smaller(diagonal, "diagonal", outer.sizes[0], size_name(outer, 0), inner.places[0]);
    } else {
        check.smaller(inner.sizes[0], "diameter", outer.sizes[0], size_name(outer, 0), inner.places[0]);
        check.smaller(inner.sizes[0], "diameter", outer.sizes[1], size_name(outer, 1), inner.places[0]);
    }
}

void check_height(SizeCheck& check, const Inner& inner, const SizedShape& outer,
                  const std::optional<OpeningDraft>& narrow)
{
    const Length inside = inner.shape.height();
    if (narrow) {
        check.smaller(inside + narrow->shape.height(), "height with the opening's depth,", outer.height(), "height",
                      inner.shape.places.back());
    } else if (inner.opens != Opening::both) {
        check.smaller(inside, "height", outer.height(), "height", inner.shape.places.back());
    } else if (inside != outer.height()) {
        check.sound = false;
        check.reading.problems.add(inner.shape.places.back(),
                                   "inner height " + to_string(inside) + " differs from outer height " +
                                       to_string(outer.height()) + ", though both ends are open",
                                   "delete the inner height");
    }
}

/// A tapering outside leaves less room at the foot; a sleeve has no foot to taper to.
void check_taper(SizeCheck& check, const Inner& inner, const SizedShape& outer, bool has_neck)
{
    const bool tapers = inner.shape.foot || outer.foot;
    if (tapers && (inner.opens == Opening::both || has_neck)) {
        check.sound = false;
        check.reading.problems.add(inner.shape.place,
                                   has_neck ? "what has a narrow opening cannot taper"
                                            : "what is open at both ends cannot taper",
                                   "delete 'foot', and give the narrowest inner and the widest outer diameter");
    } else if (outer.foot && check.sound) {
        const Length narrow = inner.shape.foot ? *inner.shape.foot : inner.shape.sizes.front();
        const Length floor = outer.height() - inner.shape.height();
        check.smaller(narrow, "diameter at the foot", foot_above(outer, floor), "diameter there", inner.shape.place);
    }
}

/// Whether anything is left of a cavity whose dimensions are as small as they may be.
void check_room(SizeCheck& check, const SizedShape& inner)
{
    for (std::size_t i = 0; i < inner.sizes.size() && check.sound; ++i) {
        if (inner.offs[i] >= inner.sizes[i]) {
            check.sound = false;
            check.reading.problems.add(inner.places[i],
                                       "inner " + size_name(inner, i) + " " + to_string(inner.sizes[i]) +
                                           " may be off by " + to_string(inner.offs[i]) + ", which leaves nothing",
                                       "measure again, and give smaller tolerances");
        }
    }
}

Cavity cavity_of(const Inner& inner, const SizedShape& outer, const std::optional<OpeningDraft>& narrow)
{
    Cavity cavity{inner.shape.rounded_down(), inner.opens, 0,
                  narrow ? std::optional(narrow->shape.rounded_down()) : std::nullopt, inner.shape.spread()};
    // On the grid, from rounded sizes, so that the cavity's top is the item's top, or stays below it under its own lid.
    const std::int64_t neck = narrow ? narrow->shape.height().nanometres_down() : 0;
    const std::int64_t above = outer.height().nanometres_up() - inner.shape.height().nanometres_down() - neck;
    if (inner.opens == Opening::top) {
        cavity.floor = Length::of_nanometres(above).mm_down();
    } else if (inner.opens == Opening::closed) {
        cavity.floor = Length::of_nanometres(above / 2).mm_down();
    } else {
        std::visit([&](auto& shape) { shape.height = outer.height().mm_up(); }, cavity.shape);
    }
    return cavity;
}

} // namespace

std::optional<Cavity> read_cavity(Reading& reading, const Node& node, const std::optional<SizedShape>& outside)
{
    Fields fields(reading, node, "inside", cavity_fields);
    if (!fields.is_map()) {
        return std::nullopt;
    }
    const auto opens = read_opening(reading, fields);
    const Node* narrow_node = fields.find("opening");
    const auto narrow = narrow_node != nullptr ? read_narrow_opening(reading, *narrow_node) : std::nullopt;
    if (fields.given("opening") && opens == Opening::both) {
        fields.refuse("opening", "a sleeve, open at both ends, has no narrow opening",
                      "delete 'opening', or write 'opens: top'");
        return std::nullopt;
    }
    const auto inner = read_inner(reading, fields, opens, outside, narrow);
    if (!opens || !inner || (fields.given("opening") && !narrow)) {
        return std::nullopt;
    }
    SizeCheck check{reading};
    check_plan(check, inner->shape, *outside);
    check_height(check, *inner, *outside, narrow);
    check_taper(check, *inner, *outside, narrow.has_value());
    if (check.sound) {
        check_room(check, inner->shape);
    }
    const bool is_narrower = !narrow || check_narrower(reading, *narrow, inner->shape);
    return check.sound && is_narrower ? std::optional(cavity_of(*inner, *outside, narrow)) : std::nullopt;
}

} // namespace tuckwright::reading
