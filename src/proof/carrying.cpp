// SPDX-License-Identifier: GPL-3.0-or-later
// Who may lie in what: told by the forest alone, without any shapes.
#include <algorithm>
#include <map>

#include "proof/forest.hpp"
#include "proof/rules.hpp"

namespace tuckwright::proof {

namespace {

using Copies = std::vector<std::size_t>;

/// An item, and then its chain: what it hangs on, a shut lid on its vessel, and so on outward.
class Outward {
public:
    Outward(const Bundle& bundle, std::size_t item) : bundle_(bundle), at_(item) {}
    explicit operator bool() const { return at_.has_value(); }
    std::size_t operator*() const { return *at_; }
    void step() { at_ = hangs_on(bundle_.items[*at_]); }

private:
    const Bundle& bundle_;
    std::optional<std::size_t> at_;
};

std::string lies(const Bundle& bundle, std::size_t item, std::size_t vessel)
{
    return named(bundle, item) + (bundle.items[item].closes == vessel ? " is shut on " : " is in ");
}

std::string against(const CarryRule& rule)
{
    return rule.why.empty() ? ", against a rule of carrying" : ", but " + rule.why;
}

/// Two that meet in `at`, the innermost that is one of them or holds both.
std::string meeting(const Bundle& bundle, std::size_t first, std::size_t second, std::size_t at)
{
    if (at == second) {
        return lies(bundle, first, at) + named(bundle, at);
    }
    if (at == first) {
        return lies(bundle, second, at) + named(bundle, at);
    }
    if (bundle.items[first].closes == at || bundle.items[second].closes == at) {
        return lies(bundle, first, at) + named(bundle, at) + " and " + lies(bundle, second, at) + "it";
    }
    return named(bundle, first) + " and " + named(bundle, second) + " are both in " + named(bundle, at);
}

void keep_apart(const Bundle& bundle, const CarryRule& rule, const Copies& firsts, const Copies& seconds,
                Findings& findings)
{
    std::map<std::size_t, std::size_t> holds_first; // with one of the copies that it holds, or that it is
    for (const std::size_t first : firsts) {
        for (Outward at(bundle, first); at; at.step()) {
            holds_first.try_emplace(*at, first);
        }
    }
    for (const std::size_t first : firsts) {
        holds_first[first] = first;
    }
    for (const std::size_t second : seconds) {
        for (Outward at(bundle, second); at; at.step()) {
            if (const auto found = holds_first.find(*at); found != holds_first.end()) {
                findings.add("carrying", meeting(bundle, found->second, second, *at) + against(rule));
                break;
            }
        }
    }
}

/// The innermost item of this id that an item lies in, however deep. The id is not its own.
std::optional<std::size_t> holder(const Bundle& bundle, std::size_t item, const std::string& id)
{
    for (Outward at(bundle, item); at; at.step()) {
        if (bundle.items[*at].id == id) {
            return *at;
        }
    }
    return std::nullopt;
}

void keep_within(const Bundle& bundle, const CarryRule& rule, const Copies& firsts, const Copies& seconds,
                 Findings& findings)
{
    const std::string wanted =
        seconds.size() == 1 ? named(bundle, seconds.front()) : "any copy of \"" + rule.second + "\"";
    for (const std::size_t first : firsts) {
        if (!holder(bundle, first, rule.second)) {
            findings.add("carrying", named(bundle, first) + " is not in " + wanted + against(rule));
        }
    }
}

void keep_out(const Bundle& bundle, const CarryRule& rule, const Copies& firsts, Findings& findings)
{
    for (const std::size_t first : firsts) {
        if (const auto vessel = holder(bundle, first, rule.second)) {
            findings.add("carrying", lies(bundle, first, *vessel) + named(bundle, *vessel) + against(rule));
        }
    }
}

/// Both directly in one container, which may be the bundle itself; a shut lid is in its vessel.
bool side_by_side(const Bundle& bundle, std::size_t first, std::size_t second)
{
    const PlacedItem &one = bundle.items[first], &other = bundle.items[second];
    return one.closes || other.closes ? hangs_on(one) == hangs_on(other) : one.in == other.in;
}

void keep_together(const Bundle& bundle, const CarryRule& rule, const Copies& firsts, const Copies& seconds,
                   Findings& findings)
{
    const std::string wanted =
        seconds.size() == 1 ? named(bundle, seconds.front()) : "any copy of \"" + rule.second + "\"";
    for (const std::size_t first : firsts) {
        if (std::none_of(seconds.begin(), seconds.end(),
                         [&](std::size_t second) { return side_by_side(bundle, first, second); })) {
            findings.add("carrying",
                         named(bundle, first) + " is not in the same container as " + wanted + against(rule));
        }
    }
}

void keep_shut(const Bundle& bundle, const CarryRule& rule, const Copies& firsts, Findings& findings)
{
    for (const std::size_t first : firsts) {
        const auto& closes = bundle.items[first].closes;
        if (!closes || bundle.items[*closes].id != rule.second) {
            findings.add("carrying", named(bundle, first) + " is not shut on \"" + rule.second + "\"" + against(rule));
        }
    }
}

void check_rule(const Bundle& bundle, const CarryRule& rule, const std::map<std::string, Copies>& copies,
                Findings& findings)
{
    for (const auto* id : {&rule.first, &rule.second}) {
        if (copies.count(*id) == 0) {
            findings.add("carrying", "a rule of carrying speaks of \"" + *id + "\", which is not there");
            return;
        }
    }
    if (rule.first == rule.second) {
        findings.add("carrying",
                     "a rule of carrying is about \"" + rule.first + "\" and itself; it must name two items");
        return;
    }
    const Copies &firsts = copies.at(rule.first), &seconds = copies.at(rule.second);
    switch (rule.keep) {
    case Keep::apart: return keep_apart(bundle, rule, firsts, seconds, findings);
    case Keep::within: return keep_within(bundle, rule, firsts, seconds, findings);
    case Keep::out: return keep_out(bundle, rule, firsts, findings);
    case Keep::together: return keep_together(bundle, rule, firsts, seconds, findings);
    case Keep::shut: return keep_shut(bundle, rule, firsts, findings);
    }
    findings.add("carrying", "a rule of carrying for \"" + rule.first + "\" and \"" + rule.second +
                                 "\" is none of apart, within, out, together and shut");
}

} // namespace

void check_carrying(const Bundle& bundle, Findings& findings)
{
    std::map<std::string, Copies> copies;
    for (std::size_t i = 0; i < bundle.items.size(); ++i) {
        copies[bundle.items[i].id].push_back(i);
    }
    for (const CarryRule& rule : bundle.rules) {
        if (findings.full()) {
            return;
        }
        check_rule(bundle, rule, copies, findings);
    }
}

} // namespace tuckwright::proof
