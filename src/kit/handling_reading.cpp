// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/handling_reading.hpp"

#include <array>

#include "kit/item_reading.hpp"
#include "kit/kinds.hpp"

namespace tuckwright::reading {

namespace {

constexpr std::array<std::string_view, 4> reach_words{"any", "first", "early", "last"};
constexpr int highest_priority = 1000;
static_assert(reach_words.size() == static_cast<std::size_t>(Wanted::last) + 1);

} // namespace

void read_handling(Reading& reading, Fields& fields, ItemDraft& draft)
{
    Item& item = draft.item;
    if (const Node* node = fields.find("nothing-on-top")) {
        const auto free = read_yes_or_no(reading, *node, "nothing-on-top");
        item.nothing_on_top = free.value_or(false);
        if (free && !*free) {
            draft.topped_place = node->place;
        }
    }
    if (const Node* node = fields.find("bears")) {
        item.bears_g = read_weight(reading, *node, "bears");
    }
    draft.tells_load = fields.given("nothing-on-top") || fields.given("bears");
    if (item.nothing_on_top && item.bears_g) {
        fields.refuse("bears", "'bears' says how much may lie on it, but 'nothing-on-top: yes' that nothing may",
                      "keep one of the two");
    }
    if (const Node* node = fields.find("priority")) {
        item.priority = read_whole(reading, *node, "priority", 1, highest_priority).value_or(1);
    }
    if (const Node* node = fields.find("must-have")) {
        item.must_have = read_yes_or_no(reading, *node, "must-have").value_or(false);
    }
    if (const Node* node = fields.find("reach")) {
        const auto word = read_word(reading, *node, "reach", reach_words);
        item.reach = word ? static_cast<Wanted>(*word) : Wanted::any;
    }
}

void keep_tops_free(Reading& reading, std::vector<ItemDraft>& drafts, const Waivers& waivers)
{
    if (waivers.waives(fragile_top())) {
        return;
    }
    for (ItemDraft& draft : drafts) {
        if (!is_of_kind(draft.item, Kind::fragile)) {
            continue;
        }
        if (draft.topped_place && !draft.item.bears_g) {
            reading.problems.add(*draft.topped_place,
                                 "'nothing-on-top: no' is against the usual rule fragile-top: " +
                                     usual_rule_reason(fragile_top()),
                                 "say what it 'bears', or waive the rule at the top of the file, with a reason: "
                                 "'waive: [{rule: fragile-top, why: ...}]'");
        }
        draft.item.nothing_on_top = draft.item.nothing_on_top || !draft.tells_load;
    }
}

} // namespace tuckwright::reading
