// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/choices.hpp"

#include <algorithm>
#include <array>
#include <limits>
#include <set>

#include "kit/entries.hpp"
#include "kit/words.hpp"
#include "tuckwright/contract.hpp"

namespace tuckwright::reading {

namespace {

constexpr std::array<std::string_view, 2> choice_keys{"choice", "one-of"};
constexpr KnownFields choice_fields{choice_keys, "- {choice: pot, one-of: [{id: small-pot, ...}, {id: big-pot, ...}]}",
                                    choice_keys};
constexpr std::array<std::string_view, 2> group_keys{"take", "items"};
constexpr KnownFields group_fields{group_keys, "- {take: gas, items: [{id: gas-stove, ...}, {id: cartridge, ...}]}",
                                   std::span(group_keys).last(1)};

bool is_choice(const Node& node) { return entry_of(node, "one-of") != nullptr || entry_of(node, "choice") != nullptr; }

const Node* items_of(const Node& document)
{
    const Entry* items = entry_of(document, "items");
    return items != nullptr && items->value.kind == NodeKind::list ? &items->value : nullptr;
}

/// Takes the things of an alternative that has several.
void read_things(Reading& reading, const Node& list, Alternative& alternative)
{
    if (list.items.empty() && list.kind != NodeKind::unusable) {
        reading.problems.add(list.place, "an alternative has no things",
                             "list them, each starting with '- id:', or write 'nothing' instead of the alternative");
    }
    for (const Node& thing : list.items) {
        if (is_choice(thing)) {
            reading.problems.add(thing.place, "there is a choice within a choice",
                                 "list each way as an alternative of one choice, or make two choices side by side");
        } else {
            alternative.entries.push_back(&thing);
        }
    }
}

/// Takes an alternative that has a name of its own.
void read_group(Reading& reading, const Node& node, Alternative& alternative)
{
    Fields fields(reading, node, "an alternative", group_fields);
    if (const Node* word = fields.find("take")) {
        const auto text = read_text(reading, *word, "take");
        if (text && !is_id(*text)) {
            reading.problems.add(word->place, "take is " + in_quotes(*text),
                                 "use only letters a to z, digits, '-' and '_', 64 at most");
        }
        alternative.word = text.value_or("");
    }
    if (const Node* things = fields.need("items", "list the things that come along together under 'items:'")) {
        read_things(reading, *things, alternative);
    }
}

Alternative read_alternative(Reading& reading, const Node& node)
{
    Alternative alternative;
    if (node.kind == NodeKind::text && node.text == nothing_word) {
        alternative.word = nothing_word;
        return alternative;
    }
    if (node.kind == NodeKind::list) {
        read_things(reading, node, alternative);
    } else if (is_choice(node)) {
        reading.problems.add(node.place, "there is a choice within a choice",
                             "list each way as an alternative of one choice, or make two choices side by side");
    } else if (entry_of(node, "items") != nullptr || entry_of(node, "take") != nullptr) {
        read_group(reading, node, alternative);
    } else if (node.kind == NodeKind::map) {
        alternative.entries.push_back(&node);
    } else if (node.kind != NodeKind::unusable) {
        const std::string shown = node.kind == NodeKind::text ? in_quotes(node.text) : kind_name(node);
        reading.problems.add(node.place, "an alternative is " + shown + ", not a thing",
                             "describe the thing, as an entry of 'items', or write 'nothing' for none");
    }
    if (!alternative.entries.empty()) {
        alternative.first = id_of(*alternative.entries.front());
        alternative.word = alternative.word.empty() ? alternative.first : alternative.word;
    }
    return alternative;
}

void read_alternatives(Reading& reading, const Node& list, Choice& choice)
{
    constexpr std::size_t fewest = 2, most = 100;
    const std::string subject = choice.name.empty() ? "the choice" : "the choice " + in_quotes(choice.name);
    if (list.items.size() > most) {
        reading.problems.add(list.place,
                             subject + " has " + std::to_string(list.items.size()) +
                                 " alternatives, but may have at most 100",
                             "leave out those that you would not take anyway");
        return;
    }
    if (list.items.size() < fewest && list.kind != NodeKind::unusable) {
        reading.problems.add(list.place, subject + " has fewer than two alternatives",
                             "list them under 'one-of:', each starting with '- id:'; one may be 'nothing'");
    }
    std::set<std::string> words;
    for (const Node& node : list.items) {
        Alternative alternative = read_alternative(reading, node);
        if (!alternative.word.empty() && !words.insert(alternative.word).second) {
            reading.problems.add(node.place, subject + " has two alternatives called " + in_quotes(alternative.word),
                                 "give them different ids, or names of their own: '- take: big', then 'items:'");
        }
        choice.alternatives.push_back(std::move(alternative));
    }
}

Choice read_choice(Reading& reading, const Node& node)
{
    Choice choice;
    choice.place = node.place;
    Fields fields(reading, node, "a choice", choice_fields);
    if (const Node* name = fields.need("choice", "name what is chosen, such as 'choice: pot'")) {
        choice.name = read_text(reading, *name, "choice").value_or("");
        if (!choice.name.empty() && !is_id(choice.name)) {
            reading.problems.add(name->place, "choice is " + in_quotes(choice.name),
                                 "use only letters a to z, digits, '-' and '_', 64 at most");
        }
    }
    if (const Node* list = fields.need("one-of", "list the alternatives under 'one-of:', each starting with '- id:'")) {
        read_alternatives(reading, *list, choice);
    }
    return choice;
}

/// A choice's name stands for what is taken; so nothing outside it may have that name.
void check_names(Reading& reading, const std::vector<Choice>& choices, const Node& items)
{
    std::map<std::string, std::set<std::size_t>> entries; // of `items`, that have a thing with that id
    for (std::size_t i = 0; i < items.items.size(); ++i) {
        if (const std::string id = id_of(items.items[i]); !id.empty()) {
            entries[id].insert(i);
        }
    }
    for (const Choice& choice : choices) {
        for (const Alternative& alternative : choice.alternatives) {
            for (const Node* thing : alternative.entries) {
                entries[id_of(*thing)].insert(choice.entry);
            }
        }
    }
    std::set<std::string> names;
    for (const Choice& choice : choices) {
        if (choice.name.empty()) {
            continue;
        }
        if (!names.insert(choice.name).second) {
            reading.problems.add(choice.place, "there are two choices called " + in_quotes(choice.name),
                                 "give each a name of its own");
        }
        const auto found = entries.find(choice.name);
        if (found != entries.end() && (found->second.size() > 1 || !found->second.contains(choice.entry))) {
            reading.problems.add(choice.place,
                                 in_quotes(choice.name) + " is the name of this choice and the id of a thing",
                                 "give the choice another name");
        }
    }
}

/// What the things that come along may be called, and what else the file knows.
KnownNames names_of(const std::vector<Choice>& choices, const Picks& picks, const Node& items)
{
    KnownNames names;
    for (const Node& item : items.items) {
        names.along.insert(id_of(item));
    }
    for (std::size_t c = 0; c < choices.size(); ++c) {
        if (choices[c].alternatives.empty()) {
            continue;
        }
        const std::string name = in_quotes(choices[c].name);
        const Alternative& taken = choices[c].alternatives[picks[c]];
        if (taken.first.empty()) {
            names.absent[choices[c].name] = {"the choice " + name +
                                                 " may be nothing, and then this has nothing to go with",
                                             "put this thing into those alternatives that it goes with"};
        } else {
            const Node& first = *taken.entries.front();
            const bool is_vessel = entry_of(first, "inside") != nullptr || entry_of(first, "pouch") != nullptr;
            names.stands_for[choices[c].name] = {taken.first, is_vessel};
        }
        for (const Alternative& alternative : choices[c].alternatives) {
            for (const Node* thing : alternative.entries) {
                const std::string id = id_of(*thing);
                names.absent.emplace(
                    id, Absent{in_quotes(id) + " does not always come along: it is an alternative of the choice " + name,
                               "put this thing into the same alternative, or name the choice instead, " + name});
            }
        }
    }
    return names;
}

} // namespace

std::vector<Choice> read_choices(Reading& reading, const Node& document)
{
    std::vector<Choice> choices;
    const Node* items = items_of(document);
    if (items == nullptr) {
        return choices;
    }
    for (std::size_t i = 0; i < items->items.size(); ++i) {
        if (is_choice(items->items[i])) {
            choices.push_back(read_choice(reading, items->items[i]));
            choices.back().entry = i;
        }
    }
    check_names(reading, choices, *items);
    return choices;
}

std::size_t combinations(const std::vector<Choice>& choices)
{
    constexpr std::size_t most = std::numeric_limits<std::size_t>::max();
    std::size_t number = 1;
    for (const Choice& choice : choices) {
        const std::size_t ways = std::max<std::size_t>(1, choice.alternatives.size());
        number = number > most / ways ? most : number * ways;
    }
    return number;
}

bool next_picks(const std::vector<Choice>& choices, Picks& picks)
{
    for (std::size_t c = choices.size(); c-- > 0;) {
        if (++picks[c] < choices[c].alternatives.size()) {
            return true;
        }
        picks[c] = 0;
    }
    return false;
}

Node settled(Reading& reading, const Node& document, const std::vector<Choice>& choices, const Picks& picks,
             const std::map<std::string, Absent>& left)
{
    require(picks.size() == choices.size(), "an alternative is picked for each choice");
    const Node* given = items_of(document);
    if (given == nullptr) {
        return document; // which is told when it is read
    }
    Node items{NodeKind::list, given->place, "", {}, {}};
    std::size_t next = 0;
    for (std::size_t i = 0; i < given->items.size(); ++i) {
        if (next == choices.size() || choices[next].entry != i) {
            items.items.push_back(given->items[i]);
            continue;
        }
        if (!choices[next].alternatives.empty()) {
            for (const Node* thing : choices[next].alternatives[picks[next]].entries) {
                items.items.push_back(*thing);
            }
        }
        ++next;
    }
    KnownNames names = names_of(choices, picks, items);
    names.absent.insert(left.begin(), left.end());
    for (Node& item : items.items) {
        settle_references(reading, item, names);
    }
    Node result{NodeKind::map, document.place, "", {}, {}};
    for (const Entry& entry : document.entries) {
        result.entries.push_back(entry.key == "items" ? Entry{entry.key, entry.place, items} : entry);
    }
    return result;
}

std::string picks_in_words(const std::vector<Choice>& choices, const Picks& picks)
{
    std::string text;
    for (std::size_t c = 0; c < choices.size(); ++c) {
        const auto& alternatives = choices[c].alternatives;
        text += (text.empty() ? "(" : ", ") + choices[c].name + ": " +
                (alternatives.empty() ? "" : alternatives[picks[c]].word);
    }
    return text.empty() ? text : text + ")";
}

} // namespace tuckwright::reading
