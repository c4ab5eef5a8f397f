// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/references.hpp"

#include <algorithm>
#include <array>
#include <string_view>

namespace tuckwright::reading {

namespace {

constexpr std::array<std::string_view, 4> rules_of_carrying{"goes-in", "not-in", "apart-from", "together-with"};

/// Groups of fields one of which names the item that the thing cannot do without.
struct Bond {
    std::string_view group, field;
};
constexpr std::array<Bond, 3> bonds{Bond{"closes", "item"}, Bond{"press-fit", "into"}, Bond{"band", "over"}};

/// Puts an id in the place of a name that stands for it, and says what that stands for.
const StandIn* stand_in(Node& name, const KnownNames& names)
{
    const bool is_name = name.kind == NodeKind::text && !names.along.contains(name.text);
    const auto found = is_name ? names.stands_for.find(name.text) : names.stands_for.end();
    if (found == names.stands_for.end()) {
        return nullptr;
    }
    name.text = found->second.id;
    return &found->second;
}

/// What is known of a name that is that of something absent.
const Absent* absent(const Node& name, const KnownNames& names)
{
    if (name.kind != NodeKind::text || names.along.contains(name.text)) {
        return nullptr;
    }
    const auto found = names.absent.find(name.text);
    return found != names.absent.end() ? &found->second : nullptr;
}

void refuse(Reading& reading, Node& name, const Absent& missing)
{
    reading.problems.add(name.place, missing.what, missing.remedy);
    name.kind = NodeKind::unusable;
}

/// Whether anything is left of the rule.
bool settle_rule(Reading& reading, std::string_view key, Node& value, const KnownNames& names)
{
    const auto is_void = [&](Node& name) {
        if (const StandIn* found = stand_in(name, names)) {
            return key == "not-in" && !found->is_vessel;
        }
        const Absent* missing = absent(name, names);
        if (missing != nullptr && missing->is_on_shelf && name.place.file == 0) {
            refuse(reading, name, *missing);
            return false;
        }
        return missing != nullptr;
    };
    if (value.kind != NodeKind::list) {
        return !is_void(value);
    }
    return std::erase_if(value.items, is_void) == 0 || !value.items.empty();
}

void settle_bond(Reading& reading, Node& group, std::string_view field, const KnownNames& names)
{
    for (Entry& entry : group.entries) {
        if (entry.key != field) {
            continue;
        }
        stand_in(entry.value, names);
        if (const Absent* missing = absent(entry.value, names)) {
            refuse(reading, entry.value, *missing);
        }
    }
}

} // namespace

void settle_references(Reading& reading, Node& item, const KnownNames& names)
{
    std::erase_if(item.entries, [&](Entry& entry) {
        const bool is_rule =
            std::find(rules_of_carrying.begin(), rules_of_carrying.end(), entry.key) != rules_of_carrying.end();
        return is_rule && !settle_rule(reading, entry.key, entry.value, names);
    });
    for (Entry& entry : item.entries) {
        for (const Bond& bond : bonds) {
            if (entry.key == bond.group) {
                settle_bond(reading, entry.value, bond.field, names);
            }
        }
    }
}

} // namespace tuckwright::reading
