// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/kinds.hpp"

#include <algorithm>
#include <array>

namespace tuckwright::reading
{

namespace
{

constexpr std::array<std::string_view, 13> words{"fuel", "flame", "food",        "drink",  "lips",    "sooty", "clean",
                                                 "soft", "sharp", "pressurised", "liquid", "fragile", "hot"};
static_assert(words.size() == static_cast<std::size_t>(Kind::hot) + 1);

/// Common practice of people who pack such kits: there is no standard to cite. Fuel taints and poisons what is eaten;
/// what strikes sparks should not be where fuel may have leaked; soot rubs off; an edge cuts what is soft and must not
/// get at a cartridge; a flame or something hot beside a cartridge that leaks or warms up is how accidents begin; what
/// breaks easily bears nothing. A cup may lie in a sooty pot, but a sooty thing not in the cup; into a pot that is itself
/// sooty, the stove goes as it always has. Whoever knows better waives a rule, with a reason.
constexpr std::array<UsualRule, 11> rules{{
    {"fuel-food", Kind::fuel, Kind::food, "fuel", "food"},
    {"fuel-drink", Kind::fuel, Kind::drink, "fuel", "drink"},
    {"fuel-lips", Kind::fuel, Kind::lips, "fuel", "what touches the lips"},
    {"flame-fuel", Kind::flame, Kind::fuel, "what makes a flame", "fuel"},
    {"sooty-clean", Kind::sooty, Kind::clean, "what is sooty", "what must stay clean"},
    {"sooty-soft", Kind::sooty, Kind::soft, "what is sooty", "what is soft"},
    {"sooty-lips", Kind::sooty, Kind::lips, "what is sooty", "what touches the lips", Keep::out, true},
    {"sharp-soft", Kind::sharp, Kind::soft, "what is sharp", "what is soft"},
    {"sharp-pressurised", Kind::sharp, Kind::pressurised, "what is sharp", "what is under pressure"},
    {"flame-pressurised", Kind::flame, Kind::pressurised, "what makes a flame", "what is under pressure"},
    {"hot-pressurised", Kind::hot, Kind::pressurised, "what is hot after use", "what is under pressure"},
}};

constexpr auto rule_words = [] {
    std::array<std::string_view, rules.size() + 1> found{};
    for (std::size_t i = 0; i < rules.size(); ++i) {
        found[i] = rules[i].word;
    }
    found.back() = "fragile-top";
    return found;
}();

} // namespace

std::span<const std::string_view> kind_words() { return words; }

std::span<const UsualRule> usual_rules() { return rules; }

std::span<const std::string_view> usual_rule_words() { return rule_words; }

std::size_t fragile_top() { return rules.size(); }

namespace
{

/// "fuel VERB food", or the like.
std::string sentence(std::size_t rule, const char* apart, const char* out)
{
    const UsualRule& it = rules[rule];
    return std::string(it.first_words) + (it.keep == Keep::out ? out : apart) +
           std::string(it.second_words);
}

} // namespace

std::string usual_rule_reason(std::size_t rule)
{
    return rule == fragile_top() ? "nothing lies on what is fragile"
                                 : sentence(rule, " keeps apart from ", " does not lie in ");
}

std::string waived_for(std::size_t rule, std::string_view reason)
{
    const std::string what = rule == fragile_top() ? "things may lie on what is fragile"
                                                   : sentence(rule, " need not keep apart from ", " may lie in ");
    return what + ": " + std::string(reason);
}

bool is_of_kind(const Item& item, Kind kind)
{
    return std::find(item.kinds.begin(), item.kinds.end(), kind) != item.kinds.end();
}

} // namespace tuckwright::reading
