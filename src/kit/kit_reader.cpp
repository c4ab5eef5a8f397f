// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/kit_reading.hpp"

#include <algorithm>
#include <array>
#include <iterator>

#include "kit/carry_rules.hpp"
#include "kit/cover_reading.hpp"
#include "kit/handling_reading.hpp"
#include "kit/item_reading.hpp"
#include "kit/lid_checks.hpp"
#include "kit/press_reading.hpp"
#include "kit/rule_reading.hpp"
#include "kit/trip_reading.hpp"

namespace tuckwright::reading
{

namespace
{

constexpr std::array<std::string_view, 12> kit_keys{"version", "kit",   "shelf", "units",     "clearance",  "bundle",
                                                    "items",   "waive", "trip",  "tolerance", "worst-case", "way-back"};
constexpr std::array<std::string_view, 2> needed_of_kit{"kit", "items"};
constexpr double usual_clearance = 0.5; // mm
constexpr std::size_t most_copies = 500;

void report_too_many(Reading& reading, Place place, std::size_t copies)
{
    reading.problems.add(place,
                         "the kit has " + std::to_string(copies) + " items, copies counted, but may have at most " +
                             std::to_string(most_copies),
                         "leave some out, or count a bag of small ones as one item");
}

/// Reads each item, or only as many as there may be.
std::vector<ItemDraft> read_drafts(Reading& reading, const Node& list)
{
    std::vector<ItemDraft> drafts;
    std::size_t copies = list.items.size();
    for (std::size_t i = 0; i < std::min(list.items.size(), most_copies); ++i) {
        drafts.push_back(read_item(reading, list.items[i]));
        copies += static_cast<std::size_t>(drafts.back().item.count - 1);
    }
    if (copies > most_copies) {
        report_too_many(reading, list.place, copies);
    }
    return drafts;
}

/// The offers of a trip are read and checked as items are, behind those of the kit.
void read_items(Reading& reading, Fields& fields, const Waivers& waivers, Kit& kit)
{
    const Node* trip_node = fields.find("trip");
    auto trip = trip_node != nullptr ? std::optional(read_trip(reading, *trip_node)) : std::nullopt;
    const Node* node = fields.need("items", "list what must go along under 'items:', each thing starting with '- id:'");
    if (node == nullptr) {
        return;
    }
    if (node->kind != NodeKind::list) {
        reading.problems.add(node->place, "items is " + kind_name(*node) + ", not a list",
                             "start each item with '- id:'");
        return;
    }
    if (node->items.empty()) {
        reading.problems.add(node->place, "the kit has no items", "list at least one under 'items:'");
        return;
    }
    auto drafts = read_drafts(reading, *node);
    const std::size_t own = drafts.size();
    if (trip) {
        std::move(trip->offers.begin(), trip->offers.end(), std::back_inserter(drafts));
    }
    IdIndex ids(drafts);
    check_ids(reading, drafts, ids);
    check_lids(reading, drafts, ids);
    check_offers(reading, drafts, own);
    check_presses(reading, drafts, ids);
    check_bands(reading, drafts, ids);
    kit.rules = carry_rules(reading, drafts, ids, waivers);
    keep_tops_free(reading, drafts, waivers);
    take_items(reading, drafts, node->place, kit);
    if (trip) {
        take_trip(kit, std::move(trip->trip));
    }
}

} // namespace

Kit read_kit(Reading& reading, const Node& node)
{
    Kit kit;
    const KnownFields known{kit_keys, "kit: Soup for two', then 'items:", needed_of_kit, keys_of_item(),
                            "it is for one thing: put it into that thing's entry under 'items'"};
    Fields fields(reading, node, "a kit file", known);
    if (!fields.is_map()) {
        return kit;
    }
    if (const Node* version = fields.find("version")) {
        read_whole(reading, *version, "version", 1, 1);
    }
    if (const Node* units = fields.find("units")) { // first, for they say what every plain number means
        reading.units = read_units(reading, *units);
    }
    if (const Node* name = fields.need("kit", "name the kit, such as 'kit: Soup for two'")) {
        kit.name = read_text(reading, *name, "kit").value_or("");
    }
    if (const Node* tolerance = fields.find("tolerance")) {
        reading.usual_tolerance =
            read_length(reading, *tolerance, "tolerance", AtLeast::zero).value_or(reading.usual_tolerance);
    }
    if (const Node* worst = fields.find("worst-case")) {
        kit.worst_case = read_yes_or_no(reading, *worst, "worst-case").value_or(false);
    }
    const Node* clearance = fields.find("clearance");
    kit.clearance = clearance != nullptr ? read_clearance(reading, *clearance) : usual_clearance;
    if (const Node* bundle = fields.find("bundle")) {
        kit.bundle = read_bundle_rule(reading, *bundle);
    }
    const Node* waive = fields.find("waive");
    const Waivers waivers = waive != nullptr ? read_waivers(reading, *waive) : Waivers{};
    kit.waived = waivers.words;
    read_items(reading, fields, waivers, kit);
    return kit;
}

} // namespace tuckwright::reading
