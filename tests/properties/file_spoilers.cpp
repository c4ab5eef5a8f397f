// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>

#include "properties/spoilers.hpp"
#include "tuckwright/fits.hpp"
#include "tuckwright/report.hpp"

namespace properties {

using namespace tuckwright;
using test::Dice;
using nlohmann::ordered_json;

namespace {

ordered_json parsed(const Bundle& bundle) { return ordered_json::parse(to_json(bundle)); }

/// Off by a share between 1e-7 and one half, up or down.
double off(double value, Dice& dice)
{
    const double share = 0.5 * std::pow(10, -dice.between(0, 6.7));
    return value * (dice.below(2) == 0 ? 1 + share : 1 - share);
}

Spoiled figure(const Bundle& bundle, Dice& dice, const char* part, const char* key)
{
    ordered_json all = parsed(bundle);
    ordered_json& value = all[part][key];
    if (!value.is_number() || value.get<double>() == 0) {
        return std::nullopt;
    }
    value = off(value.get<double>(), dice);
    return all.dump();
}

Spoiled alter_volume(Bundle bundle, Dice& dice) { return figure(bundle, dice, "bundle", "volume_ml"); }
Spoiled alter_gap(Bundle bundle, Dice& dice)
{
    ordered_json all = parsed(bundle);
    if (!all["gap"].is_number()) {
        return std::nullopt;
    }
    const double before = all["gap"].get<double>(), after = off(before, dice);
    all["gap"] = after;
    // It does not follow, where it is more than the volumes that it comes from are rounded by.
    return std::abs(after - before) > 2e-12 * (1 + before) ? Spoiled(all.dump()) : std::nullopt;
}
Spoiled alter_weight(Bundle bundle, Dice& dice)
{
    const char* keys[] = {"total", "empty", "contents"};
    return figure(bundle, dice, "weight_g", keys[dice.below(3)]);
}

Spoiled alter_item_weight(Bundle bundle, Dice& dice)
{
    ordered_json all = parsed(bundle);
    ordered_json& value = all["items"][any(dice, bundle.items.size())]["weight_g"];
    const double before = value.get<double>(), after = off(before, dice);
    value = after;
    // The sums no longer follow, where it is more than they are rounded by.
    return std::abs(after - before) > 1e-7 * total_weight_g(bundle) ? Spoiled(all.dump()) : std::nullopt;
}

Spoiled claim_a_bound(Bundle bundle, Dice& dice)
{
    bundle.lower_bound_ml = volume_ml(outer_envelope(bundle)) * (1 + dice.between(1e-6, 0.5));
    return to_json(bundle); // the gap follows, but nothing is smaller than its bound
}

/// The quaternion of a solid or cavity no longer gives the matrix beside it.
Spoiled alter_quaternion(Bundle bundle, Dice& dice)
{
    ordered_json all = parsed(bundle);
    ordered_json& item = all["items"][any(dice, bundle.items.size())];
    ordered_json& parts = !item["cavities"].empty() && dice.below(2) == 0 ? item["cavities"] : item["solids"];
    ordered_json& quaternion = parts[any(dice, parts.size())]["quaternion"];
    const auto turn = [&] {
        return Quaternion{quaternion[0].get<std::int64_t>(), quaternion[1].get<std::int64_t>(),
                          quaternion[2].get<std::int64_t>(), quaternion[3].get<std::int64_t>()};
    };
    const Matrix3 before = rotation_matrix(turn());
    const std::size_t k = any(dice, 4);
    quaternion[k] = quaternion[k].get<std::int64_t>() + (dice.below(2) == 0 ? 1 : -1) * (1 + dice.below(5));
    if (turn() == Quaternion{0, 0, 0, 0}) {
        return all.dump();
    }
    const Matrix3 after = rotation_matrix(turn());
    double most = 0;
    for (std::size_t i = 0; i < 9; ++i) {
        most = std::max(most, std::abs(before[i / 3][i % 3] - after[i / 3][i % 3]));
    }
    return most > 1e-10 ? Spoiled(all.dump()) : std::nullopt;
}

Spoiled alter_matrix(Bundle bundle, Dice& dice)
{
    ordered_json all = parsed(bundle);
    ordered_json& parts = all["items"][any(dice, bundle.items.size())]["solids"];
    ordered_json& entry = parts[any(dice, parts.size())]["rotation"][any(dice, 3)][any(dice, 3)];
    entry = entry.get<double>() + (dice.below(2) == 0 ? 1 : -1) * std::pow(10, -dice.between(0, 10));
    return all.dump();
}

Spoiled drop_item(Bundle bundle, Dice& dice)
{
    ordered_json all = parsed(bundle);
    all["items"].erase(any(dice, bundle.items.size()));
    return all.dump(); // its step is still there, and names nobody
}

Spoiled double_item(Bundle bundle, Dice& dice)
{
    ordered_json all = parsed(bundle);
    ordered_json twin = all["items"][any(dice, bundle.items.size())];
    if (dice.below(2) == 0) {
        twin["copy"] = 1000; // a further copy, in the same place, with no step of its own
    }
    all["items"].push_back(twin);
    return all.dump();
}

Spoiled leave_a_field_out(Bundle bundle, Dice& dice)
{
    ordered_json all = parsed(bundle);
    static const char* keys[] = {"format", "version",        "kit", "seed",     "effort", "status", "rules", "waived",
                                 "bundle", "lower_bound_ml", "gap", "weight_g", "items",  "steps",  "certificate"};
    all.erase(keys[any(dice, std::size(keys))]);
    return all.dump();
}

Spoiled claim_the_smallest(Bundle bundle, Dice&)
{
    const double volume = volume_ml(outer_envelope(bundle));
    if (bundle.lower_bound_ml >= volume * (1 - 1e-6)) {
        return std::nullopt;
    }
    bundle.status = Status::proved_best;
    return to_json(bundle);
}

/// Off by a micrometre at least, so that it is more than rounding.
Spoiled alter_length(ordered_json& all, ordered_json& value, Dice& dice)
{
    const double before = value.get<double>(), by = std::pow(10, -dice.between(0, 2.9));
    value = std::round(1e6 * (before + (dice.below(2) == 0 ? by : -by))) / 1e6;
    return all.dump();
}

Spoiled alter_fit(Bundle bundle, Dice& dice)
{
    ordered_json all = parsed(bundle);
    ordered_json& fits = all["fits"];
    return fits.empty() ? std::nullopt
                        : alter_length(all, fits[any(dice, fits.size())][dice.below(2) == 0 ? "room_mm" : "worst_mm"], dice);
}

Spoiled alter_play(Bundle bundle, Dice& dice)
{
    ordered_json all = parsed(bundle);
    const char* axes[] = {"x", "y", "z"};
    return alter_length(all, all["plays"][any(dice, bundle.items.size())][axes[dice.below(3)]][dice.below(2)], dice);
}

/// A tolerance of what lies in a vessel; its fit at worst no longer follows.
Spoiled alter_tolerance(Bundle bundle, Dice& dice)
{
    ordered_json all = parsed(bundle);
    const std::size_t item = any(dice, bundle.items.size());
    const auto& in = bundle.items[item].in;
    if (!in || bundle.items[item].closes) {
        return std::nullopt;
    }
    const auto* round = std::get_if<Cylinder>(&bundle.items[in->item].cavities[in->cavity].shape);
    if (round != nullptr && round->foot != 0) {
        return std::nullopt; // seated in a vessel that tapers: no fit is told of there
    }
    if (std::any_of(bundle.items.begin(), bundle.items.end(), [&](const auto& lid) { return lid.closes == item; })) {
        return std::nullopt; // where the lid on it is wider, it is that which tells the fit
    }
    for (auto& size : all["items"][item]["solids"][0]["tolerance"]) {
        size = size.get<double>() + 1;
    }
    // Where no fit follows from it, as of what leans, nothing tells that it is another.
    const auto read = from_json(all.dump(), "altered.json");
    return read && fits(*read) == bundle.fits ? std::nullopt : Spoiled(all.dump());
}

std::string name_before_comma(const PlacedItem& item)
{
    const std::string name = item.name.substr(0, item.name.find(','));
    return name.empty() ? item.id : name;
}

/// Another step's text, or any, which does not name the item.
Spoiled alter_step_text(Bundle bundle, Dice& dice)
{
    const std::size_t step = any(dice, bundle.steps.size()), other = any(dice, bundle.steps.size());
    const std::string name = name_before_comma(bundle.items[bundle.steps[step].item]);
    bundle.steps[step].text = dice.below(2) == 0 ? "Throw it away." : bundle.steps[other].text;
    return bundle.steps[step].text.find(name) == std::string::npos ? Spoiled(to_json(bundle)) : std::nullopt;
}

/// Another name than that by which the text of the step calls the item.
Spoiled alter_name(Bundle bundle, Dice& dice)
{
    bundle.items[any(dice, bundle.items.size())].name = dice.below(2) == 0 ? "Dynamite" : "Dynamite, 0.3 l";
    return to_json(bundle);
}

/// Something else to be done to a thing first than its step says.
Spoiled alter_what_to_do(Bundle bundle, Dice& dice)
{
    const std::size_t item = any(dice, bundle.items.size());
    const auto texts = step_texts(bundle);
    bundle.items[item].how = "take the bottom off";
    return step_texts(bundle) != texts ? Spoiled(to_json(bundle)) : std::nullopt;
}

Spoiled claim_another_status(Bundle bundle, Dice& dice)
{
    ordered_json all = parsed(bundle);
    all["status"] = dice.below(2) == 0 ? "does-not-fit" : "not-found"; // and yet there is one
    return all.dump();
}

} // namespace

std::vector<Spoiler> file_spoilers()
{
    return {{"a volume altered", alter_volume},
            {"a gap altered", alter_gap},
            {"a weight altered", alter_weight},
            {"an item's weight altered", alter_item_weight},
            {"a bound above the volume", claim_a_bound},
            {"a quaternion altered", alter_quaternion},
            {"a matrix altered", alter_matrix},
            {"an item dropped", drop_item},
            {"an item doubled", double_item},
            {"a field left out", leave_a_field_out},
            {"the smallest claimed, far above the bound", claim_the_smallest},
            {"a step's text altered", alter_step_text},
            {"a name altered", alter_name},
            {"what to do altered", alter_what_to_do},
            {"a fit altered", alter_fit},
            {"a play altered", alter_play},
            {"a tolerance altered", alter_tolerance},
            {"no bundle claimed, though there is one", claim_another_status}};
}

} // namespace properties
