// SPDX-License-Identifier: GPL-3.0-or-later
/// Sound bundles with one fault each, which the check must refuse with the right rule and in words.
#pragma once
#include <algorithm>
#include <catch2/catch.hpp>
#include <string>
#include <vector>

#include "proof_support.hpp"
#include "tuckwright/bundle.hpp"

inline constexpr double nanometre = 1e-6;

/// A sound bundle, what is done to it, the rule that it then breaks, and a part of what is said.
struct Fault {
    const char* name;
    tuckwright::Bundle (*make)();
    void (*spoil)(tuckwright::Bundle&);
    const char* rule;
    const char* words;
};

/// The same bundle, its items told in the other order.
inline tuckwright::Bundle reversed(tuckwright::Bundle bundle)
{
    const std::size_t count = bundle.items.size();
    const auto other = [&](std::size_t& item) { item = item < count ? count - 1 - item : item; };
    std::reverse(bundle.items.begin(), bundle.items.end());
    for (auto& item : bundle.items) {
        if (item.in) {
            other(item.in->item);
        }
        if (item.closes) {
            other(*item.closes);
        }
    }
    for (auto& step : bundle.steps) {
        other(step.item);
    }
    for (auto& plane : bundle.certificate.planes) {
        other(plane.first);
        other(plane.second);
    }
    for (auto& rest : bundle.certificate.rests) {
        other(rest.item);
        if (rest.on) {
            other(*rest.on);
        }
    }
    return bundle;
}

/// Each fault is refused by its rule, in whatever order the items are told.
inline void refuse(const std::vector<Fault>& faults)
{
    for (const auto& fault : faults) {
        tuckwright::Bundle bundle = fault.make();
        REQUIRE(first_rule(bundle) == "none");
        fault.spoil(bundle);
        INFO(fault.name << objections_of(bundle));
        CHECK(first_rule(bundle) == fault.rule);
        CHECK(said(bundle, fault.rule).find(fault.words) != std::string::npos);
        CHECK(first_rule(reversed(bundle)) == fault.rule);
    }
}

inline tuckwright::Vec3& center(tuckwright::Bundle& bundle, std::size_t item)
{
    return bundle.items[item].solids[0].pose.center;
}
