// SPDX-License-Identifier: GPL-3.0-or-later
#include "advice/way_back_judge.hpp"

#include <algorithm>
#include <cmath>
#include <map>

#include "advice/vessel_kit.hpp"
#include "tuckwright/proof.hpp"
#include "tuckwright/savings.hpp"

namespace tuckwright::test {

namespace {

using Places = std::map<std::string, int>; ///< "Pot/standing/rolled", and how many copies are so

bool takes_any_shape(const Kit& kit, const PlacedItem& placed)
{
    return std::any_of(kit.items.begin(), kit.items.end(), [&](const Item& item) {
        return item.id == placed.id && (item.cloth || (item.pouch && !placed.cavities.empty()));
    });
}

std::string word(const std::string& in, const std::string& form, const std::string& stowed)
{
    return in + "/" + form + "/" + stowed;
}

/// Where the copies of each thing are, in one of the bundles.
std::map<std::string, Places> places_of(const Kit& kit, const Bundle& bundle)
{
    std::map<std::string, Places> all;
    for (const PlacedItem& item : bundle.items) {
        std::string in = item.in ? bundle.items[item.in->item].id : "";
        in = item.closes ? bundle.items[*item.closes].id : in;
        const bool any = takes_any_shape(kit, item);
        ++all[item.id][word(in, any ? "" : item.form, any ? "" : item.stowed)];
    }
    return all;
}

/// The old places of a thing less those that are left, and the new ones less those that were left.
int moved(const Places& before, const Places& now)
{
    int common = 0, copies = 0, old_copies = 0;
    for (const auto& [place, count] : now) {
        const auto old = before.find(place);
        common += old != before.end() ? std::min(count, old->second) : 0;
        copies += count;
    }
    for (const auto& [place, count] : before) {
        old_copies += count;
    }
    return std::min(copies, old_copies) - common;
}

bool is_there(const Bundle& bundle, const std::string& id)
{
    return std::any_of(bundle.items.begin(), bundle.items.end(), [&](const PlacedItem& item) { return item.id == id; });
}

/// Whether the exact check refuses, by that rule, the bundle with some copy of the thing back in each copy of its old
/// vessel.
bool is_forbidden(const Bundle& back, const Elsewhere& one)
{
    bool forbidden = one.rule && std::find(back.rules.begin(), back.rules.end(), *one.rule) != back.rules.end();
    for (std::size_t thing = 0; thing < back.items.size(); ++thing) {
        for (std::size_t vessel = 0; vessel <= back.items.size(); ++vessel) {
            const bool is_bundle = vessel == back.items.size();
            const std::string id = is_bundle ? "" : back.items[vessel].id;
            const std::string in = back.items[thing].in ? back.items[back.items[thing].in->item].id : "";
            if (back.items[thing].id != one.id || in != one.now.in || id != one.before.in ||
                one.before.form == "shut") {
                continue;
            }
            Bundle other = back;
            other.items[thing].in = is_bundle ? std::nullopt : std::optional(Lodging{vessel, 0});
            other.items[thing].closes.reset();
            const auto objections = check(other, 1);
            forbidden = forbidden && !objections.empty() && objections.front().rule == "carrying";
        }
    }
    return forbidden;
}

class Judge {
public:
    Judge(const BothWays& kits, const ThereAndBack& answer) : kits_(kits), answer_(answer) {}

    std::vector<std::string> faults()
    {
        prove("out", kits_.out, answer_.out);
        prove("back", kits_.back, answer_.back);
        compare_places();
        for (const Elsewhere& one : answer_.elsewhere) {
            judge_cause(one);
        }
        judge_changes();
        judge_volumes();
        return faults_;
    }

private:
    void prove(const std::string& way, const Kit& kit, const Bundle& bundle)
    {
        if (!has_bundle(bundle.status)) {
            faults_.push_back(way + ": no bundle");
            return;
        }
        for (const Objection& objection : check(bundle)) {
            faults_.push_back(way + ": " + objection.what);
        }
        for (const Objection& objection : check_against(bundle, kit)) {
            faults_.push_back(way + ": " + objection.what);
        }
    }

    void compare_places()
    {
        const auto before = places_of(kits_.out, answer_.out), now = places_of(kits_.back, answer_.back);
        std::map<std::string, int> told;
        std::map<std::string, Places> told_before, told_now;
        for (const Elsewhere& one : answer_.elsewhere) {
            const std::string from = word(one.before.in, one.before.form, one.before.stowed),
                              to = word(one.now.in, one.now.form, one.now.stowed);
            told[one.id] += one.copies;
            told_before[one.id][from] += one.copies;
            told_now[one.id][to] += one.copies;
            if (from == to) {
                faults_.push_back(one.id + " is told to go where it was");
            }
        }
        for (const auto& [id, places] : now) {
            const auto old = before.find(id);
            const int moves = old != before.end() ? moved(old->second, places) : 0;
            if (moves != told[id]) {
                faults_.push_back(id + ": " + std::to_string(moves) + " moved, but told are " +
                                  std::to_string(told[id]));
            }
            told.erase(id);
            const auto within = [&](const Places& some, const Places& all) {
                return std::all_of(some.begin(), some.end(), [&](const auto& one) {
                    return all.count(one.first) > 0 && one.second <= all.at(one.first);
                });
            };
            if (!within(told_now[id], places) || (old != before.end() && !within(told_before[id], old->second))) {
                faults_.push_back(id + " is told where it is not, or was not");
            }
        }
        for (const auto& [id, count] : told) {
            faults_.push_back(id + " is told, but does not come back");
        }
    }

    void judge_cause(const Elsewhere& one)
    {
        const auto full = [&](const Kit& kit, const std::string& id) {
            return std::any_of(kit.items.begin(), kit.items.end(),
                               [&](const Item& i) { return i.id == id && i.is_full(); });
        };
        const auto upright = [&](const Kit& kit) {
            return std::any_of(kit.items.begin(), kit.items.end(),
                               [&](const Item& i) { return i.id == one.id && i.upright; });
        };
        const bool same_vessel = one.before.in == one.now.in;
        bool holds = false;
        switch (one.cause) {
        case Cause::rule: holds = is_forbidden(answer_.back, one); break;
        case Cause::vessel_gone: holds = !one.before.in.empty() && !is_there(answer_.back, one.before.in); break;
        case Cause::vessel_full: holds = full(kits_.back, one.before.in); break;
        case Cause::room_now:
            holds = !same_vessel && (!is_there(answer_.out, one.now.in) || full(kits_.out, one.now.in)) &&
                    !full(kits_.back, one.now.in);
            break;
        case Cause::need_not_stand: holds = same_vessel && upright(kits_.out) && !upright(kits_.back); break;
        case Cause::must_stand: holds = same_vessel && !upright(kits_.out) && upright(kits_.back); break;
        case Cause::too_large:
        case Cause::no_room: holds = !one.rule && !goes_back(one); break;
        case Cause::inside_out:
        case Cause::search: holds = !one.rule; break;
        }
        if (!holds) {
            faults_.push_back(one.id + ": its cause does not hold: " + to_string(one.cause));
        }
    }

    /// Whether a search finds room for a thing in its old vessel, with the lid shut, beside what lies in there now;
    /// all of it would have to for the cause not to hold.
    bool goes_back(const Elsewhere& one) const
    {
        advice::Counts counts(kits_.back.items.size(), 0);
        counts[advice::index_of(kits_.back, one.id)] = 1;
        for (const PlacedItem& item : answer_.back.items) {
            for (auto outer = item.in; outer && !item.closes; outer = answer_.back.items[outer->item].in) {
                if (one.cause == Cause::no_room && answer_.back.items[outer->item].id == one.before.in) {
                    ++counts[advice::index_of(kits_.back, item.id)];
                }
            }
        }
        SolveOptions options;
        options.effort = Effort::quick;
        options.any_size = true;
        options.threads = 2;
        const Kit vessel = advice::vessel_kit(kits_.back, advice::index_of(kits_.back, one.before.in), counts);
        return has_bundle(solve(vessel, options).status);
    }

    /// What is told to be gone, added, used up or of another weight is all the difference in weight.
    void judge_changes()
    {
        for (const StateChange& change : answer_.changes) {
            const bool was = is_there(answer_.out, change.id), is = is_there(answer_.back, change.id);
            if ((change.difference == Difference::gone && !was) || (change.difference == Difference::added && !is) ||
                (change.difference == Difference::emptied && !(was && is))) {
                faults_.push_back(change.id + ": is not " + to_string(change.difference));
            }
        }
        for (const PlacedItem& item : answer_.out.items) {
            const bool told = std::any_of(answer_.changes.begin(), answer_.changes.end(),
                                          [&](const StateChange& change) { return change.id == item.id; });
            if (!is_there(answer_.back, item.id) && !told) {
                faults_.push_back(item.id + ": does not come back, which is not told");
            }
        }
    }

    void judge_volumes()
    {
        const double volume = packed_volume_ml(answer_.back);
        const auto& kept = answer_.keeping == Keeping::places    ? answer_.places_ml
                           : answer_.keeping == Keeping::vessels ? answer_.vessels_ml
                                                                 : answer_.searched_ml;
        if (!kept || std::abs(*kept - volume) > 1e-6 * volume) {
            faults_.emplace_back("the volume is not that of its way of keeping");
        }
        for (const auto& other : {answer_.places_ml, answer_.vessels_ml, answer_.searched_ml}) {
            if (other && volume > *other * (1 + worth_staying) * (1 + 1e-9)) {
                faults_.emplace_back("a far smaller one was found");
            }
        }
    }

    const BothWays& kits_;
    const ThereAndBack& answer_;
    std::vector<std::string> faults_;
};

} // namespace

std::vector<std::string> faults_of(const BothWays& kits, const ThereAndBack& answer)
{
    return Judge(kits, answer).faults();
}

} // namespace tuckwright::test
