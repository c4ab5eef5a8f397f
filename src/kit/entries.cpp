// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/entries.hpp"

#include <algorithm>
#include <array>

namespace tuckwright::reading {

namespace {

constexpr std::array<std::string_view, 7> outsides{"cylinder", "box", "sheet", "cloth", "pouch", "bag", "band"};

bool is_outside(const std::string& key) { return std::find(outsides.begin(), outsides.end(), key) != outsides.end(); }

} // namespace

const Entry* entry_of(const Node& node, std::string_view key)
{
    const auto found =
        std::find_if(node.entries.begin(), node.entries.end(), [&](const Entry& e) { return e.key == key; });
    return found != node.entries.end() ? &*found : nullptr;
}

Entry* entry_of(Node& node, std::string_view key)
{
    const auto found =
        std::find_if(node.entries.begin(), node.entries.end(), [&](const Entry& e) { return e.key == key; });
    return found != node.entries.end() ? &*found : nullptr;
}

std::string id_of(const Node& item)
{
    const Entry* id = entry_of(item, "id");
    return id != nullptr && id->value.kind == NodeKind::text ? id->value.text : "";
}

void change(Node& thing, const Node& given, std::string_view naming)
{
    for (const Entry& field : given.entries) {
        if (field.key == naming) {
            continue;
        }
        std::erase_if(thing.entries, [&](const Entry& old) {
            return old.key == field.key || (is_outside(field.key) && is_outside(old.key));
        });
        if (field.value.kind != NodeKind::text || field.value.text != nothing_word) {
            thing.entries.push_back(field);
        }
    }
}

} // namespace tuckwright::reading
