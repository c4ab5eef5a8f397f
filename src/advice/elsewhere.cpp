// SPDX-License-Identifier: GPL-3.0-or-later
// What goes elsewhere than before, and why. A cause by a rule is proved: with the thing back in its old place, be it in
// whatever copy of its old vessel, the exact check refuses the bundle.
#include <algorithm>
#include <fmt/format.h>
#include <map>

#include "advice/carried.hpp"
#include "advice/kept_places.hpp"
#include "advice/vessel_kit.hpp"
#include "tuckwright/contract.hpp"
#include "tuckwright/proof.hpp"
#include "tuckwright/there_and_back.hpp"

namespace tuckwright {

namespace {

using advice::Carried;

const Item* item_of(const Kit& kit, const std::string& id)
{
    const auto found =
        std::find_if(kit.items.begin(), kit.items.end(), [&](const Item& item) { return item.id == id; });
    return found != kit.items.end() ? &*found : nullptr;
}

/// Of what takes whatever shape fits, a cloth or a filled pouch, only what it lies in counts.
Whereabouts whereabouts(const Kit& kit, const Bundle& bundle, const PlacedItem& item)
{
    const auto container = item.closes ? item.closes : item.in ? std::optional(item.in->item) : std::nullopt;
    const Item& told = *item_of(kit, item.id);
    const bool takes_any_shape = told.cloth || (told.pouch && !item.cavities.empty());
    return {container ? bundle.items[*container].id : "", takes_any_shape ? "" : item.form,
            takes_any_shape ? "" : item.stowed};
}

bool is_shut(const Whereabouts& where) { return where.form == "shut"; }

/// In the same vessel, in the same way.
bool is_same_container(const Whereabouts& a, const Whereabouts& b) { return a.in == b.in && is_shut(a) == is_shut(b); }

/// Copies of one thing that moved: one of the way out and one of the way back, by their indices.
struct Move {
    std::size_t before = 0, now = 0;
};

/// Those of the copies of a thing that are not where any was before. Copies in the same vessel go together, as far as
/// there are such.
std::vector<Move> moves_of(const BothWays& kits, const Bundle& out, const Bundle& back, const std::string& id)
{
    std::vector<std::size_t> before, now;
    const auto gather = [&](const Bundle& bundle, std::vector<std::size_t>& of) {
        for (std::size_t k = 0; k < bundle.items.size(); ++k) {
            if (bundle.items[k].id == id) {
                of.push_back(k);
            }
        }
    };
    gather(out, before);
    gather(back, now);
    std::vector<Move> moves;
    const auto pair_up = [&](const auto& goes_with, bool is_move) {
        std::erase_if(now, [&](std::size_t n) {
            const auto found = std::find_if(before.begin(), before.end(), [&](std::size_t b) {
                return goes_with(whereabouts(kits.out, out, out.items[b]), whereabouts(kits.back, back, back.items[n]));
            });
            if (found == before.end()) {
                return false;
            }
            if (is_move) {
                moves.push_back({*found, n});
            }
            before.erase(found);
            return true;
        });
    };
    pair_up([](const Whereabouts& a, const Whereabouts& b) { return a == b; }, false);
    pair_up(is_same_container, true);
    pair_up([](const Whereabouts&, const Whereabouts&) { return true; }, true);
    return moves;
}

/// "Pot" of "Pot, 1 l", by id; for a thing that is in one of the bundles.
class Names {
public:
    Names(const Bundle& out, const Bundle& back) : out_(out), back_(back) {}

    std::string operator()(const std::string& id) const
    {
        const bool is_back =
            std::any_of(back_.items.begin(), back_.items.end(), [&](const PlacedItem& item) { return item.id == id; });
        return common_name(is_back ? back_ : out_, id);
    }

private:
    const Bundle &out_, &back_;
};

/// The bundle in which a thing is where it was before: in that vessel, shut on it, or in the bundle itself.
Bundle put_back(const Bundle& bundle, std::size_t thing, std::optional<std::size_t> vessel, bool shut)
{
    Bundle other = bundle;
    other.items[thing].in = vessel && !shut ? std::optional(Lodging{*vessel, 0}) : std::nullopt;
    other.items[thing].closes = vessel && shut ? vessel : std::nullopt;
    if (vessel && shut) {
        other.items[thing].in = bundle.items[*vessel].in;
    }
    return other;
}

/// Whether the exact check refuses a bundle by that one rule.
bool is_refused(Bundle bundle, const CarryRule& rule)
{
    bundle.rules = {rule};
    const auto objections = check(bundle);
    return !objections.empty() && objections.front().rule == "carrying";
}

/// A rule that is broken, one about what lies in what rather than about two things side by side.
std::optional<CarryRule> broken_first(const std::vector<CarryRule>& rules, const Carried& things)
{
    std::optional<CarryRule> found;
    for (const CarryRule& rule : rules) {
        const auto pair = broken(things, rule);
        if (!pair) {
            continue;
        }
        const auto of_first = advice::chain_of(things, pair->first), of_second = advice::chain_of(things, pair->second);
        if (std::find(of_first.begin(), of_first.end(), pair->second) != of_first.end() ||
            std::find(of_second.begin(), of_second.end(), pair->first) != of_second.end()) {
            return rule;
        }
        found = found ? found : std::optional(rule);
    }
    return found;
}

/// The rule that a thing breaks in its old place, if it does so in every copy of its old vessel.
std::optional<CarryRule> forbidding(const Bundle& back, std::size_t thing, const std::vector<std::size_t>& vessels,
                                    bool shut)
{
    std::optional<CarryRule> first;
    std::vector<std::optional<std::size_t>> places(vessels.begin(), vessels.end());
    if (places.empty()) {
        places.emplace_back();
    }
    for (const auto& vessel : places) {
        const Bundle other = put_back(back, thing, vessel, shut);
        const Carried things = advice::carried(other);
        const auto rule = broken_first(back.rules, things);
        if (!rule || !is_refused(other, *rule)) {
            return std::nullopt;
        }
        first = first ? first : rule;
    }
    return first;
}

/// One thing that moved, with all that its reason is looked for in.
struct Case {
    const BothWays& kits;
    const Bundle &out, &back;
    const Names& name;
    std::size_t thing = 0; ///< of the way back
};

std::string in_words(const Case& of, const Elsewhere& one, const std::string& old_place)
{
    const CarryRule& rule = *one.rule;
    const std::string why = rule.why == "the kit says so" ? "the kit file says so" : rule.why;
    const std::string first = of.name(rule.first), second = of.name(rule.second);
    switch (rule.keep) {
    case Keep::apart:
        if (rule.first == one.before.in || rule.second == one.before.in) {
            return fmt::format("{} and {} keep apart now: {}", first, second, why);
        }
        return fmt::format("{}, {} and {} would come together, which keep apart now: {}", old_place, first, second,
                           why);
    case Keep::out:
        return fmt::format("{}, {} would lie in {}, which it may not now: {}", old_place, first, second, why);
    case Keep::within: return fmt::format("{} has to go in {} now: {}", first, second, why);
    case Keep::together: return fmt::format("{} has to lie with {} now: {}", first, second, why);
    case Keep::shut: return fmt::format("{} has to be shut on {} now", first, second);
    }
    require(false, "a rule is one of the five");
    return "";
}

void tell(Elsewhere& one, Cause cause, std::string words)
{
    one.cause = cause;
    one.words = std::move(words);
}

/// "Cup, Salt tin and Spoon".
std::string listed(const std::vector<std::string>& names)
{
    std::string text;
    for (std::size_t k = 0; k < names.size(); ++k) {
        text += (k == 0 ? "" : k + 1 < names.size() ? ", " : " and ") + names[k];
    }
    return text;
}

/// Whether it is proved not to go back into its old vessel, shut as that is: alone, or with what lies in there now.
bool tell_of_room(const Case& of, Elsewhere& one, std::size_t vessel)
{
    constexpr std::uint64_t work = 200'000;
    const Kit& kit = of.kits.back;
    const PlacedItem& old = of.back.items[vessel];
    const std::size_t holder = advice::index_of(kit, old.id);
    const Item& item = kit.items[holder];
    const Carried things = advice::carried(of.back);
    const auto lies_there = [&](std::size_t k) {
        const auto chain = advice::chain_of(things, k);
        return std::find(chain.begin(), chain.end(), vessel) != chain.end();
    };
    if (!item.inside || !item.forms.empty() || item.count != 1 || old.cavities.empty() ||
        old.cavities.front().opens != Opening::closed || lies_there(of.thing)) {
        return false;
    }
    advice::Counts counts(kit.items.size(), 0);
    counts[advice::index_of(kit, one.id)] = 1;
    if (advice::cannot_go_in(kit, holder, counts, 0)) {
        tell(one, Cause::too_large,
             fmt::format("it does not go into {} with the lid shut, which is proved", of.name(old.id)));
        return true;
    }
    std::vector<std::string> names;
    for (std::size_t k = 0; k < things.size(); ++k) {
        if (lies_there(k) && things[k].closes != vessel) {
            ++counts[advice::index_of(kit, things[k].id)];
            if (things[k].in == vessel && !things[k].closes) {
                names.push_back(spoken_name(of.back, k));
            }
        }
    }
    if (names.empty() || !advice::cannot_go_in(kit, holder, counts, work)) {
        return false;
    }
    tell(one, Cause::no_room,
         fmt::format(
             "there is no room for it in {} with {}, which lie{} in there now; that is proved, the lid being shut",
             of.name(old.id), listed(names), names.size() == 1 ? "s" : ""));
    return true;
}

/// Why it is no longer in its old vessel, where that can be told.
bool tell_of_old_place(const Case& of, Elsewhere& one)
{
    const std::string& vessel = one.before.in;
    std::vector<std::size_t> vessels;
    for (std::size_t k = 0; k < of.back.items.size(); ++k) {
        if (of.back.items[k].id == vessel) {
            vessels.push_back(k);
        }
    }
    const std::string old_name = vessel.empty() ? "" : of.name(vessel);
    const auto tell_it = [&](Cause cause, std::string words) {
        tell(one, cause, std::move(words));
        return true;
    };
    if (!vessel.empty() && vessels.empty()) {
        return tell_it(Cause::vessel_gone, fmt::format("{} does not come back", old_name));
    }
    const Carried things = advice::carried(of.back);
    const bool is_inside = std::any_of(vessels.begin(), vessels.end(), [&](std::size_t k) {
        const auto chain = advice::chain_of(things, k);
        return std::find(chain.begin(), chain.end(), of.thing) != chain.end();
    });
    if (is_inside) {
        return tell_it(Cause::inside_out, fmt::format("{} lies in it now", old_name));
    }
    const bool is_useless =
        !vessel.empty() && !is_shut(one.before) && std::all_of(vessels.begin(), vessels.end(), [&](std::size_t k) {
            return of.back.items[k].full || of.back.items[k].cavities.empty();
        });
    if (is_useless) {
        const bool full = of.back.items[vessels.front()].full;
        return tell_it(Cause::vessel_full,
                       fmt::format("{} is {} now", old_name, full ? "full" : "carried in a form that holds nothing"));
    }
    one.rule = forbidding(of.back, of.thing, vessels, is_shut(one.before));
    if (!one.rule) {
        return vessels.size() == 1 && !is_shut(one.before) && tell_of_room(of, one, vessels.front());
    }
    const std::string place = vessel.empty()        ? "outside all vessels"
                              : is_shut(one.before) ? "shut on " + old_name
                                                    : "back in " + old_name;
    return tell_it(Cause::rule, in_words(of, one, place));
}

/// Why it can be in its new vessel, where it could not be before.
bool tell_of_new_place(const Case& of, Elsewhere& one)
{
    const Item* before = item_of(of.kits.out, one.now.in);
    const Item* now = item_of(of.kits.back, one.now.in);
    if (now == nullptr || is_shut(one.now)) {
        return false;
    }
    if (before == nullptr) {
        tell(one, Cause::room_now, fmt::format("{} comes only on the way back", of.name(one.now.in)));
        return true;
    }
    if (before->is_full() && !now->is_full()) {
        tell(one, Cause::room_now, fmt::format("{} is empty now, and has room for it", of.name(one.now.in)));
        return true;
    }
    return false;
}

void tell_why(const Case& of, Elsewhere& one)
{
    if (!is_same_container(one.before, one.now)) {
        if (tell_of_old_place(of, one) || tell_of_new_place(of, one)) {
            return;
        }
    } else {
        const Item *before = item_of(of.kits.out, one.id), *now = item_of(of.kits.back, one.id);
        if (before->upright != now->upright && !is_shut(one.now)) {
            tell(one, now->upright ? Cause::must_stand : Cause::need_not_stand,
                 now->upright ? "it has to stand the right way up now" : "it need not stand the right way up any more");
            return;
        }
    }
    tell(one, Cause::search, "no rule asks for it");
}

/// Direct content of each container, by the container's id, in the order of the steps. Copies bear one id.
std::map<std::string, std::vector<std::string>> rows_of(const Bundle& bundle)
{
    std::map<std::string, std::vector<std::string>> rows;
    for (const Step& step : bundle.steps) {
        const PlacedItem& item = bundle.items[step.item];
        if (!item.closes) {
            rows[item.in ? bundle.items[item.in->item].id : ""].push_back(item.id);
        }
    }
    return rows;
}

/// Which of the second row belong to the longest row that both have in them, the earliest such.
std::vector<bool> in_common(const std::vector<std::string>& a, const std::vector<std::string>& b)
{
    std::vector<std::vector<int>> most(a.size() + 1, std::vector<int>(b.size() + 1, 0)); // of what is left of either
    for (std::size_t i = a.size(); i-- > 0;) {
        for (std::size_t j = b.size(); j-- > 0;) {
            most[i][j] = a[i] == b[j] ? most[i + 1][j + 1] + 1 : std::max(most[i + 1][j], most[i][j + 1]);
        }
    }
    std::vector<bool> common(b.size(), false);
    for (std::size_t i = 0, j = 0; i < a.size() && j < b.size();) {
        if (a[i] == b[j]) {
            common[j] = true;
            ++i;
            ++j;
        } else {
            ++(most[i + 1][j] >= most[i][j + 1] ? i : j);
        }
    }
    return common;
}

} // namespace

std::vector<Elsewhere> elsewhere(const BothWays& kits, const Bundle& out, const Bundle& back)
{
    const Names name(out, back);
    std::vector<Elsewhere> all;
    for (const Item& item : kits.back.items) {
        const std::size_t first = all.size();
        for (const Move& move : moves_of(kits, out, back, item.id)) {
            Elsewhere one;
            one.id = item.id;
            one.before = whereabouts(kits.out, out, out.items[move.before]);
            one.now = whereabouts(kits.back, back, back.items[move.now]);
            tell_why({kits, out, back, name, move.now}, one);
            const auto same =
                std::find_if(all.begin() + static_cast<std::ptrdiff_t>(first), all.end(), [&](const auto& o) {
                    return o.before == one.before && o.now == one.now && o.words == one.words;
                });
            if (same != all.end()) {
                ++same->copies;
            } else {
                all.push_back(std::move(one));
            }
        }
    }
    return all;
}

std::vector<Reordered> reordered(const Bundle& out, const Bundle& back)
{
    std::vector<Reordered> all;
    const auto before = rows_of(out);
    for (const auto& [in, row] : rows_of(back)) {
        const auto old = before.find(in);
        if (old == before.end()) {
            continue;
        }
        const auto common = in_common(old->second, row);
        for (std::size_t k = 0; k < row.size(); ++k) {
            const auto times = [&](const std::vector<std::string>& of) {
                return std::count(of.begin(), of.end(), row[k]);
            };
            const bool is_told =
                std::any_of(all.begin(), all.end(), [&](const Reordered& o) { return o.id == row[k] && o.in == in; });
            if (!common[k] && !is_told && times(old->second) >= times(row)) { // else it is new there
                all.push_back({row[k], in, k == 0 ? "" : row[k - 1]});
            }
        }
    }
    return all;
}

} // namespace tuckwright
