// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/references.hpp"

#include <algorithm>
#include <array>
#include <string_view>

namespace tuckwright::reading
{

namespace
{

constexpr std::array<std::string_view, 4> rules_of_carrying{"goes-in", "not-in", "apart-from", "together-with"};

/// Groups of fields one of which names the item that the thing cannot do without.
struct Bond {
    std::string_view group, field;
};
constexpr std::array<Bond, 3> bonds{Bond{"closes", "item"}, Bond{"press-fit", "into"}, Bond{"band", "over"}};

/// Whether the name is that of something absent; puts an id in the place of a name that stands for it.
const Absent* settle(Node& name, const KnownNames& names)
{
    if (name.kind != NodeKind::text || names.along.contains(name.text)) {
        return nullptr;
    }
    if (const auto found = names.stands_for.find(name.text); found != names.stands_for.end()) {
        name.text = found->second;
        return nullptr;
    }
    const auto found = names.absent.find(name.text);
    return found != names.absent.end() ? &found->second : nullptr;
}

/// Whether anything is left of the rule.
bool settle_rule(Node& value, const KnownNames& names)
{
    if (value.kind != NodeKind::list) {
        return settle(value, names) == nullptr;
    }
    const auto is_absent = [&](Node& name) { return settle(name, names) != nullptr; };
    return std::erase_if(value.items, is_absent) == 0 || !value.items.empty();
}

void settle_bond(Reading& reading, Node& group, std::string_view field, const KnownNames& names)
{
    for (Entry& entry : group.entries) {
        if (entry.key != field) {
            continue;
        }
        if (const Absent* absent = settle(entry.value, names)) {
            reading.problems.add(entry.value.place, absent->what, absent->remedy);
            entry.value.kind = NodeKind::unusable;
        }
    }
}

} // namespace

void settle_references(Reading& reading, Node& item, const KnownNames& names)
{
    std::erase_if(item.entries, [&](Entry& entry) {
        const bool is_rule = std::find(rules_of_carrying.begin(), rules_of_carrying.end(), entry.key) !=
                             rules_of_carrying.end();
        return is_rule && !settle_rule(entry.value, names);
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
