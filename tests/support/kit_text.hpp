// SPDX-License-Identifier: GPL-3.0-or-later
/// Kit files written by tests, and the way that a user takes them: read, solve, prove.
#pragma once
#include <catch2/catch.hpp>
#include <string>

#include "support/kit_writer.hpp"
#include "tuckwright/kit_reader.hpp"
#include "tuckwright/proof.hpp"
#include "tuckwright/solve.hpp"

namespace tuckwright::test {

inline Kit kit_of(const std::string& text)
{
    const auto kit = read_kit_text(text, "kit.yaml");
    INFO(text << (kit ? "" : to_string(kit.problems().front())));
    REQUIRE(kit.ok());
    return *kit;
}

inline Bundle solved(const Kit& kit, Effort effort, std::uint64_t seed = 1)
{
    SolveOptions options;
    options.effort = effort;
    options.seed = seed;
    Bundle bundle = solve(kit, options);
    if (has_bundle(bundle.status)) {
        const auto objections = check(bundle);
        INFO((objections.empty() ? "" : objections.front().what));
        REQUIRE(objections.empty());
    }
    return bundle;
}

/// The user's way from a file's text to a bundle; a bundle that comes out is proved once more.
inline Bundle solved(const KitText& kit, Effort effort, std::uint64_t seed = 1)
{
    return solved(kit_of(kit.text()), effort, seed);
}

} // namespace tuckwright::test
