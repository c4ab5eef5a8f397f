// SPDX-License-Identifier: GPL-3.0-or-later
#include "bench/record.hpp"

#include <algorithm>
#include <cstdio>
#include <ctime>
#include <fmt/format.h>

#include "bench/run.hpp"

namespace tuckwright::bench {

namespace {

/// Seconds of processor time, all threads together: what else the machine does makes no difference to it.
double processor_seconds() { return static_cast<double>(std::clock()) / CLOCKS_PER_SEC; }

StoredBest searched(const Case& one, StoredBest best, double seconds, unsigned threads)
{
    constexpr double worth_starting = 1; // less than this at the end finds nothing
    for (double left = seconds; left >= std::min(seconds, worth_starting);) {
        const std::uint64_t seed = best.seeds + 1;
        const double before = processor_seconds();
        const Answer answer = answer_to(one.kit, {Effort::thorough, threads, 0, seed});
        const double spent = processor_seconds() - before;
        const bool found = has_bundle(answer.bundle.status);
        best = after_search(best, found ? std::optional(volume_ml(answer.bundle.envelope)) : std::nullopt, seed, spent);
        left -= spent;
        if (answer.bundle.status == Status::proved_best || answer.bundle.status == Status::does_not_fit) {
            break; // nothing is left to find
        }
    }
    return best;
}

} // namespace

StoredBest after_search(StoredBest before, std::optional<double> found_ml, std::uint64_t seed, double seconds)
{
    constexpr double rounding = 1e-9; // the file has six decimals
    if (found_ml && (before.best_ml <= 0 || *found_ml < before.best_ml * (1 - rounding))) {
        before.best_ml = *found_ml;
        before.seed = seed;
    }
    before.minutes += seconds / 60;
    before.seeds = std::max(before.seeds, seed);
    return before;
}

bool record(const std::vector<Case>& cases, const std::string& path, double seconds, unsigned threads)
{
    for (const Case& one : cases) {
        auto bests = read_stored_bests(path); // anew, since somebody may record other cases at the same time
        if (!bests) {
            std::fputs((to_string(bests.problems().front()) + "\n").c_str(), stderr);
            return false;
        }
        const auto stored = bests->find(one.name);
        const StoredBest before = stored != bests->end() ? stored->second : StoredBest();
        const StoredBest after = searched(one, before, seconds, threads);
        StoredBests all = read_stored_bests(path).value();
        if (after.best_ml > 0) {
            all[one.name] = after;
        }
        if (!write_stored_bests(path, all)) {
            fmt::print(stderr, "{}: cannot be written\n", path);
            return false;
        }
        fmt::print("{:<12} {:>13.6f} ml (was {:.6f}), seed {} of {}, {:.1f} min\n", one.name, after.best_ml,
                   before.best_ml, after.seed, after.seeds, after.minutes);
        std::fflush(stdout);
    }
    return true;
}

} // namespace tuckwright::bench
