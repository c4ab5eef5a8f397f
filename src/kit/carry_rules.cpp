// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/carry_rules.hpp"

#include <algorithm>
#include <set>
#include <tuple>
#include <utility>

#include "kit/kinds.hpp"
#include "kit/words.hpp"

namespace tuckwright::reading
{

namespace
{

using Drafts = std::vector<ItemDraft>;

std::string key_of(Keep keep)
{
    switch (keep) {
    case Keep::within: return "goes-in";
    case Keep::out: return "not-in";
    case Keep::together: return "together-with";
    case Keep::shut: return "shut";
    case Keep::apart: break;
    }
    return "apart-from";
}

bool is_lid_of(const ItemDraft& item, const ItemDraft& vessel)
{
    return item.closes && vessel.id_place && item.closes->vessel == vessel.item.id;
}

/// Whether something may be said to lie in the vessel, or not to lie in it.
bool check_vessel(Reading& reading, const ItemDraft& item, Keep keep, const Named& named, const ItemDraft& vessel)
{
    const auto refuse = [&](const std::string& what, const std::string& remedy) {
        reading.problems.add(named.place, in_quotes(named.id) + " " + what, remedy);
        return false;
    };
    const std::string remedy = keep == Keep::within ? "name a vessel" : "name a vessel, or delete 'not-in'";
    if (vessel.closes) {
        return refuse("is a lid, and nothing lies in a lid", remedy);
    }
    if (!vessel.inside_place) {
        return refuse("has no inside that something could lie in", remedy);
    }
    if (vessel.item.is_full() && !is_lid_of(item, vessel)) {
        return refuse("is filled by its contents, and nothing else lies in it",
                      remedy + ", or write 'fills: no' in its contents");
    }
    return true;
}

/// Whether a lid and a vessel that its contents fill are told to stay away from each other.
bool check_lid_of_full(Reading& reading, Keep keep, Place place, const ItemDraft& lid, const ItemDraft& vessel)
{
    if (!is_lid_of(lid, vessel) || !vessel.item.is_full()) {
        return true;
    }
    reading.problems.add(
        place, in_quotes(lid.item.id) + " is always shut on " + in_quotes(vessel.item.id) + ", which its contents fill",
        "delete '" + key_of(keep) + "', or write 'fills: no' in those contents");
    return false;
}

/// Whether neither is a lid: where that lies is for its vessel to say.
bool check_partners(Reading& reading, Place place, const ItemDraft& item, const ItemDraft& other)
{
    for (const ItemDraft* draft : {&item, &other}) {
        if (draft->closes) {
            reading.problems.add(place, in_quotes(draft->item.id) + " is a lid, which lies where it is shut",
                                 "name the vessel that it closes, or use 'goes-in' for a lid carried loose");
            return false;
        }
    }
    return true;
}

/// The item that another one names, where a rule between the two can hold at all.
Link other_item(Reading& reading, const Drafts& drafts, IdIndex& ids, const ItemDraft& item, Keep keep,
                const Named& named)
{
    const Link other = ids.need(reading, named.id, named.place);
    if (!other) {
        return std::nullopt;
    }
    if (item.id_place && named.id == item.item.id) {
        reading.problems.add(named.place, in_quotes(named.id) + " names itself in '" + key_of(keep) + "'",
                             "name another item, or delete it");
        return std::nullopt;
    }
    const ItemDraft& there = drafts[*other];
    if (there.is_cover) {
        reading.problems.add(named.place, in_quotes(named.id) + " goes round everything, also round " + in_quotes(item.item.id),
                             "delete '" + key_of(keep) + "', or name another item");
        return std::nullopt;
    }
    if (keep == Keep::together) {
        return check_partners(reading, named.place, item, there) && item.id_place ? other : std::nullopt;
    }
    const bool sound = (keep == Keep::apart || check_vessel(reading, item, keep, named, there)) &&
                       (keep == Keep::within || check_lid_of_full(reading, keep, named.place, item, there)) &&
                       (keep != Keep::apart || check_lid_of_full(reading, keep, named.place, there, item));
    return sound && item.id_place ? other : std::nullopt;
}

/// Two items that `goes-in` brings together: the inner lies in the vessel, and so does the other, where there is one.
struct Meeting {
    std::size_t inner = 0, vessel = 0;
    Link other;
};

/// What lies in what by `goes-in`, directly and further out.
class Chains
{
public:
    /// Requires: no rings.
    Chains(const Drafts& drafts, std::vector<Link> direct)
        : drafts_(drafts), direct_(std::move(direct)), around_(drafts.size(), std::vector<bool>(drafts.size(), false))
    {
        for (std::size_t i = 0; i < drafts.size(); ++i) {
            for (Link at = direct_[i]; at; at = direct_[*at]) {
                around_[i][*at] = true;
            }
        }
    }

    /// The vessel that the item itself names.
    Link vessel_of(std::size_t item) const { return direct_[item]; }

    /// How the two meet against a rule, if they do. Several copies of a vessel may hold one each.
    std::optional<Meeting> meeting(Keep keep, std::size_t first, std::size_t second) const
    {
        if (around_[first][second]) {
            return Meeting{first, second, std::nullopt};
        }
        if (keep != Keep::apart && keep != Keep::together) {
            return std::nullopt;
        }
        if (around_[second][first]) {
            return Meeting{second, first, std::nullopt};
        }
        if (keep == Keep::together) {
            return std::nullopt;
        }
        for (Link at = direct_[first]; at; at = direct_[*at]) {
            if (around_[second][*at] && drafts_[*at].count_is_sound && drafts_[*at].item.count == 1) {
                return Meeting{first, *at, second};
            }
        }
        return std::nullopt;
    }

    /// "'tea' goes in 'cup', and so in 'pot'".
    std::string told(std::size_t inner, std::size_t vessel) const
    {
        const std::string start =
            in_quotes(drafts_[inner].item.id) + (drafts_[inner].item.press ? " is pressed into " : " goes in ") +
            in_quotes(drafts_[*direct_[inner]].item.id);
        return *direct_[inner] == vessel ? start : start + ", and so in " + in_quotes(drafts_[vessel].item.id);
    }

    Place place(std::size_t inner) const { return drafts_[inner].carry.goes_in->place; }
    /// The key that says so.
    std::string key(std::size_t inner) const { return drafts_[inner].item.press ? "press-fit" : "goes-in"; }
    std::string line(std::size_t inner) const { return "line " + std::to_string(place(inner).line + 1); }

private:
    const Drafts& drafts_;
    std::vector<Link> direct_;
    std::vector<std::vector<bool>> around_; ///< by item, then by vessel
};

/// Reports each ring once, and cuts it.
void cut_rings(Reading& reading, const Drafts& drafts, std::vector<Link>& direct)
{
    for (const std::size_t start : ring_starts(direct)) {
        std::string names;
        for (std::size_t at = start; direct[at];) {
            const std::size_t next = *direct[at];
            names += (names.empty() ? "" : ", ") + drafts[at].item.id + " in " + drafts[next].item.id;
            direct[at].reset();
            at = next;
        }
        reading.problems.add(drafts[start].carry.goes_in->place, "items go in one another in a ring: " + names,
                             "delete one 'goes-in' of these");
    }
}

Chains read_chains(Reading& reading, const Drafts& drafts, IdIndex& ids)
{
    std::vector<Link> direct(drafts.size());
    for (std::size_t i = 0; i < drafts.size(); ++i) {
        if (const auto& vessel = drafts[i].carry.goes_in) {
            direct[i] = other_item(reading, drafts, ids, drafts[i], Keep::within, *vessel);
        }
    }
    cut_rings(reading, drafts, direct);
    return {drafts, direct};
}

/// Gathers rules, each pair of items once.
class Rules
{
public:
    explicit Rules(const Drafts& drafts) : drafts_(drafts) {}

    /// Whether the rule is new.
    bool add(Keep keep, std::size_t first, std::size_t second, const std::string& why)
    {
        const bool either_way = keep == Keep::apart;
        if (!known_
                 .emplace(keep, either_way ? std::min(first, second) : first,
                          either_way ? std::max(first, second) : second)
                 .second) {
            return false;
        }
        found_.push_back({keep, drafts_[first].item.id, drafts_[second].item.id, why});
        return true;
    }
    std::vector<CarryRule> take() { return std::move(found_); }

private:
    const Drafts& drafts_;
    std::set<std::tuple<Keep, std::size_t, std::size_t>> known_;
    std::vector<CarryRule> found_;
};

/// Everything that the steps below share.
struct Expansion {
    Reading& reading;
    const Drafts& drafts;
    const Chains& chains;
    Rules& rules;
    std::size_t contradictions = 0;

    /// More of them than are shown are not gathered either: there may be many for each pair of items.
    void contradict(Place place, const std::string& what, const std::string& remedy)
    {
        if (contradictions++ < ProblemList::most) {
            reading.problems.add(place, what, remedy);
        }
    }
};

constexpr auto said_so = "the kit says so";

/// Lids that are never carried loose.
void add_shut(Expansion& all, IdIndex& ids)
{
    for (std::size_t i = 0; i < all.drafts.size(); ++i) {
        const ItemDraft& lid = all.drafts[i];
        const Link vessel = lid.closes && lid.closes->stays_shut && lid.closes->vessel && lid.id_place
                                ? ids.find(*lid.closes->vessel)
                                : std::nullopt;
        if (!vessel) {
            continue;
        }
        all.rules.add(Keep::shut, i, *vessel, said_so);
        const Link other = all.chains.vessel_of(i);
        if (other && *other != *vessel) {
            all.contradict(lid.closes->shut_place,
                           in_quotes(lid.item.id) + " must be shut on " + in_quotes(*lid.closes->vessel) + ", but " +
                               all.chains.line(i) + " says that " + all.chains.told(i, *other),
                           "delete 'shut' here, or 'goes-in' there");
        }
        for (const auto* kept_off : {&lid.carry.not_in, &lid.carry.apart_from}) {
            for (const Named& named : *kept_off) {
                if (named.id == *lid.closes->vessel) {
                    all.contradict(lid.closes->shut_place,
                                   in_quotes(lid.item.id) + " must be shut on " + in_quotes(named.id) + ", but line " +
                                       std::to_string(named.place.line + 1) + " keeps it off that",
                                   "delete 'shut' here, or " + in_quotes(named.id) + " there");
                }
            }
        }
    }
}

void add_forbidden(Expansion& all, std::size_t item, Keep keep, std::size_t other, Place place)
{
    if (!all.rules.add(keep, item, other, said_so)) {
        return;
    }
    const auto meeting = all.chains.meeting(keep, item, other);
    if (!meeting) {
        return;
    }
    std::string but =
        all.chains.line(meeting->inner) + " says that " + all.chains.told(meeting->inner, meeting->vessel);
    if (meeting->other) {
        but +=
            ", and " + all.chains.line(*meeting->other) + " that " + all.chains.told(*meeting->other, meeting->vessel);
    }
    all.contradict(place,
                   in_quotes(all.drafts[item].item.id) +
                       (keep == Keep::out        ? " must not lie in "
                        : keep == Keep::together ? " must lie together with "
                                                 : " must keep apart from ") +
                       in_quotes(all.drafts[other].item.id) + ", but " + but,
                   "delete '" + key_of(keep) + "' here, or '" + all.chains.key(meeting->inner) + "' there");
}

void add_given(Expansion& all, IdIndex& ids)
{
    for (std::size_t i = 0; i < all.drafts.size(); ++i) {
        const ItemDraft& item = all.drafts[i];
        for (const Keep keep : {Keep::out, Keep::apart, Keep::together}) {
            for (const Named& named : keep == Keep::out     ? item.carry.not_in
                                      : keep == Keep::apart ? item.carry.apart_from
                                                            : item.carry.together_with) {
                if (const Link other = other_item(all.reading, all.drafts, ids, item, keep, named)) {
                    add_forbidden(all, i, keep, *other, named.place);
                }
            }
        }
    }
}

/// A usual rule for two items of the kinds that it is about, unless `goes-in` brings them together.
void add_usual(Expansion& all, std::size_t rule, std::size_t first, std::size_t second)
{
    const Keep keep = usual_rules()[rule].keep;
    const auto meeting = all.chains.meeting(keep, first, second);
    if (!meeting) {
        all.rules.add(keep, first, second, usual_rule_reason(rule));
        return;
    }
    const std::string word(usual_rule_words()[rule]);
    std::string what = all.chains.told(meeting->inner, meeting->vessel);
    if (meeting->other) {
        what +=
            ", and by " + all.chains.line(*meeting->other) + " " + all.chains.told(*meeting->other, meeting->vessel);
    }
    all.contradict(
        all.chains.place(meeting->inner), what + ", against the usual rule " + word + ": " + usual_rule_reason(rule),
        "change '" + all.chains.key(meeting->inner) +
            "', or waive the rule at the top of the file, with a reason: 'waive: [{rule: " + word + ", why: ...}]'");
}

/// Whether other things may lie in it.
bool takes_others(const ItemDraft& draft) { return draft.inside_place && !draft.closes && !draft.item.is_full(); }

void expand(Expansion& all, std::size_t index)
{
    const UsualRule& rule = usual_rules()[index];
    const auto applies = [&](std::size_t first, std::size_t second) {
        const Item& there = all.drafts[second].item;
        return is_of_kind(all.drafts[first].item, rule.first) && is_of_kind(there, rule.second) &&
               !(rule.both_are_free && is_of_kind(there, rule.first)) &&
               (rule.keep == Keep::apart || takes_others(all.drafts[second]));
    };
    for (std::size_t i = 0; i < all.drafts.size(); ++i) {
        for (std::size_t j = 0; j < all.drafts.size(); ++j) {
            const ItemDraft &first = all.drafts[i], &second = all.drafts[j];
            const bool is_repeated = rule.keep == Keep::apart && j < i && applies(j, i); // both are of both kinds
            if (i == j || is_repeated || !applies(i, j) || !first.id_place || !second.id_place ||
                is_lid_of(first, second) || is_lid_of(second, first)) {
                continue;
            }
            add_usual(all, index, i, j);
        }
    }
}

} // namespace

std::vector<CarryRule> carry_rules(Reading& reading, const Drafts& drafts, IdIndex& ids, const Waivers& waivers)
{
    const Chains chains = read_chains(reading, drafts, ids);
    Rules rules(drafts);
    Expansion all{reading, drafts, chains, rules, 0};
    for (std::size_t i = 0; i < drafts.size(); ++i) {
        if (const Link vessel = chains.vessel_of(i)) {
            rules.add(Keep::within, i, *vessel,
                      drafts[i].item.press ? "it is pressed into the " + drafts[*vessel].item.id : said_so);
        }
    }
    add_shut(all, ids);
    add_given(all, ids);
    for (std::size_t r = 0; r < usual_rules().size(); ++r) {
        if (!waivers.waives(r)) {
            expand(all, r);
        }
    }
    return rules.take();
}

} // namespace tuckwright::reading
