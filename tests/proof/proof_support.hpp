// SPDX-License-Identifier: GPL-3.0-or-later
/// What the tests of the proof share.
#pragma once
#include <algorithm>
#include <random>
#include <string>
#include <vector>

#include "tuckwright/proof.hpp"
#include "tuckwright/units.hpp"

using Engine = std::mt19937;

/// A random length on the grid.
inline double between(Engine& engine, double low, double high)
{
    return tuckwright::snap(std::uniform_real_distribution<>(low, high)(engine));
}

/// The objections as lines, for a failing test to show.
inline std::string objections_of(const tuckwright::Bundle& bundle)
{
    std::string text;
    for (const auto& objection : tuckwright::check(bundle, 20)) {
        text += "\n  " + objection.rule + ": " + objection.what;
    }
    return text;
}

/// The rule of the first objection, or "none".
inline std::string first_rule(const tuckwright::Bundle& bundle)
{
    const auto objections = tuckwright::check(bundle);
    return objections.empty() ? "none" : objections.front().rule;
}

/// Whether a rule is among the objections.
inline bool objects_by(const tuckwright::Bundle& bundle, const std::string& rule)
{
    const auto objections = tuckwright::check(bundle, 1000);
    return std::any_of(objections.begin(), objections.end(), [&](const auto& one) { return one.rule == rule; });
}

/// What is said under a rule first; empty when nothing is.
inline std::string said(const tuckwright::Bundle& bundle, const std::string& rule)
{
    for (const auto& objection : tuckwright::check(bundle, 1000)) {
        if (objection.rule == rule) {
            return objection.what;
        }
    }
    return "";
}
