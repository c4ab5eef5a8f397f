// SPDX-License-Identifier: GPL-3.0-or-later
#include "advice/kept_places.hpp"

#include <algorithm>
#include <functional>
#include <set>

#include "solve/compacted.hpp"
#include "tuckwright/shape.hpp"

namespace tuckwright::advice {

namespace {

constexpr const char* staying = "so that it stays where it was"; // a rule's reason, for a search only

const Item* item_of(const Kit& kit, const std::string& id)
{
    const auto found =
        std::find_if(kit.items.begin(), kit.items.end(), [&](const Item& item) { return item.id == id; });
    return found != kit.items.end() ? &*found : nullptr;
}

/// Where a thing of that id and copy is; the number of things where there is none.
std::size_t place_of(const Carried& things, const std::string& id, int copy)
{
    const auto found = std::find_if(things.begin(), things.end(), [&](const CarriedThing& thing) {
        return thing.id == id && (copy == 0 || thing.copy == copy);
    });
    return static_cast<std::size_t>(found - things.begin());
}

/// Whether something lies in the thing, or is shut on it.
bool is_free(const Bundle& bundle, std::size_t item)
{
    return std::none_of(bundle.items.begin(), bundle.items.end(), [&](const PlacedItem& other) {
        return (other.in && other.in->item == item) || other.closes == item;
    });
}

/// The bundle without the things that a test names, one after the other from the last on.
Bundle without_those(Bundle bundle, const std::function<bool(const Bundle&, std::size_t)>& is_gone)
{
    for (std::size_t k = bundle.items.size(); k-- > 0;) {
        if (is_gone(bundle, k)) {
            bundle = without(bundle, k);
            k = bundle.items.size();
        }
    }
    return bundle;
}

Bundle without_gone(const Bundle& bundle, const Kit& back)
{
    return without_those(bundle, [&](const Bundle& now, std::size_t k) {
        const Item* item = item_of(back, now.items[k].id);
        return item == nullptr || now.items[k].copy > item->count;
    });
}

/// The things on the way back as they lay before; what is added lies where the kit puts it, or anywhere.
Carried as_before(const Bundle& remaining, const Kit& back)
{
    Carried things = carried(remaining);
    const std::size_t old = things.size();
    for (const Item& item : back.items) {
        for (int copy = 1; copy <= item.count; ++copy) {
            if (place_of(things, item.id, copy) == things.size()) {
                things.push_back({item.id, copy, std::nullopt, std::nullopt, true});
            }
        }
    }
    for (const CarryRule& rule : back.rules) {
        for (std::size_t k = old; k < things.size(); ++k) {
            const std::size_t vessel = place_of(things, rule.second, 0);
            const bool is_told = rule.keep == Keep::within && rule.first == things[k].id && vessel < things.size();
            if (is_told && vessel != k) {
                things[k].in = vessel;
                things[k].anywhere = false;
            }
        }
    }
    return things;
}

bool is_put_by_kit(const Kit& kit, const std::string& id)
{
    return std::any_of(kit.rules.begin(), kit.rules.end(),
                       [&](const CarryRule& rule) { return rule.keep == Keep::within && rule.first == id; });
}

bool lies_in(const Carried& things, std::size_t inner, std::size_t outer)
{
    const auto chain = chain_of(things, inner);
    return std::find(chain.begin(), chain.end(), outer) != chain.end();
}

/// Whether one of the two lies in the other.
bool is_nested(const Carried& things, std::size_t a, std::size_t b)
{
    return lies_in(things, a, b) || lies_in(things, b, a);
}

void let_go(CarriedThing& thing)
{
    thing.anywhere = true;
    thing.in.reset();
    thing.closes.reset();
}

/// Which of two things gives way, so that a rule that they break is kept.
std::size_t giving_way(const Kit& kit, const Carried& things, const CarryRule& rule, std::size_t first,
                       std::size_t second)
{
    if (rule.keep != Keep::apart) {
        return first;
    }
    if (is_nested(things, first, second)) {
        return lies_in(things, first, second) ? first : second;
    }
    const bool first_is_put = is_put_by_kit(kit, rule.first), second_is_put = is_put_by_kit(kit, rule.second);
    if (first_is_put != second_is_put) {
        return first_is_put ? second : first;
    }
    const auto size = [&](std::size_t thing) { return volume_ml(item_of(kit, things[thing].id)->outside); };
    return size(first) < size(second) ? first : second;
}

/// Lets what cannot stay, by the rules or because its vessel takes nothing now, lie anywhere; a lid too, if it must.
void loosen(const Kit& back, Carried& things)
{
    for (CarriedThing& thing : things) {
        if (thing.in && !thing.closes && holds_nothing(*item_of(back, things[*thing.in].id))) {
            let_go(thing);
        }
    }
    for (const bool only_nested :
         {true, false}) { // what is contained cannot stay; which of two neighbours goes is open
        for (bool is_sound = false; !is_sound;) {
            is_sound = true;
            for (const CarryRule& rule : back.rules) {
                const auto pair = broken(things, rule);
                if (pair &&
                    (!only_nested || rule.keep != Keep::apart || is_nested(things, pair->first, pair->second))) {
                    let_go(things[giving_way(back, things, rule, pair->first, pair->second)]);
                    is_sound = false;
                }
            }
        }
    }
}

/// The bundle without what may lie anywhere and all that lies in that, the innermost first.
Bundle without_loose(Bundle bundle, const Carried& things)
{
    std::set<std::pair<std::string, int>> gone;
    for (std::size_t k = 0; k < things.size(); ++k) {
        const auto chain = chain_of(things, k);
        if (things[k].anywhere || (!chain.empty() && things[chain.back()].anywhere)) {
            gone.insert({things[k].id, things[k].copy});
        }
    }
    return without_those(std::move(bundle), [&](const Bundle& now, std::size_t k) {
        return is_free(now, k) && gone.erase({now.items[k].id, now.items[k].copy}) > 0;
    });
}

/// Where all copies of a thing are alike: the id of their container, empty for the bundle itself.
std::optional<std::string> common_container(const Carried& things, const std::string& id)
{
    std::optional<std::string> found;
    for (const CarriedThing& thing : things) {
        if (thing.id != id) {
            continue;
        }
        const std::string in = thing.in ? things[*thing.in].id : "";
        if (thing.anywhere || thing.closes || (found && *found != in)) {
            return std::nullopt;
        }
        found = in;
    }
    return found;
}

} // namespace

bool holds_nothing(const Item& item)
{
    const bool has_inside =
        item.inside || item.pouch || (item.sheet && item.sheet->roll) ||
        std::any_of(item.forms.begin(), item.forms.end(), [](const Stowage& form) { return form.inside.has_value(); });
    return item.closes || item.is_full() || !has_inside;
}

KeptPlaces kept_places(const Bundle& out, const Kit& back)
{
    KeptPlaces kept;
    kept.pattern = without_gone(out, back);
    kept.things = as_before(kept.pattern, back);
    loosen(back, kept.things);
    kept.pattern = without_loose(std::move(kept.pattern), kept.things);
    return kept;
}

Kit with_vessels_kept(const Kit& back, const KeptPlaces& kept)
{
    Kit kit = back;
    const auto add = [&](Keep keep, const std::string& first, const std::string& second) {
        const bool is_there = std::any_of(kit.rules.begin(), kit.rules.end(), [&](const CarryRule& rule) {
            return rule.keep == keep && rule.first == first && rule.second == second;
        });
        if (!is_there) {
            kit.rules.push_back({keep, first, second, staying});
        }
    };
    for (const CarriedThing& thing : kept.things) {
        if (thing.closes && thing.copy == 1) {
            add(Keep::shut, thing.id, kept.things[*thing.closes].id);
        }
        const auto container = thing.copy == 1 ? common_container(kept.things, thing.id) : std::nullopt;
        if (!container) {
            continue;
        }
        if (!container->empty()) {
            add(Keep::within, thing.id, *container);
        }
        std::set<std::string> around{thing.id};
        for (const std::size_t outer : chain_of(kept.things, place_of(kept.things, thing.id, 1))) {
            around.insert(kept.things[outer].id);
        }
        for (const Item& vessel : back.items) {
            if (!holds_nothing(vessel) && !around.contains(vessel.id)) {
                add(Keep::out, thing.id, vessel.id);
            }
        }
    }
    return kit;
}

} // namespace tuckwright::advice
