// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/carry_reading.hpp"

#include <algorithm>
#include <array>
#include <set>

#include "kit/kinds.hpp"
#include "kit/words.hpp"

namespace tuckwright::reading
{

namespace
{

constexpr std::array<std::string_view, 2> waiver_keys{"rule", "why"};
constexpr KnownFields waiver_fields{waiver_keys, "- {rule: fuel-food, why: the bottle is in a dry bag of its own}",
                                    waiver_keys};

/// The words of a value that is one word or a list of words; reports whatever else it holds.
std::vector<const Node*> words_in(Reading& reading, const Node& node, const std::string& key,
                                  const std::string& example)
{
    const std::string remedy = "write it such as '" + key + ": " + example + "'";
    std::vector<const Node*> words;
    const auto take = [&](const Node& word, const std::string& subject) {
        if (word.kind == NodeKind::text && word.text.find(',') != std::string::npos) {
            reading.problems.add(word.place, subject + " is " + in_quotes(word.text) + ", several words without brackets",
                                 remedy);
        } else if (word.kind == NodeKind::text) {
            words.push_back(&word);
        } else if (word.kind != NodeKind::unusable) {
            reading.problems.add(word.place, subject + " is " + kind_name(word) + ", not a word", remedy);
        }
    };
    if (node.kind != NodeKind::list) {
        take(node, key);
    } else if (node.items.empty()) {
        reading.problems.add(node.place, key + " is an empty list", "name at least one, or delete the line");
    } else {
        for (const Node& entry : node.items) {
            take(entry, "an entry of " + key);
        }
    }
    return words;
}

std::vector<Named> read_ids(Reading& reading, const Fields& item, const std::string& key)
{
    std::vector<Named> ids;
    if (const Node* node = item.find(key)) {
        for (const Node* word : words_in(reading, *node, key, "[pot, cup]")) {
            ids.push_back({word->text, word->place});
        }
    }
    return ids;
}

std::optional<Named> read_goes_in(Reading& reading, const Fields& item)
{
    const Node* node = item.find("goes-in");
    if (node == nullptr || node->kind == NodeKind::unusable) {
        return std::nullopt;
    }
    if (node->kind != NodeKind::text) {
        reading.problems.add(node->place, "goes-in is " + kind_name(*node) + ", not the id of one vessel",
                             "name one, such as 'goes-in: pot'");
        return std::nullopt;
    }
    return Named{node->text, node->place};
}

std::string trimmed(const std::string& text)
{
    const auto start = text.find_first_not_of(' ');
    return start == std::string::npos ? "" : text.substr(start, text.find_last_not_of(' ') - start + 1);
}

/// Whether a text can be a reason at all: some letters, of whatever alphabet.
bool has_letters(std::string_view text)
{
    constexpr std::ptrdiff_t fewest = 3;
    return std::count_if(text.begin(), text.end(), [](char c) {
               return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || static_cast<unsigned char>(c) >= 0x80U;
           }) >= fewest;
}

std::optional<std::string> read_why(Reading& reading, Fields& fields)
{
    const Node* node = fields.need("why", "say in a few words why this kit can do without the rule");
    const auto text = node != nullptr ? read_text(reading, *node, "why") : std::nullopt;
    if (text && !has_letters(*text)) {
        reading.problems.add(node->place, "why is " + in_quotes(*text) + ", which is no reason",
                             "say in a few words why this kit can do without the rule");
        return std::nullopt;
    }
    return text ? std::optional(trimmed(*text)) : std::nullopt;
}

void read_waiver(Reading& reading, const Node& node, Waivers& waivers)
{
    Fields fields(reading, node, "a waived rule", waiver_fields);
    const Node* word = fields.need("rule", "name the rule, such as 'rule: fuel-food'");
    const auto why = read_why(reading, fields);
    if (word == nullptr) {
        return;
    }
    const auto rule = read_word(reading, *word, "rule", usual_rule_words());
    if (!rule) {
        return;
    }
    if (const auto& first = waivers.places[*rule]) {
        reading.problems.add(word->place,
                             "the rule " + in_quotes(word->text) + " is waived twice, first in line " +
                                 std::to_string(first->line + 1),
                             "keep one of the two");
        return;
    }
    waivers.places[*rule] = word->place;
    if (why) {
        waivers.words.push_back(waived_for(*rule, *why));
    }
}

} // namespace

std::vector<Kind> read_kinds(Reading& reading, const Node& node)
{
    std::set<Kind> kinds;
    for (const Node* word : words_in(reading, node, "kind", "[fuel, liquid]")) {
        if (const auto kind = read_word(reading, *word, "kind", kind_words())) {
            kinds.insert(static_cast<Kind>(*kind));
        }
    }
    return {kinds.begin(), kinds.end()};
}

CarryDraft read_carry(Reading& reading, const Fields& item)
{
    return {read_goes_in(reading, item), read_ids(reading, item, "not-in"), read_ids(reading, item, "apart-from"),
            read_ids(reading, item, "together-with")};
}

Waivers read_waivers(Reading& reading, const Node& node)
{
    Waivers waivers{std::vector<std::optional<Place>>(usual_rule_words().size()), {}};
    if (node.kind != NodeKind::list) {
        reading.problems.add(node.place, "waive is " + kind_name(node) + ", not a list",
                             "start each rule with '- rule:', and give its 'why'");
    } else if (node.items.empty()) {
        reading.problems.add(node.place, "waive is an empty list", "name at least one rule, or delete the line");
    }
    for (const Node& entry : node.items) {
        read_waiver(reading, entry, waivers);
    }
    return waivers;
}

} // namespace tuckwright::reading
