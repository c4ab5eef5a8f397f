// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/cover_reading.hpp"

#include <algorithm>
#include <array>

#include "kit/words.hpp"

namespace tuckwright::reading
{

namespace
{

constexpr std::array<std::string_view, 3> bag_keys{"girth", "length", "thickness"};
constexpr KnownFields bag_fields{bag_keys, "bag: {girth: 400, length: 220, thickness: 1}", bag_keys};
constexpr std::array<std::string_view, 2> band_keys{"girth", "over"};
constexpr std::array<std::string_view, 1> needed_of_band{"girth"};
constexpr KnownFields band_fields{band_keys, "band: {girth: 300}", needed_of_band};
constexpr std::array<std::string_view, 16> keys_of_others{
    "cylinder", "box",   "sheet",   "cloth", "inside", "closes", "contents",  "upright",
    "parts",    "forms", "goes-in", "not-in", "apart-from", "kind", "count",
    "press-fit"};

std::optional<Length> read_size(Reading& reading, Fields& fields, const std::string& key, const std::string& remedy)
{
    const Node* node = fields.need(key, remedy);
    return node != nullptr ? read_length(reading, *node, key, AtLeast::micrometre) : std::nullopt;
}

} // namespace

void read_cover(Reading& reading, Fields& fields, ItemDraft& draft)
{
    const std::string word = fields.given("bag") ? "bag" : "band";
    if (word == "bag" && fields.given("band")) {
        fields.refuse("band", "an item is a bag or a band, not both", "keep one of the two, or make two items of it");
    }
    for (const std::string_view key : keys_of_others) {
        if (fields.given(key)) {
            fields.refuse(key, "a " + word + " goes round everything and has no '" + std::string(key) + "'",
                          "delete it");
        }
    }
    draft.item.count = 1;
    const Item& item = draft.item;
    const std::string round = "measure round its inside, such as 'girth: 400': laid flat, twice its width";
    draft.is_cover = true;
    if (const Node* node = fields.find("bag")) {
        Fields sizes(reading, *node, "a bag", bag_fields);
        const auto girth = read_size(reading, sizes, "girth", round);
        const auto length = read_size(reading, sizes, "length", "say how high a bundle it closes over");
        const auto thickness = read_size(reading, sizes, "thickness", "say how thick its wall is, such as 'thickness: 1'");
        if (girth && length && thickness) {
            draft.bag = Bag{item.id, item.name, item.weight_g, girth->mm_down(), length->mm_down(), thickness->mm_up()};
        }
    } else if (const Node* band = fields.find("band")) {
        Fields sizes(reading, *band, "a band", band_fields);
        const auto girth = read_size(reading, sizes, "girth", "measure it all the way round, at its longest");
        if (const Node* over = sizes.find("over")) {
            if (const auto lid = read_text(reading, *over, "over")) {
                draft.over = Named{*lid, over->place};
            }
        }
        if (girth) {
            draft.band = Band{item.id, item.name, item.weight_g, girth->mm_down(), draft.over ? draft.over->id : ""};
        }
    }
}

void check_bands(Reading& reading, const std::vector<ItemDraft>& drafts, IdIndex& ids)
{
    for (const ItemDraft& draft : drafts) {
        const Link lid = draft.over ? ids.need(reading, draft.over->id, draft.over->place) : std::nullopt;
        if (!lid) {
            continue;
        }
        if (!drafts[*lid].closes) {
            reading.problems.add(draft.over->place, in_quotes(draft.over->id) + " is no lid that closes something",
                                 "name the lid that the band holds shut, or delete 'over' for a band round everything");
        } else if (drafts[*lid].item.count > 1) {
            reading.problems.add(draft.over->place,
                                 "there are " + std::to_string(drafts[*lid].item.count) + " of " +
                                     in_quotes(draft.over->id),
                                 "a band holds one lid: make items of their own of them, each with its band");
        }
    }
}

void take_items(Reading& reading, std::vector<ItemDraft>& drafts, Place items, Kit& kit)
{
    std::vector<std::size_t> index; // in the kit, for each draft
    for (ItemDraft& draft : drafts) {
        index.push_back(kit.items.size());
        if (!draft.is_cover) {
            kit.items.push_back(std::move(draft.item));
            continue;
        }
        if (draft.bag && kit.bag) {
            reading.problems.add(draft.place, in_quotes(draft.bag->id) + " is a second bag, beside " + in_quotes(kit.bag->id),
                                 "keep the one that goes round the whole bundle");
        } else if (draft.bag) {
            kit.bag = draft.bag;
        } else if (draft.band) {
            kit.bands.push_back(*draft.band);
        }
    }
    for (Item& item : kit.items) {
        if (item.closes) {
            item.closes->item = index[item.closes->item];
        }
        if (item.press) {
            item.press->item = index[item.press->item];
        }
    }
    if (kit.items.empty()) {
        reading.problems.add(items, "the kit holds only what goes round other things", "list what is to be packed too");
    }
}

} // namespace tuckwright::reading
