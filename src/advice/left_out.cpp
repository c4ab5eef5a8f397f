// SPDX-License-Identifier: GPL-3.0-or-later
#include "advice/left_out.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>

#include "advice/vessel_kit.hpp"
#include "report/words.hpp"
#include "tuckwright/worst_case.hpp"

namespace tuckwright::advice {

namespace {

/// A thing laid down one way: what it covers in plan, along its longer side and across, and how high it is.
struct Laid {
    std::string how, along; ///< "standing", and what it is too much of in plan: "wide" or "long"
    double length, width, height;
    bool is_round;
};

std::vector<Laid> ways_to_lie(const Item& item)
{
    if (const auto* c = std::get_if<Cylinder>(&item.outside)) {
        const double thin = foot_of(*c); // as narrow as it is anywhere: the proof counts no more
        std::vector<Laid> ways{{"standing", "wide", c->diameter, c->diameter, c->height, true}};
        if (!item.upright) {
            ways.push_back({"lying", "long", c->height, thin, thin, false});
        }
        return ways;
    }
    const auto& b = std::get<Box>(item.outside);
    if (item.upright) {
        return {{"standing", "long", std::max(b.length, b.width), std::min(b.length, b.width), b.height, false}};
    }
    std::array<double, 3> d{b.length, b.width, b.height};
    std::sort(d.begin(), d.end());
    std::vector<Laid> ways{{"flat", "long", d[2], d[1], d[0], false}};
    if (d[1] > d[0]) {
        ways.push_back({"on its edge", "long", d[2], d[0], d[1], false});
    }
    if (d[2] > d[1]) {
        ways.push_back({"on its end", "wide", d[1], d[0], d[2], false});
    }
    return ways;
}

/// By how much the plan of a thing is larger than a cavity's. In a round one, its corners count.
double excess_in_plan(const Laid& laid, const Shape& cavity, double clearance)
{
    if (const auto* c = std::get_if<Cylinder>(&cavity)) {
        const double across = laid.is_round ? laid.length : std::hypot(laid.length, laid.width);
        return across - (c->diameter - (c->foot == 0 ? 2 * clearance : 0));
    }
    const auto& b = std::get<Box>(cavity);
    const double longer = std::max(b.length, b.width) - 2 * clearance, shorter = std::min(b.length, b.width) - 2 * clearance;
    return std::max(laid.length - longer, laid.width - shorter);
}

std::string joined(const std::vector<std::string>& names)
{
    std::string text;
    for (std::size_t i = 0; i < names.size(); ++i) {
        text += (i == 0 ? "" : i + 1 < names.size() ? ", " : " and ") + names[i];
    }
    return text;
}

std::string called(const Kit& kit, const std::string& id)
{
    const std::string& name = kit.items[index_of(kit, id)].name;
    return name.substr(0, name.find(','));
}

class Reasons {
public:
    Reasons(const Facts& facts, const Counts& set) : facts_(facts), kit_(facts.kit), set_(set) {}

    /// Why one more copy does not go in.
    Left of(std::size_t item) const
    {
        Left left;
        left.id = kit_.items[item].id;
        left.name = kit_.items[item].name;
        Counts alone(kit_.items.size(), 0);
        alone[item] = 1;
        const bool is_too_large = cannot_go_in(kit_, facts_.vessel, alone, 0);
        if (!is_too_large && by_rule(item, left)) {
            return left;
        }
        if (is_too_large || contains(facts_.model.impossible, alone)) {
            tell_alone(item, is_too_large || contains(facts_.proved, alone), left);
            return left;
        }
        Counts more = set_; // with all that must go in, where that is not in it
        for (std::size_t i = 0; i < more.size(); ++i) {
            more[i] = std::max(more[i], facts_.model.least[i]);
        }
        more[item] = std::max(more[item], set_[item] + 1);
        const Counts* found = nullptr;
        for (const auto* sets : {&facts_.proved, &facts_.model.impossible}) {
            for (const Counts& impossible : *sets) {
                if (!found && is_part(impossible, more) && impossible[item] > 0) {
                    found = &impossible;
                    left.why = sets == &facts_.proved ? LeftOut::too_much : LeftOut::not_together;
                }
            }
        }
        if (found) {
            tell_with(item, *found, left);
        } else if (stuff_of(more) > facts_.model.room) {
            tell_too_much_stuff(more, left);
        } else {
            left.words = std::string(facts_.goes_in_alone[item] ? "It goes in alone; with the rest " : "It ") +
                         "was not tried within this effort.";
        }
        return left;
    }

private:
    static bool is_part(const Counts& set, const Counts& of)
    {
        return std::equal(set.begin(), set.end(), of.begin(), [](int a, int b) { return a <= b; });
    }
    static bool contains(const std::vector<Counts>& sets, const Counts& set)
    {
        return std::find(sets.begin(), sets.end(), set) != sets.end();
    }

    double stuff_of(const Counts& set) const
    {
        double sum = 0;
        for (std::size_t i = 0; i < set.size(); ++i) {
            sum += set[i] * facts_.model.stuff[i];
        }
        return sum;
    }

    bool by_rule(std::size_t item, Left& left) const
    {
        left.why = LeftOut::by_rule;
        const std::string& id = kit_.items[item].id;
        for (const CarryRule& rule : kit_.rules) {
            const bool first = rule.first == id, second = rule.second == id;
            if (!first && !second) {
                continue;
            }
            const std::size_t other = index_of(kit_, first ? rule.second : rule.first);
            const auto lid = lid_of(kit_, facts_.vessel);
            const bool is_holder = other == facts_.vessel || other == lid;
            if (rule.keep == Keep::apart ? is_holder || set_[other] > 0
                                         : rule.keep == Keep::out && first && other == facts_.vessel) {
                left.with = {kit_.items[other].id};
                left.words = fmt::format("It keeps {} {}{}: {}.", rule.keep == Keep::apart ? "apart from" : "out of",
                                         called(kit_, kit_.items[other].id), is_holder ? "" : ", which is in", rule.why);
                return true;
            }
            if (first && (rule.keep == Keep::within || rule.keep == Keep::shut) && !is_holder && set_[other] == 0) {
                left.with = {kit_.items[other].id};
                left.words = fmt::format("It has to go with {}, which stays outside.", called(kit_, rule.second));
                return true;
            }
        }
        left.why = LeftOut::not_tried;
        return false;
    }

    void tell_alone(std::size_t item, bool is_proved, Left& left) const
    {
        const Kit sized = kit_.worst_case ? worst_case(kit_) : kit_;
        const std::string excess =
            excess_in_words(sized.items[item], shut_cavity(sized, facts_.vessel), sized.clearance);
        if (!is_proved) {
            left.why = LeftOut::not_alone;
            left.words = excess.empty()
                             ? "It was not found to go in even alone; that is no proof that it cannot."
                             : "Straight it does not go in even alone, " + excess + "; aslant it was not found to.";
            return;
        }
        left.why = LeftOut::too_large;
        left.words = excess.empty() ? "It does not go in, however it is turned: proved."
                                    : "It does not go in, however it is turned: " + excess + ".";
    }

    void tell_with(std::size_t item, const Counts& impossible, Left& left) const
    {
        std::vector<std::string> names;
        for (std::size_t other = 0; other < impossible.size(); ++other) {
            const int copies = impossible[other] - (other == item ? 1 : 0);
            if (copies > 0) {
                left.with.push_back(kit_.items[other].id);
                const std::string name = called(kit_, kit_.items[other].id);
                names.push_back(other == item  ? (copies == 1 ? "another" : fmt::format("{} others", copies))
                                : copies == 1 ? name
                                              : fmt::format("{} of {}", copies, name));
            }
        }
        const char* alone = facts_.goes_in_alone[item] ? "alone, but " : "";
        left.words = left.why == LeftOut::too_much
                         ? fmt::format("It goes in {}not together with {}: proved.", alone, joined(names))
                         : fmt::format("It goes in {}was not found to go in together with {}.", alone, joined(names));
        if (*alone == '\0') {
            left.words = left.why == LeftOut::too_much ? "It does not go in together with " + joined(names) + ": proved."
                                                       : "It was not found to go in together with " + joined(names) + ".";
        }
    }

    void tell_too_much_stuff(const Counts& more, Left& left) const
    {
        left.why = LeftOut::too_much;
        for (std::size_t i = 0; i < more.size(); ++i) {
            if (set_[i] > 0 && facts_.model.stuff[i] > 0) {
                left.with.push_back(kit_.items[i].id);
            }
        }
        left.words = fmt::format("It does not go in together with the rest: all that takes {} at least, the inside holds {}.",
                                 report::volume_in_words(stuff_of(more) / 1000, report::Rounding::up),
                                 report::volume_in_words(facts_.model.room / 1000, report::Rounding::down));
    }

    const Facts& facts_;
    const Kit& kit_;
    const Counts& set_;
};

} // namespace

std::string excess_in_words(const Item& item, const Shape& cavity, double clearance)
{
    if (!item.forms.empty() || item.sheet || item.cloth || item.pouch || item.closes || item.press) {
        return {};
    }
    std::string text;
    for (const Laid& laid : ways_to_lie(item)) {
        const double plan = excess_in_plan(laid, cavity, clearance), high = laid.height - height_of(cavity);
        if (plan <= 0 && high <= 0) {
            return {};
        }
        const std::string wide = plan > 0 ? report::length_in_words(plan) + " too " + laid.along : "";
        const std::string tall = high > 0 ? report::length_in_words(high) + " too high" : "";
        text += (text.empty() ? "" : "; ") + laid.how + (text.empty() ? " it is " : " ") + wide +
                (wide.empty() || tall.empty() ? "" : " and ") + tall;
    }
    return text;
}

std::vector<Left> left_out(const Facts& facts, const Counts& set)
{
    std::vector<Left> all;
    const Reasons reasons(facts, set);
    for (std::size_t item = 0; item < set.size(); ++item) {
        const int copies = facts.model.most[item] - set[item];
        if (copies > 0) {
            all.push_back(reasons.of(item));
            all.back().copies = copies;
        }
    }
    return all;
}

} // namespace tuckwright::advice
