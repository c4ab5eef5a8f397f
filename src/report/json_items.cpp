// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/json_items.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <limits>
#include <map>
#include <utility>

#include "report/json_measures.hpp"
#include "kit/kinds.hpp"

namespace tuckwright::report {

namespace {

constexpr std::size_t most_items = 500; // as a kit may have; a proof takes more than the square of it
constexpr std::size_t most_parts = 16; // solids or cavities of one item
constexpr std::size_t most_planes = 4'000'000;

using Names = std::map<std::pair<std::string, int>, std::size_t>;

int read_copy(const Node& parent)
{
    const auto node = parent.field("copy");
    return node ? static_cast<int>(node->whole(1, std::numeric_limits<int>::max())) : 1;
}

std::array<std::int64_t, 3> read_direction(const Node& parent, const char* key)
{
    std::array<std::int64_t, 3> direction{0, 0, 0};
    const auto parts = parent.list(key, 3, 3);
    for (std::size_t i = 0; i < parts.size(); ++i) {
        direction[i] =
            parts[i].whole(std::numeric_limits<std::int64_t>::min(), std::numeric_limits<std::int64_t>::max());
    }
    return direction;
}

Vec3 read_point(const Node& parent, const char* key)
{
    const auto parts = parent.list(key, 3, 3);
    return parts.empty() ? Vec3{} : Vec3{parts[0].length(), parts[1].length(), parts[2].length()};
}

Quaternion read_turn(const Node& parent)
{
    const auto parts = parent.list("quaternion", 4, 4);
    if (parts.empty()) {
        return {};
    }
    const auto part = [&](std::size_t i) {
        return parts[i].whole(std::numeric_limits<std::int64_t>::min(), std::numeric_limits<std::int64_t>::max());
    };
    const Quaternion turn{part(0), part(1), part(2), part(3)};
    if (turn == Quaternion{0, 0, 0, 0}) {
        parent.field("quaternion")->fault("must not be all zero");
        return {};
    }
    return turn;
}

void read_rotation(const Node& parent)
{
    for (const auto& row : parent.list("rotation", 3, 3)) {
        for (const auto& entry : row.list(3, 3)) {
            entry.number(1e9); // whether it follows from the quaternion is seen later
        }
    }
}

Shape read_shape(const Node& node)
{
    if (node.has("cylinder") == node.has("box")) {
        node.fault("must have either a cylinder or a box");
        return {};
    }
    if (node.has("cylinder")) {
        const auto part = node.field("cylinder");
        return part->object() ? Cylinder{part->length("diameter"), part->length("height"),
                                         part->has("foot") ? part->length("foot") : 0}
                              : Cylinder{};
    }
    const auto part = node.field("box");
    return part->object() ? Box{part->length("length"), part->length("width"), part->length("height")} : Box{};
}

Solid read_solid(const Node& node)
{
    if (!node.object()) {
        return {};
    }
    const Solid solid{read_shape(node), {read_point(node, "center"), read_turn(node)}};
    read_rotation(node);
    return solid;
}

Opening read_opening(const Node& parent)
{
    const auto node = parent.field("opens");
    const std::string word = node ? node->text() : "top";
    if (word == "both") {
        return Opening::both;
    }
    if (word == "closed") {
        return Opening::closed;
    }
    if (word != "top") {
        node->fault("must be top, both or closed");
    }
    return Opening::top;
}

std::optional<Shape> read_neck(const Node& parent)
{
    const auto node = parent.field("neck");
    return !node || node->null() || !node->object() ? std::nullopt : std::optional(read_shape(*node));
}

Wanted read_reach(const Node& parent)
{
    const auto node = parent.field("reach");
    const std::string word = node ? node->text() : "any";
    for (const auto& [reach, name] :
         {std::pair{Wanted::first, "first"}, {Wanted::early, "early"}, {Wanted::last, "last"}}) {
        if (word == name) {
            return reach;
        }
    }
    if (word != "any") {
        node->fault("must be first, early, any or last");
    }
    return Wanted::any;
}

std::vector<Kind> read_kinds(const Node& parent)
{
    const auto words = reading::kind_words();
    std::vector<Kind> kinds;
    for (const auto& node : parent.list("kinds", 0, words.size())) {
        const std::string word = node.text();
        const auto known = std::find(words.begin(), words.end(), word);
        if (known == words.end()) {
            node.fault("is no kind that this program knows");
        } else {
            kinds.push_back(static_cast<Kind>(known - words.begin()));
        }
    }
    return kinds;
}

/// What the item is, what may lie on it, and how soon it comes out.
void read_handling(const Node& node, PlacedItem& item)
{
    item.kinds = read_kinds(node);
    item.nothing_on_top = node.flag("nothing_on_top");
    if (const auto bears = node.field("bears_g"); bears && !bears->null()) {
        item.bears_g = bears->number(largest_weight);
    }
    item.reach = read_reach(node);
    if (const auto after = node.field("out_after"); after && !after->null()) {
        item.out_after = after->index();
    }
}

PlacedItem read_item(const Node& node)
{
    PlacedItem item;
    item.id = node.text("id");
    item.copy = read_copy(node);
    item.name = node.text("name");
    item.form = node.text("form");
    item.stowed = node.text("stowed");
    item.how = node.text("how");
    if (node.has("pressed_from_mm")) { // told only where it is so
        item.pressed = node.length("pressed_from_mm");
    }
    item.upright = node.flag("upright");
    read_handling(node, item);
    item.weight_g = node.number("weight_g", largest_weight);
    item.contents = node.text("contents");
    item.contents_g = node.number("contents_g", largest_weight);
    item.full = node.flag("contents_fill");
    item.soft = node.flag("soft");
    for (const auto& part : node.list("solids", 1, most_parts)) {
        item.solids.push_back(read_solid(part));
        item.solids_off.push_back(read_tolerance(part, item.solids.back().shape));
    }
    for (const auto& part : node.list("cavities", 0, most_parts)) {
        const Solid room = read_solid(part);
        item.cavities.push_back(
            {room.shape, room.pose, read_opening(part), read_neck(part), read_tolerance(part, room.shape)});
    }
    return item;
}

/// The item that {id, copy} names; a fault where there is none.
std::optional<std::size_t> read_reference(const Node& node, const char* id_key, const Names& names)
{
    if (!node.object()) {
        return std::nullopt;
    }
    const std::string id = node.text(id_key);
    const int copy = read_copy(node);
    const auto found = names.find({id, copy});
    if (found == names.end()) {
        if (node.has(id_key) && node.has("copy")) {
            node.fault(fmt::format("names \"{}\", copy {}, which is not among the items", id, copy));
        }
        return std::nullopt;
    }
    return found->second;
}

void read_references(const Node& node, const Names& names, PlacedItem& item)
{
    if (const auto in = node.field("in"); in && !in->null()) {
        const auto container = read_reference(*in, "id", names);
        const auto cavity = in->field("cavity");
        item.in = Lodging{container.value_or(0), cavity ? cavity->index() : 0};
    }
    if (const auto closes = node.field("closes"); closes && !closes->null()) {
        item.closes = read_reference(*closes, "id", names);
    }
}

void read_steps(const Node& root, const Names& names, Bundle& bundle)
{
    for (const auto& node : root.list("steps", 0, 2 * most_items)) {
        const auto item = read_reference(node, "item", names);
        node.text("into"); // whether it is the right one is seen later
        const auto via = node.field("via");
        bundle.steps.push_back({item.value_or(0), read_direction(node, "direction"), node.text("text"),
                                via && !via->null() ? std::optional(read_point(node, "via")) : std::nullopt});
    }
}

void read_planes(const Node& node, Certificate& certificate)
{
    for (const auto& plane : node.list("planes", 0, most_planes)) {
        if (!plane.object()) {
            continue;
        }
        const auto first = plane.list("first", 2, 2), second = plane.list("second", 2, 2);
        SeparatingPlane read;
        if (!first.empty() && !second.empty()) {
            read = {first[0].index(), first[1].index(), second[0].index(), second[1].index(), {}};
        }
        read.normal = read_direction(plane, "normal");
        certificate.planes.push_back(read);
    }
}

void read_rests(const Node& node, Certificate& certificate)
{
    for (const auto& rest : node.list("rests", 0, 2 * most_items)) {
        if (!rest.object()) {
            continue;
        }
        Rest read;
        if (const auto item = rest.field("item")) {
            read.item = item->index();
        }
        if (const auto on = rest.field("on"); on && !on->null()) {
            read.on = on->index();
        }
        read.point = read_point(rest, "point");
        certificate.rests.push_back(read);
    }
}

void expect_nothing(const Node& root)
{
    for (const char* key : {"items", "steps", "fits", "plays"}) {
        if (const auto node = root.field(key); node && !node->list(0, most_items).empty()) {
            node->fault("must be empty where the status says that there is no bundle");
        }
    }
}

} // namespace

std::optional<Node> part_of_bundle(const Node& root, const char* key, Status status)
{
    const auto node = root.field(key);
    if (!node) {
        return std::nullopt;
    }
    if (!has_bundle(status)) {
        if (!node->null()) {
            node->fault("must be null where the status says that there is no bundle");
        }
        return std::nullopt;
    }
    return node->object() ? node : std::nullopt;
}

void read_items(const Node& root, Bundle& bundle)
{
    if (!has_bundle(bundle.status)) {
        expect_nothing(root);
        return;
    }
    const auto nodes = root.list("items", 1, most_items);
    Names names;
    for (const auto& node : nodes) {
        bundle.items.push_back(node.object() ? read_item(node) : PlacedItem{});
        const auto& item = bundle.items.back();
        if (!names.try_emplace({item.id, item.copy}, bundle.items.size() - 1).second && node.has("id")) {
            node.fault(fmt::format("\"{}\", copy {}, is there twice", item.id, item.copy));
        }
    }
    for (std::size_t i = 0; i < nodes.size(); ++i) {
        read_references(nodes[i], names, bundle.items[i]);
    }
    read_measures(root, bundle);
    read_steps(root, names, bundle);
    if (const auto certificate = root.field("certificate"); certificate && certificate->object()) {
        read_planes(*certificate, bundle.certificate);
        read_rests(*certificate, bundle.certificate);
    }
}

} // namespace tuckwright::report
