// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/way_back_document.hpp"

#include <algorithm>
#include <array>
#include <functional>

#include "kit/entries.hpp"
#include "kit/words.hpp"

namespace tuckwright::reading {

namespace {

constexpr std::array<std::string_view, 7> way_back_keys{"empty",   "left",  "gone", "becomes",
                                                        "changed", "added", "waive"};
constexpr KnownFields way_back_fields{way_back_keys, way_back_example};

/// The places of all that a value holds.
void gather_places(const Node& node, std::set<Place>& places)
{
    places.insert(node.place);
    for (const Node& item : node.items) {
        gather_places(item, places);
    }
    for (const Entry& entry : node.entries) {
        places.insert(entry.place);
        gather_places(entry.value, places);
    }
}

bool has_kind(const Node& thing, std::string_view kind)
{
    const Entry* kinds = entry_of(thing, "kind");
    const auto is_it = [&](const Node& node) { return node.kind == NodeKind::text && node.text == kind; };
    return kinds != nullptr &&
           (is_it(kinds->value) || std::any_of(kinds->value.items.begin(), kinds->value.items.end(), is_it));
}

/// Takes the contents away. What holds a liquid is never quite empty: it stays shut, and the right way up.
void empty_out(Node& thing, Place place)
{
    Entry* contents = entry_of(thing, "contents");
    if (contents == nullptr) {
        return;
    }
    if (!has_kind(thing, "liquid")) {
        std::erase_if(thing.entries, [](const Entry& entry) { return entry.key == "contents"; });
    } else if (Entry* amount = entry_of(contents->value, "amount")) {
        amount->value = text_at(place, "0 g");
    }
}

void set_amount(Node& thing, const Node& amount)
{
    Entry* contents = entry_of(thing, "contents");
    if (Entry* old = contents != nullptr ? entry_of(contents->value, "amount") : nullptr) {
        old->value = amount;
    }
}

/// Adds kinds to those of a thing. What is dirty need not be kept clean.
void add_kinds(Node& thing, const Entry& given)
{
    Entry* kinds = entry_of(thing, "kind");
    if (kinds == nullptr) {
        thing.entries.push_back({"kind", given.place, {NodeKind::list, given.value.place, {}, {}, {}}});
        kinds = &thing.entries.back();
    } else if (kinds->value.kind != NodeKind::list) {
        Node single = std::move(kinds->value);
        kinds->value = {NodeKind::list, single.place, {}, {}, {}};
        kinds->value.items.push_back(std::move(single));
    }
    auto& list = kinds->value.items;
    std::set<std::string> known;
    for (const Node& kind : list) {
        known.insert(kind.text);
    }
    const std::vector<Node> more =
        given.value.kind == NodeKind::list ? given.value.items : std::vector<Node>{given.value};
    for (const Node& kind : more) {
        if (kind.kind != NodeKind::text || known.insert(kind.text).second) {
            list.push_back(kind);
        }
    }
    const bool is_dirty = std::any_of(more.begin(), more.end(), [](const Node& kind) { return kind.text == "sooty"; });
    if (is_dirty) {
        std::erase_if(list, [](const Node& old) { return old.text == "clean"; });
    }
}

/// A document while it is changed to what it is on the way back.
class GoingBack {
public:
    GoingBack(Reading& reading, const Node& document) : reading_(reading)
    {
        made_.document = document;
        std::erase_if(made_.document.entries, [](const Entry& entry) { return entry.key == "way-back"; });
        if (Entry* items = entry_of(made_.document, "items")) {
            items_ = &items->value;
        }
        gather_things();
        gather_offers();
    }

    WayBackDocument done(const Entry& given)
    {
        gather_places(given.value, made_.places);
        made_.places.insert(given.place);
        Fields fields(reading_, given.value, "way-back", way_back_fields);
        if (const Node* changed = fields.find("changed")) {
            change_things(*changed);
        }
        each_field(fields, "becomes", "{pot: sooty}", [&](const Entry& entry) {
            each_thing(entry.key, entry.place, "becomes", [&](Node& thing) { add_kinds(thing, entry); });
        });
        use_up(fields);
        each_name(fields, "gone", [&](const Node& name) {
            each_thing(name.text, name.place, "gone", [&](Node& thing) { leave(id_of(thing)); });
        });
        erase_gone();
        if (const Node* added = fields.find("added")) {
            add_things(*added);
        }
        if (const Entry* waive = fields.entry("waive")) {
            add_waivers(*waive);
        }
        return std::move(made_);
    }

private:
    void gather_things()
    {
        if (items_ == nullptr) {
            return;
        }
        for (Node& entry : items_->items) {
            const Entry* name = entry_of(entry, "choice");
            if (Entry* ways = entry_of(entry, "one-of")) {
                for (Node& way : ways->value.items) {
                    gather_alternative(way, name != nullptr ? name->value.text : "");
                }
            } else {
                things_[id_of(entry)].push_back(&entry);
            }
        }
        things_.erase("");
        for (const auto& [id, nodes] : things_) {
            known_.push_back(id);
        }
    }

    void gather_alternative(Node& way, const std::string& choice)
    {
        Entry* group = entry_of(way, "items");
        std::vector<Node*> nodes;
        if (way.kind == NodeKind::list || group != nullptr) {
            for (Node& thing : group != nullptr ? group->value.items : way.items) {
                nodes.push_back(&thing);
            }
        } else {
            nodes.push_back(&way);
        }
        for (Node* node : nodes) {
            things_[id_of(*node)].push_back(node);
        }
        if (!nodes.empty() && !choice.empty()) {
            stand_ins_[choice].push_back(nodes.front());
        }
    }

    void gather_offers()
    {
        const auto take = [&](Node& of) {
            if (Entry* offered = entry_of(of, "offered")) {
                offers_.push_back(&offered->value);
                for (const Node& vessel : offered->value.items) {
                    offered_.insert(id_of(vessel));
                }
            }
        };
        Entry* trip = entry_of(made_.document, "trip");
        if (Entry* fuel = trip != nullptr ? entry_of(trip->value, "fuel") : nullptr) {
            take(fuel->value);
        }
        if (Entry* food = trip != nullptr ? entry_of(trip->value, "food") : nullptr) {
            for (Node& portion : food->value.items) {
                take(portion);
            }
        }
        known_.insert(known_.end(), offered_.begin(), offered_.end());
    }

    /// An offered vessel may be gone; its contents are used up anyway.
    void treat_offer(const std::string& id, Place place, const std::string& key)
    {
        if (key != "gone") {
            reading_.problems.add(
                place, in_quotes(id) + " is offered for the trip",
                "delete it here: on the way back, fuel but for the reserve counts as used, and food as "
                "eaten; or name it under 'gone', and what comes back instead under 'added'");
            return;
        }
        leave(id);
    }

    /// The things of that id, or what a choice of that name may take; reports a name that is unknown, and one that was
    /// named before where that makes no sense.
    void each_thing(const std::string& name, Place place, const std::string& key,
                    const std::function<void(Node&)>& treat)
    {
        if (offered_.contains(name)) {
            treat_offer(name, place, key);
            return;
        }
        const bool is_thing = things_.contains(name);
        const auto found = is_thing ? things_.find(name) : stand_ins_.find(name);
        if (found == (is_thing ? things_.end() : stand_ins_.end())) {
            constexpr std::size_t most_compared = 500, most_suggested = 100; // keep a file of many faults quick
            const bool compare = known_.size() <= most_compared && unknown_++ < most_suggested;
            const auto meant = compare ? mistyped(name, known_) : std::nullopt;
            reading_.problems.add(place, "there is no item with the id " + in_quotes(name),
                                  meant ? "did you mean " + in_quotes(*meant) + "?"
                                        : "name the id of an item of this kit");
            return;
        }
        std::set<std::string>& before = named_[name];
        const bool is_gone = before.contains("gone") || (key == "gone" && !before.empty());
        const bool is_used_twice = (key == "empty" && before.contains("left")) || before.contains(key);
        if (is_gone || is_used_twice) {
            reading_.problems.add(place,
                                  in_quotes(name) + " is named under '" + *before.begin() + "' already" +
                                      (is_gone ? ", but what is gone is in no other state" : ""),
                                  "keep one of the two");
            return;
        }
        before.insert(key);
        for (Node* node : found->second) {
            treat(*node);
        }
    }

    /// The names in a value that is one or a list of them.
    void each_name(const Fields& fields, const std::string& key, const std::function<void(const Node&)>& treat)
    {
        const Node* value = fields.find(key);
        const std::vector<Node> single = value != nullptr ? std::vector<Node>{*value} : std::vector<Node>();
        for (const Node& name : value != nullptr && value->kind == NodeKind::list ? value->items : single) {
            if (name.kind == NodeKind::text) {
                treat(name);
            } else if (name.kind != NodeKind::unusable) {
                reading_.problems.add(name.place, "an entry of " + key + " is " + kind_name(name) + ", not an id",
                                      "write it such as '" + key + ": [oats, salt]'");
            }
        }
    }

    void each_field(const Fields& fields, const std::string& key, const std::string& example,
                    const std::function<void(const Entry&)>& treat)
    {
        const Node* value = fields.find(key);
        if (value == nullptr) {
            return;
        }
        if (value->kind != NodeKind::map) {
            reading_.problems.add(value->place, key + " is given as " + kind_name(*value) + ", not as a group of fields",
                                  "write it such as '" + key + ": " + example + "'");
            return;
        }
        for (const Entry& entry : value->entries) {
            if (entry.value.kind == NodeKind::nothing) {
                reading_.problems.add(entry.place, in_quotes(entry.key) + " has no value",
                                      "write it such as '" + key + ": " + example + "'");
            } else {
                treat(entry);
            }
        }
    }

    void use_up(const Fields& fields)
    {
        each_field(fields, "left", "{spirit: 60 g}", [&](const Entry& entry) {
            const bool has_some = hold_something(entry.key, entry.place);
            each_thing(entry.key, entry.place, "left", [&](Node& thing) {
                set_amount(thing, entry.value);
                if (has_some) {
                    made_.left.push_back({id_of(thing), entry.value.place});
                }
            });
        });
        each_name(fields, "empty", [&](const Node& name) {
            hold_something(name.text, name.place);
            each_thing(name.text, name.place, "empty", [&](Node& thing) { empty_out(thing, name.place); });
        });
    }

    /// Whether a thing, if there is one of that name, has contents; reports it if it has none.
    bool hold_something(const std::string& name, Place place)
    {
        const bool is_thing = things_.contains(name);
        const auto& all = is_thing ? things_ : stand_ins_;
        const auto found = all.find(name);
        const auto holds = [](const Node* thing) { return entry_of(*thing, "contents") != nullptr; };
        const bool has_none = found != all.end() && std::none_of(found->second.begin(), found->second.end(), holds);
        if (has_none) {
            reading_.problems.add(place, in_quotes(name) + " has no contents that could be used up",
                                  "name what has 'contents', or give its weight on the way back under 'changed'");
        }
        return !has_none;
    }

    void change_things(const Node& list)
    {
        if (list.kind != NodeKind::list) {
            reading_.problems.add(list.place, "changed is " + kind_name(list) + ", not a list",
                                  "start each thing with '- id:', and give the fields that differ");
            return;
        }
        for (const Node& entry : list.items) {
            const Entry* id = entry_of(entry, "id");
            if (id != nullptr && id->value.kind == NodeKind::text) {
                each_thing(id->value.text, id->value.place, "changed",
                           [&](Node& thing) { change(thing, entry, "id"); });
            } else if (entry.kind != NodeKind::unusable) {
                reading_.problems.add(entry.place, "an entry of changed does not say which thing it is about",
                                      "start it with '- id:', and give the fields that differ");
            }
        }
    }

    void leave(const std::string& id)
    {
        made_.gone[id] = {in_quotes(id) + " does not come back, but this cannot be without it",
                          "put this thing under 'gone' too, or change it under 'changed'"};
    }

    /// Takes out what is gone. Alternatives stay, even of nothing, for they are counted.
    void erase_gone()
    {
        if (items_ == nullptr || made_.gone.empty()) {
            return;
        }
        const auto is_gone = [&](const Node& thing) { return made_.gone.contains(id_of(thing)); };
        for (Node* list : offers_) {
            std::erase_if(list->items, is_gone);
        }
        std::erase_if(items_->items, is_gone);
        for (Node& entry : items_->items) {
            Entry* ways = entry_of(entry, "one-of");
            for (std::size_t w = 0; ways != nullptr && w < ways->value.items.size(); ++w) {
                Node& way = ways->value.items[w];
                Entry* group = entry_of(way, "items");
                std::erase_if(group != nullptr ? group->value.items : way.items, is_gone);
                if (is_gone(way)) {
                    way = text_at(way.place, std::string(nothing_word));
                }
            }
        }
    }

    void add_things(const Node& list)
    {
        if (list.kind != NodeKind::list) {
            reading_.problems.add(list.place, "added is " + kind_name(list) + ", not a list",
                                  "start each thing with '- id:', as under 'items'");
            return;
        }
        for (const Node& thing : list.items) {
            if (entry_of(thing, "one-of") != nullptr || entry_of(thing, "choice") != nullptr) {
                reading_.problems.add(thing.place, "there is a choice among what is added",
                                      "make the choice under 'items', or decide");
                continue;
            }
            const std::string id = id_of(thing);
            if (!things_.contains(id)) {
                made_.added[id] = {in_quotes(id) + " comes only on the way back",
                                   "list it under 'items', or say this under 'changed' in 'way-back'"};
            }
            if (items_ != nullptr && items_->kind == NodeKind::list) {
                items_->items.push_back(thing);
            }
        }
    }

    void add_waivers(const Entry& waive)
    {
        Entry* before = entry_of(made_.document, "waive");
        if (before == nullptr) {
            made_.document.entries.push_back(waive);
        } else if (before->value.kind == NodeKind::list && waive.value.kind == NodeKind::list) {
            auto& rules = before->value.items;
            rules.insert(rules.end(), waive.value.items.begin(), waive.value.items.end());
        } else if (waive.value.kind != NodeKind::list) {
            before->value = waive.value; // which is told when it is read
        }
    }

    Reading& reading_;
    WayBackDocument made_;
    Node* items_ = nullptr;
    std::map<std::string, std::vector<Node*>> things_; ///< by id; several where alternatives share one
    std::map<std::string, std::vector<Node*>>
        stand_ins_;                 ///< by the name of a choice, the first thing of each alternative
    std::vector<Node*> offers_;     ///< lists of vessels for the trip
    std::set<std::string> offered_; ///< their ids
    std::vector<std::string_view> known_;
    std::size_t unknown_ = 0;                            ///< names that no item has
    std::map<std::string, std::set<std::string>> named_; ///< under which keys
};

} // namespace

std::optional<WayBackDocument> way_back_of(Reading& reading, const Node& document)
{
    const Entry* given = entry_of(document, "way-back");
    if (given == nullptr || given->value.kind == NodeKind::nothing || given->value.kind == NodeKind::unusable) {
        return std::nullopt; // told when the document is read
    }
    return GoingBack(reading, document).done(*given);
}

} // namespace tuckwright::reading
