// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/shelf_reading.hpp"

#include <algorithm>
#include <array>

#include "kit/document.hpp"
#include "kit/item_reading.hpp"
#include "kit/lid_checks.hpp"
#include "kit/links.hpp"
#include "kit/rule_reading.hpp"
#include "tuckwright/shelf.hpp"

namespace tuckwright {

namespace reading {

namespace {

constexpr std::array<std::string_view, 4> shelf_keys{"version", "shelf", "units", "items"};
constexpr std::array<std::string_view, 2> needed_of_shelf{"shelf", "items"};
constexpr KnownFields shelf_fields{shelf_keys, "shelf: My things', then 'items:", needed_of_shelf};
constexpr std::size_t most_things = 2000;

void move_to_file(Node& node, int file)
{
    node.place.file = file;
    for (Node& item : node.items) {
        move_to_file(item, file);
    }
    for (Entry& entry : node.entries) {
        entry.place.file = file;
        move_to_file(entry.value, file);
    }
}

/// Reports what only a kit may hold.
bool is_for_kits(Reading& reading, const Node& entry)
{
    const auto found = std::find_if(entry.entries.begin(), entry.entries.end(), [](const Entry& field) {
        return field.key == "choice" || field.key == "one-of" || field.key == "from";
    });
    if (found == entry.entries.end()) {
        return false;
    }
    const bool takes = found->key == "from";
    reading.problems.add(found->place, takes ? "a shelf takes nothing from another" : "a shelf has no choices",
                         takes ? "describe the thing here"
                               : "put the things on the shelf one by one, and the choice into the kit");
    return true;
}

void read_things(Reading& reading, const Node& list, Shelf& shelf)
{
    if (list.kind != NodeKind::list || list.items.empty()) {
        reading.problems.add(list.place, "the shelf holds no list of things", "start each thing with '- id:'");
        return;
    }
    if (list.items.size() > most_things) {
        reading.problems.add(list.place,
                             "the shelf has " + std::to_string(list.items.size()) + " things, but may have at most " +
                                 std::to_string(most_things),
                             "make two shelves of it");
        return;
    }
    std::vector<ItemDraft> drafts;
    for (const Node& node : list.items) {
        if (is_for_kits(reading, node)) {
            continue;
        }
        drafts.push_back(read_item(reading, node));
        if (drafts.back().id_place) {
            shelf.things.emplace(drafts.back().item.id, &node);
        }
        shelf.items.push_back(drafts.back().item);
    }
    check_ids(reading, drafts, IdIndex(drafts));
}

/// Reports a kit that is given for a shelf.
bool is_kit(Reading& reading, const Node& document)
{
    const auto kit = std::find_if(document.entries.begin(), document.entries.end(),
                                  [](const Entry& entry) { return entry.key == "kit"; });
    if (kit == document.entries.end()) {
        return false;
    }
    reading.problems.add(kit->place, "this is a kit, not a shelf", "a shelf begins with 'shelf: My things' instead");
    return true;
}

} // namespace

std::string_view without_mark(std::string_view text)
{
    constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";
    const bool is_marked = text.size() <= largest_file && text.starts_with(byte_order_mark);
    return is_marked ? text.substr(byte_order_mark.size()) : text;
}

std::optional<Node> tree_of(std::string_view text, ProblemList& problems, const std::string& what)
{
    if (!check_text(text, problems)) {
        return std::nullopt;
    }
    auto document = parse_document(text, problems);
    if (document && document->kind == NodeKind::nothing) {
        if (problems.empty()) {
            problems.add({}, "the file holds no " + what, "write at least '" + what + ":' and 'items:'");
        }
        return std::nullopt;
    }
    return document;
}

std::optional<Node> shelf_tree(std::string_view text, ProblemList& problems, int file)
{
    ProblemList found;
    auto document = tree_of(text, found, "shelf");
    found.belong_to(file);
    problems.merge(found);
    if (document) {
        move_to_file(*document, file);
    }
    return document;
}

Shelf shelf_of(const Node& document, ProblemList& problems)
{
    Shelf shelf;
    Reading reading{problems, {}, {}, {}};
    if (is_kit(reading, document)) {
        return shelf;
    }
    Fields fields(reading, document, "a shelf", shelf_fields);
    if (const Node* version = fields.find("version")) {
        read_whole(reading, *version, "version", 1, 1);
    }
    if (const Node* units = fields.find("units")) {
        shelf.units = read_units(reading, *units);
    }
    reading.units = reading.shelf_units = shelf.units;
    if (const Node* title = fields.need("shelf", "name the shelf, such as 'shelf: My things'")) {
        shelf.title = read_text(reading, *title, "shelf").value_or("");
    }
    if (const Node* items = fields.need("items", "list the things under 'items:', each starting with '- id:'")) {
        read_things(reading, *items, shelf);
    }
    return shelf;
}

} // namespace reading

Result<ShelfOfThings> read_shelf_text(std::string_view text, const std::string& name)
{
    reading::ProblemList problems;
    text = reading::without_mark(text);
    const auto document = reading::shelf_tree(text, problems, 0);
    const reading::Shelf shelf = document ? reading::shelf_of(*document, problems) : reading::Shelf{};
    if (!problems.empty()) {
        const reading::Source source{text, name};
        return problems.in_order({&source, 1});
    }
    return ShelfOfThings{shelf.title, shelf.items};
}

} // namespace tuckwright
