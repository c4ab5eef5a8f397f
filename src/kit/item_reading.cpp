// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/item_reading.hpp"

#include <algorithm>
#include <array>

#include "kit/cavity_reading.hpp"
#include "kit/cover_reading.hpp"
#include "kit/form_reading.hpp"
#include "kit/handling_reading.hpp"
#include "kit/kinds.hpp"
#include "kit/press_reading.hpp"
#include "kit/words.hpp"

namespace tuckwright::reading
{

namespace
{

constexpr std::array<std::string_view, 28> item_keys{
    "id",     "name",       "count",         "weight",         "cylinder", "box",   "sheet",     "cloth",
    "inside", "closes",     "contents",      "upright",        "parts",    "forms", "kind",      "goes-in",
    "not-in", "apart-from", "together-with", "nothing-on-top", "bears",    "reach", "press-fit", "bag",
    "band",   "pouch",      "priority",      "must-have"};
constexpr std::array<std::string_view, 2> needed_of_item{"id", "weight"};
constexpr std::array<std::string_view, 9> keys_of_kit{"clearance", "bundle",     "units", "waive", "way-back",
                                                      "tolerance", "worst-case", "trip",  "shelf"};
constexpr KnownFields item_fields{item_keys, "- {id: tin, weight: 40 g, cylinder: {diameter: 60, height: 34}}",
                                  needed_of_item, keys_of_kit,
                                  "it is for the kit as a whole: put it at the top of the file"};
constexpr std::array<std::string_view, 4> closes_keys{"item", "adds", "intrudes", "shut"};
constexpr std::array<std::string_view, 3> needed_of_closes{"item", "adds", "intrudes"};
constexpr KnownFields closes_fields{closes_keys, "closes: {item: pot, adds: 2, intrudes: 5}", needed_of_closes};
constexpr std::array<std::string_view, 3> contents_keys{"what", "amount", "fills"};
constexpr std::array<std::string_view, 2> needed_of_contents{"what", "amount"};
constexpr KnownFields contents_fields{contents_keys, "contents: {what: sugar, amount: 30 g}", needed_of_contents};

/// How problems call the item: by its id, where it has a sound one.
std::string subject_of(const Node& node)
{
    for (const Entry& entry : node.entries) {
        if (entry.key == "id" && entry.value.kind == NodeKind::text && is_id(entry.value.text)) {
            return "item " + in_quotes(entry.value.text);
        }
    }
    return "an item";
}

void read_id(Reading& reading, Fields& fields, ItemDraft& draft)
{
    const Node* node = fields.need("id", "give it a short name of its own, such as 'id: pot'");
    const auto text = node != nullptr ? read_text(reading, *node, "id") : std::nullopt;
    if (!text) {
        return;
    }
    if (!std::all_of(text->begin(), text->end(), is_id_letter)) {
        reading.problems.add(node->place, "id is " + in_quotes(*text), "use only letters a to z, digits, '-' and '_'");
        return;
    }
    if (text->size() > longest_id) {
        reading.problems.add(node->place, "id " + in_quotes(*text) + " is longer than 64 letters", "shorten it");
        return;
    }
    draft.item.id = *text;
    draft.id_place = node->place;
}

void read_outside(Reading& reading, Fields& fields, ItemDraft& draft)
{
    const bool round = fields.given("cylinder"), square = fields.given("box");
    const bool soft = fields.given("sheet") || fields.given("cloth") || fields.given("pouch");
    if (round && square) {
        fields.refuse("box", "an item is a cylinder or a box, not both", "keep one of the two");
    }
    if (!round && !square && !soft && fields.is_map()) {
        reading.problems.add(fields.place(), fields.subject() + " has no outside",
                             "give a cylinder, a box, a sheet, a cloth or a pouch");
    }
    for (const ShapeKind kind : {ShapeKind::cylinder, ShapeKind::box}) {
        if (const Node* node = fields.find(word_of(kind))) {
            draft.outside = read_shape(reading, *node, kind);
        }
    }
    if ((round && square) || soft) {
        draft.outside.reset();
    }
    if (draft.outside) {
        draft.item.outside = draft.outside->rounded_up();
        draft.item.outside_off = draft.outside->spread();
    }
}

/// A depth of a lid. The usual tolerance is no larger than the depth itself: what is nought stays nought.
void read_depth(Reading& reading, const Node& node, const std::string& subject, std::optional<Length>& depth,
                Length& off)
{
    if (const auto read = read_measured(reading, node, subject, AtLeast::zero, Length{0})) {
        const bool own = node.kind == NodeKind::text && take_tolerance_off(node.text).off.has_value();
        depth = read->size;
        off = own ? read->off : std::min(reading.usual_tolerance, read->size);
    }
}

/// What has no shape of its own: a sheet, a cloth or a pouch, without whatever only a rigid thing has.
void read_soft(Reading& reading, Fields& fields, ItemDraft& draft)
{
    const std::string key = fields.given("sheet") ? "sheet" : fields.given("cloth") ? "cloth" : "pouch";
    for (const std::string_view other : {"cylinder", "box", "cloth", "pouch", "inside", "closes", "contents", "parts",
                                         "forms", "press-fit"}) {
        if (fields.given(other) && other != key) {
            const bool goods = other == "contents";
            fields.refuse(other, "a " + key + " has no '" + std::string(other) + "'",
                          !goods           ? "keep one of the two"
                          : key == "pouch" ? "list what it holds as things of their own that go in it"
                                           : "add what it holds to its 'weight'");
        }
    }
    if (const Node* node = fields.find("sheet")) {
        draft.item.sheet = read_sheet(reading, *node);
        draft.item.outside = draft.item.sheet ? flat(*draft.item.sheet) : draft.item.outside;
    } else if (const Node* cloth = fields.find("cloth")) {
        draft.item.cloth = read_cloth(reading, *cloth);
        draft.item.outside = draft.item.cloth ? first_pad(*draft.item.cloth) : draft.item.outside;
    } else if (const Node* pouch = fields.find("pouch")) {
        draft.inside_place = fields.entry("pouch")->place;
        draft.is_pouch = true;
        draft.item.pouch = read_pouch(reading, *pouch);
        draft.item.outside = draft.item.pouch ? flat(*draft.item.pouch) : draft.item.outside;
    }
}

void read_closes(Reading& reading, Fields& item, ItemDraft& draft)
{
    const Node* node = item.find("closes");
    if (node == nullptr) {
        return;
    }
    Fields fields(reading, *node, "closes", closes_fields);
    ClosesDraft closes;
    closes.place = item.entry("closes")->place;
    if (const Node* vessel = fields.need("item", "name the id of the item that this lid closes")) {
        closes.vessel = read_text(reading, *vessel, "item");
        closes.vessel_place = vessel->place;
    }
    if (const Node* adds =
            fields.need("adds", "say how much of the shut lid stands above the rim, such as 'adds: 3'")) {
        read_depth(reading, *adds, "adds", closes.adds, closes.adds_off);
        closes.adds_place = adds->place;
    }
    if (const Node* in = fields.need("intrudes", "say how far the shut lid reaches in, 'intrudes: 0' if not at all")) {
        read_depth(reading, *in, "intrudes", closes.intrudes, closes.intrudes_off);
        closes.intrudes_place = in->place;
    }
    if (const Node* shut = fields.find("shut")) {
        closes.stays_shut = read_yes_or_no(reading, *shut, "shut").value_or(false);
        closes.shut_place = shut->place;
    }
    draft.closes = closes;
}

/// Whether contents fill the inside: they do unless the file says otherwise.
bool read_fills(Reading& reading, Fields& contents, bool has_inside)
{
    const Node* node = contents.find("fills");
    const auto fills = node != nullptr ? read_yes_or_no(reading, *node, "fills") : std::nullopt;
    if (contents.given("fills") && !has_inside) {
        contents.refuse("fills", "fills is about an inside, but the item has none",
                        "delete it, or give the item an 'inside'");
    }
    return fills.value_or(true);
}

void read_contents(Reading& reading, Fields& item, ItemDraft& draft)
{
    const Node* node = item.find("contents");
    if (node == nullptr) {
        return;
    }
    Fields fields(reading, *node, "contents", contents_fields);
    const Node* what = fields.need("what", "say what is in it, such as 'what: rice'");
    const auto name = what != nullptr ? read_text(reading, *what, "what") : std::nullopt;
    const Node* amount = fields.need("amount", "give the weight of what is in it, such as 'amount: 150 g'");
    const auto grams = amount != nullptr ? read_weight(reading, *amount, "amount") : std::nullopt;
    const bool fills = read_fills(reading, fields, item.given("inside"));
    if (name && grams) {
        draft.item.contents = Contents{*name, *grams, fills};
    }
}

/// What is filled stands upright unless the file says otherwise; a liquid always does.
bool read_upright(Reading& reading, Fields& fields, bool is_liquid)
{
    const Node* node = fields.find("upright");
    if (node == nullptr) {
        return is_liquid || fields.given("contents");
    }
    const bool upright = read_yes_or_no(reading, *node, "upright").value_or(true);
    if (is_liquid && !upright) {
        reading.problems.add(node->place, fields.subject() + " holds a liquid, which may leak where it does not stand",
                             "delete 'upright: no', or take 'liquid' from its 'kind'");
    }
    return upright;
}

void read_count(Reading& reading, Fields& fields, ItemDraft& draft)
{
    draft.count_place = draft.place;
    if (const Node* node = fields.find("count")) {
        const auto count = read_whole(reading, *node, "count", 1, most_copies_of_an_item);
        draft.item.count = count.value_or(1);
        draft.count_is_sound = count.has_value();
        draft.count_place = node->place;
    }
}

/// Cavity, lid, contents, parts and forms.
void read_rigid(Reading& reading, Fields& fields, ItemDraft& draft)
{
    if (const Node* inside = fields.find("inside")) {
        draft.inside_place = fields.entry("inside")->place;
        draft.item.inside = read_cavity(reading, *inside, draft.outside);
    }
    read_closes(reading, fields, draft);
    read_contents(reading, fields, draft);
    if (fields.given("contents")) {
        draft.contents_place = fields.entry("contents")->place;
    }
    if (const Node* parts = fields.find("parts")) {
        draft.item.parts = read_parts(reading, *parts, draft.outside);
    }
    if (const Node* forms = fields.find("forms")) {
        draft.item.forms = read_forms(reading, *forms, draft.item, draft.outside);
    }
    for (const std::string_view key : {"parts", "forms"}) {
        if (fields.given("closes") && fields.given(key)) {
            fields.refuse(key, "a lid is one plain piece and has no '" + std::string(key) + "'",
                          "measure a knob or rim as part of the lid's height");
        }
    }
    read_press(reading, fields, draft);
}

} // namespace

std::span<const std::string_view> keys_of_item() { return item_keys; }

ItemDraft read_item(Reading& reading, const Node& node)
{
    ItemDraft draft;
    draft.place = node.place;
    Fields fields(reading, node, subject_of(node), item_fields);
    read_id(reading, fields, draft);
    const Node* name = fields.find("name");
    draft.item.name = name != nullptr ? read_text(reading, *name, "name").value_or("") : draft.item.id;
    read_count(reading, fields, draft);
    if (const Node* weight = fields.need("weight", "weigh it without contents, and write it such as 'weight: 120 g'")) {
        draft.item.weight_g = read_weight(reading, *weight, "weight").value_or(0);
    }
    if (fields.given("bag") || fields.given("band")) {
        read_cover(reading, fields, draft);
        return draft;
    }
    read_outside(reading, fields, draft);
    if (fields.given("sheet") || fields.given("cloth") || fields.given("pouch")) {
        read_soft(reading, fields, draft);
    } else {
        read_rigid(reading, fields, draft);
    }
    if (const Node* kind = fields.find("kind")) {
        draft.item.kinds = read_kinds(reading, *kind);
        if (fields.given("pouch") && is_of_kind(draft.item, Kind::liquid)) {
            reading.problems.add(kind->place, fields.subject() + " holds a liquid, but a pouch is only drawn shut",
                                 "put the liquid into a bottle that goes in it, and take 'liquid' from this 'kind'");
        }
    }
    draft.item.upright = read_upright(reading, fields, is_of_kind(draft.item, Kind::liquid));
    draft.carry = read_carry(reading, fields);
    read_handling(reading, fields, draft);
    return draft;
}

} // namespace tuckwright::reading
