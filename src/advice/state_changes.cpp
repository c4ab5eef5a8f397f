// SPDX-License-Identifier: GPL-3.0-or-later
// What differs in the things themselves between the way out and the way back.
#include <algorithm>
#include <fmt/format.h>

#include "report/words.hpp"
#include "tuckwright/there_and_back.hpp"

namespace tuckwright {

namespace {

const Item* item_of(const Kit& kit, const std::string& id)
{
    const auto found =
        std::find_if(kit.items.begin(), kit.items.end(), [&](const Item& item) { return item.id == id; });
    return found != kit.items.end() ? &*found : nullptr;
}

/// The words of kinds, as people say them of a thing.
const char* word(Kind kind)
{
    switch (kind) {
    case Kind::fuel: return "fuel";
    case Kind::flame: return "what makes a flame";
    case Kind::food: return "food";
    case Kind::drink: return "drink";
    case Kind::lips: return "what touches the lips";
    case Kind::sooty: return "sooty";
    case Kind::clean: return "to be kept clean";
    case Kind::soft: return "soft";
    case Kind::sharp: return "sharp";
    case Kind::pressurised: return "under pressure";
    case Kind::liquid: return "a liquid";
    case Kind::fragile: return "fragile";
    case Kind::hot: return "hot after use";
    }
    return "";
}

/// "sooty, soft": the kinds of the first that the second lacks.
std::string kinds_beyond(const Item& one, const Item& other)
{
    std::string text;
    for (const Kind kind : one.kinds) {
        if (std::find(other.kinds.begin(), other.kinds.end(), kind) == other.kinds.end()) {
            text += (text.empty() ? "" : ", ") + std::string(word(kind));
        }
    }
    return text;
}

bool is_alike(const Part& a, const Part& b) { return a == b; }

bool is_alike(const std::optional<Cavity>& a, const std::optional<Cavity>& b)
{
    return a.has_value() == b.has_value() &&
           (!a || (a->shape == b->shape && a->opens == b->opens && a->neck == b->neck));
}

/// Whether a thing has the same size, outside and in, in its own form and the others.
bool is_same_in_size(const Item& a, const Item& b)
{
    const auto same_forms = [](const Stowage& x, const Stowage& y) {
        return x.name == y.name && x.outside == y.outside && x.parts == y.parts && is_alike(x.inside, y.inside);
    };
    const auto same_parts = [](const Part& x, const Part& y) { return is_alike(x, y); };
    const bool same_cloth =
        a.cloth.has_value() == b.cloth.has_value() &&
        (!a.cloth || (a.cloth->volume_ml == b.cloth->volume_ml && a.cloth->thickness == b.cloth->thickness));
    return a.outside == b.outside && is_alike(a.inside, b.inside) && same_cloth &&
           std::equal(a.parts.begin(), a.parts.end(), b.parts.begin(), b.parts.end(), same_parts) &&
           std::equal(a.forms.begin(), a.forms.end(), b.forms.begin(), b.forms.end(), same_forms);
}

std::string left_in_words(const Contents& before, const Contents& after)
{
    if (after.weight_g <= 0) {
        return "empty of " + before.what;
    }
    return fmt::format("{} of {} left of {}", report::weight_in_words(after.weight_g), after.what,
                       report::weight_in_words(before.weight_g));
}

/// What differs in a thing that is there both ways.
void compare(const Item& before, const Item& after, std::vector<StateChange>& changes)
{
    const auto tell = [&](Difference difference, std::string words) {
        changes.push_back({after.id, after.count, difference, std::move(words)});
    };
    if (before.contents && !after.contents) {
        tell(Difference::emptied, "empty of " + before.contents->what);
    } else if (before.contents && after.contents->weight_g < before.contents->weight_g) {
        const bool is_empty = after.contents->weight_g <= 0;
        tell(is_empty ? Difference::emptied : Difference::less_left, left_in_words(*before.contents, *after.contents));
    } else if (after.contents && (!before.contents || after.contents->weight_g > before.contents->weight_g)) {
        tell(Difference::otherwise,
             fmt::format("holds {} of {}", report::weight_in_words(after.contents->weight_g), after.contents->what));
    }
    const std::string more = kinds_beyond(after, before), less = kinds_beyond(before, after);
    if (!more.empty() || !less.empty()) {
        tell(Difference::other_kind,
             more + (more.empty() || less.empty() ? "" : "; ") + (less.empty() ? "" : "no longer " + less));
    }
    if (before.weight_g != after.weight_g) {
        tell(Difference::otherwise, fmt::format("weighs {} instead of {}{}", report::weight_in_words(after.weight_g),
                                                report::weight_in_words(before.weight_g),
                                                before.contents || after.contents ? ", without contents" : ""));
    }
    if (!is_same_in_size(before, after)) {
        tell(Difference::otherwise, "another size");
    }
}

/// The rules of one kit that another does not have, whatever their reasons.
std::vector<CarryRule> rules_beyond(const Kit& one, const Kit& other)
{
    std::vector<CarryRule> rules;
    for (const CarryRule& rule : one.rules) {
        const bool is_shared = std::any_of(other.rules.begin(), other.rules.end(), [&](const CarryRule& there) {
            return there.keep == rule.keep && there.first == rule.first && there.second == rule.second;
        });
        if (!is_shared) {
            rules.push_back(rule);
        }
    }
    return rules;
}

} // namespace

std::vector<StateChange> state_changes(const BothWays& kits)
{
    std::vector<StateChange> changes;
    for (const Item& before : kits.out.items) {
        const Item* after = item_of(kits.back, before.id);
        const int gone = before.count - (after != nullptr ? after->count : 0);
        if (gone > 0) {
            changes.push_back({before.id, gone, Difference::gone,
                               before.count == gone ? "does not come back"
                                                    : fmt::format("{} of {} do not come back", gone, before.count)});
        } else if (gone < 0) {
            changes.push_back({before.id, -gone, Difference::added, fmt::format("{} more of it", -gone)});
        }
        if (after != nullptr) {
            compare(before, *after, changes);
        }
    }
    for (const Item& after : kits.back.items) {
        if (item_of(kits.out, after.id) == nullptr) {
            changes.push_back({after.id, after.count, Difference::added, "comes only on the way back"});
        }
    }
    return changes;
}

std::vector<CarryRule> new_rules(const BothWays& kits) { return rules_beyond(kits.back, kits.out); }

std::vector<CarryRule> old_rules(const BothWays& kits)
{
    std::vector<CarryRule> rules = rules_beyond(kits.out, kits.back);
    std::erase_if(rules, [&](const CarryRule& rule) {
        return item_of(kits.back, rule.first) == nullptr || item_of(kits.back, rule.second) == nullptr;
    });
    return rules;
}

} // namespace tuckwright
