// SPDX-License-Identifier: GPL-3.0-or-later
/// The same kit, seed and effort give the same bytes, for any number of threads.
#include <catch2/catch.hpp>

#include "properties/random_kits.hpp"
#include "support/workload.hpp"
#include "tuckwright/report.hpp"

using namespace tuckwright;
using namespace tuckwright::test;
using namespace properties;

namespace {

std::string answer(const Kit& kit, Effort effort, std::uint64_t seed, unsigned threads)
{
    SolveOptions options;
    options.effort = effort;
    options.seed = seed;
    options.threads = threads;
    return to_json(solve(kit, options));
}

} // namespace

TEST_CASE("sample kits give the same bytes with one thread and with two")
{
    for (const char* name : {"bike-repair-roll", "first-aid-tin", "porridge-canal", "tea-ridge"}) {
        const auto kit = read_kit_file(std::string(TUCKWRIGHT_SOURCE_DIR) + "/kits/" + name + ".yaml");
        REQUIRE(kit.ok());
        INFO(name);
        const std::string one = answer(*kit, Effort::quick, 1, 1);
        CHECK(one == answer(*kit, Effort::quick, 1, 2));
        if (!slow_build) {
            CHECK(one == answer(*kit, Effort::quick, 1, 2)); // and once more
        }
    }
}

TEST_CASE("random kits give the same bytes with one thread and with two, whatever the seed")
{
    Dice dice(95);
    int differ = 0;
    for (int trial = 0; trial < count(16, 4); ++trial) {
        const Kit kit = kit_of(text_of(random_items(dice), trial % 2 == 0 ? round_bundle() : box_bundle()).text());
        const std::uint64_t seed = dice.next();
        const std::string one = answer(kit, Effort::quick, seed, 1);
        INFO(trial);
        CHECK(one == answer(kit, Effort::quick, seed, 2));
        CHECK(one.find(std::to_string(seed)) != std::string::npos);
        differ += one != answer(kit, Effort::quick, seed + 1, 1) ? 1 : 0;
    }
    CHECK(differ > 0); // the seed itself is in the file
}

TEST_CASE("a normal search gives the same bytes with one thread and with two")
{
    const auto kit = read_kit_file(std::string(TUCKWRIGHT_SOURCE_DIR) + "/kits/first-aid-tin.yaml");
    REQUIRE(kit.ok());
    const Effort effort = slow_build ? Effort::quick : Effort::normal;
    CHECK(answer(*kit, effort, 3, 1) == answer(*kit, effort, 3, 2));
}

TEST_CASE("being told of progress changes nothing, and what is told only falls")
{
    Dice dice(96);
    const Kit kit = kit_of(text_of(random_items(dice), round_bundle()).text());
    SolveOptions options;
    options.effort = Effort::quick;
    options.threads = 1;
    const std::string plain = to_json(solve(kit, options));
    double last = 1e300;
    int told = 0;
    options.progress = [&](double best) {
        CHECK(best <= last);
        last = best;
        ++told;
    };
    CHECK(to_json(solve(kit, options)) == plain);
    CHECK(told > 0);
}
