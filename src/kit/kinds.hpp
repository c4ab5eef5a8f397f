// SPDX-License-Identifier: GPL-3.0-or-later
/// The words for what items are, and the usual rules of what keeps apart from what.
#pragma once
#include <span>
#include <string>
#include <string_view>

#include "tuckwright/kit.hpp"

namespace tuckwright::reading
{

/// Two kinds that keep apart wherever the file does not waive it, or of which the first does not lie in the second.
struct UsualRule {
    std::string_view word; ///< by which a file waives it: "fuel-food"
    Kind first, second;
    std::string_view first_words, second_words; ///< "what makes a flame", "fuel"
    Keep keep = Keep::apart;                    ///< apart or out
    bool both_are_free = false;                 ///< it does not hold for a second that is of the first kind too
};

/// The words of all kinds, in the order of the enumeration.
std::span<const std::string_view> kind_words();

/// Those about two kinds.
std::span<const UsualRule> usual_rules();
/// UsualRule::word of each, and then "fragile-top": what a file may waive.
std::span<const std::string_view> usual_rule_words();
/// The index of "fragile-top" among the words: nothing lies on what is fragile.
std::size_t fragile_top();

/// "fuel keeps apart from food", by the index of a word.
std::string usual_rule_reason(std::size_t rule);
/// "fuel need not keep apart from food: it is sealed", for that reason.
std::string waived_for(std::size_t rule, std::string_view reason);

bool is_of_kind(const Item& item, Kind kind);

} // namespace tuckwright::reading
