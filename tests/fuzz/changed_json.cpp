// SPDX-License-Identifier: GPL-3.0-or-later
#include <cmath>
#include <nlohmann/json.hpp>

#include "fuzz/targets.hpp"
#include "support/random_solids.hpp"

namespace tuckwright::fuzz {

namespace {

using nlohmann::ordered_json;
using test::Dice;

ordered_json::json_pointer some_place(const ordered_json& flat, Dice& dice)
{
    const auto at = std::next(flat.begin(), dice.below(static_cast<int>(flat.size())));
    return ordered_json::json_pointer(at.key());
}

ordered_json other_number(double before, Dice& dice)
{
    switch (dice.below(9)) {
    case 0: return 0;
    case 1: return -before;
    case 2: return before + 1e-6;
    case 3: return before - 1e-6;
    case 4: return before * (1 + dice.between(-1, 1));
    case 5: return std::ldexp(1.0, dice.below(2000) - 1000);
    case 6: return 9007199254740993;
    case 7: return dice.below(5) - 1;
    default: return before / 3;
    }
}

ordered_json other_value(const ordered_json& before, Dice& dice)
{
    if (dice.below(12) == 0) {
        return nullptr;
    }
    if (before.is_number()) {
        return other_number(before.get<double>(), dice);
    }
    if (before.is_boolean()) {
        return !before.get<bool>();
    }
    if (before.is_string()) {
        static constexpr const char* words[] = {"", "shut", "top", "both", "closed", "pot", "\xE2\x80\xAE<\n", "found"};
        return words[dice.below(8)];
    }
    return dice.below(2) == 0 ? ordered_json::array() : ordered_json::object();
}

} // namespace

std::string changed_json(std::string_view text, std::uint64_t seed)
{
    Dice dice(seed);
    ordered_json all = ordered_json::parse(text, nullptr, false);
    if (all.is_discarded() || !all.is_structured() || all.empty()) {
        return std::string(text);
    }
    const ordered_json flat = all.flatten();
    auto place = some_place(flat, dice);
    for (int up = dice.below(6) - 3; up > 0 && !place.parent_pointer().empty(); --up) {
        place = place.parent_pointer(); // now and then all that a value belongs to
    }
    ordered_json& within = all[place.parent_pointer()];
    switch (dice.below(8)) {
    case 0: all[place] = flat[some_place(flat, dice).to_string()]; break;
    case 1:
        if (within.is_array()) {
            within.push_back(ordered_json(all[place]));
        }
        break;
    case 2:
        if (within.is_array()) {
            within.erase(static_cast<std::size_t>(dice.below(static_cast<int>(within.size()))));
        } else {
            within.erase(place.back());
        }
        break;
    default: all[place] = other_value(all[place], dice);
    }
    return all.dump(-1, ' ', false, ordered_json::error_handler_t::replace);
}

} // namespace tuckwright::fuzz
