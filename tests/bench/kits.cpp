// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include "bench/generated_kits.hpp"
#include "bench/suites.hpp"

namespace tuckwright::bench {

namespace {

Case generated(const std::string& suite, int items, std::uint64_t seed)
{
    Case made;
    made.suite = suite;
    made.name = fmt::format("kit-{:02}-{:02}", items, seed);
    made.kit = generated_kit(items, seed);
    made.group = fmt::format("{} items", items);
    made.items = items;
    return made;
}

} // namespace

Suite kits(const StoredBests& bests)
{
    Suite suite{"kits", "generated kits: volume in ml, against the best that long searches have found", {}};
    for (const int items : {8, 12, 16, 25, 40}) {
        for (std::uint64_t seed = 1; seed <= 12; ++seed) {
            Case made = generated(suite.name, items, seed);
            if (const auto stored = bests.find(made.name); stored != bests.end()) {
                made.best = stored->second.best_ml;
                made.source = fmt::format("own, {:.0f} min of search", stored->second.minutes);
                made.aim = Aim{items <= 12 ? 0.02 : 0.06};
            } else {
                made.source = "no stored best";
            }
            suite.cases.push_back(std::move(made));
        }
    }
    return suite;
}

Suite growth()
{
    Suite suite{"growth", "large generated kits: the time to come within 10 % of their own final volume in ml", {}};
    for (const int items : {50, 100, 200, 400}) {
        for (const std::uint64_t seed : {1U, 2U}) { // a box and a round bundle
            suite.cases.push_back(generated(suite.name, items, seed));
        }
    }
    return suite;
}

Suite threads()
{
    Suite suite{"threads", "one thread and two: the same bytes, and how much sooner", {}};
    for (std::uint64_t seed = 1; seed <= 4; ++seed) {
        suite.cases.push_back(generated(suite.name, 16, seed));
    }
    return suite;
}

} // namespace tuckwright::bench
