// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/shelf.hpp"

#include <algorithm>
#include <filesystem>
#include <set>
#include <vector>

#include "kit/document.hpp"
#include "kit/entries.hpp"
#include "kit/file_text.hpp"
#include "kit/shelf_reading.hpp"
#include "kit/words.hpp"
#include "tuckwright/kit_reader.hpp"

namespace tuckwright::reading {

namespace {

namespace fs = std::filesystem;

/// How many values a tree holds.
std::size_t nodes_of(const Node& node)
{
    std::size_t number = 1;
    for (const Node& item : node.items) {
        number += nodes_of(item);
    }
    for (const Entry& entry : node.entries) {
        number += nodes_of(entry.value);
    }
    return number;
}

/// A shelf while things are taken from it.
class Taking {
public:
    Taking(ProblemList& problems, const Shelf& shelf) : problems_(problems), shelf_(shelf)
    {
        for (const auto& [id, thing] : shelf.things) {
            known_.push_back(id);
        }
    }

    /// Works through the entries of a list under `items` or `one-of`.
    void take_all(Node& list)
    {
        for (Node& entry : list.items) {
            if (entry_of(entry, "from") != nullptr) {
                take(entry);
                continue;
            }
            for (const std::string_view key : {"one-of", "items"}) {
                if (Entry* inner = entry_of(entry, key)) {
                    take_all(inner->value);
                }
            }
            take_all(entry); // an alternative may be a plain list
        }
    }

    /// What stays on the shelf.
    std::map<std::string, Absent> left() const
    {
        std::map<std::string, Absent> all;
        for (const auto& [id, thing] : shelf_.things) {
            if (!taken_.contains(id)) {
                all[id] = {reading::in_quotes(id) + " is on the shelf, but not among the things of this kit",
                           "take it along with '- from: " + id + "', or leave this one at home", true};
            }
        }
        return all;
    }

private:
    void take(Node& entry)
    {
        const Entry from = *entry_of(entry, "from");
        if (from.value.kind != NodeKind::text) {
            problems_.add(from.value.place, "from is " + kind_name(from.value) + ", not the id of a thing on the shelf",
                          "name one, such as '- from: pot'");
            entry.kind = NodeKind::unusable;
            return;
        }
        const auto found = shelf_.things.find(from.value.text);
        if (found == shelf_.things.end()) {
            const auto meant = mistyped(from.value.text, known_);
            problems_.add(from.value.place,
                          "the shelf " + reading::in_quotes(shelf_.title) + " has nothing with the id " +
                              reading::in_quotes(from.value.text),
                          meant ? "did you mean " + reading::in_quotes(*meant) + "?"
                                : "name the id of a thing on the shelf");
            entry.kind = NodeKind::unusable;
            return;
        }
        copied_ += nodes_of(*found->second);
        if (copied_ > most_copied) {
            problems_.add(from.value.place, "the kit takes far more from the shelf than a kit can hold",
                          "take each thing once, with its 'count'");
            entry.kind = NodeKind::unusable;
            return;
        }
        taken_.insert(from.value.text);
        Node thing = *found->second;
        thing.place = entry.place;
        Entry& id = *entry_of(thing, "id");
        id.place = from.place;
        id.value.place = from.value.place;
        change(thing, entry, "from");
        entry = std::move(thing);
    }

    static constexpr std::size_t most_copied = 500'000; // values; a thing has some ten

    ProblemList& problems_;
    std::size_t copied_ = 0;
    const Shelf& shelf_;
    std::vector<std::string_view> known_;
    std::set<std::string> taken_;
};

/// Where the shelf lies, seen from the kit's folder; nothing, with a problem, for a path that leads out of it.
std::optional<std::string> path_beside(ProblemList& problems, const Node& node, const std::string& kit_path)
{
    const auto refuse = [&](const std::string& what) {
        problems.add(node.place, what, "name a file beside the kit file, such as 'shelf: my-things.yaml'");
        return std::nullopt;
    };
    if (node.kind != NodeKind::text) {
        return refuse("shelf is " + kind_name(node) + ", not the name of a file");
    }
    const fs::path path(node.text);
    if (path.empty() || path.is_absolute() || std::find(path.begin(), path.end(), "..") != path.end()) {
        return refuse("shelf is " + reading::in_quotes(node.text) + ", which is not in the kit file's folder or below it");
    }
    return (fs::path(kit_path).parent_path() / path).string();
}

/// The lists of a document whose entries may take things from a shelf: what comes along, and what comes only on the way
/// back.
std::vector<Node*> lists_of(Node& document)
{
    std::vector<Node*> lists;
    if (Entry* items = entry_of(document, "items")) {
        lists.push_back(&items->value);
    }
    Entry* back = entry_of(document, "way-back");
    if (Entry* added = back != nullptr ? entry_of(back->value, "added") : nullptr) {
        lists.push_back(&added->value);
    }
    return lists;
}

/// Entries that take something though there is no shelf.
void refuse_entries(ProblemList& problems, const Node& list, const std::string& remedy)
{
    for (const Node& entry : list.items) {
        for (const Entry& field : entry.entries) {
            if (field.key == "from") {
                problems.add(field.place, "'from' takes a thing from a shelf, but this kit has none", remedy);
            } else if (field.key == "one-of" || field.key == "items") {
                refuse_entries(problems, field.value, remedy);
            }
        }
        refuse_entries(problems, entry, remedy);
    }
}

/// Takes away the entries that name a shelf which cannot be used, so that nothing follows from that.
void drop_entries(Node& list)
{
    for (Node& entry : list.items) {
        if (entry_of(entry, "from") != nullptr) {
            entry.kind = NodeKind::unusable;
            continue;
        }
        for (Entry& field : entry.entries) {
            if (field.key == "one-of" || field.key == "items") {
                drop_entries(field.value);
            }
        }
        drop_entries(entry);
    }
}

} // namespace

bool is_shelf(const Node& document)
{
    const auto has = [&](std::string_view key) {
        return std::any_of(document.entries.begin(), document.entries.end(),
                           [&](const Entry& entry) { return entry.key == key; });
    };
    const auto names_file = [&](const Entry& entry) {
        return entry.key == "shelf" && (entry.value.text.ends_with(".yaml") || entry.value.text.ends_with(".yml"));
    };
    return has("shelf") && !has("kit") && std::none_of(document.entries.begin(), document.entries.end(), names_file);
}

std::optional<ShelfFile> take_from_shelf(ProblemList& problems, Node& document, const std::string& kit_path)
{
    Entry* named = entry_of(document, "shelf");
    const std::vector<Node*> lists = lists_of(document);
    if (named == nullptr) {
        for (Node* list : lists) {
            refuse_entries(problems, *list, "name it at the top of the file: 'shelf: my-things.yaml'");
            drop_entries(*list);
        }
        return std::nullopt;
    }
    const auto path = path_beside(problems, named->value, kit_path);
    const auto text = path ? file_text(*path, largest_file) : Result<std::string>(Problem{});
    if (path && !text) {
        problems.add(named->value.place, "the shelf " + reading::in_quotes(*path) + " " + text.problems().front().what,
                     "it is looked for in the kit file's folder; check its name");
    }
    std::optional<ShelfFile> file;
    if (text) {
        file = ShelfFile{std::string(without_mark(*text)), *path, {}, {}};
        ProblemList found;
        const auto tree = shelf_tree(file->text, found, 1);
        const Shelf shelf = tree ? shelf_of(*tree, found) : Shelf{};
        problems.merge(found);
        if (found.empty()) {
            file->units = shelf.units;
            Taking taking(problems, shelf);
            for (Node* list : lists) {
                taking.take_all(*list);
            }
            file->left = taking.left();
            return file;
        }
    }
    for (Node* list : lists) {
        drop_entries(*list);
    }
    return file;
}

} // namespace tuckwright::reading

namespace tuckwright {

std::optional<std::string> shelf_named_in(std::string_view text, const std::string& path)
{
    if (text.find("shelf") == std::string_view::npos) {
        return std::nullopt; // most files: nothing needs to be parsed
    }
    reading::ProblemList problems;
    auto document = reading::parse_document(text, problems);
    reading::Entry* named = document ? reading::entry_of(*document, "shelf") : nullptr;
    return named != nullptr ? reading::path_beside(problems, named->value, path) : std::nullopt;
}

} // namespace tuckwright
