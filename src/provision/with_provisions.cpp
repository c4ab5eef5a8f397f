// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include <algorithm>
#include <iterator>
#include <utility>

#include "tuckwright/provision.hpp"

namespace tuckwright {

namespace {

constexpr std::int64_t most_copies_of_an_item = 200, most_copies = 500; // as the reader has it

bool is_of_kind(const Item& item, Kind kind)
{
    return std::find(item.kinds.begin(), item.kinds.end(), kind) != item.kinds.end();
}

/// The chosen one of these vessels, filled, or with that share of what it was filled with.
std::optional<Item> filled(const Need& need, const std::vector<Offer>& offers, double share)
{
    if (!need.chosen) {
        return std::nullopt;
    }
    Item item = offers[*need.chosen].item;
    item.count = static_cast<int>(std::min(need.vessels[*need.chosen].count, most_copies_of_an_item));
    if (share > 0 || is_of_kind(item, Kind::liquid)) {
        item.contents = Contents{need.what, share * need.each_g, true};
    } else { // an empty bag or tin may lie as it likes, and hold other things
        item.contents.reset();
        item.upright = false;
    }
    return item;
}

std::optional<Problem> too_many(const Need& need)
{
    if (!need.chosen || need.vessels[*need.chosen].count <= most_copies_of_an_item) {
        return std::nullopt;
    }
    const Considered& chosen = need.vessels[*need.chosen];
    return Problem{"", 0, 0,
                   fmt::format("the trip takes {} of '{}' for {}, but a kit may have at most {} of one thing",
                               chosen.count, chosen.id, need.what, most_copies_of_an_item),
                   "offer a larger one, or check the numbers under 'trip'; 'tuckwright provision' shows the working"};
}

bool has_item(const Kit& kit, const std::string& id)
{
    return std::any_of(kit.items.begin(), kit.items.end(), [&](const Item& item) { return item.id == id; });
}

/// What is left of what the vessels held when the trip is over, as a share: all but what was burnt, which is what is needed
/// less the reserve. A cartridge that holds far more than that comes back nearly full.
double share_left(const Need& fuel, double reserve)
{
    if (!fuel.chosen) {
        return 0;
    }
    const double carried = fuel.each_g * static_cast<double>(fuel.vessels[*fuel.chosen].count);
    return carried > 0 ? std::clamp(1 - fuel.grams / (1 + reserve) / carried, 0.0, 1.0) : 0;
}

/// Every chosen vessel, filled; or what forbids it.
Result<std::vector<Item>> chosen_items(const Trip& trip)
{
    const Provision needs = provision(trip);
    std::vector<std::pair<const Need*, const std::vector<Offer>*>> all{{&needs.fuel, &trip.fuel.offers}};
    for (std::size_t i = 0; i < trip.portions.size(); ++i) {
        all.emplace_back(&needs.food[i], &trip.portions[i].offers);
    }
    std::vector<Problem> problems;
    std::vector<Item> chosen;
    for (const auto& [need, offers] : all) {
        const double share = !trip.is_over ? 1 : need == &needs.fuel ? share_left(*need, trip.fuel.reserve) : 0;
        if (const auto problem = too_many(*need)) {
            problems.push_back(*problem);
        } else if (auto item = filled(*need, *offers, share)) {
            chosen.push_back(std::move(*item));
        }
    }
    return problems.empty() ? Result(std::move(chosen)) : Result<std::vector<Item>>(std::move(problems));
}

} // namespace

Result<Kit> with_provisions(Kit kit)
{
    if (!kit.trip) {
        return kit;
    }
    auto chosen = chosen_items(*kit.trip);
    if (!chosen) {
        return chosen.problems();
    }
    for (Item& item : std::move(chosen).value()) {
        if (has_item(kit, item.id)) {
            return kit;
        }
        kit.items.push_back(std::move(item));
    }
    std::int64_t copies = 0;
    for (const Item& item : kit.items) {
        copies += item.count;
    }
    if (copies > most_copies) {
        return Problem{
            "", 0, 0,
            fmt::format("with what the trip takes the kit has {} items, copies counted, but may have at most {}",
                        copies, most_copies),
            "offer larger vessels, or leave some things out"};
    }
    const auto& rules = kit.trip->rules;
    std::copy_if(rules.begin(), rules.end(), std::back_inserter(kit.rules),
                 [&](const CarryRule& rule) { return has_item(kit, rule.first) && has_item(kit, rule.second); });
    return kit;
}

Result<BothWays> with_provisions(BothWays both)
{
    auto out = with_provisions(std::move(both.out));
    if (!out) {
        return out.problems();
    }
    if (both.back.trip) {
        Trip trip = *both.back.trip;
        const auto stays_at_home = [&](const Offer& offer) { return !has_item(*out, offer.item.id); };
        std::erase_if(trip.fuel.offers, stays_at_home);
        for (Portion& portion : trip.portions) {
            std::erase_if(portion.offers, stays_at_home);
        }
        both.back.trip = std::make_shared<const Trip>(std::move(trip));
    }
    auto back = with_provisions(std::move(both.back));
    return back ? Result(BothWays{std::move(out).value(), std::move(back).value()})
                : Result<BothWays>(back.problems());
}

} // namespace tuckwright
