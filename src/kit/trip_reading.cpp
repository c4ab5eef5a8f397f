// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/trip_reading.hpp"

#include <algorithm>
#include <array>
#include <set>
#include <utility>

#include "kit/trip_figures.hpp"
#include "kit/words.hpp"

namespace tuckwright::reading {

namespace {

constexpr std::array<std::string_view, 10> trip_keys{"people",   "days",     "boils",      "water-each", "start",
                                                     "altitude", "boils-at", "boils-away", "fuel",       "food"};
constexpr std::array<std::string_view, 6> needed_of_trip{"people", "days", "boils", "water-each", "start", "fuel"};
constexpr KnownFields trip_fields{trip_keys, "trip: {people: 2, days: 3, boils: 2, water-each: 400 ml, ...}",
                                  needed_of_trip};
constexpr std::array<std::string_view, 10> fuel_keys{"what",   "strength",   "from",    "propane",   "density",
                                                     "tablet", "heat-share", "reserve", "headspace", "offered"};
constexpr std::array<std::string_view, 3> needed_of_fuel{"what", "heat-share", "reserve"};
constexpr KnownFields fuel_fields{fuel_keys, "fuel: {what: spirit, strength: 85 %, heat-share: 50 %, reserve: 20 %}",
                                  needed_of_fuel};
constexpr std::array<std::string_view, 6> portion_keys{"what", "kind", "portion", "a-day", "density", "offered"};
constexpr std::array<std::string_view, 3> needed_of_portion{"what", "portion", "density"};
constexpr KnownFields portion_fields{portion_keys, "- {what: rolled oats, portion: 80 g, density: 0.4 kg/l}",
                                     needed_of_portion};
constexpr std::array<std::string_view, 4> fuel_words{"spirit", "gas", "white-spirit", "tablets"};
static_assert(fuel_words.size() == static_cast<std::size_t>(Fuel::tablets) + 1);
constexpr std::array<std::string_view, 2> portion_words{"food", "drink"};

constexpr int most_people = 100, most_days = 365, most_boils = 50;
constexpr std::size_t most_offers = 50, most_portions = 50;

/// What a vessel is offered for.
struct Purpose {
    std::string contents;           ///< "spirit"
    std::vector<std::string> kinds; ///< of the filled vessel
    bool by_volume = true;          ///< it holds millilitres, else grams
};

std::string words(const FuelPlan& fuel)
{
    switch (fuel.what) {
    case Fuel::spirit: return "spirit";
    case Fuel::gas: return "gas";
    case Fuel::white_spirit: return "white spirit";
    case Fuel::tablets: break;
    }
    return "fuel tablets";
}

Purpose purpose_of(const FuelPlan& fuel)
{
    switch (fuel.what) {
    case Fuel::spirit:
    case Fuel::white_spirit: return {words(fuel), {"fuel", "liquid"}, true};
    case Fuel::gas: return {words(fuel), {"fuel", "pressurised"}, false};
    case Fuel::tablets: break;
    }
    return {words(fuel), {"fuel"}, false};
}

/// The entry of an offered vessel as that of an item that holds what it is offered for: without what only an offer has,
/// with contents that fill it, and of further kinds.
Node item_entry(const Node& offer, const Purpose& purpose)
{
    static const std::set<std::string_view> only_of_items{"count", "contents", "closes",    "sheet", "cloth",
                                                          "pouch", "forms",    "press-fit", "bag",   "band"};
    Node item = offer;
    Entry kinds{"kind", offer.place, {NodeKind::list, offer.place, {}, {}, {}}};
    std::erase_if(item.entries, [&](Entry& entry) {
        if (entry.key == "kind" && entry.value.kind != NodeKind::nothing) {
            kinds.place = entry.place;
            if (entry.value.kind == NodeKind::text) {
                kinds.value.items = {entry.value};
            } else {
                kinds.value = entry.value;
            }
            return true;
        }
        return entry.key == "holds" || only_of_items.count(entry.key) > 0;
    });
    for (const std::string& word : purpose.kinds) {
        const auto has = [&](const Node& node) { return node.text == word; };
        if (kinds.value.kind == NodeKind::list &&
            std::none_of(kinds.value.items.begin(), kinds.value.items.end(), has)) {
            kinds.value.items.push_back(text_at(offer.place, word));
        }
    }
    item.entries.push_back(kinds);
    item.entries.push_back({"contents",
                            offer.place,
                            {NodeKind::map,
                             offer.place,
                             {},
                             {},
                             {{"what", offer.place, text_at(offer.place, purpose.contents)},
                              {"amount", offer.place, text_at(offer.place, "0 g")}}}});
    return item;
}

void refuse_keys_of_items(Reading& reading, const Node& offer)
{
    static constexpr std::array<std::pair<std::string_view, const char*>, 10> refused{{
        {"count", "delete it: as many are taken as the trip needs"},
        {"contents", "delete it: what goes in is worked out"},
        {"closes", "delete it"},
        {"forms", "describe it filled"},
        {"sheet", "give a cylinder or a box"},
        {"cloth", "give a cylinder or a box, as it is when filled"},
        {"pouch", "give a cylinder or a box, as it is when filled"},
        {"press-fit", "delete it"},
        {"bag", "give a cylinder or a box, as it is when filled"},
        {"band", "give a cylinder or a box"},
    }};
    for (const Entry& entry : offer.entries) {
        for (const auto& [key, remedy] : refused) {
            if (entry.key == key) {
                reading.problems.add(entry.place, "an offered vessel has no " + in_quotes(key), remedy);
            }
        }
    }
}

/// The value of `holds` in grams or millilitres, 1 at least.
std::optional<double> read_held(Reading& reading, const Node& node, bool by_volume, const std::string& example)
{
    const auto held = by_volume ? read_volume(reading, node, "holds") : read_weight(reading, node, "holds");
    if (held && *held < 1) {
        reading.problems.add(node.place, "holds is " + in_quotes(node.text) + ", hardly anything",
                             "write it such as " + example);
        return std::nullopt;
    }
    return held;
}

/// What the vessel holds, which is no more than its inside, or outside, has room for.
double read_holds(Reading& reading, const Node& offer, const Purpose& purpose, const ItemDraft& draft)
{
    const auto entry =
        std::find_if(offer.entries.begin(), offer.entries.end(), [](const Entry& one) { return one.key == "holds"; });
    const std::string example = purpose.by_volume ? "'holds: 500 ml'" : "'holds: 230 g'";
    if (entry == offer.entries.end() || entry->value.kind == NodeKind::nothing) {
        reading.problems.add(entry == offer.entries.end() ? offer.place : entry->place,
                             "an offered vessel does not say what it holds",
                             "write it such as " + example +
                                 (purpose.by_volume ? ": filled with water to the brim, the grams are the millilitres"
                                                    : ": the net weight of " + purpose.contents + " by its label"));
        return 0;
    }
    const Node& node = entry->value;
    const double held = read_held(reading, node, purpose.by_volume, example).value_or(0);
    double room = volume_ml(draft.item.inside ? draft.item.inside->shape : draft.item.outside);
    for (const Part& part : draft.item.parts) {
        room += volume_ml(part.shape);
    }
    if (purpose.by_volume && draft.outside && (draft.item.inside || !draft.inside_place) && held > room) {
        reading.problems.add(node.place,
                             "holds is " + in_quotes(node.text) + ", but there is room for " +
                                 std::to_string(static_cast<int>(room)) + " ml at most by its dimensions",
                             "measure it again, and check the units");
    }
    return held;
}

std::vector<Offer> read_offers(Reading& reading, const Fields& fields, const Purpose& purpose,
                               std::vector<ItemDraft>& drafts)
{
    std::vector<Offer> offers;
    const Node* list = fields.find("offered");
    if (list == nullptr) {
        return offers;
    }
    if (list->kind != NodeKind::list || list->items.size() > most_offers) {
        reading.problems.add(list->place,
                             list->kind != NodeKind::list ? "offered is " + kind_name(*list) + ", not a list"
                                                          : "more than 50 vessels are offered",
                             list->kind != NodeKind::list ? "start each vessel with '- id:'" : "leave some out");
        return offers;
    }
    for (const Node& node : list->items) {
        if (node.kind != NodeKind::map) {
            if (node.kind != NodeKind::unusable) {
                reading.problems.add(node.place, "an offered vessel is given as " + kind_name(node) + ", not as a group of fields",
                                     "start it with '- id:'");
            }
            continue;
        }
        refuse_keys_of_items(reading, node);
        drafts.push_back(read_item(reading, item_entry(node, purpose)));
        offers.push_back({{}, read_holds(reading, node, purpose, drafts.back())});
    }
    return offers;
}

/// Refuses what is about another fuel, and asks for the strength of spirit.
void read_of_one_fuel(Reading& reading, Fields& fields, FuelPlan& fuel)
{
    constexpr double weakest = 0.5; // hardly burns
    static constexpr std::array<std::pair<std::string_view, Fuel>, 5> own{{{"strength", Fuel::spirit},
                                                                           {"from", Fuel::spirit},
                                                                           {"propane", Fuel::gas},
                                                                           {"density", Fuel::white_spirit},
                                                                           {"tablet", Fuel::tablets}}};
    for (const auto& [key, of] : own) {
        if (fields.given(key) && fuel.what != of) {
            fields.refuse(key,
                          in_quotes(key) + " is about " + std::string(fuel_words[static_cast<std::size_t>(of)]) +
                              ", but the fuel is " + words(fuel),
                          "delete it");
        }
    }
    if (fuel.what == Fuel::spirit) {
        if (const Node* node =
                fields.need("strength", "write its share of alcohol by volume, such as 'strength: 85 %'")) {
            fuel.strength = read_share(reading, *node, "strength", weakest, 1).value_or(0);
        }
        const Node* from = fields.find("from");
        fuel.from = from != nullptr ? read_share(reading, *from, "from", weakest, 1) : std::nullopt;
        if (fuel.from && *fuel.from <= fuel.strength) {
            reading.problems.add(from->place, "from is no stronger than the strength wanted of it",
                                 "delete it where nothing is diluted");
        }
    }
    if (const Node* node = fuel.what == Fuel::gas ? fields.find("propane") : nullptr) {
        fuel.propane = read_share(reading, *node, "propane", 0, 1);
    }
    if (const Node* node = fuel.what == Fuel::white_spirit ? fields.find("density") : nullptr) {
        fuel.density = read_density(reading, *node, "density", 0.65, 0.85);
    }
    if (const Node* node = fuel.what == Fuel::tablets ? fields.find("tablet") : nullptr) {
        fuel.tablet_g = read_weight(reading, *node, "tablet");
        if (fuel.tablet_g && *fuel.tablet_g <= 0) {
            reading.problems.add(node->place, "a tablet weighs nothing", "write it such as 'tablet: 5 g'");
        }
    }
}

void read_fuel(Reading& reading, const Node& node, TripDraft& draft)
{
    FuelPlan& fuel = draft.trip.fuel;
    Fields fields(reading, node, "fuel", fuel_fields);
    const Node* what = fields.need("what", "write 'what: " + listed(fuel_words, "or") + "'");
    const auto word = what != nullptr ? read_word(reading, *what, "what", fuel_words) : std::nullopt;
    if (const Node* share = fields.need("heat-share", "say how much of the fuel's heat gets into the water, such as "
                                                      "'heat-share: 50 %' for a pot with a windscreen")) {
        fuel.heat_share = read_share(reading, *share, "heat-share", 0.05, 0.95).value_or(0);
    }
    if (const Node* reserve = fields.need("reserve", "say how much more is taken along, such as 'reserve: 20 %'")) {
        fuel.reserve = read_share(reading, *reserve, "reserve", 0, 3).value_or(0);
    }
    if (!word) {
        return; // what else is given depends on it
    }
    fuel.what = static_cast<Fuel>(*word);
    read_of_one_fuel(reading, fields, fuel);
    const Purpose purpose = purpose_of(fuel);
    if (const Node* headspace = fields.find("headspace")) {
        fuel.headspace = read_share(reading, *headspace, "headspace", 0, 0.5);
        if (!purpose.by_volume) {
            fields.refuse("headspace", "headspace is about bottles, but the fuel is " + words(fuel), "delete it");
        }
    }
    fuel.offers = read_offers(reading, fields, purpose, draft.offers);
}

void read_portion(Reading& reading, const Node& node, TripDraft& draft)
{
    Portion portion;
    Fields fields(reading, node, "food", portion_fields);
    if (const Node* what = fields.need("what", "name it, such as 'what: rolled oats'")) {
        portion.what = read_text(reading, *what, "what").value_or("");
    }
    if (const Node* kind = fields.find("kind")) {
        const auto word = read_word(reading, *kind, "kind", portion_words);
        portion.kind = word && *word == 1 ? Kind::drink : Kind::food;
    }
    if (const Node* grams = fields.need("portion", "weigh what one person gets at a time, such as 'portion: 80 g'")) {
        const auto weight = read_weight(reading, *grams, "portion");
        portion.weight_g = weight.value_or(0);
        if (weight && *weight <= 0) {
            reading.problems.add(grams->place, "a portion weighs nothing", "weigh it, or delete the entry");
        }
    }
    if (const Node* a_day = fields.find("a-day")) {
        portion.a_day = read_number(reading, *a_day, "a-day", most_boils).value_or(1);
    }
    if (const Node* density = fields.need("density", "weigh a litre of it, poured loosely, and write it such as "
                                                     "'density: 0.4 kg/l'")) {
        portion.density = read_density(reading, *density, "density", 0.02, 3).value_or(1);
    }
    const std::string kind(portion_words[portion.kind == Kind::drink ? 1 : 0]);
    if (!portion.what.empty()) {
        portion.offers = read_offers(reading, fields, {portion.what, {kind}, true}, draft.offers);
    }
    draft.trip.portions.push_back(std::move(portion));
}

void read_food(Reading& reading, const Node& list, TripDraft& draft)
{
    if (list.kind != NodeKind::list) {
        reading.problems.add(list.place, "food is " + kind_name(list) + ", not a list",
                             "start each food with '- what:'");
        return;
    }
    if (list.items.size() > most_portions) {
        reading.problems.add(list.place, "more than 50 foods are listed", "put some together");
        return;
    }
    for (const Node& node : list.items) {
        read_portion(reading, node, draft);
    }
}

/// Where the water boils, and how hot that is.
void read_boiling(Reading& reading, Fields& fields, Trip& trip)
{
    constexpr double coldest = 0, hottest = 69, least_boiling = 70, most_boiling = 102; // °C
    if (const Node* start = fields.need("start", "say how warm the water is beforehand, such as 'start: 8 C'")) {
        trip.start_c = read_temperature(reading, *start, "start", coldest, hottest).value_or(0);
    }
    if (const Node* altitude = fields.find("altitude")) {
        trip.altitude_m = read_altitude(reading, *altitude, "altitude");
    }
    if (const Node* at = fields.find("boils-at")) {
        trip.boils_at_c = read_temperature(reading, *at, "boils-at", least_boiling, most_boiling);
    }
    if (fields.given("altitude") && fields.given("boils-at")) {
        fields.refuse("boils-at", "the altitude says already where water boils", "keep one of the two");
    }
    if (const Node* away = fields.find("boils-away")) {
        trip.boils_away = read_share(reading, *away, "boils-away", 0, 1);
    }
}

/// Every vessel offered, in the order of the drafts.
std::vector<Offer*> offers_of(Trip& trip)
{
    std::vector<Offer*> all;
    for (Offer& offer : trip.fuel.offers) {
        all.push_back(&offer);
    }
    for (Portion& portion : trip.portions) {
        for (Offer& offer : portion.offers) {
            all.push_back(&offer);
        }
    }
    return all;
}

} // namespace

TripDraft read_trip(Reading& reading, const Node& node)
{
    TripDraft draft;
    Trip& trip = draft.trip;
    Fields fields(reading, node, "trip", trip_fields);
    const auto count = [&](std::string_view key, const std::string& remedy, int most, int& number) {
        if (const Node* found = fields.need(key, remedy)) {
            number = read_whole(reading, *found, std::string(key), 1, most).value_or(1);
        }
    };
    count("people", "say for how many, such as 'people: 2'", most_people, trip.people);
    count("days", "say for how long, such as 'days: 3'", most_days, trip.days);
    count("boils", "say how often water is boiled a day, such as 'boils: 2'", most_boils, trip.boils);
    if (const Node* water = fields.need("water-each", "say how much each person needs at a boil, such as "
                                                      "'water-each: 400 ml'")) {
        trip.water_each_ml = read_volume(reading, *water, "water-each").value_or(0);
    }
    read_boiling(reading, fields, trip);
    if (const Node* fuel =
            fields.need("fuel", "say what is burnt, such as '" + std::string(fuel_fields.example) + "'")) {
        read_fuel(reading, *fuel, draft);
    }
    if (const Node* food = fields.find("food")) {
        read_food(reading, *food, draft);
    }
    return draft;
}

void check_offers(Reading& reading, const std::vector<ItemDraft>& drafts, std::size_t first)
{
    for (std::size_t i = 0; i < first; ++i) {
        const auto& closes = drafts[i].item.closes;
        if (closes && closes->item >= first) {
            reading.problems.add(drafts[i].closes->vessel_place,
                                 in_quotes(drafts[closes->item].item.id) +
                                     " is offered for the trip, and may stay at home",
                                 "write 'lid: own' in its 'inside' there, and delete this lid");
        }
    }
}

void take_trip(Kit& kit, Trip trip)
{
    const auto offers = offers_of(trip);
    if (kit.items.size() < offers.size()) {
        return; // something is wrong with the file
    }
    std::set<std::string> offered;
    const std::size_t first = kit.items.size() - offers.size();
    for (std::size_t i = 0; i < offers.size(); ++i) {
        offers[i]->item = std::move(kit.items[first + i]);
        offered.insert(offers[i]->item.id);
    }
    kit.items.resize(first);
    const auto names_offer = [&](const CarryRule& rule) {
        return offered.count(rule.first) + offered.count(rule.second) > 0;
    };
    std::copy_if(kit.rules.begin(), kit.rules.end(), std::back_inserter(trip.rules), names_offer);
    std::erase_if(kit.rules, names_offer);
    kit.trip = std::make_shared<const Trip>(std::move(trip));
}

} // namespace tuckwright::reading
